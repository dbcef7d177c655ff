"""A check-in being written: what the rider says, the positions found, then the list by area."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.checkin.check_row import CheckRowView
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.field_base import EntryLine
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.checkin_state import CheckInState, CheckRow

ASKED = {"bothers": "What bothers the rider", "last_done": "What was done last"}


class Writing(QWidget):
    """The list to work through."""

    words_typed = Signal(str, str)
    entry_changed = Signal(str, str, object)
    count_requested = Signal()
    picture_wanted = Signal(str)
    picture_left = Signal(str)

    def __init__(self, picture: Callable[[str], bytes | None]) -> None:
        super().__init__()
        self._picture = picture
        self._rows: dict[str, CheckRowView] = {}
        self._lines = {name: self._line(name, words) for name, words in ASKED.items()}
        self._positions = Words("", "text", name="checkin_positions")
        self._count = Button("Note them first ...", "plain", name="checkin_count")
        self._count.clicked.connect(self.count_requested)
        self._care = CareNote("", name="checkin_care")
        self._list = QVBoxLayout()
        self._list.setSpacing(SPACE_16)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(SPACE_16)
        whole.addLayout(self._asked())
        whole.addWidget(self._care)
        whole.addLayout(self._list)

    def show_state(self, state: CheckInState) -> None:
        """Show what is entered."""
        for name, line in self._lines.items():
            text = str(getattr(state, name))
            if line.text() != text:
                line.setText(text)
                line.setModified(False)
        self._positions.set_words(state.positions)
        self._count.setVisible(state.positions_left)
        self._care.set_text(state.care)
        if [row.code for row in state.rows] != list(self._rows):
            self._build(state.rows)
        for row in state.rows:
            self._rows[row.code].show_row(row)

    def start(self, state: CheckInState) -> None:
        """Put the focus on the next thing to do."""
        row = next((row for row in state.rows if not row.severity), None)
        if not state.bothers and state.left == len(state.rows):
            self._lines["bothers"].setFocus(Qt.FocusReason.OtherFocusReason)
        elif row is not None:
            self._rows[row.code].start()

    def go(self, place: str, said: str) -> bool:
        """Go where something is missing; false if that is not here."""
        if place in self._lines:
            self._lines[place].setFocus(Qt.FocusReason.OtherFocusReason)
            return False
        if place not in self._rows:
            return False
        self._rows[place].go(said)
        return True

    def _line(self, name: str, words: str) -> EntryLine:
        line = EntryLine()
        line.setObjectName(f"checkin_{name}")
        line.setAccessibleName(words)
        line.setProperty("kind", name)
        line.textEdited.connect(self._typed)
        return line

    def _typed(self, text: str) -> None:
        self.words_typed.emit(str(self.sender().property("kind")), text)

    def _asked(self) -> QGridLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE_16)
        grid.setVerticalSpacing(SPACE_8)
        grid.setColumnStretch(1, 1)
        for place, (name, words) in enumerate(ASKED.items()):
            label = Words(words, "mute")
            label.setBuddy(self._lines[name])
            grid.addWidget(label, place, 0)
            grid.addWidget(self._lines[name], place, 1)
        across = QHBoxLayout()
        across.addWidget(self._positions, 1)
        across.addWidget(self._count)
        grid.addWidget(Words("Positions found", "mute"), 2, 0)
        grid.addLayout(across, 2, 1)
        return grid

    def _build(self, rows: tuple[CheckRow, ...]) -> None:
        while item := self._list.takeAt(0):
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self._rows, area = {}, ""
        for row in rows:
            if row.area != area:
                area = row.area
                self._list.addWidget(Words(area, "mute"))
                self._list.addWidget(Rule())
            view = CheckRowView(row, self._picture)
            view.changed.connect(self.entry_changed)
            view.picture_wanted.connect(self.picture_wanted)
            view.picture_left.connect(self.picture_left)
            self._rows[row.code] = view
            self._list.addWidget(view)
            view.show()  # now, not with the next event: the next key may be pressed before that

    def first_key(self) -> QWidget:
        """The key that stands before all that is built later."""
        return self._count

    def last_entry(self) -> QWidget | None:
        """The last thing Tab comes to in the list."""
        return next(reversed(self._rows.values())).last_entry() if self._rows else None

"""One thing to look at: what and how, how grave it is, and what is to be said about it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.checkin.picture_row import PictureRow
from workbench.ui.parts.choice_field import Segments, TickBox
from workbench.ui.parts.field_base import EntryLine, set_refused
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import UnitLine
from workbench.ui.parts.rating_bar import KeyBar
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, current
from workbench.viewmodels.checkin_state import SEVERITY_KEYS, CheckRow

KEYS_WIDTH = 400
NARROW = 760
DECLINES = "The customer declines"


class CheckRowView(QWidget):
    """A line of the list; ``changed(code, field, value)`` at every entry."""

    changed = Signal(str, str, object)
    picture_wanted = Signal(str)
    picture_left = Signal(str)

    def __init__(self, row: CheckRow, picture: Callable[[str], bytes | None]) -> None:
        super().__init__()
        self.code = row.code
        self._reasons_shown = row.reasons
        name = f"check_{row.code.replace('/', '_')}"
        self.setObjectName(name)
        self._title, self._how = Words(row.title, "strong"), Words(row.how, "note")
        self._carried, self._said = Words("", "note_strong"), Words("", "note_strong")
        self._problem = Words("", "problem", name=f"{name}_problem")
        words = [(place, word) for place, (_, word) in SEVERITY_KEYS]
        self.keys = KeyBar(words, name=f"{name}_severity")
        self.keys.set_question(row.title)
        self.keys.question.hide()
        self.keys.picked.connect(self._picked)
        self._measured = UnitLine()
        self._measured.setObjectName(f"{name}_measured")
        self._measured.set_label(f"{row.title}: {row.measures}")
        self._measured.textEdited.connect(self._measure)
        self._reasons = Segments([(one, one) for one in row.reasons], label=row.title, name=f"{name}_reason")
        self._reasons.group.idClicked.connect(self._reason)
        self._note = EntryLine()
        self._note.setObjectName(f"{name}_note")
        self._note.setAccessibleName(f"{row.title}: note")
        self._note.setPlaceholderText("Note")
        self._note.textEdited.connect(self._write)
        self._declines = TickBox(DECLINES, name=f"{name}_declined_entry")
        self._declines.setAccessibleName(f"{row.title}: {DECLINES.lower()}")
        self._declines.clicked.connect(self._decline)
        self._picture = PictureRow(picture, name=f"{name}_picture", says=row.title)
        self._picture.add.clicked.connect(self._want_picture)
        self._picture.left.connect(self._leave_picture)
        self._more = self._build_more()
        self._build(row)
        self.show_row(row)

    def show_row(self, row: CheckRow) -> None:
        """Show what is entered; a line being typed in keeps its caret."""
        self._title.set_words(row.title)
        self._how.set_words(row.how)
        self._carried.set_words(row.carried)
        place = next((place for place, (code, _) in SEVERITY_KEYS if code == row.severity), None)
        if self.keys.value() != place:
            self.keys.set_value(place)
        self._measuring.setVisible(bool(row.measures))
        self._measured.set_unit(row.unit)
        self._measured.setFixedWidth(round(140 * current().sizes.text / 14))
        _show(self._measured, row.measured)
        self._said.set_words(row.said)
        self._more.setVisible(row.asks)
        self._reasons.choose(row.reason if row.reason in row.reasons else None)
        _show(self._note, row.note)
        self._declines.setChecked(row.is_declined)
        self._picture.show_picture(row.photo, can_leave=row.is_photo_new)
        self._problem.set_words(row.problem)
        set_refused(self._measured, bool(row.problem) and not row.asks)

    def go(self, said: str) -> None:
        """Go where something is missing, and say what."""
        self._problem.set_words(said)
        if not self._more.isHidden():
            self._reasons.setFocus(Qt.FocusReason.OtherFocusReason)
        elif not self._measuring.isHidden() and self._measured.text():
            self._measured.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.start()

    def start(self) -> None:
        """Put the focus on how grave it is."""
        self.keys.setFocus(Qt.FocusReason.OtherFocusReason)

    def last_entry(self) -> QWidget:
        """The last thing Tab comes to."""
        return self._picture.off if self._picture.off.isVisibleTo(self) else self._picture.add

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The keys below the words where there is no room beside them."""
        super().resizeEvent(event)
        is_narrow = event.size().width() < NARROW * current().sizes.text / 14
        direction = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        self._across.setDirection(direction)
        width = round(KEYS_WIDTH * min(current().sizes.text / 14, 1.4))
        self.keys.setMinimumWidth(0 if is_narrow else width)
        self.keys.setMaximumWidth(16_777_215 if is_narrow else width)

    def _build(self, row: CheckRow) -> None:
        words = QVBoxLayout()
        words.setSpacing(0)
        for one in (self._title, self._how, self._carried):
            words.addWidget(one)
        self._measuring = QWidget()
        line = QHBoxLayout(self._measuring)
        line.setContentsMargins(0, SPACE_4, 0, 0)
        line.setSpacing(SPACE_8)
        line.addWidget(Words(row.measures, "mute"))
        line.addWidget(self._measured)
        line.addWidget(self._said, 1)
        line.addStretch(0)
        words.addWidget(self._measuring)
        words.addStretch(1)
        self._across = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._across.setSpacing(SPACE_16)
        self._across.addLayout(words, 1)
        self._across.addWidget(self.keys, 0, Qt.AlignmentFlag.AlignTop)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(SPACE_4)
        whole.addLayout(self._across)
        whole.addWidget(self._more)
        whole.addWidget(self._problem)

    def _build_more(self) -> QWidget:
        more = QWidget()
        rows = QVBoxLayout(more)
        rows.setContentsMargins(0, 0, 0, SPACE_8)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._reasons)
        line = QHBoxLayout()
        line.setSpacing(SPACE_16)
        line.addWidget(self._note, 1)
        line.addWidget(self._declines)
        line.addWidget(self._picture.add)
        rows.addLayout(line)
        rows.addWidget(self._picture)
        return more

    def _picked(self, place: object) -> None:
        code = next((code for own, (code, _) in SEVERITY_KEYS if own == place), "")
        self.changed.emit(self.code, "severity", code)

    def _reason(self, index: int) -> None:
        self.changed.emit(self.code, "reason", self._reasons_shown[index])

    def _measure(self, text: str) -> None:
        self.changed.emit(self.code, "measured", text)

    def _write(self, text: str) -> None:
        self.changed.emit(self.code, "note", text)

    def _want_picture(self) -> None:
        self.picture_wanted.emit(self.code)

    def _leave_picture(self) -> None:
        self.picture_left.emit(self.code)

    def _decline(self, declines: bool) -> None:
        self.changed.emit(self.code, "is_declined", declines)


def _show(line: EntryLine, text: str) -> None:
    if line.text() != text:
        line.setText(text)
        line.setModified(False)

"""The history: a list of deeds with what to look for above it, and what the picked one changed below."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, QTimer
from PySide6.QtWidgets import QFrame, QGridLayout, QVBoxLayout, QWidget

from workbench.model.pictures import Picture
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.field_base import EntryLine
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.picture_print import PicturePrint
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.viewmodels.history import Choice, HistoryState, HistoryViewModel

HEADS = ("When", "Who", "Bike", "What", "Station")
SAMPLES = ("28 Sep 2031, 00:00", "B. Halloran m", "Tarn hardtail m", "", "Adjusters m")
SIZE = QSize(120, 90)
TYPING_MS = 150  # a list of many thousand deeds is searched once the fingers rest


class HistoryPage(Page):
    """The sheet of the history."""

    def __init__(self, view_model: HistoryViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._history = view_model
        self._sheet = Sheet("History", "Everything that was done, the newest first.", name="history_sheet")
        self._bike = ListBox(())
        self._person = ListBox(())
        self._text = EntryLine()
        self._text.setPlaceholderText("Words of what was done")
        self._choices: dict[ListBox, tuple[Choice, ...]] = {}
        self._table = Table(HEADS, SAMPLES, name="history_table", label="Deeds, the newest first")
        self._empty = Words("", name="history_empty")
        self._newer = Button("Newer", "plain", name="history_newer")
        self._older = Button("Older", "plain", name="history_older")
        self._picked = QFrame()
        self._label = Words("", "strong", name="history_picked")
        self._changed = Words("", name="history_changed")
        self._prints: Flow | None = None
        self._pictures: tuple[Picture, ...] = ()
        self._why_not = Words("", "note", name="history_why_not")
        self._undo = Button("", "plain", name="history_undo")
        self._asked = Words("", "strong", name="history_question")
        self._yes = Button("Undo them", "verb", name="history_undo_yes")
        self._no = Button("Leave it", "plain", name="history_undo_no")
        self._close = Button("Back to the garage", "link", name="history_close")
        self._wait = QTimer(self)
        self._wait.setSingleShot(True)
        self._wait.setInterval(TYPING_MS)
        self._place()
        self._connect()
        self.listen()

    def _place(self) -> None:
        turn = Flow()
        turn.addWidget(self._newer)
        turn.addWidget(self._older)
        self._place_picked()
        for part in (self._filters(), self._table, self._empty, turn):
            self._sheet.body.addWidget(part)
        self._sheet.body.addWidget(self._close, 0, Qt.AlignmentFlag.AlignLeft)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)

    def _filters(self) -> QWidget:
        whole = QWidget()
        grid = QGridLayout(whole)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_16)
        grid.setVerticalSpacing(SPACE_4)
        parts: tuple[tuple[str, QWidget, str], ...] = (
            ("Bike", self._bike, "history_bike"),
            ("Person", self._person, "history_person"),
            ("Find", self._text, "history_text"),
        )
        for column, (label, widget, name) in enumerate(parts):
            widget.setObjectName(name)
            widget.setAccessibleName(label)
            words = Words(label, "mute")
            words.setBuddy(widget)
            grid.addWidget(words, 0, column)
            grid.addWidget(widget, 1, column)
            grid.setColumnStretch(column, 1)
        return whole

    def _place_picked(self) -> None:
        self._picked.setProperty("role", "notice")
        keys = Flow()
        for key in (self._undo, self._yes, self._no):
            keys.addWidget(key)
        strip = QWidget()
        around = QVBoxLayout(strip)
        around.addWidget(self._picked)
        self._sheet.hold(strip)  # below what scrolls, so that it is in sight whichever row is picked
        self._picked_rows = rows = QVBoxLayout(self._picked)
        rows.setContentsMargins(SPACE_16, SPACE_8, SPACE_16, SPACE_8)
        rows.setSpacing(SPACE_4)
        for part in (self._label, self._changed, self._why_not, self._asked, keys):
            rows.addWidget(part)

    def _connect(self) -> None:
        self._bike.activated.connect(self._bike_picked)
        self._person.activated.connect(self._person_picked)
        self._text.textEdited.connect(self._typed)
        self._wait.timeout.connect(self._look)
        self._text.returnPressed.connect(self._look)
        self._table.row_picked.connect(self._history.pick)
        self._newer.clicked.connect(self._history.newer)
        self._older.clicked.connect(self._history.older)
        self._undo.clicked.connect(self._ask)
        self._yes.clicked.connect(self._undo_them)
        self._no.clicked.connect(self._leave)
        self._close.clicked.connect(self._leave_sheet)
        self._sheet.scroll_area.verticalScrollBar().rangeChanged.connect(self._bring_picked)

    def start(self) -> None:
        """Begin at what to look for."""
        self._text.setFocus(Qt.FocusReason.OtherFocusReason)

    def _render(self, state: HistoryState) -> None:
        self._fill(self._bike, state.bikes, state.bike)
        self._fill(self._person, state.people, state.person)
        if not self._text.isModified() and self._text.text() != state.text:
            self._text.setText(state.text)
        rows = tuple(
            TableRow(row.key, (row.when, row.who, row.bike, row.what, row.station), is_mute=not row.is_in_force)
            for row in state.rows
        )
        self._table.show_rows(rows, state.picked)
        self._table.setVisible(bool(rows))
        self._empty.set_words(state.empty)
        self._newer.setVisible(state.can_go_newer or state.can_go_older)
        self._older.setVisible(state.can_go_newer or state.can_go_older)
        self._newer.setEnabled(state.can_go_newer)
        self._older.setEnabled(state.can_go_older)
        self._render_picked(state)

    def _render_picked(self, state: HistoryState) -> None:
        self._picked.setVisible(bool(state.picked))
        self._label.setText(state.picked_text)
        self._changed.set_words("\n".join(state.changed))
        self._show_pictures(state.pictures)
        self._why_not.set_words(state.why_not)
        self._asked.set_words(state.question)
        self._undo.set_text(state.undo_text)
        self._undo.setVisible(bool(state.undo_text) and not state.question)
        self._yes.setVisible(bool(state.question))
        self._no.setVisible(bool(state.question))

    def _show_pictures(self, pictures: tuple[Picture, ...]) -> None:
        """Show the pictures the deed speaks of; each file is read once."""
        if pictures == self._pictures:
            return
        self._pictures = pictures
        if self._prints is not None:
            self._prints.hide()
            self._prints.deleteLater()
        self._prints = Flow(gap=SPACE_8)
        for place, one in enumerate(pictures, 1):
            name = f"history_picture_{place}"
            self._prints.addWidget(PicturePrint(self._history.picture(one.sha256), one.name, SIZE, name=name))
        self._prints.setVisible(bool(pictures))
        self._picked_rows.insertWidget(2, self._prints)

    def _bring_picked(self, _least: int, _most: int) -> None:
        """Keep the row picked in sight once what is said of it has taken its room."""
        if not self._picked.isHidden():
            self._table.show_picked()

    def _fill(self, box: ListBox, choices: tuple[Choice, ...], chosen: str) -> None:
        if self._choices.get(box) != choices:
            self._choices[box] = choices
            box.clear()
            for key, word in choices:
                box.addItem(word, key)
        box.setCurrentIndex(next((place for place, (key, _) in enumerate(choices) if key == chosen), 0))

    def _bike_picked(self, place: int) -> None:
        self._history.set_bike(str(self._bike.itemData(place)))

    def _person_picked(self, place: int) -> None:
        self._history.set_person(str(self._person.itemData(place)))

    def _typed(self, _text: str) -> None:
        self._wait.start()

    def _look(self) -> None:
        self._wait.stop()
        self._history.set_text(self._text.text())

    def _ask(self) -> None:
        self._history.ask_undo()
        self._yes.setFocus(Qt.FocusReason.OtherFocusReason)

    def _leave(self) -> None:
        self._history.leave_it()
        self._undo.setFocus(Qt.FocusReason.OtherFocusReason)

    def _undo_them(self) -> None:
        self._history.undo_to_here()
        self._table.setFocus(Qt.FocusReason.OtherFocusReason)

    def _leave_sheet(self) -> None:
        self.station_requested.emit("garage")

"""The check-in's sheet: look the bike over, hand over what stays open, and service by hours."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.checkin.open_list import OpenList, OverruleForm
from workbench.ui.checkin.wear_list import WearList
from workbench.ui.checkin.writing import Writing
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.parts.word_pairs import WordPairs
from workbench.ui.pictures import ask_picture
from workbench.viewmodels.base import Problem
from workbench.viewmodels.checkin import CheckInViewModel
from workbench.viewmodels.checkin_state import CheckInState


class CheckInPage(Page):
    """Intake, inspection, what stays open, and service."""

    def __init__(self, view_model: CheckInViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._checkin = view_model
        self._overruling = ""
        self._sheet = Sheet("Check-in", name="checkin_sheet")
        self._writing = Writing(view_model.picture)
        self._writing.picture_wanted.connect(self._ask_picture)
        self._writing.picture_left.connect(view_model.leave_picture)
        self._writing.words_typed.connect(view_model.set_words)
        self._writing.entry_changed.connect(self._enter)
        self._writing.count_requested.connect(self._to_count)
        self._stop = CareNote("", name="checkin_stop")
        self._last = WordPairs()
        self._open = OpenList(self._writing.first_key(), view_model.picture)
        self._open.picture_wanted.connect(self._ask_open_picture)
        self._open.picture_left.connect(view_model.unpicture_open)
        self._open.closed.connect(view_model.close)
        self._open.declined.connect(view_model.decline)
        self._open.overrule_requested.connect(self._ask_overrule)
        self._overrule = OverruleForm()
        self._overrule.overruled.connect(self._do_overrule)
        self._overrule.left.connect(self._leave_overrule)
        self._wear = WearList()
        self._wear.hours_told.connect(self._tell_hours)
        self._wear.field_committed.connect(self._wear_typed)
        self._wear.serviced.connect(view_model.serviced)
        self._known = self._known_part()
        for part in (self._writing, self._known):
            self._sheet.body.addWidget(part)
        self._sheet.body.addStretch(1)
        self._build_keys()
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on the next thing to do."""
        state = self._checkin.state
        if state.is_writing:
            self._writing.show_state(state)  # at a start the focus is put before anything is drawn
            self._writing.start(state)
            return
        target = self._onward if state.was_checked else self._first
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """0 says that the rest is fine, wherever no text is being typed."""
        state = self._checkin.state
        if event.key() == Qt.Key.Key_0 and state.is_writing and state.left and not event.isAutoRepeat():
            self._rest_fine()
        else:
            super().keyPressEvent(event)

    def _build_keys(self) -> None:
        self._first = self._key("Begin the quick intake", "verb", "checkin_begin", self._begin_quick)
        self._onward = self._key("On to the adjusters", "verb", "checkin_onward", self._to_count)
        self._quick = self._key("Quick intake", "plain", "checkin_quick", self._begin_quick)
        self._full = self._key("Full inspection", "plain", "checkin_full", self._begin_full)
        self._file = self._key("File this check-in", "verb", "checkin_file", self._file_it)
        self._rest = self._key("The rest is fine", "plain", "checkin_rest", self._rest_fine)
        self._more = self._key("Go on to the full inspection", "plain", "checkin_more", self._begin_full)
        self._discard = self._key("Discard", "link", "checkin_discard", self._checkin.discard)
        self._keys = (
            self._first,
            self._onward,
            self._file,
            self._rest,
            self._quick,
            self._full,
            self._more,
            self._discard,
        )
        self._keys_after: QWidget | None = None
        self._sheet.add_keys(*self._keys)

    @staticmethod
    def _key(words: str, kind: str, name: str, slot: object) -> Button:
        button = Button(words, kind, name=name)
        button.clicked.connect(slot)
        return button

    def _known_part(self) -> QWidget:
        part = QWidget()
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(self._stop)
        rows.addWidget(self._last)
        self._open_title = Words("Hand-over list", "strong")
        rows.addWidget(self._open_title)
        rows.addWidget(self._open)
        rows.addWidget(self._overrule)
        rows.addWidget(Rule())
        rows.addWidget(Words("Service by hours", "strong"))
        rows.addWidget(self._wear)
        return part

    def _render(self, state: CheckInState) -> None:
        self._sheet.set_title(state.title, state.subtitle)
        is_writing = state.is_writing
        self._writing.setVisible(is_writing)
        self._known.setVisible(not is_writing)
        if is_writing:
            self._writing.show_state(state)
        else:
            self._show_known(state)
        self._order_keys(self._writing.last_entry() if is_writing else self._wear.last_entry())
        for key in (self._file, self._discard):
            key.setVisible(is_writing)
        self._rest.setVisible(is_writing and state.left > 0)
        self._more.setVisible(is_writing and state.can_go_full)
        self._first.setVisible(not is_writing and not state.was_checked)
        for key in (self._onward, self._quick):
            key.setVisible(not is_writing and state.was_checked)
        self._full.setVisible(not is_writing)

    def _order_keys(self, last: QWidget | None) -> None:
        """Tab comes to the keys at the foot after the list above them, whenever that was built anew."""
        if last is None or last is self._keys_after:
            return
        self._keys_after = last
        for key in self._keys:
            QWidget.setTabOrder(last, key)
            last = key

    def _show_known(self, state: CheckInState) -> None:
        self._stop.set_text(state.stop)
        self._last.show_pairs(state.last)
        for widget in (self._open_title, self._open):
            widget.setVisible(state.was_checked)
        self._open.show_rows(state.open_rows)
        can_still = {row.item_id for row in state.open_rows if row.can_overrule}
        if self._overruling not in can_still:
            self._overruling = ""
        self._overrule.setVisible(bool(self._overruling))
        self._wear.show_state(state)

    def _enter(self, code: str, name: str, value: object) -> None:
        self._checkin.set_entry(code, **{name: value})

    def _ask_picture(self, code: str) -> None:
        if path := ask_picture(self):
            self._checkin.add_picture(code, path)

    def _ask_open_picture(self, item_id: str) -> None:
        if path := ask_picture(self):
            self._checkin.picture_open(item_id, path)

    def _begin_quick(self) -> None:
        self._begin("quick")

    def _begin_full(self) -> None:
        self._begin("full")

    def _begin(self, depth: str) -> None:
        self.commit_focus()
        self._checkin.begin(depth)
        self._sheet.scroll_area.verticalScrollBar().setValue(0)
        self.start()

    def _rest_fine(self) -> None:
        self._checkin.rest_is_fine()
        state = self._checkin.state
        if state.left:
            self._writing.start(state)
        else:
            self._file.setFocus(Qt.FocusReason.OtherFocusReason)

    def _file_it(self) -> None:
        self.commit_focus()
        if self._checkin.file():
            self._sheet.scroll_area.verticalScrollBar().setValue(0)
            self.start()

    def _to_count(self) -> None:
        self.station_requested.emit("adjusters")

    def _ask_overrule(self, item_id: str) -> None:
        state = self._checkin.state
        row = next((row for row in state.open_rows if row.item_id == item_id), None)
        if row is not None:
            self._overruling = item_id
            self._overrule.show()
            self._overrule.ask(row, state.overrule_by, state.overrule_reasons)

    def _do_overrule(self, item_id: str, by: str, reason: str) -> None:
        if self._checkin.overrule(item_id, by, reason):
            self._leave_overrule()

    def _leave_overrule(self) -> None:
        self._overruling = ""
        self._overrule.hide()
        self.start()

    def _tell_hours(self, seconds: float | None, source: str) -> None:
        if self._checkin.tell_hours(seconds, source):
            self._wear.clear_hours()

    def _wear_typed(self, key: str, name: str, value: float | None) -> None:
        if name == "last":
            self._checkin.set_last(key, value)
        else:
            self._checkin.set_interval(key, name, value)

    def _show_problem(self, problem: Problem) -> None:
        """Say a refusal at its place."""
        if problem.field.startswith("overrule_"):
            self._overrule.say(problem.field, problem.text)
        elif not (self._writing.go(problem.field, problem.text) or self._wear.say(problem.field, problem.text)):
            self.problem_raised.emit(problem.text)

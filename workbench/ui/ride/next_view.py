"""What to ride next: the proposal, and the way to choose something else."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import FlagField, ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8
from workbench.ui.ride.after_view import AfterView
from workbench.ui.ride.score_grid import bring_in_sight
from workbench.ui.ride.switch_view import SwitchView
from workbench.ui.ride.typed_line import TypedLine
from workbench.ui.what_it_does import WhatItDoes
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_next import NextLook
from workbench.viewmodels.ride_session import SessionState

ROLL_OUT = (
    "Before the next run: three pushes on each end, both brakes, a hundred metres of easy rolling, and a gentle first"
    " run. Stop testing if anything feels wrong."
)


class NextView(QWidget):
    """The proposal with its reason; what was changed; a change by hand."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._title = Words("", "mute", name="next_title")
        self._move = Words("", "title", name="next_move")
        self._reason = Words("", "text", name="next_reason")
        self._set = Button("It is set", "plain", name="next_set")
        self._set.clicked.connect(view_model.set_proposed)
        self._other = Button("Another adjuster", "plain", name="next_other")
        self._other.clicked.connect(view_model.put_aside)
        self._about = WhatItDoes(name="next_what")
        self._next_care = CareNote("", name="next_care")
        self._hand_care = CareNote("", name="by_hand_care")
        self._by_hand = Button("Change something else ...", "link", name="next_by_hand")
        self._by_hand.clicked.connect(self._fold)
        self._used_up = Words("", "note", name="next_used_up")
        self._after = AfterView(view_model)
        self._changed = Words("", "strong", name="next_changed")
        self._care = CareNote(ROLL_OUT, name="roll_out")
        self._what = ListBox(())
        self._what.setObjectName("by_hand_what")
        self._what.setAccessibleName("What to change")
        self._what.activated.connect(self._name_value)
        self._about_other = WhatItDoes(name="by_hand_what_it_does")
        self._value = TypedLine("value", "To", prefix="by_hand")
        self._both = FlagField(label="A second change is meant: mark it as two in one", name="by_hand_both")
        self._take = Button("It is set", "plain", name="by_hand_take")
        self._take.clicked.connect(self._change)
        self._value.line.returnPressed.connect(self._change)
        self._place = (0, "")
        self._hand = self._hand_part()
        self._hand.hide()
        self._switch = SwitchView(view_model)
        buttons = QVBoxLayout()
        buttons.setSpacing(SPACE_8)
        for button in (self._set, self._other, self._about, self._by_hand):
            buttons.addWidget(button, 0, Qt.AlignmentFlag.AlignLeft)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(Words("Next", "strong"))
        for widget in (self._changed, self._care, self._title, self._move, self._reason, self._next_care):
            rows.addWidget(widget)
        rows.addSpacing(SPACE_8)
        rows.addLayout(buttons)
        rows.addWidget(self._after)
        rows.addWidget(self._used_up)
        rows.addWidget(self._hand)
        rows.addWidget(self._switch)

    def show_state(self, state: SessionState) -> None:
        """Show the proposal, or what was just changed and waits for its run."""
        look, waits = state.next, bool(state.changed)
        place = (state.entry.number, state.setup_text)
        if place != self._place:  # a refusal speaks of what stood here before
            self._place = place
            self._value.set_problem("")
        self._title.set_words("" if waits else look.title)
        self._move.set_words("" if waits else look.move)
        self._reason.set_words("" if waits else look.reason)
        self._next_care.set_text("" if waits else look.care)
        self._used_up.set_words("" if waits else "\n\n".join(look.used_up))
        self._after.show_look(NextLook() if waits else look)
        self._set.setVisible(bool(look.verb) and not waits)
        self._other.setVisible(bool(look.adjuster_id) and not waits)
        self._about.ask_about("" if waits else look.about, look.title)
        self._changed.set_words(f"Changed: {state.changed}. Ride it now." if waits else "")
        self._care.setVisible(waits)
        chosen = self._what.currentData()
        self._what.clear()
        for choice in state.choices:
            self._what.addItem(f"{choice.title} (now {choice.now})", choice.key)
        self._what.setCurrentIndex(max(self._what.findData(chosen), 0))
        self._choices = {choice.key: choice for choice in state.choices}
        self._name_value()
        self._switch.show_look(state.switch)

    def go_there(self, _adjuster_id: str = "") -> None:
        """Bring the proposal in sight, with the focus on setting it."""
        target = self._set if self._set.isVisibleTo(self) else self._by_hand
        target.setFocus(Qt.FocusReason.OtherFocusReason)
        bring_in_sight(self)

    def show_problem(self, text: str) -> None:
        """Say why a change cannot be made."""
        self._hand.show()
        self._value.set_problem(text)

    def _hand_part(self) -> QWidget:
        part = QWidget()
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._what)
        rows.addWidget(self._about_other, 0, Qt.AlignmentFlag.AlignLeft)
        for widget in (self._hand_care, self._value, self._both):
            rows.addWidget(widget)
        rows.addWidget(self._take, 0, Qt.AlignmentFlag.AlignLeft)
        return part

    def _fold(self) -> None:
        self._hand.setVisible(self._hand.isHidden())
        if not self._hand.isHidden():
            self._what.setFocus(Qt.FocusReason.OtherFocusReason)

    def _name_value(self, _place: int = 0) -> None:
        choice = self._choices.get(str(self._what.currentData()))
        self._value.set_unit(choice.unit if choice else "")
        self._about_other.ask_about(choice.about if choice else "", choice.title if choice else "")
        self._hand_care.set_text(choice.care if choice else "")

    def _change(self) -> None:
        key = str(self._what.currentData())
        if self._ride.change_by_hand(key, self._value.line.text(), both_meant=bool(self._both.value())):
            self._value.line.clear()
            self._both.set_value(False)
            self._hand.hide()

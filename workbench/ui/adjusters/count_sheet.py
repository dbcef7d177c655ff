"""Counting one adjuster: turn it in, keep where it was found; turn it out, keep its range."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from workbench.ui.adjusters.count_panel import CountPanel
from workbench.ui.adjusters.foot_switch import FootSwitch
from workbench.ui.adjusters.knob_side import KnobSide
from workbench.ui.adjusters.skip_panel import SkipPanel
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.stage_sheet import StageSheet
from workbench.ui.what_it_does import WhatItDoes
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_count import CountState, Stage


class CountSheet(StageSheet):
    """The two stages of a count, with a drawing of the knob beside them."""

    def __init__(self, view_model: AdjustersViewModel) -> None:
        super().__init__(name="count")
        self._view_model = view_model
        self._stage = Stage.CLOSE
        self._offers: dict[Button, bool] = {}
        self.panels = {stage: CountPanel(view_model, name=f"count_{stage.name.lower()}") for stage in Stage}
        for panel in self.panels.values():
            panel.done.connect(self.verb.click)
        self.set_stages([("as found", self.panels[Stage.CLOSE]), ("range", self.panels[Stage.OPEN])])
        self.side = KnobSide(view_model)
        self.foot_switch = FootSwitch()
        self.foot_switch.key_learned.connect(self._foot_key_learned)
        self.what = WhatItDoes(name="count_what")
        self.side.add_below(self.what)
        self.side.add_below(self.foot_switch)
        self.set_margin(self.side)
        self.skip = SkipPanel(view_model)
        self.body.insertWidget(0, self.skip)
        self.skip_link = Button("Cannot be counted", "link", name="count_skip")
        self.discard_link = Button("Discard this count", "link", name="count_discard")
        self.unknown_link = Button("As found not known", "link", name="count_not_known")
        self.keys.addWidget(self.unknown_link)
        self.keys.addWidget(self.skip_link)
        self.keys.addWidget(self.discard_link)
        self.verb_pressed.connect(self._keep)
        self.second_pressed.connect(self._was_closed)
        self.back_pressed.connect(view_model.leave)
        self.skip_link.clicked.connect(self._open_skip)
        self.skip.back.clicked.connect(self._close_skip)
        self.unknown_link.clicked.connect(self._not_known)
        self.discard_link.clicked.connect(view_model.discard)
        self._show_skip(False)

    def start(self) -> None:
        """Put the focus on the count, or on the verb where nothing is counted."""
        tool = self.panels[self._stage].tool
        if tool is None or not tool.isVisibleTo(self):
            self.verb.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        tool.setFocus(Qt.FocusReason.OtherFocusReason)
        self.scroll_area.ensureWidgetVisible(tool.positions or tool.more, 0, 0)

    def show_count(self, state: CountState, reasons: tuple[str, ...]) -> None:
        """Show how far the count is."""
        if (state.adjuster_id, state.stage) != (self.property("counted"), self._stage):
            self.say_problem("")
            self._show_skip(False)
        self.setProperty("counted", state.adjuster_id)
        self._stage = state.stage
        self.title.setText(state.title)
        second = "It was fully closed" if state.can_be_closed else ""
        self.show_stage(int(state.stage) - 1, verb=state.verb, second=second, can_go_back=True)
        self._offers = {self.unknown_link: state.can_be_unknown, self.discard_link: state.can_be_discarded}
        self._show_skip(self.skip.isVisibleTo(self))
        self.back.set_text("Back to the list")
        self.what.ask_about(state.about, state.title)
        self.panels[state.stage].show_count(state)
        self.skip.show_reasons(reasons)
        self.foot_switch.show_key(state.foot_key)
        self.foot_switch.setVisible(state.counting != "positions")
        self.side.show_count(state)
        self.set_margin(self.side if state.closes else None)

    def say_at(self, name: str, text: str) -> bool:
        """Say a problem and go to the widget it belongs to; false when there is none here."""
        places: dict[str, QWidget | None] = {
            "count": self.panels[self._stage].tool or self.verb,
            "position_names": self.verb,
            "closed_turn": self.side.turn,
            "reason": self.skip,
        }
        place = places.get(name)
        if place is not None:
            self.say_problem(text, place)
        return place is not None

    def _keep(self) -> None:
        self.say_problem("")
        if self._stage == Stage.CLOSE:
            self._view_model.keep_as_found()
        else:
            self._view_model.keep_range()

    def _foot_key_learned(self, key: int) -> None:
        self._view_model.set_foot_key(key)
        self.start()

    def _was_closed(self) -> None:
        self._view_model.keep_as_found(was_closed=True)

    def _not_known(self) -> None:
        self._view_model.keep_as_found(is_known=False)

    def _open_skip(self) -> None:
        self.say_problem("")
        self._show_skip(True)
        self.skip.setFocus(Qt.FocusReason.OtherFocusReason)

    def _close_skip(self) -> None:
        self._show_skip(False)
        self.start()

    def _show_skip(self, is_open: bool) -> None:
        """Ask for the reason in place of the count."""
        self.skip.setVisible(is_open)
        for part in (self.pages, self.verb, self.skip_link):
            part.setVisible(not is_open)
        for key, is_offered in self._offers.items():
            key.setVisible(is_offered and not is_open)
        self.second.setVisible(not is_open and bool(self.second.words()))

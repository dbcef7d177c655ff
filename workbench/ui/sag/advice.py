"""The fourth stage: what follows from the readings."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.big_number import BigNumber
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import FlagField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sag_rows import SagRow, SagRows
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.sag.entries import Stage
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_advice import Advice, Option
from workbench.viewmodels.sag_guide import GuideShown


class OptionRow(QWidget):
    """One spring or preload that could be set, what it would give, and a key to take it."""

    taken = Signal(int)

    def __init__(self, index: int) -> None:
        super().__init__()
        self._index = index
        self._title = Words("", "strong", elide=True)
        self._title.setFixedWidth(130)
        self._detail = Words("")
        self._take = Button("", "plain", name=f"sag_option_{index + 1}")
        self._take.clicked.connect(self._pressed)
        self._chosen = Words("chosen", "note_strong", name=f"sag_option_{index + 1}_chosen")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_16)
        row.addWidget(self._title)
        row.addWidget(self._detail, 1)
        row.addWidget(self._take)
        row.addWidget(self._chosen)

    def show_option(self, option: Option, *, is_chosen: bool) -> None:
        """Show the option; the chosen one has the verb, a refused one has no key."""
        self._title.setText(option.title)
        self._detail.set_role("care" if option.is_refused else "text")
        self._detail.setText(option.detail)
        self._take.set_text("Take this one")
        self._take.setAccessibleName(option.verb)
        self._take.setVisible(not option.is_refused and not is_chosen)
        self._chosen.setVisible(is_chosen)

    def _pressed(self) -> None:
        self.taken.emit(self._index)


class AdviceStage(Stage):
    """Verdict, number, what to expect there, and why."""

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__(view_model, name="sag_advice_stage")
        self._verdict = Words("", "strong", name="sag_verdict")
        self._rows = SagRows(name="sag_advice_rows")
        self._wheel = Words("", "note", name="sag_advice_wheel")
        self._friction = CareNote(name="sag_advice_friction")
        self._lead = Words("", "mute", name="sag_lead")
        self._number = BigNumber(name="sag_advice_number")
        self._expected = Words("", "text", name="sag_expected")
        self._outcome = Words("", "strong", name="sag_outcome")
        self._reason = Words("", "note", name="sag_reason")
        self._limits = Words("", "note", name="sag_limits")
        self._preload = CareNote(name="sag_preload")
        self._care = CareNote(name="sag_advice_care")
        self._problem = CareNote(name="sag_advice_problem")
        self._large_words = Words("", "text", name="sag_large_move")
        self.large = FlagField(label="I go there in steps and cycle again", name="sag_move_confirmed")
        self.large.value_committed.connect(self._move_ticked)
        self._options: list[OptionRow] = []
        self._option_rows = QVBoxLayout()
        self._option_rows.setSpacing(SPACE_8)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for widget in (self._verdict, self._wheel, self._rows, self._friction, self._problem, self._lead, self._number):
            rows.addWidget(widget)
        for after in (self._expected, self._outcome, self._large_words, self.large):
            rows.addWidget(after)
        rows.addLayout(self._option_rows)
        for below in (self._preload, self._care, self._reason, self._limits):
            rows.addWidget(below)
        rows.addStretch(1)

    def show_guide(self, guide: GuideShown) -> None:
        advice = guide.advice
        if advice is None:
            return
        self._show_rows(guide)
        self._wheel.set_words(guide.wheel_words)
        self._friction.set_text(guide.friction.care and f"{guide.friction.words} {guide.friction.care}")
        for words, text in (
            (self._verdict, advice.verdict),
            (self._lead, advice.lead),
            (self._expected, advice.expected),
            (self._outcome, advice.outcome),
            (self._reason, advice.reason),
            (self._limits, advice.limits),
        ):
            words.set_words(text)
        self._number.setVisible(bool(advice.number))
        self._number.set_number(advice.number, advice.number_unit, advice.also)
        self._problem.set_text(advice.problem)
        self._preload.set_text(advice.preload)
        self._care.set_text(advice.care)
        self._large_words.set_words(advice.large_move)
        self.large.setVisible(bool(advice.large_move))
        self.large.set_value(guide.draft.move_confirmed)
        self._show_options(advice)

    def _show_rows(self, guide: GuideShown) -> None:
        told = guide.history
        rows = [SagRow(one.label, one.words, one.at, one.kind, one.ticks, one.low, one.high) for one in told.rows]
        self._rows.set_rows(rows, told.low, told.high, told.band_words)
        self._rows.setVisible(bool(rows))
        self._rows.setAccessibleName(told.said)

    def _show_options(self, advice: Advice) -> None:
        shown = advice.options if advice.shows_options else ()
        while len(self._options) > len(shown):
            row = self._options.pop()
            row.hide()
            row.deleteLater()
        while len(self._options) < len(shown):
            row = OptionRow(len(self._options))
            row.taken.connect(self.view_model.another_round)
            self._option_rows.addWidget(row)
            self._options.append(row)
            row.show()
        for place, (row, option) in enumerate(zip(self._options, shown, strict=True)):
            row.show_option(option, is_chosen=place == advice.chosen)

    def field(self, name: str) -> QWidget | None:
        return self.large if name == "move_confirmed" else None

    def first(self) -> QWidget | None:
        return None

    def _move_ticked(self, value: object) -> None:
        self.view_model.set_field("move_confirmed", value)

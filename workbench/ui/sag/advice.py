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
from workbench.ui.parts.theme import SPACE_8, SPACE_16, SPACE_24
from workbench.ui.sag.entries import Stage
from workbench.ui.spring.coil_fields import FieldBox
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_advice import Advice, Option
from workbench.viewmodels.sag_guide import GuideShown

HEADS = ("Spring", "Sag", "Preload force", "Usable stroke")
TITLE_WIDTH = 96
CELL_WIDTHS = (116, 92, 0)  # the last takes what is left


class HeadRow(QWidget):
    """What stands in the columns of the springs below."""

    def __init__(self) -> None:
        super().__init__()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_16)
        for head, width in zip(HEADS, (TITLE_WIDTH, *CELL_WIDTHS), strict=True):
            words = Words(head, "note")
            if width:
                words.setFixedWidth(width)
            row.addWidget(words, 0 if width else 1)


class OptionRow(QWidget):
    """One spring or preload that could be set, what it would give, and a key to take it."""

    taken = Signal(int)

    def __init__(self, index: int) -> None:
        super().__init__()
        self._index = index
        self._title = Words("", "strong", elide=True)
        self._title.setFixedWidth(TITLE_WIDTH)
        self._detail = Words("")
        self._cells = [Words("") for _ in CELL_WIDTHS]
        self._take = Button("", "plain", name=f"sag_option_{index + 1}")
        self._take.clicked.connect(self._pressed)
        self._chosen = Words("chosen", "note_strong", name=f"sag_option_{index + 1}_chosen")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_16)
        row.addWidget(self._title)
        row.addWidget(self._detail, 1)
        for cell, width in zip(self._cells, CELL_WIDTHS, strict=True):
            if width:
                cell.setFixedWidth(width)
            row.addWidget(cell, 0 if width else 1)
        row.addWidget(self._take)
        row.addWidget(self._chosen)

    def show_option(self, option: Option, *, is_chosen: bool) -> None:
        """Show the option; the chosen one has the verb, a refused one has no key."""
        self._title.setText(option.title)
        role = "care" if option.is_refused else "text"
        self._detail.setVisible(not option.cells)
        self._detail.set_role(role)
        self._detail.setText(option.detail)
        for cell, words in zip(self._cells, option.cells or ("",) * len(self._cells), strict=True):
            cell.setVisible(bool(option.cells))
            cell.setText(words)
        self._cells[-1].set_role(role)
        self._take.set_text("Take this one" if not option.cells else "Take")
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
        self._known_to = Words("", "note", name="sag_known_to")
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
        self.springs = FieldBox("springs", view_model.set_springs)
        self._heads = HeadRow()
        self._options: list[OptionRow] = []
        self._option_rows = QVBoxLayout()
        self._option_rows.setSpacing(SPACE_8)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for widget in (self._verdict, self._wheel, self._rows, self._friction, self._problem):
            rows.addWidget(widget)
        number = QVBoxLayout()
        number.setSpacing(SPACE_8)
        for part in (self._lead, self._number, self._known_to):
            number.addWidget(part)
        number.addStretch(1)
        beside = QHBoxLayout()
        beside.setSpacing(SPACE_24)
        beside.addLayout(number, 3)
        beside.addWidget(self.springs, 2)
        rows.addLayout(beside)
        for after in (self._expected, self._outcome, self._large_words, self.large):
            rows.addWidget(after)
        rows.addWidget(self._heads)
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
            (self._known_to, advice.known_to),
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
        self.springs.setVisible(advice.springs is not None)
        if advice.springs is not None:
            self.springs.show_field(advice.springs)
        self._show_options(advice)

    def _show_rows(self, guide: GuideShown) -> None:
        told = guide.history
        rows = [SagRow(one.label, one.words, one.at, one.kind, one.ticks, one.low, one.high) for one in told.rows]
        self._rows.set_rows(rows, told.low, told.high, told.band_words)
        self._rows.setVisible(bool(rows))
        self._rows.setAccessibleName(told.said)

    def _show_options(self, advice: Advice) -> None:
        shown = advice.options if advice.shows_options else ()
        self._heads.setVisible(any(option.cells for option in shown))
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

"""The leverage survey's sheet: pairs read at the bench, and the curve through them as they are typed."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.field_base import EntryLine
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.ui.plots.ratio import RatioPlot, TravelPlot
from workbench.viewmodels.base import Problem
from workbench.viewmodels.leverage import LeverageState, LeverageViewModel

HOW = (
    "Let the air out or take the spring off, set the shock at full extension and both readings to zero. Press in steps"
    " of about a tenth of the stroke, any order, and read the shaft and the axle each time."
)


class LeveragePage(Page):
    """Survey the leverage of the bike on the bench."""

    def __init__(self, view_model: LeverageViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._leverage = view_model
        self._sheet = Sheet("Leverage survey", HOW, name="leverage_sheet")
        self._blocked = EmptyState("", "", name="leverage_blocked")
        self._heads = (Words("Shock stroke", "mute"), Words("Wheel travel", "mute"))
        self._grid = QGridLayout()
        self._lines: list[tuple[EntryLine, EntryLine]] = []
        self._mounting = EntryLine()
        self._mounting.setObjectName("leverage_mounting")
        self._mounting.setAccessibleName("Mounting position")
        self._mounting.setPlaceholderText("Mounting position, if there are several")
        self._mounting.textEdited.connect(view_model.set_mounting)
        self._plot = RatioPlot()
        self._points = TravelPlot()
        self._said = Words("", "text", name="leverage_said")
        self._kept = Words("", "note", name="leverage_kept")
        self._keep = Button("Keep this survey", "verb", name="leverage_keep")
        self._keep.clicked.connect(view_model.keep)
        self._discard = Button("Discard", "plain", name="leverage_discard")
        self._discard.clicked.connect(view_model.discard)
        self._whole = self._build()
        for part in (self._blocked, self._whole):
            self._sheet.body.addWidget(part)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the caret into the first pair."""
        if self._lines:
            self._lines[0][0].setFocus(Qt.FocusReason.OtherFocusReason)

    def _build(self) -> QWidget:
        whole = QWidget()
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_4)
        for column, head in enumerate(self._heads):
            self._grid.addWidget(head, 0, column + 1)
        left = QVBoxLayout()
        left.setSpacing(SPACE_8)
        left.addLayout(self._grid)
        left.addWidget(self._mounting)
        left.addStretch(1)
        right = QVBoxLayout()
        right.setSpacing(SPACE_8)
        right.addWidget(self._said)
        right.addWidget(self._points)
        right.addWidget(self._plot)
        foot = QHBoxLayout()
        foot.addWidget(self._keep)
        foot.addWidget(self._discard)
        foot.addStretch(1)
        right.addLayout(foot)
        right.addWidget(self._kept)
        right.addStretch(1)
        columns = QHBoxLayout(whole)
        columns.setContentsMargins(0, 0, 0, 0)
        columns.setSpacing(SPACE_16)
        columns.addLayout(left, 2)
        columns.addLayout(right, 3)
        return whole

    def _render(self, state: LeverageState) -> None:
        self._blocked.setVisible(bool(state.blocked))
        self._whole.setVisible(not state.blocked)
        if state.blocked:
            self._blocked.set_words(state.blocked)
            return
        for column, words in enumerate(("Shock stroke", "Wheel travel")):
            self._heads[column].setText(f"{words}, {state.unit}")
        while len(self._lines) < len(state.pairs):
            self._add_line()
        for line, pair in zip(self._lines, state.pairs, strict=False):
            for entry, text in zip(line, pair, strict=True):
                if entry.text() != text:
                    entry.setText(text)
        for place, line in enumerate(self._lines):
            for entry in line:
                entry.setVisible(place < len(state.pairs))
        if self._mounting.text() != state.mounting:
            self._mounting.setText(state.mounting)
        for plot in (self._plot, self._points):
            plot.setVisible(state.curve is not None)
        if state.curve is not None:
            self._plot.show_curve(state.curve, state.said)
            self._points.show_curve(state.curve)
        self._said.setText(state.said)
        self._discard.setVisible(state.has_draft)
        self._kept.set_words(
            "; ".join(words for _, words in state.kept) and "Kept: " + "; ".join(w for _, w in state.kept)
        )

    def _add_line(self) -> None:
        place = len(self._lines)
        entries = (EntryLine(), EntryLine())
        self._grid.addWidget(Words(str(place + 1), "mute"), place + 1, 0)
        for column, entry in enumerate(entries):
            words = ("stroke", "wheel")[column]
            entry.setObjectName(f"leverage_{words}_{place + 1}")
            entry.setAccessibleName(f"Line {place + 1}, {words}")
            entry.textEdited.connect(partial(self._leverage.set_pair, place, column))
            self._grid.addWidget(entry, place + 1, column + 1)
        self._lines.append(entries)

    def _show_problem(self, problem: Problem) -> None:
        self._said.setText(problem.text)

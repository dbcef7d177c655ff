"""The runs in the order ridden: ratings, lap times below, and on request without the trend."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import FlagField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.laps import LapPlot
from workbench.ui.plots.timeline import TimelinePlot
from workbench.ui.review.read_line import ReadLine
from workbench.viewmodels.review import ReviewState
from workbench.viewmodels.review_runs import RunWords

LEGEND = (
    "Circle: the session's first setup. Triangle up: more open, down: more closed. Square: anything else."
    " Pale: warm-up. Cross: set aside. Hatched: two changes at once."
)

HOW = "Point at a run to read it, or go through them with the arrow keys. A click or Enter opens it."
HEADS = ("Run", "Setup", "Answers", "Since the run before", "Remarks")
SAMPLES = ("28 May 2026, run 28", "no. 288", "", "", "set aside: disturbed")


class RunsView(QWidget):
    """``trend_asked(bool)`` when the trend is to be taken out or left in; ``run_picked`` from pictures or table."""

    trend_asked = Signal(bool)
    run_picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.timeline = TimelinePlot()
        self.laps = LapPlot()
        for plot in (self.timeline, self.laps):
            plot.run_picked.connect(self.run_picked)
        self._trend = FlagField(label="Without the trend of the day", name="review_trend")
        self._trend.value_committed.connect(self._ask)
        self._trend_said = Words("", "note", name="review_trend_said")
        self._laps_said = Words("", "note", name="review_laps_said")
        self._steady = Words("", "note", name="review_steady")
        self._read = ReadLine(HOW, (self.timeline, self.laps), name="review_runs_read")
        self._run = Words("", "text", name="review_run_said")
        self._fold = Button("The runs in numbers ...", "link", name="review_runs_fold")
        self._fold.clicked.connect(self._unfold)
        self._table = Table(HEADS, SAMPLES, name="review_runs_table", label="The runs in numbers")
        self._table.row_picked.connect(self._row_picked)
        self._table.hide()
        self._picked = ""
        head = QHBoxLayout()
        head.setSpacing(SPACE_16)
        head.addWidget(Words("The runs", "strong"))
        head.addWidget(self._trend)
        head.addStretch(1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(head)
        legend = Words(LEGEND, "note", name="review_legend")
        shown = (
            self.timeline,
            self.laps,
            self._read,
            self._run,
            self._laps_said,
            self._trend_said,
            legend,
            self._steady,
        )
        for widget in shown:
            rows.addWidget(widget)
        rows.addWidget(self._fold, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self._table)

    def show_runs(self, state: ReviewState) -> None:
        """Show the runs; those of the change picked stand out."""
        self.timeline.show_timeline(state.timeline, state.strong, state.run_id)
        self.laps.show_timeline(state.timeline, state.strong, state.run_id)
        self._run.set_words(state.run_said)
        self._picked = state.run_id
        rows = tuple(TableRow(one.run_id, _cells(one), one.is_aside) for one in state.runs)
        self._table.show_rows(rows, state.run_id)
        self.laps.setVisible(bool(state.timeline.laps))
        self._laps_said.set_words(f"{state.timeline.laps_said}; up is quicker." if state.timeline.laps else "")
        self._trend.set_value(state.with_trend)
        self._trend_said.set_words(state.timeline.trend_said)
        self._steady.set_words(state.effects.steady)

    def _unfold(self) -> None:
        self._table.setVisible(self._table.isHidden())

    def _row_picked(self, run_id: str) -> None:
        if run_id != self._picked:
            self.run_picked.emit(run_id)

    def _ask(self, value: object) -> None:
        self.trend_asked.emit(bool(value))


def _cells(run: RunWords) -> tuple[str, ...]:
    return run.title, run.setup, run.answers, run.change, run.remarks

"""The runs in the order ridden: ratings, lap times below, and on request without the trend."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.choice_field import FlagField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.laps import LapPlot
from workbench.ui.plots.timeline import TimelinePlot
from workbench.viewmodels.review import ReviewState

LEGEND = (
    "Circle: the session's first setup. Triangle up: more open, down: more closed. Square: anything else."
    " Pale: warm-up. Cross: set aside. Hatched: two changes at once."
)


class RunsView(QWidget):
    """``trend_asked(bool)`` when the trend is to be taken out or left in."""

    trend_asked = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.timeline = TimelinePlot()
        self.laps = LapPlot()
        self._trend = FlagField(label="Without the trend of the day", name="review_trend")
        self._trend.value_committed.connect(self._ask)
        self._trend_said = Words("", "note", name="review_trend_said")
        self._laps_said = Words("", "note", name="review_laps_said")
        self._steady = Words("", "note", name="review_steady")
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
        for widget in (self.timeline, self.laps, self._laps_said, self._trend_said, legend, self._steady):
            rows.addWidget(widget)

    def show_runs(self, state: ReviewState) -> None:
        """Show the runs; those of the change picked stand out."""
        self.timeline.show_timeline(state.timeline, state.strong)
        self.laps.show_timeline(state.timeline, state.strong)
        self.laps.setVisible(bool(state.timeline.laps))
        self._laps_said.set_words(f"{state.timeline.laps_said}; up is quicker." if state.timeline.laps else "")
        self._trend.set_value(state.with_trend)
        self._trend_said.set_words(state.timeline.trend_said)
        self._steady.set_words(state.effects.steady)

    def _ask(self, value: object) -> None:
        self.trend_asked.emit(bool(value))

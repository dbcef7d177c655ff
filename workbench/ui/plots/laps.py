"""Lap times over the runs, on a logarithmic scale, quicker ones higher."""

from __future__ import annotations

from math import exp, log

from PySide6.QtWidgets import QWidget

from workbench.model.responses import lap_text
from workbench.ui.plots.timeline import RunsPlot

LEAST_REACH = 0.01  # of the scale to both sides of its middle, in logarithms: about one percent


class LapPlot(RunsPlot):
    """The strip below the ratings; run by run at the same place."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__("review_laps", parent)
        self.setFixedHeight(140)
        self.setLabel("left", "lap")

    def _height(self, value: float) -> float:
        """Equal shares of time are equal steps, and up is quicker."""
        return -log(value)

    def _draw(self) -> None:
        self._clear()
        told = self._timeline
        self.setVisible(bool(told.laps))
        if not told.laps:
            return
        self._add_bands()
        shifted = self._shifted() if told.trend_of_laps else {}
        if shifted:
            self._add_trend()
            self._add_ways_back(told.laps)
        self._add_picked(told.laps)
        for item in self._behind:
            self.addItem(item)
        heights = [
            self._height(shifted[one.run_id].without if one.run_id in shifted else one.lap_s) for one in told.laps
        ]
        self._show_points(told.laps, heights)
        given = heights + [self._height(one.lap_s) for one in told.laps]
        middle = 0.5 * (min(given) + max(given))
        reach = max(0.5 * (max(given) - min(given)), LEAST_REACH) * 1.25
        self.setYRange(middle - reach, middle + reach, padding=0)
        ticks = [middle + share * reach for share in (-0.8, 0.0, 0.8)]
        self.getAxis("left").setTicks([[(tick, lap_text(exp(-tick))) for tick in ticks]])
        self._set_reach()
        self._number(told.laps)
        self.say(told.laps_said)

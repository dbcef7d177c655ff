"""The head of the sheet: which bike, whose, and the job line."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from workbench.model.job import STATION_WORDS
from workbench.ui.parts.job_line import JobLine, Mark
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.viewmodels.window import WindowState, WindowViewModel


class Head(QWidget):
    """Bike, rider and the state of every station."""

    def __init__(self, view_model: WindowViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("head")
        self._bike = Words("", "title", elide=True, name="head_bike")
        self._rider = Words("", "mute", elide=True, name="head_rider")
        self._line = JobLine()
        self._line.station_requested.connect(view_model.open_station)
        names = QHBoxLayout()
        names.setSpacing(SPACE_16)
        names.addWidget(self._bike)
        names.addWidget(self._rider, 1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        rows.addLayout(names)
        rows.addWidget(self._line)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)

    def show_state(self, state: WindowState) -> None:
        """Show the bike on the bench."""
        self._bike.setText(state.bike_name)
        self._rider.setText(state.rider_text)
        self._line.set_marks(
            [Mark(mark.station.value, STATION_WORDS[mark.station], mark.state.value, mark.why) for mark in state.marks]
        )

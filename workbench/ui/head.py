"""The head of the sheet: which bike, whose, the notice beside it, and the job line."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from workbench.model.job import STATION_WORDS
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.job_line import JobLine, Mark
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_16, current
from workbench.viewmodels.window import WindowState, WindowViewModel

NOTICE_WIDTH = 440


class Head(QWidget):
    """Bike, rider and the state of every station. The notice has its place here, so that it moves nothing."""

    garage_requested = Signal()

    def __init__(self, view_model: WindowViewModel, banner: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("head")
        self._bike = Words("", "title", elide=True, name="head_bike")
        self._rider = Words("", "mute", elide=True, name="head_rider")
        self._garage = Button("All bikes", "plain", name="head_garage")
        self._garage.setAccessibleName("All bikes: pick another one")
        self._garage.clicked.connect(self.garage_requested)
        self._garage.hide()
        self._line = JobLine()
        self._line.station_requested.connect(view_model.open_station)
        self._names = QWidget()
        names = QHBoxLayout(self._names)
        names.setContentsMargins(0, 0, 0, 0)
        names.setSpacing(SPACE_16)
        self._bike.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self._rider.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        names.addWidget(self._garage)
        names.addWidget(self._bike)
        names.addWidget(self._rider)
        names.addStretch(1)
        self._banner = banner
        banner.setMinimumWidth(NOTICE_WIDTH)
        names.addWidget(banner)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        rows.addWidget(self._names)
        rows.addWidget(self._line)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._banner.setMinimumWidth(min(NOTICE_WIDTH, event.size().width() // 2))

    def offer_garage(self, is_offered: bool) -> None:
        """Show the way to the garage list where the list itself is put away."""
        self._garage.setVisible(is_offered)

    def show_state(self, state: WindowState, *, shows_bike: bool) -> None:
        """Show the bike on the bench, or only keep the place of the notice."""
        self._names.setFixedHeight(current().sizes.target + 10)
        self._bike.setText(state.bike_name if shows_bike else "")
        self._rider.setText(state.rider_text if shows_bike else "")
        self._line.setVisible(shows_bike)
        self._line.set_marks(
            [
                Mark(
                    mark.station.value,
                    STATION_WORDS[mark.station],
                    mark.state.value,
                    mark.why,
                    is_open=mark.station == state.station,
                )
                for mark in state.marks
            ]
        )

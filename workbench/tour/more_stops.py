"""Stops of the tour that show what stands around the stations' own work."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QLineF, QPointF, Qt
from PySide6.QtGui import QColor, QImage, QImageWriter, QPainter, QPen
from PySide6.QtWidgets import QPushButton, QWidget

from workbench.actions.checkin import Found, file_checkin
from workbench.app import Workbench
from workbench.model.bike import Station
from workbench.model.pictures import Picture
from workbench.viewmodels.window import HISTORY, TEMPLATES

Open = Callable[[Workbench, str, str], Any]
Stop = tuple[str, str, bool, Callable[[Workbench], QWidget | None]]


def more_stops(bike: Open) -> tuple[Stop, ...]:
    """Give the stops; ``bike`` opens a station over a bike of the sample."""
    return (
        ("sample", "sag-hint", False, partial(_hint, bike)),
        ("sample", "checkin-picture", False, partial(_picture, bike)),
        ("sample", "checkin-picture-open", False, partial(_picture_open, bike)),
        ("sample", "garage-exchange", False, partial(_exchange, bike)),
        ("sample", "garage-exchanged", False, partial(_exchanged, bike)),
        ("sample", "ride-switch", False, partial(_switch, bike)),
        ("sample", "ride-tyres", False, partial(_tyres, bike)),
        ("sample", "templates", False, partial(_templates, bike)),
        ("sample", "history-picture", False, partial(_picture_in_history, bike)),
    )


def _hint(bike: Open, workbench: Workbench) -> None:
    """What somebody reads who comes to a station for the first time."""
    workbench.view_model.show_hints_again()
    bike(workbench, "Larch 150", Station.SAG)


def _picture(bike: Open, workbench: Workbench) -> None:
    """A picture put to something found."""
    from workbench.tour.stops import further_down

    view_model = bike(workbench, "Wren 24", Station.CHECKIN)
    taken = _sketch(workbench)
    view_model.begin("quick")
    view_model.set_entry("frame", severity="attend", note="Weld behind the head tube")
    view_model.set_entry("frame", photo=taken.sha256, photo_name=taken.name)
    further_down(workbench, "Wren 24", Station.CHECKIN, "check_frame")


def _picture_open(bike: Open, workbench: Workbench) -> None:
    """The picture on the hand-over list."""
    _picture(bike, workbench)
    bike(workbench, "Wren 24", Station.CHECKIN).file()


def _picture_in_history(bike: Open, workbench: Workbench) -> None:
    """The picture beside the deed that speaks of it."""
    view_model = bike(workbench, "Wren 24", HISTORY)
    found = Found("frame", "attend", "Marks", picture=_sketch(workbench))
    bike_id = workbench.bench.bike_id or ""
    workbench.desk.do("File the check-in", file_checkin(bike_id, "quick", (found,)), bike_id=bike_id, station="checkin")
    view_model.pick(view_model.state.rows[0].key)


def _exchange(bike: Open, workbench: Workbench) -> None:
    """Another shock is being fitted."""
    from workbench.tour.stops import further_down

    bike(workbench, "Larch 150", Station.GARAGE)
    view = workbench.window.page(Station.GARAGE).findChild(QWidget, "fit")
    view.open("rear")  # type: ignore[union-attr]
    further_down(workbench, "Larch 150", Station.GARAGE, "fit")


def _exchanged(bike: Open, workbench: Workbench) -> None:
    """What hung there before stands below what hangs there now."""
    from workbench.tour.stops import further_down

    bike(workbench, "Larch 150", Station.GARAGE).fit("rear", "coil", 60.0, "Marl coil")
    further_down(workbench, "Larch 150", Station.GARAGE, "hardware_due_shock")


def _switch(bike: Open, workbench: Workbench) -> None:
    """From dry to wet in the middle of a session."""
    from workbench.tour.stops import riding

    riding(workbench, 4)
    page = workbench.window.page(Station.RIDE)
    fold = page.findChild(QPushButton, "switch_fold")
    assert isinstance(fold, QPushButton)
    fold.click()


def _tyres(bike: Open, workbench: Workbench) -> None:
    """A tyre that lost air on the way, read after the run."""
    from workbench.tour.stops import further_down, riding

    riding(workbench, 3)
    bike(workbench, "Tarn hardtail", Station.RIDE).set_run("tyre_front", "17")
    more = workbench.window.page(Station.RIDE).findChild(QPushButton, "run_more")
    assert isinstance(more, QPushButton)
    more.click()
    further_down(workbench, "Tarn hardtail", Station.RIDE, "run_compared")


def _templates(bike: Open, workbench: Workbench) -> None:
    """Two templates kept from bikes of the garage."""
    for name in ("Larch 150", "Tarn hardtail"):
        bike(workbench, name, Station.GARAGE).duplicate(as_template=True)
    workbench.view_model.open_station(TEMPLATES)


def _sketch(workbench: Workbench) -> Picture:
    """A drawn tube with a mark across it, kept as a picture would be."""
    image = QImage(480, 360, QImage.Format.Format_RGB32)
    image.fill(QColor("#d8d4ca"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(QColor("#5b6670"), 120, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
    painter.drawLine(QLineF(0, 300, 480, 60))
    painter.setPen(QPen(QColor("#1d2730"), 4))
    painter.drawPolyline([QPointF(*at) for at in ((215, 130), (228, 165), (220, 190), (240, 235))])
    painter.end()
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    QImageWriter(buffer, QByteArray(b"png")).write(image)
    return Picture(workbench.desk.add_photo(bytes(buffer.data().data())), "weld.png")

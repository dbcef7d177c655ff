"""Stops of the tour that show what stands around the stations' own work."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtWidgets import QWidget

from workbench.app import Workbench
from workbench.model.bike import Station

Open = Callable[[Workbench, str, str], Any]
Stop = tuple[str, str, bool, Callable[[Workbench], QWidget | None]]


def more_stops(bike: Open) -> tuple[Stop, ...]:
    """Give the stops; ``bike`` opens a station over a bike of the sample."""
    return (("sample", "hint", False, partial(_hint, bike)),)


def _hint(bike: Open, workbench: Workbench) -> None:
    """What somebody reads who comes to a station for the first time."""
    workbench.view_model.show_hints_again()
    bike(workbench, "Larch 150", Station.SAG)

"""Sag at the wheel, where the leverage of the mounting in use was surveyed."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from workbench.actions.sag import SagRecords
from workbench.model.errors import WorkbenchError
from workbench.model.unit import Unit
from workbench.viewmodels.shown import Units

if TYPE_CHECKING:
    from workbench.physics.leverage import Leverage


def wheel_sag_words(records: SagRecords, unit: Unit, sag_mm: float | None, units: Units) -> str:
    """Say the sag of a shock as sag of its wheel; empty where no leverage is known."""
    if unit.kind != "shock" or sag_mm is None or not records.leverage:
        return ""
    from workbench.physics.sag import wheel_sag

    pairs = tuple((point.stroke_mm, point.wheel_mm) for point in records.leverage)
    try:
        leverage = _fit(pairs, records.leverage_sd_mm)
        share = wheel_sag(sag_mm, leverage)
    except WorkbenchError:
        return ""  # more than was surveyed, or a survey that no longer fits
    return f"{100 * share:.0f}\u2009% at the wheel ({units.text(share * leverage.travel_mm, 'length')})"


@lru_cache(maxsize=8)
def _fit(pairs: tuple[tuple[float, float], ...], reading_sd_mm: float) -> Leverage:
    from workbench.physics.leverage import survey

    return survey([stroke for stroke, _ in pairs], [wheel for _, wheel in pairs], reading_sd_mm=reading_sd_mm)

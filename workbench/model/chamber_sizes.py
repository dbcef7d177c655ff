"""Sizes of an air spring that cannot be together: a chamber shorter than the travel, spacers the piston would meet."""

from __future__ import annotations

from workbench.model.errors import InputError
from workbench.model.facts import field_of
from workbench.model.unit import Unit

SIZES = ("area_mm2", "positive_mm3", "spacer_volume_mm3", "spacer_limit")
_CM3 = 1000.0
_SHORT = "The chamber would be shorter than the travel."
_MET = "With all of its spacers in, the piston would meet them before the end of the travel."


def check_sizes(unit: Unit, changed: str) -> None:
    """Refuse a size that does not go with the others, at the field that was changed; the travel itself may change.

    A positive chamber has to be larger than what the piston sweeps, area times travel, also with all spacers in it.
    Where a second positive chamber takes up the air, whose size is not on record, nothing is said.
    """
    if changed not in SIZES or unit.has_second_positive:
        return
    area, positive, travel = unit.area_mm2, unit.positive_mm3, unit.travel_mm
    if area is None or positive is None or travel is None:
        return
    room_mm3 = positive - area * travel
    if room_mm3 <= 0:
        if changed == "positive_mm3":
            _refuse(unit, changed, f"above {area * travel / _CM3:.1f} cm\u00b3, what the piston sweeps", _SHORT)
        if changed == "area_mm2":
            _refuse(unit, changed, f"below {positive / travel:.0f} mm\u00b2, with this chamber and travel", _SHORT)
        return
    _check_spacers(unit, changed, room_mm3)


def _check_spacers(unit: Unit, changed: str, room_mm3: float) -> None:
    one_mm3, most = unit.spacer_volume_mm3, unit.spacer_limit
    if not one_mm3 or not most or one_mm3 * most < room_mm3:
        return
    if changed == "spacer_limit":
        fits = int((room_mm3 - 1e-6) // one_mm3)
        _refuse(unit, changed, f"0 to {fits} spacers of {one_mm3 / _CM3:.1f} cm\u00b3", _MET)
    if changed == "spacer_volume_mm3":
        _refuse(unit, changed, f"below {room_mm3 / most / _CM3:.1f} cm\u00b3, with {most} of them", _MET)
    _refuse(unit, changed, f"a size that leaves more than {one_mm3 * most / _CM3:.1f} cm\u00b3 for the spacers", _MET)


def _refuse(unit: Unit, changed: str, allowed: str, hint: str) -> None:
    value = getattr(unit, changed)
    shown = f"{value / _CM3:.1f} cm\u00b3" if changed.endswith("_mm3") else f"{value:g}"
    raise InputError(field_of(Unit, changed).label, shown, allowed, hint)

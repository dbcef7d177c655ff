"""What the carry-over sheet says about each spring and tyre."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, cast

from workbench.actions.spring import SpringRecords
from workbench.model.errors import InputError
from workbench.model.sag import SagMeasurement
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.viewmodels.carry_words import leave_spring, leave_tyre
from workbench.viewmodels.shown import Units, how_many
from workbench.viewmodels.spring_curves import kept_sag
from workbench.viewmodels.spring_sizes import chamber_of

if TYPE_CHECKING:
    from workbench.physics.carry import CarryOver
    from workbench.physics.spacers import SpacerChange

OVER_MAXIMUM = "That is above the highest pressure the maker allows: set it at the ride."
SIZES_FIRST = (
    "For another number of spacers, enter the piston's area, the chambers and the volume of one spacer with the unit"
    " in the garage, and keep a sag."
)


@dataclass(frozen=True, slots=True)
class CarryWay:
    """One way to answer to other spacers: where the rider sits, and what the end of the travel holds in a hit."""

    title: str
    pressure: str
    sag: str
    end_force: str
    is_advised: bool = False
    care: str = ""


@dataclass(frozen=True, slots=True)
class CarryRow:
    """What to do about one spring or tyre."""

    title: str
    now: str
    set_here: str
    shows_there: str
    if_left: str
    reasons: str
    care: str = ""
    ways: tuple[CarryWay, ...] = ()


def spacers_key(unit: Unit) -> str:
    """Name the entry for the spacers of a unit."""
    return f"spacers_{unit.end}"


def spacers_now(records: SpringRecords, unit: Unit) -> int | None:
    """Give how many spacers a change begins from; None where sizes or a sag are missing."""
    sag, kpa = kept_sag(records, unit), records.sag.parts.value(Item.PRESSURE, unit.id)
    if sag is None or sag.spacers is None or kpa is None or not unit.spacer_volume_mm3:
        return None
    return sag.spacers if _sag_at(sag, unit, kpa) is not None else None


def _sag_at(sag: SagMeasurement, unit: Unit, kpa: float) -> float | None:
    """Give the sag at the pressure that is in now: as measured, or reckoned from there with the sizes known."""
    chamber = chamber_of(unit, sag.spacers)
    if chamber is None or sag.pressure_kpa is None:
        return None
    if sag.pressure_kpa == kpa:
        return sag.sag_mm
    from workbench.physics.air import force_n, static_travel_mm

    try:
        load = cast(float, force_n(chamber, pressure_kpa=sag.pressure_kpa, travel_mm=sag.sag_mm))
        return static_travel_mm(chamber, pressure_kpa=kpa, load_n=load) or None
    except InputError:  # so little pressure that the rider would sit at the end
        return None


def carry_rows(
    records: SpringRecords, values: Mapping[str, float | None], spacers: Mapping[str, int], units: Units
) -> tuple[CarryRow, ...]:
    """Carry every pressure of the bike over; `spacers` holds what was asked for, by unit."""
    from workbench.physics.carry import carry_tyre

    parts, rows = records.sag.parts, []
    weather = {name: values.get(name) or 0.0 for name in ("here_c", "there_c", "here_m", "there_m")}
    for unit in parts.units:
        kpa = parts.value(Item.PRESSURE, unit.id)
        if kpa is not None:
            carried = _carried(records, unit, kpa, weather, values.get("rider_kg"), spacers.get(unit.id))
            ways = _ways(records, unit, kpa, carried.spacers, spacers.get(unit.id), units)
            said = leave_spring(kpa, carried.if_left_kpa, weather, units)
            rows.append(_row(parts.subject_title(Item.PRESSURE, unit.id), kpa, carried, units, ways, said))
    for tyre in parts.tyres:
        kpa = parts.value(Item.TYRE_PRESSURE, tyre.id)
        if kpa is not None:
            carried = carry_tyre(kpa, **weather)
            said = leave_tyre(kpa, carried.if_left_kpa, units)
            rows.append(_row(parts.subject_title(Item.TYRE_PRESSURE, tyre.id), kpa, carried, units, (), said))
    return tuple(rows)


def _carried(
    records: SpringRecords,
    unit: Unit,
    kpa: float,
    weather: Mapping[str, float],
    rider_kg: float | None,
    spacers: int | None,
) -> CarryOver:
    from workbench.physics.carry import carry_spring

    sag = kept_sag(records, unit)
    old_kg = sag.rider_mass_kg if sag else None
    other_rider = old_kg is not None and rider_kg is not None and abs(rider_kg - old_kg) > 0.05
    other_spacers = sag is not None and spacers is not None and spacers != sag.spacers
    sag_mm = _sag_at(sag, unit, kpa) if sag and other_spacers else None
    return carry_spring(
        kpa,
        **weather,
        old_rider_kg=old_kg if other_rider else None,
        new_rider_kg=rider_kg if other_rider else None,
        chamber=chamber_of(unit, sag.spacers) if sag and other_spacers else None,
        sag_mm=sag_mm,
        new_spacer_mm3=(spacers or 0) * (unit.spacer_volume_mm3 or 0.0) if other_spacers else None,
        maximum_kpa=unit.maximum_kpa,
    )


def _row(
    title: str, kpa: float, carried: CarryOver, units: Units, ways: tuple[CarryWay, ...], said: tuple[str, ...]
) -> CarryRow:
    now, here, there, left = (
        units.text(pressure, "pressure")
        for pressure in (kpa, carried.set_here_kpa, carried.shows_there_kpa, carried.if_left_kpa)
    )
    care = OVER_MAXIMUM if carried.over_maximum else ""
    return CarryRow(title, now, here, there, left, " ".join((*carried.reasons, *said)), care, ways)


def _ways(
    records: SpringRecords, unit: Unit, kpa: float, change: SpacerChange | None, spacers: int | None, units: Units
) -> tuple[CarryWay, ...]:
    """Set the linked change beside spacers alone and pressure alone, all at the warmth and load of the setup."""
    sag = kept_sag(records, unit)
    if change is None or sag is None or spacers is None or not unit.travel_mm:
        return ()
    travel_mm, sag_mm = unit.travel_mm, _sag_at(sag, unit, kpa) or sag.sag_mm

    def way(title: str, pressure: float, at_mm: float, end_n: float, *, advised: bool = False) -> CarryWay:
        over = unit.maximum_kpa is not None and pressure > unit.maximum_kpa
        low = unit.minimum_kpa is not None and pressure < unit.minimum_kpa
        care = "Above the maker's highest pressure." if over else "Below the maker's lowest pressure." if low else ""
        where = f"{units.text(at_mm, 'length')} ({units.text(round(at_mm / travel_mm, 2), 'fraction')})"
        force = units.text(round(end_n, -1), "force")
        return CarryWay(title, units.text(pressure, "pressure"), where, force, advised, care)

    many = how_many(spacers, "spacer")
    ways = [
        way(f"As it is, {how_many(sag.spacers or 0, 'spacer')}", kpa, sag_mm, change.end_before_n),
        way(f"{many} and this pressure, one change", change.pressure_kpa, sag_mm, change.end_after_n, advised=True),
        way(f"{many}, pressure left", kpa, change.left_sag_mm, change.end_left_n),
    ]
    if change.alone_kpa is not None and change.alone_sag_mm is not None:
        ways.append(
            way(
                "By pressure alone, the worse way",
                change.alone_kpa,
                change.alone_sag_mm,
                change.end_after_n,
            )
        )
    return tuple(ways)

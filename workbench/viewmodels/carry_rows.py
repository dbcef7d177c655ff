"""What the carry-over sheet says about each spring and tyre."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, cast

from workbench.actions.spring import SpringRecords
from workbench.model.errors import InputError
from workbench.model.item_facts import maker_limits
from workbench.model.parts import settable_items
from workbench.model.setting import GAUGE_KPA, Item
from workbench.model.unit import Unit
from workbench.viewmodels.carry_coil import coil_row
from workbench.viewmodels.carry_row import NOTABLE_SHIFT, CarryRow, CarryWay
from workbench.viewmodels.carry_words import leave_spring, leave_tyre
from workbench.viewmodels.shown import Units, how_many
from workbench.viewmodels.spring_curves import kept_sag
from workbench.viewmodels.spring_sizes import chamber_at, chamber_of, own_kpa

if TYPE_CHECKING:
    from workbench.physics.air import AirChamber
    from workbench.physics.carry import CarryOver
    from workbench.physics.spacers import SpacerChange

OVER_MAXIMUM = "That is above the highest pressure the maker allows: set it at the ride."
UNDER_MINIMUM = "That is below the lowest pressure the maker allows: do not set it."
SIZES_FIRST = (
    "For another number of spacers, enter the piston's area, the chambers and the volume of one spacer with the unit"
    " in the garage, and keep a sag."
)
COIL_TOO = (
    "The coil beside the air carries part of the load and answers nothing to another rider: it takes a larger change of"
    " pressure than this. With the sizes of the chambers in the garage and the coil's rate at sag it is reckoned with."
)
TOO_FAR = (
    "This spring cannot answer to what is asked for: it would take less than no pressure, or sit at the end of its"
    " travel. Another rider and other spacers are left out here. Look the entries through."
)
NO_SAG = "No sag with its rider's mass is on record here, so another rider is not reckoned with: measure it."
CHAMBERS = (Item.PRESSURE, Item.SECOND_PRESSURE, Item.NEGATIVE_PRESSURE)


def spacers_key(unit: Unit) -> str:
    """Name the entry for the spacers of a unit."""
    return f"spacers_{unit.end}"


def spacers_now(records: SpringRecords, unit: Unit) -> int | None:
    """Give how many spacers a change begins from; None where sizes or a sag are missing."""
    spring = _spring_now(records, unit)
    return spring.spacers if spring is not None and unit.spacer_volume_mm3 else None


@dataclass(frozen=True, slots=True)
class _SpringNow:
    """The spring as it stands on the bike, with the sag reckoned there."""

    chamber: AirChamber
    spacers: int
    sag_mm: float
    negative_kpa: float | None


def _spring_now(records: SpringRecords, unit: Unit) -> _SpringNow | None:
    """Give the spring as it is now, its sag measured or reckoned from the measured one; None where that is not known.

    Spacers and pressures may have changed since sag was kept: the load of that measurement is put on today's spring.
    """
    sag, parts = kept_sag(records, unit), records.sag.parts
    kpa = parts.value(Item.PRESSURE, unit.id)
    if sag is None or sag.spacers is None or sag.pressure_kpa is None or kpa is None:
        return None
    spacers, negative = parts.value(Item.SPACERS, unit.id), parts.value(Item.NEGATIVE_PRESSURE, unit.id)
    count = sag.spacers if spacers is None else round(spacers)
    negative_kpa = sag.negative_kpa if negative is None else float(negative)
    rate, preload = parts.value(Item.SPRING_RATE, unit.id), parts.value(Item.PRELOAD, unit.id)
    measured = chamber_at(unit, sag)
    now = chamber_of(
        unit,
        count,
        negative_kpa,
        rate_n_per_mm=sag.rate_n_per_mm if rate is None else rate,
        preload_mm=sag.preload_mm if preload is None else preload,
    )
    if measured is None or now is None:
        return None
    then, own = own_kpa(unit, sag.negative_kpa), own_kpa(unit, negative_kpa)
    if (sag.pressure_kpa, measured, then) == (kpa, now, own):
        return _SpringNow(now, count, sag.sag_mm, own)
    from workbench.physics.air import force_n, static_travel_mm

    try:
        load = cast(float, force_n(measured, pressure_kpa=sag.pressure_kpa, travel_mm=sag.sag_mm, negative_kpa=then))
        at_mm = static_travel_mm(now, pressure_kpa=kpa, load_n=load, negative_kpa=own)
    except InputError:  # so little pressure that the rider would sit at the end
        return None
    return _SpringNow(now, count, at_mm, own) if at_mm else None


def carry_rows(
    records: SpringRecords, values: Mapping[str, float], spacers: Mapping[str, int], units: Units
) -> tuple[CarryRow, ...]:
    """Carry every pressure of the bike over; `spacers` holds what was asked for, by unit."""
    from workbench.physics.carry import carry_tyre

    parts = records.sag.parts
    rows: list[CarryRow] = []
    weather = {name: values.get(name, 0.0) for name in ("here_c", "there_c", "here_m", "there_m")}
    for item, subject_id in settable_items(parts):
        unit = next((one for one in parts.units if one.id == subject_id), None)
        kpa = parts.value(item, subject_id)
        if item == Item.SPRING_RATE and unit is not None and unit.spring == "coil":
            rider_kg = values.get("rider_kg")
            coil = coil_row(records, unit, _measured_kg(records, unit, rider_kg), rider_kg, units)
            if coil is not None:
                rows.append(replace(coil, reasons=" ".join((coil.reasons, *_no_sag(records, unit, rider_kg)))))
        if item not in CHAMBERS or unit is None or kpa is None:
            continue
        asked = spacers.get(unit.id) if item == Item.PRESSURE else None
        rows.append(_chamber_row(records, unit, (item, kpa), weather, values.get("rider_kg"), asked, units))
    for tyre in parts.tyres:
        kpa = parts.value(Item.TYRE_PRESSURE, tyre.id)
        if kpa is not None:
            carried = carry_tyre(kpa, **weather)
            row = _row(parts.subject_title(Item.TYRE_PRESSURE, tyre.id), kpa, carried, units)
            said = leave_tyre(kpa, carried.if_left_kpa, units)
            rows.append(replace(row, reasons=" ".join((row.reasons, *said))))
    return tuple(rows)


def _chamber_row(
    records: SpringRecords,
    unit: Unit,
    chamber: tuple[str, float],
    weather: Mapping[str, float],
    rider_kg: float | None,
    asked: int | None,
    units: Units,
) -> CarryRow:
    """Carry the pressure of one chamber over; what this spring cannot answer to is left out and said."""
    item, kpa = chamber
    too_far: tuple[str, ...] = ()
    try:
        carried = _carried(records, unit, kpa, weather, rider_kg, asked, item)
    except InputError:  # each entry is in its range, but a much lighter rider can ask for less than no pressure
        too_far, rider_kg = (TOO_FAR,), None
        carried = _carried(records, unit, kpa, weather, None, None, item)
    why = _rider_why(carried) if _measured_kg(records, unit, rider_kg) is not None else ()
    row = _row(records.sag.parts.subject_title(item, unit.id), kpa, carried, units)
    said = (*leave_spring(kpa, carried.if_left_kpa, weather, units), *too_far)
    if unit.spring == "air_coil" and why and _spring_now(records, unit) is None:
        said = (*said, COIL_TOO)
    said = (*said, *_no_sag(records, unit, rider_kg))
    row = replace(
        row,
        reasons=" ".join((row.reasons, *said)).strip(),
        care=_care(records, unit, item, carried),
        why=("for the rider and the spacers as they are",) if too_far else why,
    )
    return _with_spacers(row, records, unit, kpa, carried.spacers, asked, units)


def _measured_kg(records: SpringRecords, unit: Unit, rider_kg: float | None) -> float | None:
    """Give the mass the sag was measured with, where another one is asked about."""
    sag = kept_sag(records, unit)
    old_kg = sag.rider_mass_kg if sag else None
    return old_kg if old_kg is not None and rider_kg is not None and abs(rider_kg - old_kg) > 0.05 else None


def _no_sag(records: SpringRecords, unit: Unit, rider_kg: float | None) -> tuple[str, ...]:
    """Say that another rider is asked about where no sag tells of the load of this one."""
    sag, own = kept_sag(records, unit), records.sag.rider.mass_kg if records.sag.rider else None
    is_other = own is not None and rider_kg is not None and abs(rider_kg - own) > 0.05
    return (NO_SAG,) if is_other and (sag is None or sag.rider_mass_kg is None) else ()


def _rider_why(carried: CarryOver) -> tuple[str, ...]:
    shift = round(carried.rebound_shift, 2)
    way = "more" if shift > 0 else "less"
    return (
        "measure sag",
        *((f"rebound about {100 * abs(shift):.0f}\u2009% {way}",) if abs(shift) >= NOTABLE_SHIFT else ()),
    )


def _care(records: SpringRecords, unit: Unit, item: str, carried: CarryOver) -> str:
    low, _ = maker_limits(item, unit, records.sag.parts.valves)
    if carried.over_maximum:
        return OVER_MAXIMUM
    return UNDER_MINIMUM if low is not None and carried.set_here_kpa < low - GAUGE_KPA else ""


def _carried(
    records: SpringRecords,
    unit: Unit,
    kpa: float,
    weather: Mapping[str, float],
    rider_kg: float | None,
    spacers: int | None,
    item: str,
) -> CarryOver:
    from workbench.physics.carry import carry_spring

    spring, old_kg = _spring_now(records, unit), _measured_kg(records, unit, rider_kg)
    changed = spring if spring is not None and spacers is not None and spacers != spring.spacers else None
    return carry_spring(
        kpa,
        **weather,
        old_rider_kg=old_kg,
        new_rider_kg=None if old_kg is None else rider_kg,
        chamber=changed.chamber if changed else None,
        sag_mm=changed.sag_mm if changed else None,
        new_spacer_mm3=(spacers or 0) * (unit.spacer_volume_mm3 or 0.0) if changed else None,
        negative_kpa=changed.negative_kpa if changed else None,
        air_share=_air_share(spring, kpa) if spring is not None else 1.0,
        maximum_kpa=maker_limits(item, unit, records.sag.parts.valves)[1],
    )


def _air_share(spring: _SpringNow, kpa: float) -> float:
    """Give the share of the load that the air carries; the whole of it where there is no coil beside it."""
    from workbench.physics.air import force_n

    chamber = spring.chamber
    if not chamber.coil_n_per_mm:
        return 1.0
    load = cast(float, force_n(chamber, pressure_kpa=kpa, travel_mm=spring.sag_mm, negative_kpa=spring.negative_kpa))
    coil = chamber.coil_n_per_mm * (spring.sag_mm + chamber.coil_preload_mm)
    return max(1 - coil / load, 0.05)


def _row(title: str, kpa: float, carried: CarryOver, units: Units) -> CarryRow:
    now, here, there, left = (
        units.text(pressure, "pressure")
        for pressure in (kpa, carried.set_here_kpa, carried.shows_there_kpa, carried.if_left_kpa)
    )
    return CarryRow(
        title, now, here, there, left, " ".join(carried.reasons), OVER_MAXIMUM if carried.over_maximum else ""
    )


def _with_spacers(
    row: CarryRow,
    records: SpringRecords,
    unit: Unit,
    kpa: float,
    change: SpacerChange | None,
    spacers: int | None,
    units: Units,
) -> CarryRow:
    """Set the linked change beside spacers alone and pressure alone, all at the warmth and load of the setup."""
    spring = _spring_now(records, unit)
    if change is None or spring is None or spacers is None or not unit.travel_mm:
        return row
    travel_mm = unit.travel_mm

    def way(title: str, pressure: float, at_mm: float, end_n: float, *, advised: bool = False) -> CarryWay:
        over = unit.maximum_kpa is not None and pressure > unit.maximum_kpa
        low = unit.minimum_kpa is not None and pressure < unit.minimum_kpa
        care = "Above the maker's highest pressure." if over else "Below the maker's lowest pressure." if low else ""
        where = f"{units.text(at_mm, 'length')} ({units.text(round(at_mm / travel_mm, 2), 'fraction')})"
        return CarryWay(title, units.text(pressure, "pressure"), where, _force(end_n, units), advised, care)

    many = how_many(spacers, "spacer")
    ways = [
        way(f"As it is, {how_many(spring.spacers, 'spacer')}", kpa, spring.sag_mm, change.end_before_n),
        way(
            f"{many} and this pressure, one change",
            change.pressure_kpa,
            spring.sag_mm,
            change.end_after_n,
            advised=True,
        ),
        way(f"{many}, pressure left", kpa, change.left_sag_mm, change.end_left_n),
    ]
    if change.alone_kpa is not None and change.alone_sag_mm is not None:
        title = "By pressure alone, the worse way"
        ways.append(way(title, change.alone_kpa, change.alone_sag_mm, change.end_after_n))
    why = (
        f"one change with its pressure: the sag stays {units.text(spring.sag_mm, 'length')}, the end of the travel"
        f" holds {_force(change.end_after_n, units)} in a hit instead of {_force(change.end_before_n, units)}"
    )
    return replace(row, ways=tuple(ways), spacers=many, why=(why, *row.why))


def _force(force_n: float, units: Units) -> str:
    return units.text(round(force_n, -1), "force")

"""The curve of one end: force over travel, where the rider sits in it, and what another pressure would do."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import isfinite
from typing import TYPE_CHECKING

from workbench.actions.sag import rows_of
from workbench.actions.spring import SpringRecords
from workbench.model.coil import Rows
from workbench.model.errors import InputError
from workbench.model.sag import SagMeasurement
from workbench.model.unit import LeverageSurvey, Unit, survey_in_use
from workbench.viewmodels.coil_sheets import coil_load_n
from workbench.viewmodels.spring_sizes import chamber_at, coil_filling, coils_of, own_kpa

if TYPE_CHECKING:
    from workbench.physics.air import AirChamber
    from workbench.physics.leverage import Leverage

QUICK = 1.35  # polytropic exponent in a hit: between the isothermal 1 and the adiabatic 1.4
STEPS = 60
LAST_UNKNOWN = 0.94  # with unknown chamber sizes the curve ends here: beyond it says little


@dataclass(frozen=True, slots=True)
class WhatIf:
    """A pressure, rate or number of spacers tried on paper."""

    pressure_kpa: float | None = None
    rate_n_per_mm: float | None = None
    spacers: int | None = None
    negative_kpa: float | None = None  # of a negative chamber with a valve of its own


@dataclass(frozen=True, slots=True)
class SpringCurve:
    """One curve ready to be drawn; forces in N, or in loads where the sizes are not known."""

    travel_mm: tuple[float, ...]
    force: tuple[float, ...]
    quick: tuple[float, ...]
    low: tuple[float, ...] = ()
    high: tuple[float, ...] = ()
    load: float = 1.0
    sag_mm: float | None = None
    rate_at_sag: float | None = None  # in the curve's own force per mm
    end_force: float | None = None  # quick, at the last travel drawn
    in_newton: bool = True
    ends_mm: float | None = None  # where a table of travel and force ends, if that is before the end of the travel
    sag_low_mm: float | None = None  # nine times in ten the sag lies between these, where sizes are not known
    sag_high_mm: float | None = None
    end_low: float | None = None  # and the end force between these
    end_high: float | None = None
    preload_force: float | None = None  # of a coil, at full extension

    def __post_init__(self) -> None:
        lengths = {len(self.travel_mm), len(self.force), len(self.quick)} | {len(self.low) or len(self.travel_mm)}
        if len(lengths) != 1 or not all(map(isfinite, (*self.force, *self.quick, *self.low, *self.high))):
            raise ValueError("a curve has one finite force for every travel")


def kept_sag(records: SpringRecords, unit: Unit) -> SagMeasurement | None:
    """Give the sag measurement that holds for a unit: the newest kept one on its present hardware."""
    generation = records.sag.parts.generation(unit.id)
    present = generation.id if generation else None
    kept = [
        one
        for one in records.sag.measurements
        if one.unit_id == unit.id and one.is_kept and one.generation_id == present
    ]
    return kept[-1] if kept else None


def curve_of(records: SpringRecords, unit: Unit, sag: SagMeasurement, what_if: WhatIf) -> SpringCurve:
    """Compute the curve of a unit at what was measured, or at something else tried on paper."""
    if unit.spring == "coil":
        return _coil_curve(unit, sag, what_if, rows_of(records.sag, unit, sag.rate_n_per_mm))
    chamber = chamber_at(unit, _tried(sag, what_if), spacers=what_if.spacers)
    if chamber is None:
        return _unknown_curve(records, unit, sag, what_if)
    return _known_curve(unit, sag, chamber, what_if)


def _tried(sag: SagMeasurement, what_if: WhatIf) -> SagMeasurement:
    """Give a measurement with another rate of the coil beside the air."""
    return sag if what_if.rate_n_per_mm is None else replace(sag, rate_n_per_mm=what_if.rate_n_per_mm)


def _known_curve(unit: Unit, sag: SagMeasurement, chamber: AirChamber, what_if: WhatIf) -> SpringCurve:
    from workbench.physics import air

    measured = chamber_at(unit, sag) or chamber
    pressure, inside = sag.pressure_kpa or 0.0, own_kpa(unit, sag.negative_kpa)
    load = float(air.force_n(measured, pressure_kpa=pressure, travel_mm=sag.sag_mm, negative_kpa=inside))
    tried = pressure if what_if.pressure_kpa is None else what_if.pressure_kpa
    within = inside if what_if.negative_kpa is None else own_kpa(unit, what_if.negative_kpa)
    travel = _travels(chamber.travel_mm)
    there = air.static_travel_mm(chamber, pressure_kpa=tried, load_n=load, negative_kpa=within)

    def force(at_mm: float, n: float = 1.0) -> float:
        return float(air.force_n(chamber, pressure_kpa=tried, travel_mm=at_mm, n=n, negative_kpa=within))

    quick = tuple(force(x, QUICK) for x in travel)
    return SpringCurve(
        travel_mm=travel,
        force=tuple(force(x) for x in travel),
        quick=quick,
        load=load,
        sag_mm=there,
        rate_at_sag=float(air.rate_n_per_mm(chamber, pressure_kpa=tried, travel_mm=there, negative_kpa=within)),
        end_force=quick[-1],
    )


def _unknown_curve(records: SpringRecords, unit: Unit, sag: SagMeasurement, what_if: WhatIf) -> SpringCurve:
    from workbench.physics.band import force_band
    from workbench.physics.sag import SagReading

    readings = [
        SagReading(one.pressure_kpa, one.sag_mm)
        for one in records.sag.measurements
        if one.unit_id == unit.id
        and one.generation_id == sag.generation_id
        and one.posture == sag.posture
        and (one.spacers, one.negative_kpa) == (sag.spacers, sag.negative_kpa)
        and coil_filling(unit, one) == coil_filling(unit, sag)
        and one.pressure_kpa
    ]
    tried = what_if.pressure_kpa if what_if.pressure_kpa is not None else (sag.pressure_kpa or 0.0)
    travel = _travels(sag.travel_mm * LAST_UNKNOWN)
    static, quick = (
        force_band(
            readings,
            travel_mm=sag.travel_mm,
            end=unit.end,
            pressure_kpa=tried,
            at_mm=travel,
            n=n,
            coils=coils_of(unit, sag),
        )
        for n in (1.0, QUICK)
    )
    there = crossing(travel, static.middle, 1.0)
    return SpringCurve(
        travel_mm=travel,
        force=static.middle,
        quick=quick.middle,
        low=static.low,
        high=static.high,
        sag_mm=there,
        rate_at_sag=_slope(travel, static.middle, there) if there is not None else None,
        end_force=quick.middle[-1],
        in_newton=False,
        sag_low_mm=crossing(travel, static.high, 1.0),  # the more force, the less sag
        sag_high_mm=crossing(travel, static.low, 1.0),
        end_low=quick.low[-1],
        end_high=quick.high[-1],
    )


def _coil_curve(unit: Unit, sag: SagMeasurement, what_if: WhatIf, rows: Rows) -> SpringCurve:
    """Give the curve of a coil: a straight line, or its table where the spring was fitted with one."""
    measured, preload = sag.rate_n_per_mm or 0.0, sag.preload_mm or 0.0
    load = coil_load_n(measured, sag.sag_mm + preload, rows)
    end_mm = unit.travel_mm or sag.travel_mm
    if rows and what_if.rate_n_per_mm is None:
        return _table_curve(rows, load, preload, end_mm)
    rate = what_if.rate_n_per_mm if what_if.rate_n_per_mm is not None else measured
    travel = _travels(end_mm)
    force = tuple(rate * (x + preload) for x in travel)
    there = max(0.0, load / rate - preload)
    is_carried = there <= end_mm
    return SpringCurve(
        travel,
        force,
        force,
        load=load,
        sag_mm=there if is_carried else None,
        rate_at_sag=rate if is_carried else None,
        end_force=force[-1],
        preload_force=rate * preload,
    )


def _table_curve(rows: Rows, load: float, preload: float, end_mm: float) -> SpringCurve:
    """Give force over travel as the table has it, from the preload on; it ends where the table does."""
    from workbench.physics.spring_table import spring_table

    spring, last_mm = spring_table(rows), min(end_mm, rows[-1][0] - preload)
    if last_mm <= 0:
        raise InputError("Preload", f"{preload:g} mm", f"less than {rows[-1][0]:g} mm, where the spring's table ends")
    corners = {x - preload for x, _ in rows if 0 < x - preload < last_mm}
    travel = tuple(sorted({*_travels(last_mm), *corners}))
    force = tuple(spring.force_n(min(x + preload, rows[-1][0])) for x in travel)
    there = max(spring.travel_mm(load) - preload, 0.0) if load <= force[-1] else None
    return SpringCurve(
        travel,
        force,
        force,
        load=load,
        sag_mm=there,
        rate_at_sag=None if there is None else spring.rate_n_per_mm(max(there + preload, 1e-9)),
        end_force=force[-1],
        preload_force=force[0],
        ends_mm=last_mm if last_mm < end_mm - 1e-9 else None,
    )


def _travels(last_mm: float) -> tuple[float, ...]:
    return tuple(last_mm * step / STEPS for step in range(STEPS + 1))


def crossing(travel_mm: tuple[float, ...], force: tuple[float, ...], level: float) -> float | None:
    """Give the travel at which a rising force reaches a level; None if it does not on this curve."""
    for place in range(1, len(travel_mm)):
        before, after = force[place - 1], force[place]
        if before <= level <= after and after > before:
            share = (level - before) / (after - before)
            return travel_mm[place - 1] + share * (travel_mm[place] - travel_mm[place - 1])
    return None


def _slope(travel_mm: tuple[float, ...], force: tuple[float, ...], at_mm: float) -> float:
    place = min(max(round(at_mm / travel_mm[-1] * STEPS), 1), STEPS - 1)
    return (force[place + 1] - force[place - 1]) / (travel_mm[place + 1] - travel_mm[place - 1])


def leverage_of(records: SpringRecords, unit: Unit) -> Leverage | None:
    """Give the leverage curve of the mounting a shock is in."""
    survey = survey_in_use(records.surveys, unit)
    return None if survey is None else fitted(records, survey)


def fitted(records: SpringRecords, survey: LeverageSurvey) -> Leverage:
    """Give the curve through the points of a kept survey."""
    from workbench.physics.leverage import survey as fit

    points = records.points[survey.id]
    return fit(
        [point.stroke_mm for point in points],
        [point.wheel_mm for point in points],
        reading_sd_mm=survey.reading_sd_mm,
    )

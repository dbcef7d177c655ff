"""Friction of a unit, from readings settled from above and from below."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.coil import Rows
from workbench.model.errors import WorkbenchError
from workbench.model.sag import SagMeasurement, SagReading, of_way, settled_centre_mm, settled_gap_mm
from workbench.model.sag_rules import SagRound
from workbench.model.unit import Unit
from workbench.viewmodels.coil_sheets import coil_load_n, coil_rate
from workbench.viewmodels.spring_sizes import chamber_at, coils_of, own_kpa

ATTEND = (
    "Attend: friction holds the suspension where it happens to stop, and clicks will not mend that. Have seals,"
    " bushings and alignment looked at by a qualified mechanic."
)


@dataclass(frozen=True, slots=True)
class FrictionShown:
    """Friction in words, and the care text where it is worth attending to."""

    words: str = ""
    care: str = ""


def friction_shown(one: SagRound, unit: Unit, rows: Rows = ()) -> FrictionShown:
    """Say the friction a round tells of; nothing where it was not looked at. ``rows`` is the table of its coil."""
    gap_mm = settled_gap_mm(one.readings_mm, one.settled)
    if gap_mm is None or unit.travel_mm is None:
        return FrictionShown()
    if gap_mm <= 0:
        return FrictionShown("No friction to be seen: both ways of settling give the same sag.")
    try:
        stiffness = _rate_and_load(one, unit, rows)
    except WorkbenchError:
        return FrictionShown()
    if stiffness is None:
        return FrictionShown()
    from workbench.physics.friction import between_settled

    rate, load, is_newton = stiffness
    middle = settled_centre_mm(one.readings_mm, one.settled)
    found = between_settled(
        from_above_mm=max(middle - gap_mm / 2, 0.0),
        from_below_mm=min(middle + gap_mm / 2, unit.travel_mm),
        rate_n_per_mm=rate,
        load_n=load,
        travel_mm=unit.travel_mm,
    )
    force = f"{found.friction_n:.0f}\u2009N, " if is_newton else ""
    words = f"Friction about {force}{100 * found.share_of_load:.0f}\u2009% of the load."
    return FrictionShown(words, ATTEND if found.attend else "")


def round_of(kept: SagMeasurement, readings: tuple[SagReading, ...]) -> SagRound:
    """Give a kept measuring back as the round it was."""
    taken = [one for one in readings if one.measurement_id == kept.id]
    return SagRound(
        tuple(one.sag_mm for one in taken),
        kept.posture,
        kept.method,
        kept.measured_at,
        kept.pressure_kpa,
        negative_kpa=kept.negative_kpa,
        spacers=kept.spacers,
        rate_n_per_mm=kept.rate_n_per_mm,
        preload_mm=kept.preload_mm,
        settled=tuple(one.settled_from for one in taken),
    )


def way_words(one: SagRound) -> str:
    """Name the way of each reading, for a list of them."""
    above, below = (len(of_way(one.readings_mm, one.settled, way)) for way in ("above", "below"))
    return f"{above} from above, {below} from below" if above or below else ""


def _rate_and_load(one: SagRound, unit: Unit, rows: Rows) -> tuple[float, float, bool] | None:
    """Give the local rate and the load at the sag, in N where they are known, else in loads; None if neither is."""
    sag_mm = one.sag_mm
    if unit.spring == "coil":
        if one.rate_n_per_mm is None:
            return None
        pressed_mm = sag_mm + (one.preload_mm or 0.0)
        return coil_rate(one.rate_n_per_mm, pressed_mm, rows), coil_load_n(one.rate_n_per_mm, pressed_mm, rows), True
    if one.pressure_kpa is None or unit.travel_mm is None:
        return None
    chamber = chamber_at(unit, one)
    if chamber is not None:
        from workbench.physics import air

        inside = own_kpa(unit, one.negative_kpa)
        rate = air.rate_n_per_mm(chamber, pressure_kpa=one.pressure_kpa, travel_mm=sag_mm, negative_kpa=inside)
        load = air.force_n(chamber, pressure_kpa=one.pressure_kpa, travel_mm=sag_mm, negative_kpa=inside)
        return float(rate), float(load), True
    from workbench.physics.band import force_band
    from workbench.physics.sag import SagReading as Settled

    step = min(1.0, sag_mm / 2)
    band = force_band(
        [Settled(one.pressure_kpa, sag_mm)],
        travel_mm=unit.travel_mm,
        end=unit.end,
        pressure_kpa=one.pressure_kpa,
        at_mm=(sag_mm - step, sag_mm + step),
        coils=coils_of(unit, one),
    )
    return (band.middle[1] - band.middle[0]) / (2 * step), 1.0, False

"""A setup carried to another day: what to set here so that the spring or tyre is right there, and why."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.model.errors import InputError
from workbench.physics.air import AirChamber
from workbench.physics.atmosphere import carry_pressure, standard_pressure_kpa
from workbench.physics.balance import rebound_shift
from workbench.physics.limits import check_number, percent
from workbench.physics.spacers import SpacerChange, change_spacers

_NOTABLE_DEGREES = 3.0
_NOTABLE_METRES = 100.0
_COLD_C = 5.0
_NOTABLE_SHIFT = 0.02  # of the damping: own judgement, less than any click is known to make


@dataclass(frozen=True, slots=True)
class CarryOver:
    """Gauge pressures for a ride elsewhere, and the reasons in plain sentences."""

    set_here_kpa: float  # to set at this temperature and altitude
    shows_there_kpa: float  # what the gauge will then show at the ride
    if_left_kpa: float  # what it will show there if nothing is done
    over_maximum: bool
    reasons: tuple[str, ...]
    rebound_shift: float = 0.0  # how much more rebound damping is expected to suit, as a fraction
    spacers: SpacerChange | None = None  # what the other spacers do, where they were asked about


def carry_spring(
    pressure_kpa: float,
    *,
    here_c: float,
    there_c: float,
    here_m: float = 0.0,
    there_m: float = 0.0,
    old_rider_kg: float | None = None,
    new_rider_kg: float | None = None,
    chamber: AirChamber | None = None,
    sag_mm: float | None = None,
    new_spacer_mm3: float | None = None,
    negative_kpa: float | None = None,
    air_share: float = 1.0,
    maximum_kpa: float | None = None,
) -> CarryOver:
    """Give the pressure to set here so that an air spring carries its load there as it did when it was set up.

    Parameters
    ----------
    pressure_kpa
        Gauge pressure of the setup, as it reads here [kPa].
    here_c, there_c
        Temperature of the spring itself here and at the ride [degC].
    here_m, there_m
        Altitude here and at the ride [m].
    old_rider_kg, new_rider_kg
        Rider ready to ride, then and now [kg]; both or none.
    chamber, sag_mm, new_spacer_mm3
        Sizes of the spring with the old spacers, sag of the setup, and the volume of all spacers from now on
        [mm, mm3]; all or none.
    negative_kpa
        Pressure of a negative chamber with its own valve, which stays as it is [kPa gauge].
    air_share
        Share of the load that the air carries at the sag; a coil beside it answers nothing to another rider.
    maximum_kpa
        Highest pressure of the unit [kPa gauge].

    Returns
    -------
    CarryOver
        Pressure to set here, what it will show there, and why.

    Raises
    ------
    InputError
        If a value cannot be, or only one of a pair is given.

    Notes
    -----
    The force goes with the absolute pressure of the gas, so that is what is kept: (p + pa) / T. More rider asks for
    more absolute pressure in proportion, less if the spring scales with gauge pressure, so the sag is measured again.
    At the same sag the rate then goes with the load, and the rebound damping wanted with sqrt(rate x mass).

    References
    ----------
    Ideal gas law with absolute pressure; ISO 2533:1975 for the air outside.

    Examples
    --------
    >>> round(carry_spring(551.58, here_c=22, there_c=-3).set_here_kpa, 1)  # 80 psi: 88.8 in the warm
    612.0
    """
    reasons: list[str] = []
    change = None
    if new_spacer_mm3 is not None:
        change = _other_spacers(pressure_kpa, chamber, sag_mm, new_spacer_mm3, negative_kpa, reasons)
    wanted_kpa = change.pressure_kpa if change else pressure_kpa
    heavier = _heavier(old_rider_kg, new_rider_kg, reasons)
    air = check_number("air_share", air_share, above=0, at_most=1)
    wanted_kpa = _for_load(wanted_kpa, 1 + (heavier - 1) / air, here_m)
    if heavier != 1 and air < 1:
        reasons.append(f"The coil carries {percent(1 - air)} of the load as before; the air takes all of the change.")
    stiffer = (change.rate_after_n_per_mm / change.rate_before_n_per_mm if change else 1.0) * heavier
    shift = rebound_shift(1.0, stiffer, mass_ratio=heavier)
    reasons += _rebound_reasons(shift)
    # The gas is to have there the absolute pressure it was set up with; altitude does not enter the force.
    set_here = carry_pressure(wanted_kpa, from_c=there_c, to_c=here_c, from_m=here_m, to_m=here_m)
    shows_there = carry_pressure(set_here, from_c=here_c, to_c=there_c, from_m=here_m, to_m=there_m)
    if_left = carry_pressure(pressure_kpa, from_c=here_c, to_c=there_c, from_m=here_m, to_m=there_m)
    reasons += _weather_reasons(there_c - here_c, there_c)
    if abs(there_m - here_m) >= _NOTABLE_METRES:
        word = "more" if there_m > here_m else "less"
        reasons.append(f"At the other altitude the gauge shows {word} and the force is unchanged: leave it.")
    carried = _result(set_here, shows_there, if_left, maximum_kpa, reasons)
    return replace(carried, rebound_shift=shift, spacers=change)


def carry_tyre(
    pressure_kpa: float, *, here_c: float, there_c: float, here_m: float = 0.0, there_m: float = 0.0
) -> CarryOver:
    """Give the pressure to set here so that a tyre shows its gauge pressure there; arguments as for `carry_spring`."""
    set_here = carry_pressure(pressure_kpa, from_c=there_c, to_c=here_c, from_m=there_m, to_m=here_m)
    if_left = carry_pressure(pressure_kpa, from_c=here_c, to_c=there_c, from_m=here_m, to_m=there_m)
    reasons = ["A tyre is set by its gauge pressure at the ride; the easiest is to set it there."]
    return _result(set_here, pressure_kpa, if_left, None, reasons)


def _result(
    set_here: float, shows_there: float, if_left: float, maximum_kpa: float | None, reasons: list[str]
) -> CarryOver:
    over = maximum_kpa is not None and set_here > check_number("maximum_kpa", maximum_kpa, above=0)
    if over:
        reasons.append(
            "That is above the unit's maximum pressure here: set it outside after the spring has cooled down."
        )
    return CarryOver(set_here, shows_there, if_left, over, tuple(reasons))


def _weather_reasons(warmer_by: float, there_c: float) -> list[str]:
    if abs(warmer_by) < _NOTABLE_DEGREES:
        return []
    if warmer_by > 0:
        return ["Warm air in the spring shows more. If it only warms up while riding that is normal: do not let out."]
    cold = ["Cold air in the spring shows less and carries less: it takes more from here."]
    if there_c < _COLD_C:
        cold.append("Oil thickens in the cold: expect slower rebound. No click is changed for that here.")
    return cold


def _rebound_reasons(shift: float) -> list[str]:
    if abs(shift) < _NOTABLE_SHIFT:
        return []
    way, knob = ("more", "closed") if shift > 0 else ("less", "open")
    return [
        f"The spring then asks for about {percent(abs(shift))} {way} rebound damping, a little towards {knob}: "
        "expect it, and let a ride decide. No click is changed for that here."
    ]


def _heavier(old_kg: float | None, new_kg: float | None, reasons: list[str]) -> float:
    """Give the load then over the load now."""
    if old_kg is None and new_kg is None:
        return 1.0
    if old_kg is None or new_kg is None:
        missing = "old_rider_kg" if old_kg is None else "new_rider_kg"
        raise InputError(missing, None, "the mass then and the mass now: both or none")
    new = check_number("new_rider_kg", new_kg, above=0)
    old = check_number("old_rider_kg", old_kg, above=0)
    heavier = new / old
    if heavier != 1:
        word = "heavier" if heavier > 1 else "lighter"
        reasons.append(f"The rider is {percent(abs(heavier - 1))} {word}, so is the load: measure the sag again.")
    return heavier


def _for_load(pressure_kpa: float, heavier: float, here_m: float) -> float:
    if heavier == 1:
        return pressure_kpa
    outside = standard_pressure_kpa(here_m)
    return check_number("pressure_kpa", (pressure_kpa + outside) * heavier - outside, at_least=0)


def _other_spacers(
    pressure_kpa: float,
    chamber: AirChamber | None,
    sag_mm: float | None,
    spacer_mm3: float,
    negative_kpa: float | None,
    reasons: list[str],
) -> SpacerChange:
    if chamber is None or sag_mm is None:
        raise InputError("chamber", "not known", "the sizes of the spring and its sag, to carry a change of spacers")
    change = change_spacers(
        chamber, pressure_kpa=pressure_kpa, sag_mm=sag_mm, spacer_mm3=spacer_mm3, negative_kpa=negative_kpa
    )
    if spacer_mm3 == chamber.spacer_mm3:
        return change
    word, effect = ("stiffen", "lower") if spacer_mm3 > chamber.spacer_mm3 else ("soften", "raise")
    first = "More" if spacer_mm3 > chamber.spacer_mm3 else "Fewer"
    reasons.append(
        f"{first} spacers {word} the early travel a little too; {effect} the pressure with them so that the sag stays. "
        "The two are one change."
    )
    return change

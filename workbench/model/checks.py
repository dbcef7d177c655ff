"""What a check-in looks at on one bike, in which order, and what a length measured means."""

from __future__ import annotations

from workbench.model.check_list import CHECKS, EXPOSED_FRONT, EXPOSED_REAR, TRAVEL_FRONT, TRAVEL_REAR, Check
from workbench.model.parts import BikeParts

CARE = "The maker's manual and a qualified mechanic come before this list. A helper or a stand holds the bike."
SHORT_BY_MM = 3.0  # common practice, no source: less than this is how well a ruler is read

AREAS = {
    "sound": "Is it sound?",
    "fork": "Fork",
    "shock": "Shock",
    "room": "Travel and room to move",
    "running": "Running gear",
    "service": "Service due",
}

_BY_CODE = {check.code: check for check in CHECKS}


def features_of(parts: BikeParts) -> frozenset[str]:
    """Name what the bike has that checks ask for."""
    fork, shock = parts.unit("front"), parts.unit("rear")
    has = {
        "fork": fork is not None,
        "rigid_front": fork is None,
        "shock": shock is not None,
        "upright": fork is not None and not fork.is_inverted,
        "inverted": fork is not None and fork.is_inverted,
        "dual_crown": fork is not None and fork.is_dual_crown,
        "damped_one": fork is not None and fork.damper_in_one_leg,
        "damped_both": fork is not None and not fork.damper_in_one_leg,
        "coil_rear": shock is not None and shock.spring == "coil",
        "ebike": parts.bike.is_ebike,
    }
    return frozenset(name for name, is_so in has.items() if is_so)


def checks_for(parts: BikeParts, depth: str) -> tuple[Check, ...]:
    """List what a check-in of this depth looks at on this bike, by area."""
    has = features_of(parts)
    fitting = [check for check in CHECKS if has.issuperset(check.needs) and (check.is_quick or depth == "full")]
    order = list(AREAS)
    return tuple(sorted(fitting, key=lambda check: order.index(check.area)))


def check_of(code: str) -> Check | None:
    """Give a check by its code; None for one this version does not know."""
    return _BY_CODE.get(code)


def nominal_mm(parts: BikeParts, code: str) -> float | None:
    """Give the length a measured check should read, as far as the bike's facts say."""
    if code not in (EXPOSED_FRONT, EXPOSED_REAR, "exposed_sliders", TRAVEL_FRONT, TRAVEL_REAR):
        return None
    unit = parts.unit("rear" if code in (EXPOSED_REAR, TRAVEL_REAR) else "front")
    if unit is None:
        return None
    return unit.travel_mm if code in (TRAVEL_FRONT, TRAVEL_REAR) else unit.exposed_nominal_mm


def measured_verdict(code: str, measured_mm: float, nominal: float | None) -> tuple[str, str]:
    """Give the severity a measured length asks for, and why; an empty severity where it asks for none."""
    if nominal is None:
        return "", "Nothing to compare it with: enter the nominal length on the garage sheet."
    short_by = nominal - measured_mm
    if code in (TRAVEL_FRONT, TRAVEL_REAR):
        if abs(short_by) <= SHORT_BY_MM:
            return "", "As stated."
        less = "less" if short_by > 0 else "more"
        return "attend", (f"{abs(short_by):.0f}\u2009mm {less} than stated. Find out why before sag is measured.")
    if short_by > SHORT_BY_MM:
        return "attend", (
            f"{short_by:.0f}\u2009mm short: sucked down, or wrongly stated. Mend this first; "
            "a trapped negative charge may hold it, so unscrew nothing."
        )
    return "", "As it should be."

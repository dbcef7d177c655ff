"""Mounting positions side by side: their leverage, and where the rider would sit in each with the present spring."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from workbench.actions.spring import SpringRecords
from workbench.model.errors import WorkbenchError
from workbench.model.unit import LeverageSurvey, Unit, mountings, survey_in_use
from workbench.viewmodels.leverage_curves import UNNAMED
from workbench.viewmodels.shown import Units, short_date
from workbench.viewmodels.spring_curves import SpringCurve, WhatIf, curve_of, fitted, kept_sag

if TYPE_CHECKING:
    from workbench.physics.leverage import Leverage
    from workbench.physics.mounting import Moved

HEADS = ("Mounting", "Mean ratio", "Progression", "Shock sag", "Wheel sag", "Wheel rate at sag")
NOT_SAID = "Nobody has said which mounting the shock is in; the newest survey is reckoned with."
NO_SURVEY = "The shock is in a mounting that has not been surveyed, so no leverage is reckoned with."
SAG_FIRST = "Measure the rear sag on this hardware: then the sag in the other mountings is worked out."
SAME_SPRING = "Sag in each: the same rider, the spring left as it is."


@dataclass(frozen=True, slots=True)
class MountingShown:
    """One mounting position with what is known of it."""

    survey_id: str
    name: str
    cells: tuple[str, ...]  # under the heads, the name left out
    is_in_use: bool
    is_looked_at: bool
    note: str
    state_verb: str = ""  # says that the shock has been in this one
    move_verb: str = ""  # says that it was moved there


@dataclass(frozen=True, slots=True)
class Mountings:
    """All mounting positions, and what is to be said about them."""

    rows: tuple[MountingShown, ...] = ()
    remark: str = ""


def name_of(survey: LeverageSurvey) -> str:
    """Give the name of a survey's mounting."""
    return survey.mounting or UNNAMED


def mountings_shown(records: SpringRecords, unit: Unit, looked_at: str, units: Units) -> Mountings:
    """Compare the mounting positions of a shock."""
    found = mountings(records.surveys, unit)
    if not found:
        return Mountings()
    now = survey_in_use(records.surveys, unit)
    fits = {one.id: fitted(records, one) for one in found}
    moved = _moved(records, unit, fits, now)
    here = moved.get(now.id) if now else None
    in_newton = (curve := _curve(records, unit)) is not None and curve.in_newton
    rows = tuple(
        MountingShown(
            one.id,
            name_of(one),
            _cells(fits[one.id], moved.get(one.id), None if one is now else here, units, in_newton=in_newton),
            is_in_use=one is now and unit.mounting is not None,
            is_looked_at=one.id == looked_at,
            note=f"{short_date(one.made_at)}, {len(records.points[one.id])} points",
            state_verb=_state_verb(unit, one, now),
            move_verb="Moved to this one" if unit.mounting is not None and one is not now else "",
        )
        for one in sorted(found, key=lambda one: one is not now)
    )
    return Mountings(rows, _remark(unit, now, has_sag=bool(moved)))


def _state_verb(unit: Unit, one: LeverageSurvey, now: LeverageSurvey | None) -> str:
    if unit.mounting is None:
        return "It is in this one"
    return "" if one is now else "Was here all along"


def _remark(unit: Unit, now: LeverageSurvey | None, *, has_sag: bool) -> str:
    if now is None:
        return NO_SURVEY
    words = [NOT_SAID] if unit.mounting is None else []
    return " ".join((*words, SAME_SPRING if has_sag else SAG_FIRST))


def _curve(records: SpringRecords, unit: Unit) -> SpringCurve | None:
    sag = kept_sag(records, unit)
    if sag is None:
        return None
    try:
        return curve_of(records, unit, sag, WhatIf())
    except WorkbenchError:
        return None


def _moved(
    records: SpringRecords, unit: Unit, fits: dict[str, Leverage], now: LeverageSurvey | None
) -> dict[str, Moved | str]:
    """Give where the rider sits in each mounting, or why that cannot be said; empty without sag or present mounting."""
    from workbench.physics.mounting import sag_when_moved

    curve = _curve(records, unit)
    if curve is None or curve.sag_mm is None or now is None:
        return {}
    moved: dict[str, Moved | str] = {}
    for key, fit in fits.items():
        try:
            moved[key] = sag_when_moved(
                fits[now.id], fit, sag_mm=curve.sag_mm, travel_mm=curve.travel_mm, force=curve.force
            )
        except WorkbenchError as error:
            moved[key] = str(error)
    return moved


def _cells(
    fit: Leverage, there: Moved | str | None, here: Moved | str | None, units: Units, *, in_newton: bool
) -> tuple[str, ...]:
    steady = (f"{fit.mean:.2f}", f"{100 * fit.progression:.0f}\u2009%")
    if there is None or isinstance(there, str):
        return (*steady, there or "–", "–", "–")
    sags = (units.text(there.sag_mm, "length"), f"{100 * there.wheel_sag:.0f}\u2009%")
    words = [units.text(there.wheel_rate, "spring_rate")] if in_newton else []
    if here is not None and not isinstance(here, str):
        change = 100 * (there.wheel_rate / here.wheel_rate - 1)
        words.append(f"{change:+.0f}\u2009%".replace("-", "\u2212"))
    return (*steady, *sags, "\n".join(words) or "as now")

"""What each change did, by the response named before riding: in points of liking, or in lap time."""

from __future__ import annotations

from math import expm1
from statistics import median
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.review_basis import LAP, Basis, judge, scatter, setup_numbered
from workbench.viewmodels.review_data import EffectRow, Effects
from workbench.viewmodels.shown import Units, how_many

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, RunRecord

BETTER = {"liking": ("rated higher", "rated lower"), LAP: ("quicker", "slower")}
ALIKE = {"liking": "Little or no difference felt", LAP: "Little or no difference on the clock"}
LEAST_POINTS = 0.5  # counts as felt from here on, or from the rider's own scatter if that is larger
TIME_UNIT = 0.01 / 0.6  # of a lap time in logarithms, per point
NOTHING_YET = "No change has been ridden and rated on both sides yet"
LEAST_PERCENT = 100.0 * expm1(LEAST_POINTS * TIME_UNIT)
CLOCK_AXIS = "percent quicker; grey: scatter"
MOST_TWENTIETHS = 19  # never twenty of twenty, which would read as certain


def effects_of(records: RideRecords, basis: Basis, units: Units) -> Effects:
    """Judge every change ridden, in the order ridden; what earlier sessions tell of the rider's scatter is used."""
    judged = judge(basis.runs, basis.scale, basis.past_sd)
    rows = tuple(_effect_row(records, basis, one, units) for one in judged)
    by_clock = basis.response == LAP
    rate = 100.0 if by_clock else 1.0
    least = LEAST_PERCENT if by_clock else LEAST_POINTS
    said = f"{how_many(len(rows), 'change')} judged" if rows else NOTHING_YET
    return Effects(
        rows,
        felt=max(least, rate * max((one.repeat_sd for one in judged), default=0.0)),
        said=said,
        steady=_steady_words(scatter(basis.runs, basis.scale), by_clock=by_clock),
        axis=CLOCK_AXIS if by_clock else "points; grey: hardly felt",
        unit="percent" if by_clock else "points",
        reach=2.0,
        is_so_far=basis.is_so_far,
    )


def _steady_words(found: tuple[float, float, float] | None, *, by_clock: bool) -> str:
    if found is None:
        return "No setting was ridden twice, so it is not known how much the ratings scatter from run to run."
    sd, low, high = found
    if by_clock:
        return (
            f"Ridden again unchanged, a lap time scatters by about {100 * sd:.1f} % ({100 * low:.1f} to"
            f" {100 * high:.1f}): smaller differences take repeats to tell."
        )
    return (
        f"Ridden again unchanged, a rating scatters by about {sd:.1f} points ({low:.1f} to {high:.1f}):"
        " smaller differences take repeats to tell."
    )


def _effect_row(records: RideRecords, basis: Basis, one: ChangeVerdict, units: Units) -> EffectRow:
    from workbench.evidence.verdicts import Verdict
    from workbench.evidence.words import caution_words

    before, after = setup_numbered(records, one.before), setup_numbered(records, one.after)
    change = changes_text(records.parts, records.values[before.id], records.values[after.id], units)
    by_clock = basis.response == LAP
    rate, unit = (100.0, " %") if by_clock else (1.0, "")
    return EffectRow(
        key=f"{before.number}-{after.number}",
        before_id=before.id,
        after_id=after.id,
        change=f"no. {before.number} to {after.number}: {change}",
        effect=rate * one.effect,
        low=rate * one.low,
        high=rate * one.high,
        effect_text=f"{signed(rate * one.effect)}{unit}",
        interval_text=f"{signed(rate * one.low)} to {signed(rate * one.high)}{unit}",
        chance_text=f"{twentieths(one.chance_helped)} in 20",
        verdict=verdict_text(one, basis.response, f"no. {before.number}", f"no. {after.number}", basis.is_so_far),
        cautions="; ".join(caution_words(one)),
        runs_text=f"{one.runs_before} and {one.runs_after}",
        is_settled=one.verdict is not Verdict.CANNOT_TELL,
        way={Verdict.HELPED: 1, Verdict.HURT: -1}.get(one.verdict, 0),
        clock_text=seconds_text(basis.runs, one) if by_clock else "",
    )


def verdict_text(one: ChangeVerdict, response: str, before: str, after: str, is_so_far: bool) -> str:
    """Say a verdict in the words of its response; before the planned end it reads "so far"."""
    from workbench.evidence.words import sentence, so_far

    better, worse = BETTER[response]
    said = sentence(one, before_words=before, after_words=after, better=better, worse=worse, alike=ALIKE[response])
    return so_far(said) if is_so_far else said


def seconds_text(runs: tuple[RunRecord, ...], one: ChangeVerdict) -> str:
    """Say how many seconds a change saves on a usual lap with the setting before; empty without one."""
    usual = median_lap(runs, one.before)
    if usual is None:
        return ""
    saved = usual * one.effect / (1.0 + one.effect)
    return f"{abs(saved):.1f} s {'quicker' if saved >= 0 else 'slower'}" if abs(saved) >= 0.05 else "0.0 s"


def median_lap(runs: tuple[RunRecord, ...], setting: object) -> float | None:
    """Give the middle of the counted lap times with one setting."""
    laps = [run.response for run in runs if run.setting == setting and not run.warmup and run.response is not None]
    return median(laps) if laps else None


def twentieths(chance: float) -> int:
    """Give a chance in twentieths, never none and never all."""
    return min(MOST_TWENTIETHS, max(1, round(20 * chance)))


def signed(value: float) -> str:
    """Say a difference with its sign; what rounds to nothing has none."""
    rounded = round(value, 1)
    return f"{rounded:+.1f}".replace("-", "\u2212") if rounded else "0.0"

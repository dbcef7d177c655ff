"""The other answers to a change beside the one it is judged by: each on its own, together, and where they disagree."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.model.responses import lap_text
from workbench.model.setting import Item, changes_between
from workbench.viewmodels.review_basis import LAP, RATING, Basis, TimeOrRating, judge, setup_numbered
from workbench.viewmodels.review_effects import median_lap, seconds_text, signed, twentieths

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, JointRow, RunRecord

OFF_CENTRE = (-2.0, 0.0, 1.0)  # how far a direction answer lies from just right, less is better
LIKING, COMPARED, DIRECTION = "liking", "compared", "direction"
PHRASES = {
    LIKING: ("Liking alone", "rated higher", "rated lower"),
    COMPARED: ("Against the run before", "called better", "called worse"),
    DIRECTION: ("Direction", "nearer to just right", "further from just right"),
    LAP: ("Lap time", "quicker", "slower"),
}
OPEN = 0.1  # a chance this near to one half says neither
DISAGREE = "The answers disagree: {}. What counts is for the rider to say."


def joint_of(records: RideRecords, basis: Basis, one: ChangeVerdict) -> JointRow | None:
    """Read all answers to one change together, the response it is judged by first; None where there is only one."""
    from workbench.evidence.joint import combine

    told = _answers(records, basis, one)
    found = {}
    for name, (runs, scale) in told.items():
        is_judged_by = name == basis.response and runs == basis.runs
        row = one if is_judged_by else _verdict_on(runs, scale, basis.past_sd if name == basis.response else None, one)
        if row is not None:
            found[name] = row
    if len(found) < 2:
        return None
    return combine({name: [row] for name, row in found.items()})[0]


def disagreement(row: JointRow) -> str:
    """Say in words how the answers disagree; empty when they do not."""
    if not row.disagreement:
        return ""
    by_name = dict(row.by_response)
    lead = row.by_response[0][0]
    others = " and ".join(_way(name, by_name[name]) for name in row.disagreement)
    return f"{_way(lead, by_name[lead])}, but {others}"


def joint_lines(basis: Basis, row: JointRow) -> tuple[str, ...]:
    """Say what each answer leans to, with its chance; lap times in percent and seconds too."""
    lines = []
    for name, one in row.by_response:
        title = "Liking" if name == LIKING and COMPARED not in dict(row.by_response) else PHRASES[name][0]
        chance = one.chance_helped if one.chance_helped >= 0.5 else 1.0 - one.chance_helped
        if abs(one.chance_helped - 0.5) < OPEN:
            line = f"{title}: leans neither way"
        else:
            line = f"{title}: {_way(name, one)} (chance about {twentieths(chance)} in 20)"
        if name == LAP:
            line += f", {_clock_words(basis, one)}"
        lines.append(line)
    return tuple(lines)


def joint_words(row: JointRow, after: str) -> str:
    """Say what the answers come to together."""
    from workbench.evidence.verdicts import Verdict

    against = disagreement(row)
    if against:
        return DISAGREE.format(against)
    for_it = row.chance_helped >= 0.5
    chance = twentieths(row.chance_helped if for_it else 1.0 - row.chance_helped)
    if row.verdict in (Verdict.HELPED, Verdict.HURT):
        return f"Together they speak {'for' if for_it else 'against'} {after} (chance about {chance} in 20)."
    if row.verdict is Verdict.NOT_FELT:
        return "Together they tell no difference worth naming."
    if abs(row.chance_helped - 0.5) < OPEN:
        return "Together they lean neither way yet."
    return f"Together they lean {'towards' if for_it else 'away from'} {after} ({chance} in 20), not settled."


def _way(name: str, one: ChangeVerdict) -> str:
    _, better, worse = PHRASES[name]
    return better if one.chance_helped >= 0.5 else worse


def _clock_words(basis: Basis, one: ChangeVerdict) -> str:
    runs = basis.lap_runs
    percent = f"{signed(100 * one.effect)} % ({signed(100 * one.low)} to {signed(100 * one.high)} %)"
    usual = median_lap(runs, one.before)
    if usual is None:
        return percent
    return f"{percent}, that is {seconds_text(runs, one)} on a lap of {lap_text(usual)}"


def _answers(
    records: RideRecords, basis: Basis, one: ChangeVerdict
) -> dict[str, tuple[tuple[RunRecord, ...], TimeOrRating]]:
    """Give the runs of each response, the one judged by first; nothing is read twice."""
    compared, rated = _apart(basis.liking_runs)
    found: dict[str, tuple[tuple[RunRecord, ...], TimeOrRating]] = {LIKING: (rated, RATING)}
    if any(run.compared is not None for run in compared):
        found[COMPARED] = (compared, RATING)
    directions = dict(basis.direction_runs).get(_only_adjuster(records, one))
    if directions:
        found[DIRECTION] = (directions, OFF_CENTRE)
    found[LAP] = (basis.lap_runs, "log")
    return {basis.response: found[basis.response], **found}


@lru_cache(maxsize=8)
def _apart(runs: tuple[RunRecord, ...]) -> tuple[tuple[RunRecord, ...], tuple[RunRecord, ...]]:
    """Give the runs by what was compared alone, and by what was rated alone."""
    compared = tuple(replace(run, response=None) for run in runs)
    return compared, tuple(replace(run, compared=None) for run in runs if run.response is not None)


def _only_adjuster(records: RideRecords, one: ChangeVerdict) -> str:
    """Give the adjuster that is all the two setups differ in; empty if it is something else."""
    before, after = (setup_numbered(records, setting).id for setting in (one.before, one.after))
    changes = changes_between(records.values[before], records.values[after])
    return changes[0].subject_id if len(changes) == 1 and changes[0].item == Item.ADJUSTER else ""


@lru_cache(maxsize=64)
def _verdict_on(
    runs: tuple[RunRecord, ...], scale: TimeOrRating, past_sd: float | None, one: ChangeVerdict
) -> ChangeVerdict | None:
    """Judge one response and give its row of the change, turned round if it was first ridden the other way."""
    sides = {run.setting for run in runs if not run.warmup and (run.response is not None or run.compared is not None)}
    if not {one.before, one.after} <= sides:
        return None
    for row in judge(runs, scale, past_sd):
        if (row.before, row.after) == (one.before, one.after):
            return row
        if (row.before, row.after) == (one.after, one.before):
            return turned(row, is_ratio=scale == "log")
    return None


def turned(row: ChangeVerdict, *, is_ratio: bool) -> ChangeVerdict:
    """Give the same change seen from its other side."""
    from workbench.evidence.verdicts import Verdict

    def back(value: float) -> float:
        return -value / (1.0 + value) if is_ratio else -value

    other = {Verdict.HELPED: Verdict.HURT, Verdict.HURT: Verdict.HELPED}
    return replace(
        row,
        before=row.after,
        after=row.before,
        runs_before=row.runs_after,
        runs_after=row.runs_before,
        effect=back(row.effect),
        low=back(row.high),
        high=back(row.low),
        chance_helped=1.0 - row.chance_helped,
        verdict=other.get(row.verdict, row.verdict),
        next_run_low=back(row.next_run_high),
        next_run_high=back(row.next_run_low),
    )

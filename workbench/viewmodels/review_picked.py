"""The change picked, looked at closely: countable dots, what a single run would show, and all its answers."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.viewmodels.review_basis import LAP, Basis, TimeOrRating, judge, setup_numbered
from workbench.viewmodels.review_data import EffectRow, Effects, Picked
from workbench.viewmodels.review_effects import MOST_TWENTIETHS, signed
from workbench.viewmodels.review_joint import DISAGREE, disagreement, joint_lines, joint_of, joint_words
from workbench.viewmodels.shown import how_many, how_often

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, RunRecord

CONFOUNDED = "More than one thing changed between the two, so its answers are not read together."
ALONE = "Nothing else was answered or timed on both sides of this change."


def resolve_picked(records: RideRecords, basis: Basis, effects: Effects, key: str) -> Picked:
    """Lay the picked change out; empty when none is picked."""
    row = next((row for row in effects.rows if row.key == key), None)
    one = verdict_of(records, basis, key)
    if row is None or one is None:
        return Picked()
    rate = 100.0 if basis.response == LAP else 1.0
    dots = tuple(rate * dot for dot in dots_of(basis.runs, one.before, one.after, basis.scale, basis.past_sd))
    lines, said = _joint(records, basis, one, row)
    return Picked(
        title=row.change,
        verdict=row.verdict,
        cautions=row.cautions,
        dots=dots,
        dots_said=_dots_words(dots, effects.felt, by_clock=basis.response == LAP),
        next_said=_next_words(one, by_clock=basis.response == LAP),
        joint=lines,
        joint_said=said,
    )


def with_joint_notes(records: RideRecords, basis: Basis, effects: Effects) -> Effects:
    """Say beside each change where its answers disagree."""
    rows = []
    for row, one in zip(effects.rows, judge(basis.runs, basis.scale, basis.past_sd), strict=True):
        joint = joint_of(records, basis, one)
        against = disagreement(joint) if joint is not None else ""
        rows.append(replace(row, joint_note=DISAGREE.format(against) if against else ""))
    return replace(effects, rows=tuple(rows))


def verdict_of(records: RideRecords, basis: Basis, key: str) -> ChangeVerdict | None:
    """Give the verdict behind a row."""
    for one in judge(basis.runs, basis.scale, basis.past_sd):
        before, after = setup_numbered(records, one.before), setup_numbered(records, one.after)
        if f"{before.number}-{after.number}" == key:
            return one
    return None


@lru_cache(maxsize=32)
def dots_of(
    runs: tuple[RunRecord, ...], before: object, after: object, scale: TimeOrRating, past_sd: float | None
) -> tuple[float, ...]:
    """Give the dots once per set of runs."""
    from workbench.evidence.dots import quantile_dots

    return quantile_dots(runs, before, after, scale=scale, past_sd=past_sd)


def _dots_words(dots: tuple[float, ...], felt: float, *, by_clock: bool) -> str:
    better, worse = ("quicker", "slower") if by_clock else ("better", "worse")
    above = sum(dot > 0 for dot in dots)
    small = sum(abs(dot) <= felt for dot in dots)
    count = len(dots)
    if above > MOST_TWENTIETHS or count - above > MOST_TWENTIETHS:
        lead = f"At least {MOST_TWENTIETHS} of {count} say {better if above else worse}"
    elif 2 * above >= count:
        lead = f"{above} of {count} say {better}, {count - above} say {worse}"
    else:
        lead = f"{count - above} of {count} say {worse}, {above} say {better}"
    smaller = "hardly more than scatter" if by_clock else "too small to feel"
    return f"{lead}; {small or 'none'} of {count} {'is' if small == 1 else 'are'} {smaller}."


def _next_words(one: ChangeVerdict, *, by_clock: bool) -> str:
    rate, unit = (100.0, " %") if by_clock else (1.0, " points")
    return (
        f"That is the difference behind the scatter. A single further run may come out anywhere from"
        f" {signed(rate * one.next_run_low)} to {signed(rate * one.next_run_high)}{unit}, nine times in ten."
    )


def _joint(records: RideRecords, basis: Basis, one: ChangeVerdict, row: EffectRow) -> tuple[tuple[str, ...], str]:
    from workbench.evidence.verdicts import Caution, Verdict
    from workbench.evidence.words import so_far

    if Caution.CONFOUNDED in one.cautions and one.verdict is Verdict.CANNOT_TELL:
        return (), CONFOUNDED
    joint = joint_of(records, basis, one)
    compared = _compared_line(basis, one)
    seen = (*compared, *_pairs_line(basis, one))
    if joint is None:
        return (seen, "") if compared else ((), ALONE)
    after = f"no. {setup_numbered(records, one.after).number}"
    said = joint_words(joint, after)
    lines = (*joint_lines(basis, joint), *seen)
    return lines, so_far(said) if basis.is_so_far else said


def _compared_line(basis: Basis, one: ChangeVerdict) -> tuple[str, ...]:
    """Count which of the two was called better, wherever one was ridden right after the other."""
    ways = Counter(
        (later.compared or 0) * (1 if later.setting == one.after else -1)
        for earlier, later in pairwise(basis.liking_runs)
        if later.compared is not None and {earlier.setting, later.setting} == {one.before, one.after}
    )
    total = ways.total()
    if not total:
        return ()
    return (
        f"Seen, not judged: ridden one right after the other and compared {how_often(total)}; no. {one.after} was"
        f" called better {how_often(ways[1])}, no. {one.before} {how_often(ways[-1])}, the same {how_often(ways[0])}.",
    )


def _pairs_line(basis: Basis, one: ChangeVerdict) -> tuple[str, ...]:
    """Count the pairs of a run before and a run after: what was seen, whatever else moved it."""
    from workbench.evidence.overlap import nap

    sides = [
        [run.response for run in basis.runs if run.setting == side and not run.warmup and run.response is not None]
        for side in (one.before, one.after)
    ]
    if not all(sides):
        return ()
    before, after = sides
    pairs = len(before) * len(after)
    share = nap(after, before) if basis.response == LAP else nap(before, after)
    better = "quicker" if basis.response == LAP else "rated higher"
    return (
        f"Seen, not judged: in {share * pairs:g} of {how_many(pairs, 'pair')} of a run before and a run after, the one"
        f" after was {better} (a tie counts half; a trend counts fully in this).",
    )

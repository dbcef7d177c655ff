"""The result of a blind test: what the ratings say, what the guesses say, and that the order was fixed beforehand."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.ride_evidence import run_records
from workbench.model.blind import letter_at, pairs_of, setups_of, valid
from workbench.model.ride import BlindPlan, Run
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.odds import meaning, out_of
from workbench.viewmodels.review_data import EffectRow, Effects
from workbench.viewmodels.shown import Units, how_many, short_time

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, RunRecord

HIDDEN = "A blind test is under way: its runs are shown here once it is revealed."
TWO_READINGS = (
    "The interval knows how ratings scatter, and allows for warming up and tiring. The test by the order supposes"
    " nothing but that the order was drawn."
)
Pair = tuple[Run, Run]


@dataclass(frozen=True, slots=True)
class PairRow:
    """One pair of runs: which setup each had, what was rated, and whether the guess was right."""

    title: str
    first: str
    second: str
    guess: str


@dataclass(frozen=True, slots=True)
class BlindResult:
    """A revealed blind test, ready to be drawn."""

    title: str
    incomplete: str = ""
    ratings: str = ""  # the mean of each, the difference and its verdict
    by_order: str = ""  # what the order alone would do
    guesses: str = ""
    effects: Effects = field(default_factory=Effects)
    rows: tuple[PairRow, ...] = ()
    proof: str = ""
    seal: str = ""  # what somebody needs to check the fingerprint
    is_proven: bool = True


def without_concealed(records: RideRecords) -> RideRecords:
    """Give what was ridden without tests that are still concealed."""
    return replace(records, sessions=tuple(one for one in records.sessions if not one.is_concealed))


def hidden_words(records: RideRecords) -> str:
    """Say that a test is still concealed; empty when none is."""
    return HIDDEN if any(one.is_concealed for one in records.sessions) else ""


def blind_of(records: RideRecords, chosen: str, units: Units) -> BlindResult | None:
    """Give the result of the session chosen if it was a blind test; with all sessions chosen, of the newest one."""
    found = next((one for one in records.sessions if one.session.id == chosen), None)
    session = found or (records.sessions[-1] if records.sessions else None)
    if session is None or session.plan is None or session.is_concealed:
        return None
    return resolve_result(records, session, session.plan, units)


def with_result(read_out: str, result: BlindResult | None) -> str:
    """Give what is read out with a blind test's result in front."""
    if result is None:
        return read_out
    told = (result.title, result.incomplete, result.ratings, result.by_order, result.guesses, result.proof)
    return "\n".join([*(f"{line}." if line == result.title else line for line in told if line), "", read_out])


def resolve_result(records: RideRecords, session: SessionRecords, plan: BlindPlan, units: Units) -> BlindResult:
    """Lay the result out."""
    ids = setups_of(plan)
    letters = {setup_id: letter for letter, setup_id in ids.items()}
    numbers = {letter: records.setup(setup_id).number for letter, setup_id in ids.items()}
    pairs, planned = pairs_of(session.runs), len(plan.order) // 2
    change = changes_text(records.parts, records.values[ids["A"]], records.values[ids["B"]], units)
    is_proven = _fits(session, plan, letters)
    result = BlindResult(
        title=f"Blind test: A, no. {numbers['A']}, against B, no. {numbers['B']} ({change})",
        incomplete=_incomplete(len(pairs), planned),
        rows=tuple(_pair_row(place, pair, letters) for place, pair in enumerate(pairs)),
        proof=_proof(session, plan, is_proven=is_proven),
        seal=f"Seed {plan.seed}, order {plan.order}, whole fingerprint {plan.digest}",
        is_proven=is_proven,
    )
    if not pairs or not is_proven:
        return result
    verdict = _a_to_b(_judge(tuple(run_records(records, (session,)))), numbers["A"])
    return replace(
        result,
        ratings=_ratings(pairs, letters, numbers, verdict),
        by_order=_by_order(pairs, letters),
        guesses=_guesses(pairs, letters),
        effects=_drawn(verdict, change) if verdict else Effects(),
    )


def _incomplete(done: int, planned: int) -> str:
    from workbench.evidence.blind import least_p

    if done >= planned:
        return ""
    lead = f"Incomplete: stopped after {done} of {how_many(planned, 'pair')}."
    if not done:
        return f"{lead} Nothing can be said of it."
    least = least_p(("A", "B"), blocks=done)
    return (
        f"{lead} It can claim no more than {how_many(done, 'pair')} can, whose clearest ratings come up by chance "
        f"alone in {out_of(least)} such tests."
    )


def _ratings(
    pairs: tuple[Pair, ...], letters: dict[str, str], numbers: dict[str, int], verdict: ChangeVerdict | None
) -> str:
    from workbench.evidence.words import sentence

    means = {letter: _mean(pairs, letters, letter) for letter in numbers}
    lead = f"Rated {means['B']:.1f} with B and {means['A']:.1f} with A."
    if verdict is None:
        return lead
    words = sentence(verdict, before_words="A", after_words="B")
    between = f"{_signed(verdict.low)} to {_signed(verdict.high)}"
    return f"{lead} {words} B against A: {_signed(verdict.effect)} points, nine times in ten {between}."


def _by_order(pairs: tuple[Pair, ...], letters: dict[str, str]) -> str:
    from workbench.evidence.blind import block_orders, least_p, randomisation_p

    runs = [run for pair in pairs for run in pair]
    p = randomisation_p(
        [float(run.liking or 0) for run in runs],
        [letters[run.setup_id] for run in runs],
        allowed_orders=block_orders(("A", "B"), blocks=len(pairs)),
    )
    least = least_p(("A", "B"), blocks=len(pairs))
    limit = f" With {how_many(len(pairs), 'pair')} it cannot get rarer." if p <= least * (1 + 1e-9) else ""
    return (
        "If the setup did not matter to the ratings, the order drawn would set them at least this far apart in "
        f"{out_of(p)} such tests. {meaning(p)}{limit}"
    )


def _guesses(pairs: tuple[Pair, ...], letters: dict[str, str]) -> str:
    from workbench.evidence.blind import choice_p

    right = sum(_is_right(pair, letters) for pair in pairs)
    p = choice_p(right, len(pairs))
    as_many = "this" if right == len(pairs) else "as many or more"
    return (
        f"Guesses right: {right} of {len(pairs)}. Chance alone gives {as_many} in {out_of(p)} such tests. {meaning(p)}"
    )


def _is_right(pair: Pair, letters: dict[str, str]) -> bool:
    return all(run.guess == letters[run.setup_id] for run in pair)


def _mean(pairs: tuple[Pair, ...], letters: dict[str, str], letter: str) -> float:
    ratings = [run.liking or 0 for pair in pairs for run in pair if letters[run.setup_id] == letter]
    return sum(ratings) / len(ratings)


def _pair_row(place: int, pair: Pair, letters: dict[str, str]) -> PairRow:
    first, second = (
        f"run {2 * place + which + 1}: {letters[run.setup_id]}, liking {run.liking}" for which, run in enumerate(pair)
    )
    return PairRow(f"Pair {place + 1}", first, second, "guessed right" if _is_right(pair, letters) else "guessed wrong")


@lru_cache(maxsize=4)
def _judge(runs: tuple[RunRecord, ...]) -> tuple[ChangeVerdict, ...]:
    from workbench.evidence.effects import judge_changes

    return tuple(judge_changes(list(runs)))


def _a_to_b(verdicts: tuple[ChangeVerdict, ...], a_number: int) -> ChangeVerdict | None:
    """Give the verdict told from A to B, whichever was ridden first."""
    from workbench.evidence.verdicts import verdict_of

    if not verdicts:
        return None
    one = verdicts[0]
    if one.before == a_number:
        return one
    helped = 1.0 - one.chance_helped
    return replace(
        one,
        before=one.after,
        after=one.before,
        runs_before=one.runs_after,
        runs_after=one.runs_before,
        effect=-one.effect,
        low=-one.high,
        high=-one.low,
        chance_helped=helped,
        verdict=verdict_of(helped, one.chance_felt),
        next_run_low=-one.next_run_high,
        next_run_high=-one.next_run_low,
    )


def _drawn(verdict: ChangeVerdict, change: str) -> Effects:
    words = f"B against A: {_signed(verdict.effect)} points of liking"
    row = EffectRow(
        key="blind",
        before_id="",
        after_id="",
        change=change,
        effect=verdict.effect,
        low=verdict.low,
        high=verdict.high,
        effect_text=_signed(verdict.effect),
        interval_text=f"{_signed(verdict.low)} to {_signed(verdict.high)}",
        chance_text="",
        verdict=f"{words}, nine times in ten {_signed(verdict.low)} to {_signed(verdict.high)}.",
        cautions="",
        runs_text=f"{verdict.runs_before} and {verdict.runs_after}",
    )
    return Effects((row,), said=words)


def _fits(session: SessionRecords, plan: BlindPlan, letters: dict[str, str]) -> bool:
    """Check that seed, order, labels and time give the fingerprint, and that it was ridden as drawn."""
    from workbench.evidence.blind import draw_order, plan_digest

    drawn = "".join(str(one) for one in draw_order(("A", "B"), seed=plan.seed, blocks=len(plan.order) // 2))
    digest = plan_digest(plan.order, seed=plan.seed, labels=(plan.labels,), fixed_at=plan.fixed_at)
    follows = all(letters.get(run.setup_id) == letter_at(plan, place) for place, run in enumerate(valid(session.runs)))
    return drawn == plan.order and digest == plan.digest and follows


def _proof(session: SessionRecords, plan: BlindPlan, *, is_proven: bool) -> str:
    if not is_proven:
        return (
            "The fingerprint kept before the first run does not fit what is on record now: the order, the setups or "
            "a time have been changed since. Do not rely on this test."
        )
    fixed, first = short_time(plan.fixed_at), session.runs[0].ridden_at if session.runs else ""
    if not first or first >= plan.fixed_at:
        before = f", before the first run ({short_time(first)})" if first else ""
        return (
            f"The order was fixed {fixed}{before}, and the fingerprint kept then fits the order revealed: "
            "nothing was moved since."
        )
    return (
        f"The fingerprint fits the order revealed. But it was fixed {fixed}, and the first run says "
        f"{short_time(first)}: the clock was set back in between, or that run is not of this test."
    )


def _signed(value: float) -> str:
    rounded = round(value, 1)
    return f"{rounded:+.1f}".replace("-", "\u2212") if rounded else "0.0"

"""The result of a blind test: what the ratings say, what the guesses say, and that the order was fixed beforehand."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from functools import lru_cache
from math import exp, log
from statistics import fmean
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.ride_evidence import run_records
from workbench.model.blind import pairs_of, setups_of
from workbench.model.responses import lap_text
from workbench.model.ride import BlindPlan, Run
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.odds import meaning, out_of
from workbench.viewmodels.review_basis import LAP, scale_of
from workbench.viewmodels.review_blind_proof import fits_seal, proof_words
from workbench.viewmodels.review_data import EffectRow, Effects
from workbench.viewmodels.review_effects import CLOCK_AXIS, LEAST_PERCENT, signed, verdict_text
from workbench.viewmodels.review_joint import turned
from workbench.viewmodels.shown import Units, how_many

if TYPE_CHECKING:
    from workbench.evidence.effects import ChangeVerdict, RunRecord

HIDDEN = "A blind test is under way: its runs are shown here once it is revealed."
TWO_READINGS = (
    "The interval knows how ratings scatter, and allows for warming up and tiring. The test by the order supposes"
    " nothing but that the order was drawn."
)
NO_LAPS = "No pair has both its lap times. Type them, or read them from a recorded track."
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
    is_proven = fits_seal(session, plan, letters)
    result = BlindResult(
        title=f"Blind test: A, no. {numbers['A']}, against B, no. {numbers['B']} ({change})",
        incomplete=_incomplete(len(pairs), planned),
        rows=tuple(_pair_row(place, pair, letters) for place, pair in enumerate(pairs)),
        proof=proof_words(session, plan, is_proven=is_proven),
        seal=f"Drawn from the number {plan.seed}: {plan.order}. Whole fingerprint {plan.digest}",
        is_proven=is_proven,
    )
    if not pairs or not is_proven:
        return result
    response = LAP if session.session.response == LAP else "liking"
    answered = tuple(pair for pair in pairs if all(_answer(run, response) is not None for run in pair))
    result = replace(result, guesses=_guesses(pairs, letters))
    if not answered:
        return replace(result, ratings=NO_LAPS)
    verdict = _a_to_b(_judge(tuple(run_records(records, (session,), response)), response), numbers["A"], response)
    return replace(
        result,
        ratings=_missing(len(answered), len(pairs)) + _ratings(answered, letters, response, verdict),
        by_order=_by_order(answered, letters, response),
        effects=_drawn(verdict, change, response) if verdict else Effects(),
    )


def _answer(run: Run, response: str) -> float | None:
    """Give what a run is judged by, so that the means of answers can be compared: a time as its logarithm."""
    if response == LAP:
        return log(run.lap_s) if run.lap_s else None
    return None if run.liking is None else float(run.liking)


def _missing(answered: int, pairs: int) -> str:
    return "" if answered == pairs else f"Of {how_many(pairs, 'pair')} {answered} have both lap times. "


def _incomplete(done: int, planned: int) -> str:
    from workbench.evidence.blind import least_p

    if done >= planned:
        return ""
    lead = f"Incomplete: stopped after {done} of {how_many(planned, 'pair')}."
    if not done:
        return f"{lead} Nothing can be said of it."
    least = least_p(("A", "B"), blocks=done)
    return (
        f"{lead} It can claim no more than {how_many(done, 'pair')} can, whose clearest answers come up by chance "
        f"alone in {out_of(least)} such tests."
    )


def _ratings(pairs: tuple[Pair, ...], letters: dict[str, str], response: str, verdict: ChangeVerdict | None) -> str:
    means = {letter: fmean(_answers(pairs, letters, response, letter)) for letter in ("A", "B")}
    if response == LAP:
        lead = f"On average {lap_text(exp(means['B']))} with B and {lap_text(exp(means['A']))} with A."
    else:
        lead = f"Rated {means['B']:.1f} with B and {means['A']:.1f} with A."
    if verdict is None:
        return lead
    return f"{lead} {verdict_text(verdict, response, 'A', 'B', is_so_far=False)} {_between(verdict, response)}"


def _between(verdict: ChangeVerdict, response: str) -> str:
    """Say the difference from A to B with its interval."""
    rate, unit = (100.0, " percent quicker") if response == LAP else (1.0, " points")
    effect, low, high = (signed(rate * value) for value in (verdict.effect, verdict.low, verdict.high))
    return f"B against A: {effect}{unit}, nine times in ten {low} to {high}."


def _answers(pairs: tuple[Pair, ...], letters: dict[str, str], response: str, letter: str) -> list[float]:
    return [_answer(run, response) or 0.0 for pair in pairs for run in pair if letters[run.setup_id] == letter]


def _by_order(pairs: tuple[Pair, ...], letters: dict[str, str], response: str) -> str:
    from workbench.evidence.blind import block_orders, least_p, randomisation_p

    runs = [run for pair in pairs for run in pair]
    p = randomisation_p(
        [_answer(run, response) or 0.0 for run in runs],
        [letters[run.setup_id] for run in runs],
        allowed_orders=block_orders(("A", "B"), blocks=len(pairs)),
    )
    least = least_p(("A", "B"), blocks=len(pairs))
    limit = f" With {how_many(len(pairs), 'pair')} it cannot get rarer." if p <= least * (1 + 1e-9) else ""
    what = "times" if response == LAP else "ratings"
    return (
        f"If the setup did not matter to the {what}, the order drawn would set them at least this far apart in "
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


def _pair_row(place: int, pair: Pair, letters: dict[str, str]) -> PairRow:
    first, second = (
        f"run {2 * place + which + 1}: {letters[run.setup_id]}, {_noted(run)}" for which, run in enumerate(pair)
    )
    return PairRow(f"Pair {place + 1}", first, second, "guessed right" if _is_right(pair, letters) else "guessed wrong")


def _noted(run: Run) -> str:
    told = (f"liking {run.liking}" if run.liking is not None else "", f"lap {lap_text(run.lap_s)}" if run.lap_s else "")
    return ", ".join(one for one in told if one) or "no answer"


@lru_cache(maxsize=4)
def _judge(runs: tuple[RunRecord, ...], response: str) -> tuple[ChangeVerdict, ...]:
    from workbench.evidence.effects import judge_changes

    return tuple(judge_changes(list(runs), scale=scale_of(response)))


def _a_to_b(verdicts: tuple[ChangeVerdict, ...], a_number: int, response: str) -> ChangeVerdict | None:
    """Give the verdict told from A to B, whichever was ridden first."""
    if not verdicts:
        return None
    one = verdicts[0]
    return one if one.before == a_number else turned(one, is_ratio=response == LAP)


def _drawn(verdict: ChangeVerdict, change: str, response: str) -> Effects:
    by_clock = response == LAP
    rate = 100.0 if by_clock else 1.0
    row = EffectRow(
        key="blind",
        before_id="",
        after_id="",
        change=change,
        effect=rate * verdict.effect,
        low=rate * verdict.low,
        high=rate * verdict.high,
        effect_text=signed(rate * verdict.effect),
        interval_text=f"{signed(rate * verdict.low)} to {signed(rate * verdict.high)}",
        chance_text="",
        verdict=_between(verdict, response),
        cautions="",
        runs_text=f"{verdict.runs_before} and {verdict.runs_after}",
    )
    if not by_clock:
        return Effects((row,), said=row.verdict)
    felt = max(LEAST_PERCENT, rate * verdict.repeat_sd)
    return Effects((row,), felt=felt, said=row.verdict, axis=CLOCK_AXIS, unit="percent")

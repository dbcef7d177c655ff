"""A blind test under way: who holds the screen, and what that person may see. Pure: records in, a state out."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, fields, replace
from enum import StrEnum

from workbench.actions.blind import BlindRecords
from workbench.model.blind import is_lever, letter_at, pairs_of
from workbench.model.errors import InputError
from workbench.model.facts import check_field, field_of
from workbench.model.ride import Run
from workbench.model.setting import Item
from workbench.model.steps import steps_to
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride_laps import LAP_MISSING, WATCH_RUNS, read_lap
from workbench.viewmodels.ride_scores import ScoreRow, Scores, in_order, resolve_scores
from workbench.viewmodels.shown import Units, short_time
from workbench.viewmodels.step_lines import StepLine, step_lines

RUN_DRAFT = "blind_run"
GUESS_DRAFT = "blind_guess"
SPOILT = ("Disturbed on the way", "Fell or stopped", "Tyre lost air", "Lever was wrong")
TURNING = "in to closed, all the way out, in to closed again, then out to the number. Stop at the first firm contact"
LEVERING = "the lever to its firmest position, through all of them to the most open, back again, then to the one named"
PUMPING = "let out well below either value, then up to the number, then cycle the spring"
MOTIONS = (
    "The same motions before every run, also when nothing changes: {how}. Take about as long each time,"
    " out of the rider's sight and hearing. Touch nothing else, and tell the rider nothing."
)


class Side(StrEnum):
    """Whose screen it is."""

    DOOR = "door"  # nobody's: it shows nothing that either may not see
    HELPER = "helper"
    RIDER = "rider"
    GUESS = "guess"  # the rider's, once there is no run left


WHOSE = {Side.DOOR: "", Side.HELPER: ", the helper's screen", Side.RIDER: ", the rider's screen", Side.GUESS: ""}


@dataclass(frozen=True, slots=True)
class BlindRunDraft:
    """What has been entered of a run: what the helper ticked, what the rider rated. It says nothing of the order."""

    place: int = 0  # in the order: what was entered for another run holds for that one only
    is_riders: bool = False
    ticked: tuple[str, ...] = ()
    liking: int | None = None
    scores: Scores = ()
    lap: str = ""
    watch: str = ""  # when the stopwatch was started, while it runs
    note: str = ""
    ridden_at: str = ""

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> BlindRunDraft:
        """Read a kept draft."""
        known = {one.name for one in fields(cls)}
        kept = {name: value for name, value in json.loads(text).items() if name in known}
        return cls(**{**kept, "ticked": tuple(kept.get("ticked", ())), "scores": in_order(kept.get("scores", ()))})


@dataclass(frozen=True, slots=True)
class GuessDraft:
    """The guesses so far: for every pair the run taken for B, 0 the first, 1 the second, -1 not guessed yet."""

    is_stopping: bool = False
    guesses: tuple[int, ...] = ()

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> GuessDraft:
        """Read a kept draft."""
        kept = json.loads(text)
        return cls(bool(kept.get("is_stopping")), tuple(kept.get("guesses", ())))

    def guess(self, pair: int) -> int:
        """Give the guess for a pair."""
        return self.guesses[pair] if pair < len(self.guesses) else -1

    def with_guess(self, pair: int, which: int) -> GuessDraft:
        """Give the guesses with one more."""
        length = max(len(self.guesses), pair + 1)
        guesses = tuple(which if place == pair else self.guess(place) for place in range(length))
        return replace(self, guesses=guesses)


@dataclass(frozen=True, slots=True)
class BlindState:
    """A blind test under way. What the helper is to know is in it only while the helper holds the screen."""

    session_id: str
    side: Side
    title: str
    subtitle: str
    sealed: str
    place: int  # runs kept that count
    total: int
    setup_text: str = ""
    steps: tuple[StepLine, ...] = ()
    motions: str = ""
    draft: BlindRunDraft = BlindRunDraft()
    scores: tuple[ScoreRow, ...] = ()
    guess: GuessDraft = GuessDraft()
    pairs: int = 0  # ridden to the end
    response: str = "liking"  # what the test is judged by
    can_go_on: bool = False


def resolve_blind(
    records: BlindRecords,
    course: str,
    draft: BlindRunDraft,
    guess: GuessDraft,
    units: Units,
    *,
    helper_sees: bool,
) -> BlindState:
    """Lay the test out for whoever holds the screen."""
    total, place = len(records.plan.order), records.place
    ends = records.is_ridden or guess.is_stopping
    side = Side.GUESS if ends else Side.RIDER if draft.is_riders else Side.HELPER if helper_sees else Side.DOOR
    state = BlindState(
        session_id=records.session.id,
        side=side,
        title=f"Blind test on {course}",
        subtitle=f"Run {place + 1} of {total}{WHOSE[side]}" if place < total else f"All {total} runs are kept",
        sealed=f"Order fixed {short_time(records.plan.fixed_at)}. Fingerprint {short_print(records.plan.digest)}",
        place=place,
        total=total,
        response=records.session.response,
    )
    if side is Side.HELPER:
        return _for_helper(state, records, draft, units)
    if side is Side.RIDER:
        return replace(state, draft=replace(draft, ticked=()), scores=resolve_scores(draft.scores, records.parts))
    if side is Side.GUESS:
        pairs = len(pairs_of(records.runs))
        return replace(state, guess=guess, pairs=pairs, can_go_on=not records.is_ridden)
    return state


def _for_helper(state: BlindState, records: BlindRecords, draft: BlindRunDraft, units: Units) -> BlindState:
    letter = letter_at(records.plan, state.place)
    wanted = {(one.item, one.subject_id): records.values[letter][one.item, one.subject_id] for one in records.changes}
    lines = tuple(replace(line, remark="") for line in step_lines(steps_to(records.parts, wanted), units))
    return replace(
        state,
        setup_text=f"Setup no. {records.setups[letter].number}",
        steps=lines,
        motions=MOTIONS.format(how=_how(records)),
        draft=BlindRunDraft(place=draft.place, ticked=draft.ticked),
    )


def _how(records: BlindRecords) -> str:
    """Say the motions for what is under test."""
    if any(one.item != Item.ADJUSTER for one in records.changes):
        return PUMPING
    adjusters = [records.parts.adjuster(one.subject_id) for one in records.changes]
    return LEVERING if any(one is not None and is_lever(one) for one in adjusters) else TURNING


def short_print(digest: str) -> str:
    """Give the beginning of a fingerprint in groups, to be noted by hand."""
    return " ".join(digest[start : start + 4] for start in range(0, 16, 4))


def problem(draft: BlindRunDraft, response: str, units: Units) -> Problem | None:
    """Find what keeps the run from being kept: what the test is judged by is missing, or a time cannot be read."""
    try:
        read_lap(draft.lap, units)
    except InputError as error:
        return Problem(str(error), "blind_lap")
    if draft.watch:
        return Problem(WATCH_RUNS, "blind_lap")
    if response == "lap_s" and not draft.lap.strip():
        return Problem(LAP_MISSING, "blind_lap")
    if response != "lap_s" and draft.liking is None:
        return Problem("Rate the run first: how much was it liked, 1 to 9?", "blind_liking")
    return None


def run_of(draft: BlindRunDraft, units: Units, *, spoilt: str = "") -> Run:
    """Make the run; its setup and number are filled in by the deed."""
    return Run(
        id="",
        session_id="",
        number=0,
        setup_id="",
        ridden_at=draft.ridden_at,
        typed_at="",
        is_set_aside=bool(spoilt),
        set_aside_reason=spoilt,
        liking=None if spoilt else draft.liking,
        lap_s=None if spoilt else read_lap(draft.lap, units),
        note=str(check_field(field_of(Run, "note"), draft.note)) if draft.note.strip() else "",
    )

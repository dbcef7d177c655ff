"""Counting one adjuster: two stages, a draft kept at every click, and what the sheet says meanwhile."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, fields
from enum import IntEnum

from workbench.actions.adjusters import AdjusterRecords
from workbench.model.adjuster import PUSH_TESTS, Adjuster, RangeCount, adjuster_title, steps_text
from workbench.model.counting import MOST_STEPS, other_place, position_names, range_problem
from workbench.model.parts import BikeParts
from workbench.model.put_back import line_before_measuring
from workbench.model.setting import Item, OnBike
from workbench.viewmodels.base import Problem
from workbench.viewmodels.shown import position_text
from workbench.viewmodels.what_it_does import heading_of

UNPICKED = -1  # no named position is chosen yet
CARE = "Stop at the first firm contact: forcing ruins needles. The maker's manual comes first."
PUSH_TEST = "Push the bike down once closed and once open. If nothing differs, the damper needs a mechanic."
NOTHING_COUNTED = "Nothing is counted yet. Count while turning it in, or say that it was fully closed."
NAMES_MISSING = "Name its positions first, closed first, as in: firm | middle | open."
END_STROKE_TEST = (
    "It acts near the end of the travel only, where a push by hand seldom comes: nothing felt there says nothing."
    " Listen for it on a heavy hit."
)
PUSHES: tuple[str | None, ...] = (None, *PUSH_TESTS)  # what a draft keeps as a number
CLOSED_MEANS = {
    "rebound": "Closed is the slowest return.",
    "compression": "Closed is the firmest.",
    "lever": "Closed is the firmest.",
    "end_stroke": "Closed is the firmest.",
}


class Stage(IntEnum):
    """The two halves of counting an adjuster."""

    CLOSE = 1
    OPEN = 2


@dataclass(frozen=True, slots=True)
class CountDraft:
    """What has been counted so far.

    ``from_sequence`` is the adjuster's newest log line when counting began: a later one was written by this count.
    """

    from_sequence: int = 0
    counted_in: int = 0
    counted_out: int = 0
    push: int = 0  # an index of PUSHES

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> CountDraft:
        """Read a kept draft; what it does not know is left at its start."""
        kept = json.loads(text)
        known = {field.name for field in fields(cls)}
        return cls(**{name: int(value) for name, value in kept.items() if name in known})


@dataclass(frozen=True, slots=True)
class CountState:
    """The sheet while one adjuster is counted."""

    adjuster_id: str
    title: str
    stage: Stage
    instruction: str
    counting: str
    count: int | None  # None: no position is picked yet
    verb: str
    closes: str  # the way the drawing shows: clockwise, anticlockwise, or empty where nothing turns
    opens: bool = False  # whether the knob is being turned open
    drawing_note: str = ""
    asks_turn: bool = False
    counts: bool = True  # whether there is something to count or pick in this stage
    can_be_closed: bool = False  # nothing is counted: it may have been fully closed
    can_be_unknown: bool = False
    can_be_discarded: bool = False
    picks: tuple[str, ...] = ()
    as_found_text: str = ""
    care: str = CARE
    notes: tuple[str, ...] = ()
    last_kept: str = ""  # what was just kept of the adjuster before
    asks_push: bool = False  # whether a push test can tell anything, and is asked for now
    push: str | None = None
    about: str = ""  # the heading of the help that says what it does
    foot_key: int = 0  # a further key that counts one, as a foot switch sends it; 0: none


def full_title(parts: BikeParts, adjuster: Adjuster) -> str:
    """Name an adjuster with its unit: Fork low-speed rebound."""
    own = adjuster.name or adjuster_title(adjuster).lower()
    return f"{parts.unit_of(adjuster).kind.capitalize()} {own}"


def lower_title(parts: BikeParts, adjuster: Adjuster) -> str:
    """Name an adjuster with its unit inside a sentence: fork low-speed rebound."""
    title = full_title(parts, adjuster)
    return title[:1].lower() + title[1:]


def begun(records: AdjusterRecords, adjuster_id: str) -> CountDraft:
    """Give the empty draft of a count that begins now."""
    line, adjuster = records.latest(adjuster_id), records.parts.adjuster(adjuster_id)
    is_picked = adjuster is not None and adjuster.counting == "positions"
    return CountDraft(from_sequence=line.sequence if line else 0, counted_in=UNPICKED if is_picked else 0)


def stage_of(draft: CountDraft, adjuster: Adjuster, line: OnBike | None) -> Stage:
    """Read from the log how far a count is: the log is written by deeds, so that undo and a kill cannot disagree."""
    if line is None:
        return Stage.CLOSE
    if line.how == "closed":
        return Stage.OPEN
    is_ours = line.sequence > draft.from_sequence and line.how in ("counted", "unknown")
    # Only what is not turned in for counting may be opened without having stood closed.
    is_picked = adjuster.counting == "positions"
    return Stage.OPEN if is_picked and (is_ours or line.how == "opened") else Stage.CLOSE


def next_stage(stage: Stage) -> Stage | None:
    """Give the stage that follows; None after the last."""
    return Stage.OPEN if stage == Stage.CLOSE else None


def as_found_of(records: AdjusterRecords, adjuster_id: str) -> int | None:
    """Give where an adjuster stood before this count turned it; None if not known."""
    line = line_before_measuring(records.log, adjuster_id)
    return round(line.value) if line is not None and line.value is not None else None


def steps_out(adjuster: Adjuster, draft: CountDraft) -> int:
    """Give the range counted; named positions need no counting."""
    return len(position_names(adjuster)) - 1 if adjuster.counting == "positions" else draft.counted_out


def problem(
    draft: CountDraft, stage: Stage, adjuster: Adjuster, as_found: int | None, *, was_closed: bool = False
) -> Problem | None:
    """Say what stands in the way of keeping this stage.

    Nothing counted inwards is only taken when it is said: a key pressed twice must not pass for "fully closed".
    """
    if adjuster.counting == "positions":
        return _position_problem(draft, stage, len(position_names(adjuster)))
    if stage == Stage.OPEN:
        trouble = range_problem(adjuster, as_found, draft.counted_out)
        return Problem(trouble, "count") if trouble else None
    if draft.counted_in == 0 and not was_closed:
        return Problem(NOTHING_COUNTED, "count")
    return None


def _position_problem(draft: CountDraft, stage: Stage, names: int) -> Problem | None:
    if names < 2:
        return Problem(NAMES_MISSING, "position_names")
    if stage == Stage.CLOSE and not 0 <= draft.counted_in < names:
        return Problem("Choose where it stands, before it is moved.", "count")
    return None


def resolve_count(
    records: AdjusterRecords, adjuster: Adjuster, kept: CountDraft | None, last_kept: str = ""
) -> CountState:
    """Lay out the counting sheet of one adjuster; without a kept draft its count begins now."""
    draft = kept or begun(records, adjuster.id)
    line = records.latest(adjuster.id)
    stage = stage_of(draft, adjuster, line)
    stands_open = stage == Stage.CLOSE and line is not None and line.how == "opened"
    count = draft.counted_in if stage == Stage.CLOSE else draft.counted_out
    is_picked = adjuster.counting == "positions"
    names = position_names(adjuster)
    found_line = line_before_measuring(records.log, adjuster.id)
    is_found = found_line is not None and (stage == Stage.OPEN or stands_open)
    return CountState(
        adjuster_id=adjuster.id,
        title=full_title(records.parts, adjuster),
        stage=stage,
        instruction=_instruction(adjuster, stage, stands_open=stands_open),
        counting=adjuster.counting,
        count=None if is_picked and count < 0 else count,
        verb=_verb(adjuster, stage, count, names, stands_open=stands_open),
        closes="" if is_picked else "anticlockwise" if adjuster.closed_turn == "anticlockwise" else "clockwise",
        opens=stage == Stage.OPEN,
        drawing_note=_drawing_note(adjuster, stage),
        asks_turn=not is_picked and adjuster.closed_turn == "unknown",
        counts=not stands_open and not (is_picked and stage == Stage.OPEN),
        can_be_closed=stage == Stage.CLOSE and not stands_open and not is_picked and count == 0,
        can_be_unknown=stage == Stage.CLOSE and not stands_open,
        can_be_discarded=kept is not None,
        picks=names if stage == Stage.CLOSE else (),
        as_found_text=position_text(adjuster, found_line.value) if is_found and found_line is not None else "",
        care=CARE if stage == Stage.CLOSE and not is_picked else "",
        notes=_notes(records, adjuster, stage),
        last_kept=last_kept,
        asks_push=stage == Stage.OPEN and can_be_pushed(adjuster),
        push=push_of(draft),
        about=heading_of(Item.ADJUSTER, adjuster),
    )


def can_be_pushed(adjuster: Adjuster) -> bool:
    """Tell whether a push by hand reaches what this adjuster does."""
    return adjuster.kind != "end_stroke"


def push_of(draft: CountDraft) -> str | None:
    """Give what the push test showed, as far as it is entered."""
    return PUSHES[draft.push] if 0 <= draft.push < len(PUSHES) else None


def range_words(adjuster: Adjuster, steps: int) -> str:
    """Say a range in short."""
    return f"{steps + 1} positions" if adjuster.counting == "positions" else steps_text(adjuster, steps)


def range_text(adjuster: Adjuster, count: RangeCount) -> str:
    """Say a counted range, with how many places the knob can stand at."""
    if adjuster.counting == "positions":
        return f"{count.steps + 1} positions"
    if adjuster.counting == "turns":
        return steps_text(adjuster, count.steps)
    return f"{steps_text(adjuster, count.steps)}, {count.steps + 1} positions"


def _instruction(adjuster: Adjuster, stage: Stage, *, stands_open: bool) -> str:
    if adjuster.counting == "positions":
        if stage == Stage.CLOSE:
            return "Where does it stand? Choose before you move it."
        return "Move it to the open end and leave it there for sag."
    step = "quarter turn" if adjuster.counting == "turns" else "click"
    if stage == Stage.OPEN:
        return f"Now turn it out until it is fully open, and count each {step}. Leave it open for sag."
    turns = {"clockwise": " clockwise", "anticlockwise": " anticlockwise"}.get(adjuster.closed_turn, "")
    closed = CLOSED_MEANS.get(adjuster.kind, "")
    if stands_open:
        return f"It stands fully open. Turn it in{turns} until it is closed; there is no need to count. {closed}"
    return f"Turn it in{turns} until it is closed, and count each {step}. {closed}"


def _drawing_note(adjuster: Adjuster, stage: Stage) -> str:
    if adjuster.closed_turn == "unknown":
        return "usually: look at the knob's face"
    if stage == Stage.OPEN:
        return "out to the open end, without force"
    return "stop at first firm contact"


def _verb(adjuster: Adjuster, stage: Stage, count: int, names: tuple[str, ...], *, stands_open: bool) -> str:
    if adjuster.counting == "positions":
        if stage == Stage.CLOSE:
            return f"Keep as found: {names[count]}" if 0 <= count < len(names) else "Keep as found"
        return f"It stands at {names[-1]}" if names else "It stands open"
    if stands_open:
        return "It is closed"
    amount = steps_text(adjuster, count) if adjuster.counting == "turns" else f"{count}"
    if stage == Stage.OPEN:
        return f"Keep range {amount}" if count else "Keep range"
    return f"Keep as found {amount}" if count else "Keep as found"


def _notes(records: AdjusterRecords, adjuster: Adjuster, stage: Stage) -> tuple[str, ...]:
    notes = []
    other = records.parts.adjuster(adjuster.depends_on) if adjuster.depends_on else None
    if other is not None:
        words = lower_title(records.parts, other)
        notes.append(
            f"Turning it takes {words} along: that one is counted first and looked at again afterwards."
            if adjuster.depends_how == "drags"
            else f"Have {words} {other_place(adjuster, other)} meanwhile."
        )
    if adjuster.note:
        notes.append(adjuster.note)
    if stage == Stage.OPEN:
        if (before := records.parts.range_of(adjuster.id)) is not None:
            notes.append(f"Counted before: {range_text(adjuster, before)}.")
        notes.append(PUSH_TEST if can_be_pushed(adjuster) else END_STROKE_TEST)
    return tuple(notes)


def clamped(count: int, adjuster: Adjuster) -> int:
    """Give the count, kept within what a knob can have."""
    most = max(len(position_names(adjuster)) - 1, 0) if adjuster.counting == "positions" else MOST_STEPS
    return min(max(count, 0), most)

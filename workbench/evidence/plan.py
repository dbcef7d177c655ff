"""Which adjuster to work on next, at which end, and why.

Spring first, by travel used and bottom-outs, and only where that can be judged; then one adjuster at a time in a
fixed order that the rider may change. The thresholds are common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass, field

from workbench.evidence import search_words as words
from workbench.evidence.search import ClickSearch, Proposal, Trial
from workbench.model.errors import InputError

ORDER = (("rebound", "high"), ("rebound", "low"), ("compression", "low"), ("compression", "high"))
ENDS = ("front", "rear")
RIGHT_TRAVEL = (0.90, 1.0)  # share of travel used on a course with a heavy hit; common practice, no source
LITTLE_TRAVEL = 0.85  # under this after enough runs the spring holds too much; common practice, no source
ENOUGH_RUNS = 3
HARSH_CONTACTS = 2  # so many in one run ask for support near the end of the stroke; common practice, no source
_TASKS = {"less": "softer spring", "end_stroke_support": "more support near the end of the stroke"}


@dataclass(frozen=True, slots=True)
class KnobRuns:
    """One adjuster and the runs in which it, and nothing else, was moved.

    spring_moved_at is the number of those runs ridden before the spring of that end last moved; None if it did not.
    """

    key: str
    name: str
    end: str
    kind: str
    speed: str
    range_clicks: int
    current: int
    trials: tuple[Trial, ...] = ()
    low: int = field(default=0, kw_only=True)
    high: int | None = field(default=None, kw_only=True)
    spring_moved_at: int | None = field(default=None, kw_only=True)
    steps: words.Steps = field(default=words.CLICKS, kw_only=True)  # how its positions are said

    def __post_init__(self) -> None:
        if self.end not in ENDS:
            raise InputError("end", self.end, "front or rear")


@dataclass(frozen=True, slots=True)
class SpringRuns:
    """What the runs at the present spring setting used of one end's travel, and how often it hit the stop hard."""

    key: str
    end: str
    travel_used: tuple[float, ...] = ()  # share of full travel, run by run
    harsh_contacts: tuple[int, ...] = ()  # run by run
    rebound_sane: bool | None = None
    limited: str | None = None  # "minimum" or "maximum": the pressure or spring can go no further

    def __post_init__(self) -> None:
        if self.end not in ENDS:
            raise InputError("end", self.end, "front or rear")
        for share in self.travel_used:
            if not (math.isfinite(share) and 0.0 <= share <= 1.1):
                raise InputError("travel_used", share, "0 to 1.1 of full travel")


@dataclass(frozen=True, slots=True)
class KnobOutlook:
    """What one more run on an adjuster is expected to add, in points of liking."""

    key: str
    value: float
    settled: bool
    exhausted: str | None


@dataclass(frozen=True, slots=True)
class NextStep:
    """What to work on next: an adjuster with its proposal, a spring task, or neither when nothing is worth a run."""

    adjuster_key: str | None
    proposal: Proposal | None
    reason: str
    spring_task: str | None = None  # "less" or "end_stroke_support"
    remaining: tuple[KnobOutlook, ...] = ()


def next_step(
    knobs: Sequence[KnobRuns],
    springs: Sequence[SpringRuns] = (),
    *,
    course_has_heavy_hit: bool = False,
    working_on: str | None = None,
    put_aside: Collection[str] = (),
    order: Sequence[tuple[str, str]] = ORDER,
) -> NextStep:
    """Choose the next piece of work.

    Parameters
    ----------
    knobs, springs
        What is known of each; keys put aside by the rider are passed over.
    course_has_heavy_hit
        Travel used says something about the spring only on such a course.
    working_on
        Key of the adjuster moved last: it is finished before another is begun.
    order
        Kinds and speeds of adjusters, first to last; others come after, low-speed unless known otherwise.
    """
    open_knobs = [knob for knob in knobs if knob.key not in put_aside]
    proposals = {knob.key: propose_for(knob) for knob in open_knobs}
    remaining = tuple(
        KnobOutlook(key, proposal.value, proposal.settled, proposal.exhausted) for key, proposal in proposals.items()
    )
    for spring in _front_first(springs):
        task = spring_task(spring) if course_has_heavy_hit and spring.key not in put_aside else None
        if task:
            return NextStep(spring.key, None, _spring_reason(spring, task), task, remaining)
    unfinished = [knob for knob in open_knobs if not _is_finished(proposals[knob.key])]
    if not unfinished:
        return NextStep(None, None, _nothing_left(open_knobs, proposals), None, remaining)
    chosen = min(unfinished, key=lambda knob: (knob.key != working_on, *_rank(knob, order)))
    proposal = proposals[chosen.key]
    why = _why_this_one(chosen, working_on, unfinished)
    return NextStep(chosen.key, proposal, f"{why} {proposal.reason}", None, remaining)


def propose_for(knob: KnobRuns) -> Proposal:
    """The next position of one adjuster; the first run is ridden as the knob stands."""
    trials = knob.trials
    if knob.kind == "rebound" and knob.spring_moved_at is not None:
        trials = trials[knob.spring_moved_at :]
    search = ClickSearch(knob.range_clicks, low=knob.low, high=knob.high, steps=knob.steps)
    proposal = search.propose(trials)
    heard = any(not trial.warmup and not trial.confounded for trial in trials)
    if heard or not search.low <= knob.current <= search.high:
        return proposal
    here = words.place(knob.current, knob.range_clicks, knob.steps)
    reason = f"Ride it first as it stands, {here}: what follows is compared with that."
    return Proposal(knob.current, proposal.value, proposal.settled, None, reason)


def spring_task(spring: SpringRuns) -> str | None:
    """What the travel used asks of the spring: "less", "end_stroke_support", or nothing.

    Two or more harsh contacts in a run ask for support near the end of the stroke; less than 85 % of the travel
    after three runs asks for less spring. Without sane rebound nothing is asked: packing down looks like too soft
    a spring.
    """
    if not spring.rebound_sane:
        return None
    if sum(count >= HARSH_CONTACTS for count in spring.harsh_contacts) * 2 > len(spring.harsh_contacts):
        return "end_stroke_support" if spring.limited != "maximum" else None
    enough = len(spring.travel_used) >= ENOUGH_RUNS
    if enough and max(spring.travel_used[-ENOUGH_RUNS:]) < LITTLE_TRAVEL and spring.limited != "minimum":
        return "less"
    return None


def _front_first(springs: Sequence[SpringRuns]) -> list[SpringRuns]:
    return sorted(springs, key=lambda spring: ENDS.index(spring.end))


def _is_finished(proposal: Proposal) -> bool:
    return proposal.settled or proposal.exhausted is not None


def _rank(knob: KnobRuns, order: Sequence[tuple[str, str]]) -> tuple[int, int]:
    """Place in the order; the fork comes first among equals."""
    speed = knob.speed if knob.speed in ("low", "high") else "low"
    kinds = list(order)
    at = kinds.index((knob.kind, speed)) if (knob.kind, speed) in kinds else len(kinds)
    return at, ENDS.index(knob.end)


def _spring_reason(spring: SpringRuns, task: str) -> str:
    end = spring.end.capitalize()
    if task == "less":
        used = round(100 * max(spring.travel_used[-ENOUGH_RUNS:]))
        return (
            f"{end} spring first: the last {ENOUGH_RUNS} runs used at most {used} % of the travel on a course with a "
            f"heavy hit, where {round(100 * RIGHT_TRAVEL[0])} to 100 % is right. "
            f"Try a {_TASKS[task]}, and rebound again after."
        )
    return (
        f"{end} spring first: most runs hit the stop hard {HARSH_CONTACTS} times or more. It asks for "
        f"{_TASKS[task]} (a spacer, the second chamber, or a firmer spring), and rebound again after."
    )


def _why_this_one(knob: KnobRuns, working_on: str | None, unfinished: Sequence[KnobRuns]) -> str:
    title = f"{knob.end.capitalize()} {knob.name}"
    if knob.key == working_on:
        return f"{title}, one thing at a time until it is settled."
    if knob.kind == "rebound" and knob.spring_moved_at is not None:
        return f"{title} again, since the spring moved: a firmer spring returns faster, a softer one slower."
    if len(unfinished) == 1:
        return f"{title} is what is left."
    return f"{title} is next in order: springs, then rebound, then compression."


def _nothing_left(knobs: Sequence[KnobRuns], proposals: dict[str, Proposal]) -> str:
    if not knobs:
        return "There is no adjuster left to work on."
    used_up = [f"{knob.end} {knob.name}" for knob in knobs if proposals[knob.key].exhausted]
    most = max(proposals.values(), key=lambda proposal: proposal.value)
    text = f"Nothing left worth a run: one more on any adjuster is expected to add at most {most.value:.2f} points."
    if used_up:
        text += f" The range is used up on {', '.join(used_up)}: clicks cannot give more there."
    return text

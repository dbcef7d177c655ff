"""What to ride next: the proposal in the rider's words, and what may be chosen instead."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.actions.ride_evidence import knob_runs, spring_runs
from workbench.model.adjuster import Adjuster, adjuster_words, restore_text, steps_text
from workbench.model.baseline import baseline_question
from workbench.model.care import care_for
from workbench.model.counting import position_names
from workbench.model.errors import InputError
from workbench.model.facts import read_whole
from workbench.model.goals import GOALS, adjusters_for
from workbench.model.parts import ITEM_QUANTITIES, BikeParts, settable_items
from workbench.model.setting import GAUGE_KPA, PRESSURE_ITEMS, Item
from workbench.model.steps import relative_text
from workbench.viewmodels.shown import Units, position_text
from workbench.viewmodels.what_it_does import heading_of

if TYPE_CHECKING:
    from workbench.evidence.plan import NextStep

OVERRULES_TO_FOLLOW = 2  # after so many the rider leads and the tool follows
YOURS = "You went your own way twice, so the choice is yours: change what you like, one thing at a time. The runs say:"
ASK = "What are you after?"


@dataclass(frozen=True, slots=True)
class NextLook:
    """The proposal, ready to be drawn."""

    title: str = ""
    move: str = ""
    reason: str = ""
    verb: str = ""  # empty: there is nothing to set
    adjuster_id: str = ""
    about: str = ""  # the heading of the help that says what it does
    position: int = 0
    steps: int = 0
    now: int = 0
    follows_rider: bool = False
    used_up: tuple[str, ...] = ()  # adjusters whose range is used up, and what that could mean
    ask: str = ""  # what the rider is after is asked once the plan follows
    goals: tuple[tuple[str, str], ...] = ()
    goal: str = ""
    offers: tuple[tuple[str, str], ...] = ()  # adjusters that bear on it
    care: str = ""


@dataclass(frozen=True, slots=True)
class Choice:
    """Something that may be changed by hand: its key, title and what it stands at."""

    key: str
    title: str
    now: str
    unit: str
    about: str = ""  # the heading of the help that says what it does
    care: str = ""


def propose(records: RideRecords, *, working_on: str | None, put_aside: frozenset[str]) -> NextStep:
    """Ask the statistics for the next step."""
    from workbench.evidence.plan import next_step

    session = records.open_session
    return next_step(
        knob_runs(records),
        spring_runs(records),
        course_has_heavy_hit=session is not None and session.course.has_heavy_hit,
        working_on=working_on,
        put_aside=put_aside,
    )


def look_of(step: NextStep, records: RideRecords, *, overrules: int, goal: str = "") -> NextLook:
    """Say the proposal, what is used up, and what is asked of a rider who leads."""
    look = replace(_look_of(step, records, overrules=overrules), used_up=used_up(step, records))
    if not look.follows_rider:
        return look
    offers = tuple(
        (one.id, f"Work on {records.parts.unit_of(one).end} {adjuster_words(one)}")
        for one in adjusters_for(goal, records.parts)
    )
    return replace(look, ask=ASK, goals=tuple(GOALS.items()), goal=goal if goal in GOALS else "", offers=offers)


def used_up(step: NextStep, records: RideRecords) -> tuple[str, ...]:
    """Say which ranges are used up, and what that could mean."""
    from workbench.evidence.used_up import used_up_means

    said = []
    for one in step.remaining:
        adjuster = records.parts.adjuster(one.key)
        if adjuster is None or one.exhausted is None:
            continue
        title = f"{records.parts.unit_of(adjuster).end.capitalize()} {adjuster_words(adjuster)}"
        said.append(f"{title}: range used up, {one.exhausted} end. {used_up_means(adjuster.kind, one.exhausted)}")
    return tuple(said)


def _look_of(step: NextStep, records: RideRecords, *, overrules: int) -> NextLook:
    parts = records.parts
    follows = overrules >= OVERRULES_TO_FOLLOW
    adjuster = parts.adjuster(step.adjuster_key) if step.adjuster_key else None
    if adjuster is None or step.proposal is None:
        title = "Nothing left worth a run" if step.spring_task is None else "The spring first"
        return NextLook(title=title, reason=step.reason, follows_rider=follows)
    count = parts.range_of(adjuster.id)
    now = parts.value(Item.ADJUSTER, adjuster.id)
    position = step.proposal.position
    stays = now is not None and round(now) == position
    end = parts.unit_of(adjuster).end.capitalize()
    relative = "" if stays else relative_text(adjuster, now, position)
    is_said = now is not None and f"{steps_text(adjuster, abs(position - round(now)))} further" in step.reason
    reason = step.reason if is_said or not relative else f"{step.reason} ({relative})"
    return NextLook(
        title=f"{end} {adjuster_words(adjuster)}",
        move="ride it as it stands" if stays else restore_text(adjuster, position),
        reason=f"{YOURS} {reason}" if follows else reason,
        verb="" if stays else "It is set",
        adjuster_id=adjuster.id,
        about=heading_of(Item.ADJUSTER, adjuster),
        position=position,
        steps=count.steps if count else 0,
        now=round(now) if now is not None else 0,
        follows_rider=follows,
        care="" if stays else care_for(Item.ADJUSTER, adjuster),
    )


def choices(parts: BikeParts, units: Units) -> tuple[Choice, ...]:
    """List what may be changed by hand, in setting order."""
    found = []
    for item, subject_id in settable_items(parts):
        adjuster, quantity = parts.adjuster(subject_id), ITEM_QUANTITIES[item]
        value = parts.value(item, subject_id)
        now = position_text(adjuster, value) if adjuster else units.text(value, quantity)
        unit = _unit_of(adjuster) if adjuster else "" if quantity == "count" else units.unit(quantity)
        title, about = parts.subject_title(item, subject_id), heading_of(item, adjuster)
        found.append(Choice(f"{item}/{subject_id}", title, now, unit, about, care_for(item, adjuster)))
    return tuple(found)


def stands_already(records: RideRecords, item: tuple[str, str], value: float, units: Units) -> str:
    """Say that a pressure is no change: what was let out of a hot spring is missing only once it is cold.

    Empty where it is one, or where the bike stands as no setup says.
    """
    line, session = records.parts.line(*item), records.open_session
    if item[0] not in PRESSURE_ITEMS or records.current is None or session is None or line is None:
        return ""
    if line.value is None or line.temperature_c != session.session.temperature_c:
        return ""
    if abs(line.value - value) >= GAUGE_KPA:
        return ""
    return (
        f"It stands at {units.text(line.value, 'pressure')} already. If some was let out while it was hot, enter what"
        " remains once it is cold: Carry it over says how much."
    )


def read_choice(parts: BikeParts, key: str, text: str, units: Units) -> tuple[tuple[str, str], float]:
    """Read a change chosen by hand; InputError says what is allowed."""
    item, _, subject_id = key.partition("/")
    title, quantity = parts.subject_title(item, subject_id), ITEM_QUANTITIES[item]
    if item == Item.ADJUSTER:
        count = parts.range_of(subject_id)
        if count is None:
            raise InputError(title, text, "an adjuster that was counted", "Count its range on the adjusters' sheet.")
        return (item, subject_id), float(_position(parts.adjuster(subject_id), title, text, count.steps))
    value = float(read_whole(title, text, 0, 99)) if quantity == "count" else units.parse(text, quantity)
    refused = baseline_question(parts, item, subject_id, value, units)
    if refused:
        raise InputError(title, text, "within the maker's limits", refused)
    return (item, subject_id), value


def _names(adjuster: Adjuster | None) -> tuple[str, ...]:
    return position_names(adjuster) if adjuster is not None and adjuster.counting == "positions" else ()


def _unit_of(adjuster: Adjuster) -> str:
    """Say what a bare number means; where positions have names, those are typed."""
    return "by name" if _names(adjuster) else "from closed"


def _position(adjuster: Adjuster | None, title: str, text: str, steps: int) -> int:
    """Read a position by its name, or as steps from closed."""
    names = _names(adjuster)[: steps + 1]
    typed = " ".join(text.split()).casefold()
    named = next((place for place, name in enumerate(names) if name.casefold() == typed), None)
    if named is None and names and not typed.isdecimal():
        raise InputError(title, text, " or ".join(names))
    return read_whole(title, text, 0, steps) if named is None else named

"""The sentences of the sag stages."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.model.bike import Bike
from workbench.model.item_facts import ITEM_FIELDS, allowed_words
from workbench.model.parts import BikeParts
from workbench.model.sag import (
    METHOD_READINGS,
    REPEAT_LIMIT_MM,
    SETTLED,
    SagMeasurement,
    readings_agree,
    settled_gap_mm,
)
from workbench.model.sag_rules import SagRound
from workbench.model.setting import HOWS, Item
from workbench.model.steps import Step
from workbench.model.unit import Unit, Valve
from workbench.model.valves import order_words
from workbench.viewmodels.sag_advice import Advice, percent
from workbench.viewmodels.sag_draft import SagDraft, Stage, sag_fraction
from workbench.viewmodels.sag_ends import EndShown
from workbench.viewmodels.shown import Units, short_date

ORIGIN_WORDS = {
    "maker": "From the maker.",
    "common_practice": "Common practice, no source: change it where you know better.",
    "own": "Your own choice; kept for this rider on this unit.",
}
PLACE_HINTS = {"clicks": "from closed", "turns": "turns open", "positions": "named position"}
METHOD_NOTES = {
    "helper": "The helper holds the bars, then slides the indicator to the seal while the rider is still.",
    "rider": "The rider slides the indicator alone: a reading is off by about 0.7 mm, take three.",
    "alone": "Against a wall, nobody to read: a reading is off by about 1 mm, take three.",
    "length": (
        "No indicator: measure one length along the unit, wheel off the floor and with the rider on. "
        "The difference is the reading, off by about 1.5 mm: take three."
    ),
}


def keep_label(draft: SagDraft, unit: Unit, units: Units) -> str:
    """Name the deed that keeps the measuring."""
    sag = sag_fraction(draft, unit)
    if sag is None:
        return f"Keep {unit.end} sag"
    return f"Keep {unit.end} sag {units.text(draft.sag_mm, 'length')} ({percent(sag)})"


def origin_words(draft: SagDraft) -> str:
    """Say where the target comes from, and what it does not hold for."""
    if draft.target_origin == "common_practice" and draft.posture == "seated":
        return "Common practice for a standing rider, no source: for a seated one take the maker's figure."
    return ORIGIN_WORDS.get(draft.target_origin, "")


def count_link_words(waiting: list[str]) -> str:
    """Say which adjusters wait to be counted, as a link."""
    return f"Count {' and '.join(waiting)} at Adjusters" if waiting else ""


def spring_known_words(parts: BikeParts, unit: Unit, units: Units) -> str:
    """Say the pressure last known."""
    line = parts.line(Item.PRESSURE, unit.id)
    if unit.spring == "coil" or line is None or line.value is None:
        return ""
    return f"Last known: {units.text(line.value, 'pressure')} {HOWS.get(line.how, '')}, {short_date(line.at)}."


NOT_STATED = "The maker's lowest and highest pressure are not stated yet: look them up before you pump."
OWN_VALVES = (
    "Every chamber has its own valve: this is the main one. A valve of the damper's gas charge is not yours to touch."
)


def limit_words(unit: Unit, units: Units, valves: Sequence[Valve] = ()) -> str:
    """Say what the maker allows."""
    if unit.spring == "coil":
        most = "" if unit.preload_limit_mm is None else f" (at most {units.text(unit.preload_limit_mm, 'length')})"
        return (
            f"Preload from slack-free contact: half a turn to two turns, never more than the maker allows{most}."
            " The collar is never loose."
        )
    ends = (("at least", unit.minimum_kpa), ("at most", unit.maximum_kpa))
    stated = " and ".join(f"{word} {units.text(value, 'pressure')}" for word, value in ends if value is not None)
    others = "".join(
        f" {ITEM_FIELDS[item].label}: {said}."
        for item in (Item.SECOND_PRESSURE, Item.NEGATIVE_PRESSURE)
        if (said := allowed_words(item, unit, valves, units))
    )
    limits = f"The maker allows {stated}." if stated else NOT_STATED
    return f"{limits}{others} {OWN_VALVES}"


def lets_air_out(draft: SagDraft) -> bool:
    """Whether the pressure to set is lower than the one measured before."""
    before = draft.rounds[-1].pressure_kpa if draft.rounds else None
    return before is not None and draft.pressure_kpa is not None and draft.pressure_kpa < before


def cycle_words(unit: Unit) -> str:
    """Say how the spring is made to settle."""
    if unit.spring == "coil":
        return "Push the bike down a few times so that everything settles."
    second = f" {order_words(unit)}" if unit.has_second_positive else ""
    own = " The negative chamber has its own valve: fill it as the maker says." if unit.negative == "separate" else ""
    return (
        "Fill in steps. At each step cycle slowly through about 30\u2009% of travel, so that the chambers equalise;"
        f" also after letting air out.{second}{own}"
    )


_SETTLING = {
    "": "Bounce a few times and come to rest",
    "above": "From above: hold the bike up, let it sink slowly under the rider and come to rest without bouncing",
    "below": "From below: press it well down, let it rise slowly and come to rest without bouncing",
}


def instruction_words(bike: Bike, unit: Unit, draft: SagDraft) -> str:
    """Say how one reading is taken."""
    posture = "standing, attack position" if draft.posture == "standing" else "seated"
    motor = ", motor off" if bike.is_ebike else ""
    zero = "" if draft.readings_mm else "Lift the wheel off the floor once, indicator to the seal: that is zero. "
    return (
        f"{zero}Rider in full kit, {posture}, cranks level, brakes free{motor}. {_SETTLING[draft.next_way()]},"
        f" indicator to the seal. Get off without loading the {unit.end}, then measure."
    )


def entry_label_words(draft: SagDraft, units: Units) -> str:
    """Name the reading that comes next, and what the spring is set to."""
    words = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth")
    count = len(draft.readings_mm)
    setting = setting_words(draft.this_round(), units)
    at = f", {SETTLED[draft.next_way()]}" if draft.both_ways else f" at {setting}" if setting else ""
    return f"{words[count]} reading{at}" if count < len(words) else "No more readings"


def agreement_words(draft: SagDraft, unit: Unit, units: Units) -> str:
    """Say how far the readings lie apart and whether that suffices."""
    readings = draft.readings_mm
    if draft.both_ways:
        return _both_ways_words(draft, units)
    if len(readings) < 2:
        return ""
    spread = units.text(max(readings) - min(readings), "length")
    limit = units.text(REPEAT_LIMIT_MM[unit.kind], "length")
    if readings_agree(readings, unit.kind) and len(readings) < METHOD_READINGS.get(draft.method, 3):
        return f"Spread {spread}: close, but this way of reading is off by more. A third makes it surer."
    if readings_agree(readings, unit.kind):
        return f"Spread {spread}: two lie within {limit}, that suffices."
    if len(readings) == 2:
        return f"Spread {spread}: more than {limit} apart, take a third."
    return f"Spread {spread}: none within {limit} of another. The middle one is used; another reading helps."


def _both_ways_words(draft: SagDraft, units: Units) -> str:
    """Say what the readings of both ways come to."""
    gap_mm = settled_gap_mm(draft.readings_mm, draft.settled)
    if gap_mm is None:
        return ""
    apart = f"{units.text(abs(gap_mm), 'length')} apart" if gap_mm else "the same"
    return f"From above and below {apart}: the middle, {units.text(draft.sag_mm, 'length')}, is the reading."


def setting_words(one: SagRound, units: Units) -> str:
    """Say what the spring is set to."""
    if one.pressure_kpa is not None:
        negative = "" if one.negative_kpa is None else f", negative {units.text(one.negative_kpa, 'pressure')}"
        return f"{units.text(one.pressure_kpa, 'pressure')}{negative}"
    if one.rate_n_per_mm is None:
        return ""
    preload = f", preload {units.text(one.preload_mm, 'length')}" if one.preload_mm else ""
    return f"{units.text(one.rate_n_per_mm, 'spring_rate')}{preload}"


def put_back_words(has_draft: bool, put_back: tuple[Step, ...]) -> str:
    """Say what to do with the put-back list."""
    if not put_back:
        return "Nothing stands open from measuring."
    if has_draft:
        return "The sag is not kept yet. Put these back only if you stop here; they stay due until ticked."
    return "Turn each back and tick it. What is left for later stays due on the job line."


def kept_words(kept: SagMeasurement | None, units: Units) -> str:
    """Say what was kept last."""
    if kept is None:
        return ""
    return f"Kept: {units.text(kept.sag_mm, 'length')} ({percent(kept.sag_mm / kept.travel_mm)})."


def spring_ask_words(unit: Unit, draft: SagDraft, units: Units) -> str:
    """Say what to do with the spring at this stage."""
    if unit.spring == "coil":
        if draft.rounds:
            return f"Fit {setting_words(draft.this_round(), units)}. Take preload from slack-free contact."
        return "Read the rate off the spring and the preload off the collar."
    if draft.rounds and draft.pressure_kpa is not None:
        return f"Set {units.text(draft.pressure_kpa, 'pressure')}, read the gauge and put in what it shows."
    beside = " Below it, rate and preload of the coil, as far as they are known." if unit.spring == "air_coil" else ""
    return f"Attach the pump and read what is in there. Let nothing out yet.{beside}"


def verbs(
    stage: Stage,
    draft: SagDraft,
    unit: Unit,
    advice: Advice | None,
    units: Units,
    *,
    has_draft: bool,
    other: EndShown | None,
    is_all_back: bool,
) -> tuple[str, str]:
    """Give what the verb and the second button say at a stage."""
    if stage == Stage.PREPARE:
        return "Next: spring", ""
    if stage == Stage.SPRING:
        return "Next: measure", ""
    if stage == Stage.MEASURE:
        return "Next: what follows", ""
    if stage == Stage.ADVICE:
        keep = keep_label(draft, unit, units)
        if advice is not None and advice.chosen is not None:
            return advice.options[advice.chosen].verb, keep
        return keep, "Measure again"
    if has_draft:
        return "Go on measuring", ""
    goes_on = other is not None and other.is_due
    verb = other.verb if other is not None and goes_on else "Back to both ends"
    return verb, "" if is_all_back or not goes_on else "Leave for later"

"""One end's measuring as it is shown, stage by stage."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.sag import SagRecords
from workbench.model.adjuster import Adjuster, adjuster_title, steps_text
from workbench.model.parts import BikeParts
from workbench.model.sag import (
    REPEAT_LIMIT_MM,
    TARGET_ORIGINS,
    centre_mm,
    readings_agree,
)
from workbench.model.sag_rules import Band, SagRound, maker_band, practice_band
from workbench.model.setting import HOWS, Item
from workbench.model.steps import Step
from workbench.model.unit import Unit
from workbench.viewmodels.sag_advice import Advice, band_text, percent
from workbench.viewmodels.sag_draft import STAGE_WORDS, SagDraft, Stage, Typed, sag_fraction
from workbench.viewmodels.sag_ends import EndShown, Ruler, end_title, travel_words
from workbench.viewmodels.shown import Units, position_text, short_date

GENERAL_METHOD_NOTE = {
    "helper": "A helper steadies the bike and slides the indicator to the seal.",
    "rider": "The rider slides the indicator alone: readings scatter more, take three.",
    "alone": "Against a wall, nobody to read: readings scatter more, take three.",
}


@dataclass(frozen=True, slots=True)
class AdjusterShown:
    """One adjuster in the preparation."""

    adjuster_id: str
    title: str
    status: str
    is_ready: bool
    asks_place: bool = False  # where it stood is not on record
    can_open: bool = False


@dataclass(frozen=True, slots=True)
class RoundShown:
    """One round that is done: what was set and what it gave."""

    setting: str
    sag: str


@dataclass(frozen=True, slots=True)
class ReadingShown:
    """One reading of the round under way."""

    number: int
    text: str


@dataclass(frozen=True, slots=True)
class PutBackShown:
    """One adjuster that goes back to its place."""

    title: str
    text: str
    relative: str


@dataclass(frozen=True, slots=True)
class GuideShown:
    """One end's measuring, at one stage."""

    end: str
    title: str
    stage: int
    stage_words: str
    kind: str
    is_air: bool
    has_draft: bool
    posture: str
    method: str
    method_note: str
    draft: SagDraft
    typed: tuple[Typed, ...]
    units: Units
    origin_words: str
    maker_words: str  # empty when the maker's band is not known
    practice_words: str
    question: str
    adjusters: tuple[AdjusterShown, ...]
    count_link: str
    spring_known: str
    has_second: bool
    limits: str
    cycle_words: str
    instruction: str
    entry_label: str
    readings: tuple[ReadingShown, ...]
    agreement: str
    rounds: tuple[RoundShown, ...]
    ruler: Ruler
    advice: Advice | None
    keep_verb: str
    put_back: tuple[PutBackShown, ...]
    put_back_note: str
    next_verb: str
    other_end: str  # the end to switch to, empty when there is none
    other_verb: str


def adjusters_shown(records: SagRecords, unit: Unit) -> tuple[AdjusterShown, ...]:
    """Say of every adjuster of a unit whether it is counted, on record and open."""
    return tuple(_adjuster_shown(records, adjuster) for adjuster in records.parts.adjusters_of(unit.id))


def _adjuster_shown(records: SagRecords, adjuster: Adjuster) -> AdjusterShown:
    parts = records.parts
    line, count = parts.line(Item.ADJUSTER, adjuster.id), parts.range_of(adjuster.id)
    is_recorded = adjuster.id in records.recorded
    is_open = line is not None and (line.how == "opened" or (count is not None and line.value == count.steps))
    words = [f"range {steps_text(adjuster, count.steps)}" if count and adjuster.counting != "positions" else ""]
    if is_open:
        words.append("stands open")
    elif line is not None:
        words.append(f"stands {position_text(adjuster, line.value)}" if line.value is not None else "place not known")
    if count is None:
        words.append("not counted yet")
    if not is_recorded:
        words.append("where it stood is not on record")
    return AdjusterShown(
        adjuster_id=adjuster.id,
        title=adjuster_title(adjuster),
        status=", ".join(word for word in words if word),
        is_ready=is_open and is_recorded,
        asks_place=not is_recorded and not is_open,
        can_open=is_recorded and not is_open,
    )


def guide_shown(
    records: SagRecords,
    unit: Unit,
    draft: SagDraft,
    *,
    has_draft: bool,
    question: str,
    advice: Advice | None,
    put_back: tuple[Step, ...],
    other: EndShown | None,
    units: Units,
) -> GuideShown:
    """Lay out one end's measuring at the stage it stands at."""
    stage = Stage(draft.stage)
    adjusters = adjusters_shown(records, unit)
    band = draft.band()
    return GuideShown(
        end=unit.end,
        title=f"{end_title(unit)} sag",
        stage=stage,
        stage_words=f"Step {stage} of {len(Stage)}: {STAGE_WORDS[stage]}",
        kind=unit.kind,
        is_air=unit.spring != "coil",
        has_draft=has_draft,
        posture=draft.posture,
        method=draft.method,
        method_note=GENERAL_METHOD_NOTE[draft.method],
        draft=draft,
        typed=draft.typed,
        units=units,
        origin_words=TARGET_ORIGINS.get(draft.target_origin, ""),
        maker_words=_choice_words(maker_band(unit)),
        practice_words=_choice_words(practice_band(records.parts.bike, unit)),
        question=f"{travel_words(unit, units)}: {question}" if question else "",
        adjusters=adjusters,
        count_link=_count_link(adjusters),
        spring_known=_spring_known(records.parts, unit, units),
        has_second=unit.has_second_positive,
        limits=_limit_words(unit, units),
        cycle_words=_cycle_words(unit),
        instruction=_instruction(unit, draft),
        entry_label=_entry_label(draft),
        readings=tuple(
            ReadingShown(number, units.text(one, "length")) for number, one in enumerate(draft.readings_mm, 1)
        ),
        agreement=_agreement(draft, unit, units),
        rounds=tuple(_round_shown(one, unit, units) for one in draft.rounds),
        ruler=_guide_ruler(draft, unit, band, advice, units),
        advice=advice,
        keep_verb=keep_label(draft, unit, units),
        put_back=tuple(PutBackShown(step.title, step.text, step.relative) for step in put_back),
        put_back_note=_put_back_note(has_draft, put_back),
        next_verb=_next_verb(stage),
        other_end=other.end if other else "",
        other_verb=other.verb if other else "",
    )


def keep_label(draft: SagDraft, unit: Unit, units: Units) -> str:
    """Name the deed that keeps the measuring."""
    sag = sag_fraction(draft, unit)
    if sag is None:
        return f"Keep {unit.end} sag"
    return f"Keep {unit.end} sag {units.text(centre_mm(draft.readings_mm), 'length')} ({percent(sag)})"


def _choice_words(band: Band | None) -> str:
    return "" if band is None else band_text(band)


def _count_link(adjusters: tuple[AdjusterShown, ...]) -> str:
    waiting = [one.title.lower() for one in adjusters if "not counted" in one.status]
    return f"Count {' and '.join(waiting)} at Adjusters" if waiting else ""


def _spring_known(parts: BikeParts, unit: Unit, units: Units) -> str:
    line = parts.line(Item.PRESSURE, unit.id)
    if unit.spring == "coil" or line is None or line.value is None:
        return ""
    return f"Last known: {units.text(line.value, 'pressure')} {HOWS.get(line.how, '')}, {short_date(line.at)}."


def _limit_words(unit: Unit, units: Units) -> str:
    if unit.spring == "coil":
        most = "" if unit.preload_limit_mm is None else f" (at most {units.text(unit.preload_limit_mm, 'length')})"
        return (
            f"Preload from slack-free contact: half a turn to two turns, never more than the maker allows{most}."
            " The collar is never loose."
        )
    ends = (("at least", unit.minimum_kpa), ("at most", unit.maximum_kpa))
    stated = " and ".join(f"{word} {units.text(value, 'pressure')}" for word, value in ends if value is not None)
    if not stated:
        return "The maker's lowest and highest pressure are not stated yet: look them up before you pump."
    return f"The maker allows {stated}. Use the main valve; a valve of the damper's gas charge is not yours to touch."


def _cycle_words(unit: Unit) -> str:
    if unit.spring == "coil":
        return "Push the bike down a few times so that everything settles."
    second = " Fill the second chamber in the maker's order." if unit.has_second_positive else ""
    own = " The negative chamber has its own valve: fill it as the maker says." if unit.negative == "separate" else ""
    return (
        "Fill in steps. At each step cycle slowly through about 30\u2009% of travel, so that the chambers equalise;"
        f" also after letting air out.{second}{own}"
    )


def _instruction(unit: Unit, draft: SagDraft) -> str:
    posture = "standing over the bike, attack position" if draft.posture == "standing" else "seated"
    place = "front" if unit.end == "front" else "rear"
    return (
        f"Full kit, {posture}, cranks level, brakes free. Bounce gently, come to rest, indicator to the seal."
        f" Get off without loading the {place}; measure from the seal to the indicator."
    )


def _entry_label(draft: SagDraft) -> str:
    words = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth")
    count = len(draft.readings_mm)
    return f"{words[count]} reading" if count < len(words) else "No further reading"


def _agreement(draft: SagDraft, unit: Unit, units: Units) -> str:
    readings = draft.readings_mm
    if len(readings) < 2:
        return ""
    spread = units.text(max(readings) - min(readings), "length")
    limit = units.text(REPEAT_LIMIT_MM[unit.kind], "length")
    if readings_agree(readings, unit.kind):
        return f"Spread {spread}: two lie within {limit}, that suffices."
    if len(readings) == 2:
        return f"Spread {spread}: more than {limit} apart, take a third."
    return f"Spread {spread}: none within {limit} of another. The middle one is used; another reading helps."


def _round_shown(one: SagRound, unit: Unit, units: Units) -> RoundShown:
    if one.pressure_kpa is not None:
        setting = units.text(one.pressure_kpa, "pressure")
    else:
        preload = f", preload {units.text(one.preload_mm, 'length')}" if one.preload_mm else ""
        setting = f"{units.text(one.rate_n_per_mm, 'spring_rate')}{preload}"
    sag_mm = centre_mm(one.readings_mm)
    share = f" ({percent(sag_mm / unit.travel_mm)})" if unit.travel_mm else ""
    return RoundShown(setting, f"{units.text(sag_mm, 'length')}{share}")


def _guide_ruler(draft: SagDraft, unit: Unit, band: Band | None, advice: Advice | None, units: Units) -> Ruler:
    travel = unit.travel_mm or 1.0
    earlier = tuple(centre_mm(one.readings_mm) for one in draft.rounds)
    sag = sag_fraction(draft, unit)
    return Ruler(
        travel_mm=travel,
        low_mm=band.low * travel if band else 0.0,
        high_mm=band.high * travel if band else 0.0,
        band_words=f"target {band_text(band)} ({TARGET_ORIGINS.get(band.origin, '')})" if band else "",
        ticks_mm=(*earlier, *draft.readings_mm),
        sag_mm=None if sag is None else sag * travel,
        sag_words="" if sag is None else percent(sag),
        predicted_mm=advice.predicted_mm if advice else None,
        title=travel_words(unit, units),
    )


def _put_back_note(has_draft: bool, put_back: tuple[Step, ...]) -> str:
    if not put_back:
        return "Nothing stands open from measuring."
    if has_draft:
        return "The sag is not kept yet. Put these back only if you stop here; they stay due until ticked."
    return "Turn each back and tick it. What is left for later stays due on the job line."


def _next_verb(stage: Stage) -> str:
    return {Stage.PREPARE: "Next: spring", Stage.SPRING: "Next: measure", Stage.MEASURE: "Next: what follows"}.get(
        stage, ""
    )

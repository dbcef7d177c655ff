"""One end's measuring as it is shown, stage by stage."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.sag import SagRecords, rows_of
from workbench.model.adjuster import Adjuster, adjuster_title, steps_text
from workbench.model.care import VENTING
from workbench.model.sag import SETTLED
from workbench.model.sag_rules import Band, SagRound, maker_band, practice_band
from workbench.model.setting import Item
from workbench.model.steps import Step
from workbench.model.unit import Unit
from workbench.viewmodels.sag_advice import Advice, band_text, percent
from workbench.viewmodels.sag_draft import STAGE_WORDS, SagDraft, Stage, Typed
from workbench.viewmodels.sag_drawn import Drawing, drawing_at, guide_ruler
from workbench.viewmodels.sag_ends import EndShown, Ruler, end_title, last_kept, travel_words
from workbench.viewmodels.sag_friction import FrictionShown, friction_shown
from workbench.viewmodels.sag_history import History
from workbench.viewmodels.sag_preload import TurnsShown, turns_shown
from workbench.viewmodels.sag_pump import hose_words, pump_choices
from workbench.viewmodels.sag_start import start_words
from workbench.viewmodels.sag_words import (
    PLACE_HINTS,
    agreement_words,
    count_link_words,
    cycle_words,
    entry_label_words,
    instruction_words,
    kept_words,
    lets_air_out,
    limit_words,
    origin_words,
    put_back_words,
    setting_words,
    spring_ask_words,
    spring_known_words,
    verbs,
)
from workbench.viewmodels.shown import Units, position_text
from workbench.viewmodels.wheel import wheel_sag_words


@dataclass(frozen=True, slots=True)
class AdjusterShown:
    """One adjuster in the preparation."""

    adjuster_id: str
    title: str
    status: str
    is_ready: bool
    is_counted: bool = False
    place: int = 0  # its number on the unit, for names of fields
    place_hint: str = ""
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
    way: str = ""  # settled from above or from below


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
    has_coil: bool
    has_draft: bool
    posture: str
    method: str
    draft: SagDraft
    typed: tuple[Typed, ...]
    units: Units
    origin_words: str
    maker_words: str  # empty when the maker's band is not known
    practice_words: str
    question: str
    adjusters: tuple[AdjusterShown, ...]
    count_link: str
    asks_as_they_stand: bool
    prepare_care: str
    spring_ask: str
    spring_known: str
    pumps: tuple[tuple[str, str], ...]
    hose: str  # what the gauge says against the last reading
    has_second: bool
    has_negative: bool
    limits: str
    cycle_words: str
    instruction: str
    entry_label: str
    readings: tuple[ReadingShown, ...]
    agreement: str
    friction: FrictionShown
    wheel_words: str
    history: History
    rounds: tuple[RoundShown, ...]
    ruler: Ruler
    drawing: Drawing
    advice: Advice | None
    kept_words: str
    put_back: tuple[PutBackShown, ...]
    put_back_note: str
    put_back_care: str
    verb: str
    second: str
    can_go_back: bool
    other_end: str  # the end to switch to, empty when there is none
    other_verb: str
    preload: TurnsShown  # of a coil, beside its length


def adjusters_shown(records: SagRecords, unit: Unit) -> tuple[AdjusterShown, ...]:
    """Say of every adjuster of a unit whether it is counted, on record and open."""
    adjusters = records.parts.adjusters_of(unit.id)
    return tuple(_adjuster_shown(records, adjuster, place) for place, adjuster in enumerate(adjusters, 1))


def _adjuster_shown(records: SagRecords, adjuster: Adjuster, place: int) -> AdjusterShown:
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
        words.append("not counted")
    if not is_recorded:
        words.append("place not on record")
    return AdjusterShown(
        adjuster_id=adjuster.id,
        title=adjuster_title(adjuster),
        status=", ".join(word for word in words if word),
        is_ready=is_open and is_recorded,
        is_counted=count is not None,
        place=place,
        place_hint=PLACE_HINTS[adjuster.counting],
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
    history: History,
) -> GuideShown:
    """Lay out one end's measuring at the stage it stands at."""
    stage = Stage(draft.stage)
    verb, second = verbs(stage, draft, unit, advice, units, has_draft=has_draft, other=other, is_all_back=not put_back)
    adjusters = adjusters_shown(records, unit)
    band = draft.band()
    ways = (*draft.settled, *("" for _ in draft.readings_mm))
    return GuideShown(
        end=unit.end,
        title=_title(records, unit),
        stage=stage,
        stage_words=f"Step {stage} of {len(Stage)}: {STAGE_WORDS[stage]}",
        kind=unit.kind,
        is_air=unit.spring != "coil",
        has_coil=unit.spring != "air",
        has_draft=has_draft,
        posture=draft.posture,
        method=draft.method,
        draft=draft,
        typed=draft.typed,
        units=units,
        origin_words=origin_words(draft),
        maker_words=_choice_words(maker_band(unit)),
        practice_words=_choice_words(practice_band(records.parts.bike, unit)),
        question=f"{travel_words(unit, units)}: {question}" if question else "",
        adjusters=adjusters,
        count_link=count_link_words([one.title.lower() for one in adjusters if not one.is_counted]),
        asks_as_they_stand=any(not one.is_ready for one in adjusters),
        prepare_care="A helper steadies the bike while the rider gets on, is measured and gets off.",
        spring_ask=spring_ask_words(unit, draft, units),
        spring_known=" ".join(
            words
            for words in (
                spring_known_words(records.parts, unit, units),
                start_words(records, unit, draft.band(), units),
            )
            if words
        ),
        pumps=pump_choices(records),
        hose=hose_words(records, unit, draft, units),
        has_second=unit.has_second_positive,
        has_negative=unit.negative == "separate",
        limits=limit_words(unit, units, records.parts.valves) + (f" {VENTING}" if lets_air_out(draft) else ""),
        cycle_words=cycle_words(unit),
        instruction=instruction_words(records.parts.bike, unit, draft),
        entry_label=entry_label_words(draft, units),
        readings=tuple(
            ReadingShown(place, units.text(one, "length"), SETTLED.get(way, ""))
            for place, (one, way) in enumerate(zip(draft.readings_mm, ways, strict=False), 1)
        ),
        agreement=agreement_words(draft, unit, units),
        friction=_friction(records, unit, draft) if draft.readings_mm else FrictionShown(),
        wheel_words=wheel_sag_words(records, unit, draft.sag_mm if draft.readings_mm else None, units),
        history=history,
        rounds=tuple(_round_shown(one, unit, units) for one in draft.rounds),
        ruler=guide_ruler(draft, unit, band, advice, units),
        drawing=drawing_at(stage, unit, draft, units),
        advice=advice,
        kept_words=kept_words(last_kept(records, unit), units) if not has_draft else "",
        put_back=tuple(PutBackShown(step.title, step.text, step.relative) for step in put_back),
        put_back_note=put_back_words(has_draft, put_back),
        put_back_care="Before riding: levers and knobs where they belong, roll-out check, a gentle first run.",
        verb=verb,
        second=second,
        can_go_back=has_draft and stage != Stage.PREPARE,
        other_end=other.end if other and has_draft else "",
        other_verb=f"To the {other.end}" if other else "",
        preload=turns_shown(draft, unit, units),
    )


def _friction(records: SagRecords, unit: Unit, draft: SagDraft) -> FrictionShown:
    return friction_shown(draft.this_round(), unit, rows_of(records, unit, draft.rate_n_per_mm))


def _title(records: SagRecords, unit: Unit) -> str:
    """Name the end, and the rider where there are several."""
    rider = f", {records.rider.name}" if records.rider and len(records.parts.riders) > 1 else ""
    return f"{end_title(unit)} sag{rider}"


def _choice_words(band: Band | None) -> str:
    return "" if band is None else band_text(band)


def _round_shown(one: SagRound, unit: Unit, units: Units) -> RoundShown:
    sag_mm = one.sag_mm
    share = f" ({percent(sag_mm / unit.travel_mm)})" if unit.travel_mm else ""
    return RoundShown(setting_words(one, units), f"{units.text(sag_mm, 'length')}{share}")

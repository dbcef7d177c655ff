"""A sag measuring in the making: what has been entered, at which stage, and what is still wrong with it."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field, fields, replace
from enum import IntEnum
from typing import Any

from workbench.model.errors import InputError
from workbench.model.sag import settled_centre_mm
from workbench.model.sag_rules import Band, SagRound
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.viewmodels.base import Problem
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import as_meant

MOST_READINGS = 9


class Stage(IntEnum):
    """The stages of one end's measuring."""

    PREPARE = 1
    SPRING = 2
    MEASURE = 3
    ADVICE = 4
    PUT_BACK = 5


STAGE_WORDS = {
    Stage.PREPARE: "prepare",
    Stage.SPRING: "spring",
    Stage.MEASURE: "measure",
    Stage.ADVICE: "what next",
    Stage.PUT_BACK: "put back",
}

# Quantities that are typed: field, quantity, label, lowest and highest value that is not refused.
TYPED: dict[str, tuple[str, str, float, float]] = {
    "target_low": ("fraction", "Sag, from", 0.02, 0.6),
    "target_high": ("fraction", "Sag, to", 0.02, 0.6),
    "pressure_kpa": ("pressure", "Pressure", 7.0, 3500.0),
    "again_kpa": ("pressure", "Attached again, it shows", 7.0, 3500.0),
    "second_kpa": ("pressure", "Second chamber", 7.0, 3500.0),
    "negative_kpa": ("pressure", "Negative chamber", 0.0, 3500.0),
    "temperature_c": ("temperature", "Temperature", -40.0, 60.0),
    "spacers": ("count", "Volume spacers", 0.0, 30.0),
    "rate_n_per_mm": ("spring_rate", "Spring rate", 1.0, 500.0),
    "preload_mm": ("length", "Preload", 0.0, 50.0),
    "spring_stroke_mm": ("length", "Usable stroke of the spring", 10.0, 200.0),
    "reading": ("length", "Reading", 0.1, 400.0),
}
FIELDS_OF = {
    Stage.PREPARE: ("target_low", "target_high"),
    Stage.SPRING: (
        "pressure_kpa",
        "again_kpa",
        "second_kpa",
        "negative_kpa",
        "temperature_c",
        "spacers",
        "rate_n_per_mm",
        "preload_mm",
        "spring_stroke_mm",
    ),
    Stage.MEASURE: ("reading",),
    Stage.ADVICE: (),
    Stage.PUT_BACK: (),
}


@dataclass(frozen=True, slots=True)
class Typed:
    """Text in a field that is not yet a value: as typed, and the unit a bare number was meant in."""

    name: str
    text: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class SagDraft:
    """Everything entered so far for one end. Numbers are in internal units."""

    stage: int = Stage.PREPARE
    rider_id: str = ""  # who is measured, also when another rider's setup lies open by now
    posture: str = "standing"
    method: str = "helper"
    target_low: float | None = None
    target_high: float | None = None
    target_origin: str = "common_practice"
    travel_confirmed: bool = False
    as_they_stand: bool = False  # measure although adjusters are not open
    pressure_kpa: float | None = None
    pressure_how: str = "as_pumped"
    pump_id: str = ""
    again_kpa: float | None = None  # what the same pump shows when it is taken off and attached again
    second_kpa: float | None = None
    negative_kpa: float | None = None
    temperature_c: float | None = None
    spacers: int | None = None
    rate_n_per_mm: float | None = None
    table_rate: float | None = None  # the rate that stands for a spring at hand with a table, once it was taken
    preload_mm: float | None = None
    spring_stroke_mm: float | None = None
    readings_mm: tuple[float, ...] = ()
    both_ways: bool = False  # read settled from above and from below, which shows friction
    settled: tuple[str, ...] = ()  # above or below, one a reading, as long as both ways are read
    measured_at: str = ""
    move_confirmed: bool = False
    rounds: tuple[SagRound, ...] = ()
    typed: tuple[Typed, ...] = field(default=())

    def text(self, name: str) -> Typed | None:
        """Give what stands typed in a field."""
        return next((one for one in self.typed if one.name == name), None)

    def with_text(self, name: str, text: str | None, unit: str = "") -> SagDraft:
        """Note what is typed in a field; None forgets it."""
        others = tuple(one for one in self.typed if one.name != name)
        return replace(self, typed=others if text is None else (*others, Typed(name, text, unit)))

    def band(self) -> Band | None:
        """Give the target band if both its ends are known."""
        if self.target_low is None or self.target_high is None:
            return None
        low, high = sorted((self.target_low, self.target_high))
        return Band(low, high, self.target_origin, self.posture)

    def this_round(self) -> SagRound:
        """Give the round under way."""
        return SagRound(
            readings_mm=self.readings_mm,
            posture=self.posture,
            method=self.method,
            measured_at=self.measured_at,
            pressure_kpa=self.pressure_kpa,
            pressure_how=self.pressure_how,
            pump_id=self.pump_id,
            second_kpa=self.second_kpa,
            negative_kpa=self.negative_kpa,
            temperature_c=self.temperature_c,
            spacers=self.spacers,
            rate_n_per_mm=self.rate_n_per_mm,
            is_table=self.table_rate is not None and self.rate_n_per_mm == self.table_rate,
            preload_mm=self.preload_mm,
            settled=self.settled,
        )

    @property
    def sag_mm(self) -> float:
        """The sag the readings under way tell."""
        return settled_centre_mm(self.readings_mm, self.settled)

    def next_way(self) -> str:
        """Say how the next reading is to be settled: the way with fewer readings, from above first; empty for any."""
        if not self.both_ways:
            return ""
        return "below" if self.settled.count("below") < self.settled.count("above") else "above"

    def all_rounds(self) -> tuple[SagRound, ...]:
        """Give the rounds with readings, the one under way last."""
        return (*self.rounds, self.this_round()) if self.readings_mm else self.rounds


def to_json(draft: SagDraft) -> str:
    """Write a draft down."""
    return json.dumps(asdict(draft), ensure_ascii=False, sort_keys=True)


def from_json(body: str) -> SagDraft:
    """Read a draft back; entries this version does not know are left out."""
    data: dict[str, Any] = json.loads(body) if body else {}
    data["rounds"] = tuple(_round(one) for one in data.get("rounds", ()))
    data["typed"] = tuple(Typed(**_known(Typed, one)) for one in data.get("typed", ()))
    data["readings_mm"] = tuple(data.get("readings_mm", ()))
    data["settled"] = tuple(data.get("settled", ()))
    return SagDraft(**_known(SagDraft, data))


def _round(data: dict[str, Any]) -> SagRound:
    tuples = {"readings_mm": tuple(data["readings_mm"]), "settled": tuple(data.get("settled", ()))}
    return SagRound(**{**_known(SagRound, data), **tuples})


def _known(record_type: type, data: dict[str, Any]) -> dict[str, Any]:
    names = {one.name for one in fields(record_type)}
    return {name: value for name, value in data.items() if name in names}


def next_stage(draft: SagDraft, stage: Stage) -> Stage:
    """Give the stage after this one."""
    return Stage(min(stage + 1, Stage.PUT_BACK))


def stage_before(draft: SagDraft, stage: Stage) -> Stage:
    """Give the stage before this one."""
    return Stage(max(stage - 1, Stage.PREPARE))


def stage_to_go_on(draft: SagDraft) -> Stage:
    """Give the stage an entry goes on at after a look at another one."""
    if draft.readings_mm:
        return Stage.ADVICE
    has_spring = draft.pressure_kpa is not None or (draft.rate_n_per_mm is not None and draft.rounds)
    return Stage.MEASURE if has_spring else Stage.PREPARE


def read_typed(name: str, text: str, units: Units) -> float | None:
    """Read a typed value within its limits; empty text is no value."""
    quantity, label, low, high = TYPED[name]
    if not text.strip():
        return None
    try:
        value = units.parse(text, quantity)
    except InputError as error:
        raise InputError(label, error.value, error.allowed) from None
    if not low <= value <= high:
        raise InputError(label, text, f"{units.text(low, quantity)} to {units.text(high, quantity)}")
    return int(value) if quantity == "count" else value


def settle(draft: SagDraft, stage: Stage, units: Units) -> tuple[SagDraft, Problem | None]:
    """Take what stands typed in a stage's fields as their values; what cannot be read stays, with its problem."""
    for name in FIELDS_OF[stage]:
        typed = draft.text(name)
        if typed is None or name == "reading":
            continue
        try:
            value = read_typed(name, with_unit(typed, units), units)
        except InputError as error:
            return draft, Problem(str(error), name)
        draft = with_value(draft.with_text(name, None), name, value)
    return draft, None


def with_value(draft: SagDraft, name: str, value: Any) -> SagDraft:
    """Set one entry by its name."""
    return replace(draft, **{name: value})


def with_unit(typed: Typed, units: Units) -> str:
    """Give typed text as it was meant, also when somebody reading other units has come to the bench since."""
    return as_meant(typed.text, typed.unit, units.unit(TYPED[typed.name][0]))


def first_draft(unit: Unit, rider_id: str, band: Band, values: dict[str, float | None]) -> SagDraft:
    """Begin an entry from what is known of the bike."""
    spacers = values.get(Item.SPACERS)
    return SagDraft(
        rider_id=rider_id,
        posture=band.posture,
        target_low=band.low,
        target_high=band.high,
        target_origin=band.origin,
        pressure_kpa=None,  # read afresh: what was pumped last time is not what is in there now
        second_kpa=None,
        negative_kpa=None,
        spacers=None if spacers is None else round(spacers),
        rate_n_per_mm=values.get(Item.SPRING_RATE),
        preload_mm=values.get(Item.PRELOAD),
        spring_stroke_mm=unit.spring_stroke_mm,
    )


def sag_fraction(draft: SagDraft, unit: Unit) -> float | None:
    """Give the sag of the round under way as a fraction of the unit's own travel."""
    if not draft.readings_mm or not unit.travel_mm:
        return None
    return draft.sag_mm / unit.travel_mm

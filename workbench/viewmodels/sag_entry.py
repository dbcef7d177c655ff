"""How a sag entry changes: each function takes a draft and gives the next one."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from workbench.model.adjuster import Adjuster, adjuster_title
from workbench.model.errors import InputError
from workbench.model.sag_rules import Band
from workbench.model.unit import Unit
from workbench.viewmodels.base import Problem
from workbench.viewmodels.sag_advice import Option
from workbench.viewmodels.sag_draft import MOST_READINGS, SagDraft, Stage, read_typed, with_unit, with_value
from workbench.viewmodels.shown import Units

MOST_STEPS = 400


def with_entry(draft: SagDraft, name: str, value: Any) -> SagDraft:
    """Take one entry. A figure of the band makes it the rider's own; another posture begins another round."""
    changed = with_value(draft.with_text(name, None), name, value)
    if name in ("target_low", "target_high"):
        changed = replace(changed, target_origin="own")
    if name == "posture" and draft.readings_mm and value != draft.posture:
        changed = replace(changed, rounds=draft.all_rounds(), readings_mm=(), settled=(), measured_at="")
    if name == "both_ways" and value != draft.both_ways:  # readings so far were taken the other way
        rounds = draft.all_rounds() if draft.readings_mm else draft.rounds
        changed = replace(changed, rounds=rounds, readings_mm=(), settled=(), measured_at="")
    return changed


def aimed_at(draft: SagDraft, band: Band) -> SagDraft:
    """Take a band as the target."""
    draft = draft.with_text("target_low", None).with_text("target_high", None)
    return replace(draft, target_low=band.low, target_high=band.high, target_origin=band.origin)


def with_reading(draft: SagDraft, unit: Unit, units: Units, now: str) -> tuple[SagDraft, Problem | None]:
    """Take the reading that stands typed, or say why it cannot be one."""
    typed = draft.text("reading")
    if typed is None or not typed.text.strip():
        return draft, Problem("Type the distance from the seal to the indicator.", "reading")
    if len(draft.readings_mm) >= MOST_READINGS:
        return draft, Problem("That is enough readings; remove one to take another.", "reading")
    try:
        value = read_typed("reading", with_unit(typed, units), units)
    except InputError as error:
        return draft, Problem(str(error), "reading")
    travel_mm = unit.travel_mm or 0.0
    if value is None or value > travel_mm:
        whole = units.text(travel_mm, "length")
        return draft, Problem(f"Reading: more than the whole travel, {whole}. Measure from the seal.", "reading")
    way = draft.next_way()
    draft = replace(
        draft.with_text("reading", None),
        readings_mm=(*draft.readings_mm, value),
        settled=(*draft.settled, way) if way else (),
        measured_at=now,
        move_confirmed=False,
    )
    return draft, None


def without_reading(draft: SagDraft, index: int) -> SagDraft:
    """Take one reading of the round under way out."""
    if not 0 <= index < len(draft.readings_mm):
        return draft
    readings = draft.readings_mm[:index] + draft.readings_mm[index + 1 :]
    settled = draft.settled[:index] + draft.settled[index + 1 :]
    return replace(draft, readings_mm=readings, settled=settled, move_confirmed=False)


def next_round(draft: SagDraft, option: Option | None) -> SagDraft:
    """Begin another round with what was advised, or with the same spring; the readings stay as a round."""
    draft = replace(
        draft,
        rounds=draft.all_rounds(),
        readings_mm=(),
        settled=(),
        measured_at="",
        move_confirmed=False,
        stage=int(Stage.SPRING),
    )
    if option is None:
        return draft
    for name in ("pressure_kpa", "rate_n_per_mm", "preload_mm"):
        value = getattr(option, name)
        if value is not None:
            draft = with_value(draft.with_text(name, None), name, value)
    if option.pressure_kpa is not None:
        draft = replace(draft, pressure_how="as_pumped")
    if option.rate_n_per_mm is not None:
        table_rate = option.rate_n_per_mm if option.is_table else None
        draft = replace(draft, spring_stroke_mm=option.spring_stroke_mm, table_rate=table_rate)
    return draft


def read_place(adjuster: Adjuster, text: str, units: Units) -> int | None:
    """Read where an adjuster stood, in steps from closed; empty text says that nobody knows."""
    words = text.strip()
    if not words:
        return None
    title = adjuster_title(adjuster)
    if adjuster.counting == "positions":
        names = [name.strip().casefold() for name in adjuster.position_names.split("|") if name.strip()]
        if words.casefold() not in names:
            raise InputError(title, text, " or ".join(names) or "one of its named positions")
        return names.index(words.casefold())
    if adjuster.counting == "turns":
        quarters = units.parse(words, "turns") * 4
        if abs(quarters - round(quarters)) > 1e-9 or not 0 <= quarters <= MOST_STEPS:
            raise InputError(title, text, "turns from closed in quarters, as 1 1/4")
        return round(quarters)
    if not words.isascii() or not words.isdigit() or int(words[:9]) > MOST_STEPS:
        raise InputError(title, text, f"a whole number of clicks from closed, 0 to {MOST_STEPS}")
    return int(words)

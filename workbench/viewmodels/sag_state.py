"""The state of the sag sheet, made from what is on record and what is under way."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.sag import SagRecords
from workbench.model.sag_rules import travel_question
from workbench.model.steps import Step
from workbench.viewmodels.sag_draft import SagDraft
from workbench.viewmodels.sag_ends import EndShown, end_shown
from workbench.viewmodels.sag_guide import GuideShown, guide_shown
from workbench.viewmodels.sag_history import History, history_of
from workbench.viewmodels.sag_open import Opened, advice_of, earlier_of, steps_of
from workbench.viewmodels.shown import Units


@dataclass(frozen=True, slots=True)
class SagState:
    """The sag sheet."""

    rider_words: str = ""
    blocked: str = ""
    ends: tuple[EndShown, ...] = ()
    put_back_words: str = ""
    put_back_end: str = ""
    guide: GuideShown | None = None


def resolve(
    records: SagRecords,
    drafts: dict[str, SagDraft | None],
    opened: Opened | None,
    steps: tuple[Step, ...],
    units: Units,
) -> SagState:
    """Lay out both ends, and the stages of the one that lies open."""
    if records.rider is None:
        return SagState(blocked="Sag belongs to a rider. Choose who rides this bike first.")
    ends = _ends(records, drafts, units)
    return SagState(
        rider_words=_rider_words(records, units),
        ends=ends,
        put_back_words=_put_back_words(steps),
        put_back_end=next((unit.end for unit in records.parts.units if steps_of(records, unit, steps)), ""),
        guide=None if opened is None else _guide(opened, steps, ends, units),
    )


def _ends(records: SagRecords, drafts: dict[str, SagDraft | None], units: Units) -> tuple[EndShown, ...]:
    shown = [end_shown(records, unit, drafts.get(unit.id), units) for unit in records.parts.units]
    first = next((place for place, end in enumerate(shown) if end.is_due and not end.blocked), None)
    return tuple(replace(end, is_next=place == first) for place, end in enumerate(shown))


def _guide(opened: Opened, steps: tuple[Step, ...], ends: tuple[EndShown, ...], units: Units) -> GuideShown:
    other = next((end for end in ends if end.end != opened.unit.end and not end.blocked), None)
    advice = advice_of(opened, units)
    is_asked = advice is not None
    return guide_shown(
        opened.records,
        opened.unit,
        opened.draft,
        has_draft=opened.draft_id is not None,
        question=travel_question(opened.unit, opened.records.parts.bike),
        advice=advice,
        history=history_of(opened.draft, opened.unit, earlier_of(opened), advice, units) if is_asked else History(),
        put_back=steps_of(opened.records, opened.unit, steps),
        other=other,
        units=units,
    )


def _rider_words(records: SagRecords, units: Units) -> str:
    rider = records.rider
    if rider is None:
        return ""
    mass = "mass not stated" if rider.mass_kg is None else f"{units.text(rider.mass_kg, 'mass')} ready to ride"
    return f"{rider.name}, {mass}"


def _put_back_words(steps: tuple[Step, ...]) -> str:
    if not steps:
        return ""
    names = ", ".join(step.title.lower() for step in steps)
    return f"Standing open from measuring: {names}. Put back before riding."

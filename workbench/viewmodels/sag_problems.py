"""What keeps a stage of a sag measuring from being done: one sentence, and the field it is about."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.item_facts import ITEM_FIELDS, allowed_words, maker_limits
from workbench.model.sag import REPEAT_LIMIT_MM, SETTLED, readings_agree, settled_gap_mm
from workbench.model.sag_rules import coil_bind_short_mm
from workbench.model.setting import Item
from workbench.model.unit import Unit, Valve
from workbench.viewmodels.base import Problem
from workbench.viewmodels.sag_draft import SagDraft, Stage
from workbench.viewmodels.shown import Units

ENOUGH_READINGS = 3  # from here on the median is taken as it is


@dataclass(frozen=True, slots=True)
class Subject:
    """What the measuring is about, as far as problems depend on it."""

    unit: Unit
    question: str = ""  # about stroke or wheel travel
    unready: tuple[str, ...] = ()  # adjusters not standing open
    valves: tuple[Valve, ...] = ()

    @property
    def is_air(self) -> bool:
        """Tell whether the spring is set with a pump."""
        return self.unit.spring != "coil"


def problem(draft: SagDraft, stage: Stage, subject: Subject, units: Units) -> Problem | None:
    """Say what keeps a stage from being done, if anything."""
    return _PROBLEMS[stage](draft, subject, units)


def _prepare(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    if subject.question and not draft.travel_confirmed:
        return Problem(f"{subject.question} Tick that it is right, or correct it in the garage.", "travel_confirmed")
    if draft.target_low is None:
        return Problem("Say from how much sag on it is right; the usual figures are one key away.", "target_low")
    if draft.target_high is None:
        return Problem("Say up to how much sag it is right.", "target_high")
    if draft.target_low > draft.target_high:
        starts, ends = (units.text(one, "fraction") for one in (draft.target_low, draft.target_high))
        return Problem(f"Sag, to: {ends} lies below where the band begins, {starts}. Swap the two.", "target_high")
    if subject.unready and not draft.as_they_stand:
        names = ", ".join(subject.unready)
        return Problem(f"Not standing open: {names}. Open them, or tick to measure all the same.", "as_they_stand")
    return None


def _spring(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    if not subject.is_air:
        return _coil(draft, subject, units)
    wrong = _air(draft, subject, units)
    has_coil = subject.unit.spring == "air_coil"
    return wrong if wrong is not None or not has_coil else _fits(draft, subject, units)


def _air(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    unit = subject.unit
    if draft.pressure_kpa is None:
        return Problem("Read the pressure that is in there now; advice starts from it.", "pressure_kpa")
    for item, value, name in (
        (Item.PRESSURE, draft.pressure_kpa, "pressure_kpa"),
        (Item.SECOND_PRESSURE, draft.second_kpa, "second_kpa"),
        (Item.NEGATIVE_PRESSURE, draft.negative_kpa, "negative_kpa"),
    ):
        said = _beyond(item, value, subject, units)
        if said:
            return Problem(said, name)
    if draft.second_kpa is not None and draft.second_kpa <= draft.pressure_kpa:
        second, main = (units.text(one, "pressure") for one in (draft.second_kpa, draft.pressure_kpa))
        said = f"Second chamber: {second} is not above the {main} of the main one. Fill in the maker's order."
        return Problem(said, "second_kpa")
    if draft.spacers is not None and unit.spacer_limit is not None and draft.spacers > unit.spacer_limit:
        said = f"Volume spacers: {draft.spacers} are too many. Allowed in this {unit.kind} is 0 to {unit.spacer_limit}."
        return Problem(said, "spacers")
    return None


def _beyond(item: Item, value: float | None, subject: Subject, units: Units) -> str:
    """Say that a pressure lies beyond what the maker allows, with the field and the range."""
    low, high = maker_limits(item, subject.unit, subject.valves)
    is_above = value is not None and high is not None and value > high + 0.5
    is_below = value is not None and low is not None and value < low - 0.5
    if not is_above and not is_below:
        return ""
    end, verb = ("Above the highest", "Let air out") if is_above else ("Below the lowest", "Add air")
    allowed = allowed_words(item, subject.unit, subject.valves, units)
    label = ITEM_FIELDS[item].label
    return f"{label}: {end.lower()} pressure allowed for this {subject.unit.kind}. Allowed is {allowed}. {verb}."


def _coil(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    if draft.rate_n_per_mm is None:
        return Problem(
            "The rate is printed on the spring: of 450x57 type 450, and 57 mm as its usable stroke.", "rate_n_per_mm"
        )
    return _fits(draft, subject, units)


def _fits(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    """Say whether preload and stroke of the coil are beyond what they may be."""
    unit, preload = subject.unit, draft.preload_mm or 0.0
    if unit.preload_limit_mm is not None and preload > unit.preload_limit_mm + 1e-9:
        is_at, most = units.text(preload, "length"), units.text(unit.preload_limit_mm, "length")
        said = f"Preload: {is_at} is more preload than the maker allows, 0 to {most}. Turn the collar back."
        return Problem(said, "preload_mm")
    short = coil_bind_short_mm(draft.spring_stroke_mm, unit.travel_mm or 0.0, preload)
    if short > 0 and draft.spring_stroke_mm is not None:
        has, needs = units.text(draft.spring_stroke_mm, "length"), units.text(draft.spring_stroke_mm + short, "length")
        return Problem(
            f"Coil bind: this spring gives way by {has}, stroke and preload need {needs}. Do not ride it;"
            " fit a longer-stroke spring.",
            "spring_stroke_mm",
        )
    return None


def _measure(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    limit = units.text(REPEAT_LIMIT_MM[subject.unit.kind], "length")
    if draft.both_ways:
        return _both_ways(draft, subject, units)
    if not draft.readings_mm:
        return Problem("Type the first reading, then Enter.", "reading")
    if len(draft.readings_mm) == 1:
        return Problem("Measure once more: a slip shows only beside a second reading.", "reading")
    if not readings_agree(draft.readings_mm, subject.unit.kind) and len(draft.readings_mm) < ENOUGH_READINGS:
        return Problem(f"The two lie more than {limit} apart. Take a third.", "reading")
    return None


def _both_ways(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    gap_mm = settled_gap_mm(draft.readings_mm, draft.settled)
    if gap_mm is None:
        way = SETTLED[draft.next_way()]
        return Problem(f"Type the reading settled {way}, then Enter; it takes one of each.", "reading")
    if gap_mm < -REPEAT_LIMIT_MM[subject.unit.kind]:
        return Problem(
            f"Settled from below the sag is the larger one, here it is {units.text(-gap_mm, 'length')} less. Remove the"
            " reading that is wrong and take it again.",
            "reading",
        )
    return None


def _nothing(draft: SagDraft, subject: Subject, units: Units) -> Problem | None:
    return None


_PROBLEMS = {
    Stage.PREPARE: _prepare,
    Stage.SPRING: _spring,
    Stage.MEASURE: _measure,
    Stage.ADVICE: _measure,
    Stage.PUT_BACK: _nothing,
}

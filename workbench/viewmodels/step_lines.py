"""Steps of a setup in the words of the person at the bench."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.model.care import OPENING_SHORT
from workbench.model.setting import Item, is_on_other_hardware
from workbench.model.steps import Step
from workbench.viewmodels.shown import Units


@dataclass(frozen=True, slots=True)
class StepLine:
    """One step ready to be drawn."""

    key: str
    text: str
    remark: str = ""


def step_key(step: Step) -> str:
    """Give the name of a step within its list."""
    return f"{step.item}/{step.subject_id}"


def step_line(step: Step, units: Units) -> StepLine:
    """Say one step: where, what to do, and in small print the move from where it stands."""
    key = step_key(step)
    if step.text:
        return StepLine(key, f"{step.title}: {step.text}", step.relative)
    remark = (
        f"now {units.text(step.before, step.quantity)}" if step.before is not None else "not known what is there now"
    )
    if step.item == Item.SPACERS:
        number = round(step.value)
        return StepLine(key, f"{step.title}: {'none' if number == 0 else number}", f"{remark}; {OPENING_SHORT}")
    return StepLine(key, f"{step.title}: {units.text(step.value, step.quantity)}", remark)


def step_lines(steps: tuple[Step, ...], units: Units) -> tuple[StepLine, ...]:
    """Say all steps in order."""
    return tuple(step_line(step, units) for step in steps)


def not_restored(values: Mapping[tuple[str, str], float | None]) -> str:
    """Say what of a setup no step brings back; empty when there is nothing."""
    if not any(is_on_other_hardware(subject_id) for _, subject_id in values):
        return ""
    return "Its clicks that were counted on earlier hardware are not restored: write a new baseline for those."

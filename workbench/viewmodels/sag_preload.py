"""Preload of a coil in two entries: as a length from slack-free contact, and as turns of the collar."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.model.coil import pitch_of, preload_of_turns_mm, turns_of
from workbench.model.errors import InputError
from workbench.model.unit import Unit
from workbench.model.units import to_unit
from workbench.viewmodels.base import Problem
from workbench.viewmodels.coil_typed import finely
from workbench.viewmodels.sag_draft import TYPED, SagDraft, Stage, read_typed, with_unit
from workbench.viewmodels.shown import Units

LENGTH, TURNS = "preload_mm", "preload_turns"
_DECIMALS = {"mm": 2, "cm": 4, "in": 4}  # enough to give the turns back; three could be read as a grouping


@dataclass(frozen=True, slots=True)
class TurnsShown:
    """Preload in turns: the value, the most that can be typed, and what one turn moves."""

    turns: float | None = None
    most_turns: float = 0.0
    pitch: str = ""
    typed: str | None = None  # text that is no number of turns, as it was left


def turns_shown(draft: SagDraft, unit: Unit, units: Units) -> TurnsShown:
    """Give the preload that stands in the other entry, typed or taken, as turns."""
    preload_mm = draft.preload_mm
    typed, left = draft.text(LENGTH), draft.text(TURNS)
    if typed is not None:
        try:
            preload_mm = read_typed(LENGTH, with_unit(typed, units), units)
        except InputError:
            preload_mm = None
    pitch = finely(pitch_of(unit), units)
    origin = "a turn" if unit.preload_pitch_mm else "a turn is assumed; state it in the garage"
    return TurnsShown(
        turns=None if preload_mm is None else round(turns_of(preload_mm, unit), 2),
        most_turns=turns_of(TYPED[LENGTH][3], unit),
        pitch=f"{pitch} {origin}.",
        typed=left.text if left is not None else None,
    )


def length_text(turns: float, unit: Unit, units: Units) -> str:
    """Write turns of the collar as the length that would be typed for them."""
    decimals = _DECIMALS[units.length]
    shown = f"{to_unit(preload_of_turns_mm(turns, unit), 'length', units.length):.{decimals}f}"
    return f"{shown.rstrip('0').rstrip('.')} {units.length}"


def with_turns(draft: SagDraft, text: str, unit: Unit, units: Units) -> SagDraft:
    """Take turns of the collar as the length they make; text that is no number of turns is kept as typed."""
    if not text.strip():
        return replace(draft.with_text(LENGTH, None).with_text(TURNS, None), preload_mm=None)
    try:
        turns = units.parse(text, "turns")
    except InputError:
        return draft.with_text(TURNS, text)
    return draft.with_text(TURNS, None).with_text(LENGTH, length_text(turns, unit, units), units.length)


def turns_problem(draft: SagDraft, stage: Stage, units: Units) -> Problem | None:
    """Say what is wrong with turns that were left as no number, unless the length was typed since."""
    left = draft.text(TURNS)
    if stage != Stage.SPRING or left is None:
        return None
    try:
        units.parse(left.text, "turns")
    except InputError as error:
        return Problem(str(InputError("Turns of the collar", left.text, error.allowed)), TURNS)
    return None

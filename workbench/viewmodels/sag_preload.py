"""Preload of a coil in two entries: as a length from slack-free contact, and as turns of the collar."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.coil import pitch_of, preload_of_turns_mm, turns_of
from workbench.model.errors import InputError
from workbench.model.unit import Unit
from workbench.model.units import to_unit
from workbench.viewmodels.coil_typed import finely
from workbench.viewmodels.sag_draft import TYPED, SagDraft, read_typed, with_unit
from workbench.viewmodels.shown import Units

LENGTH = "preload_mm"
_DECIMALS = {"mm": 2, "cm": 4, "in": 4}  # enough to give the turns back; three could be read as a grouping


@dataclass(frozen=True, slots=True)
class TurnsShown:
    """Preload in turns: the value, the most that can be typed, and what one turn moves."""

    turns: float | None = None
    most_turns: float = 0.0
    pitch: str = ""


def turns_shown(draft: SagDraft, unit: Unit, units: Units) -> TurnsShown:
    """Give the preload that stands in the other entry, typed or taken, as turns."""
    preload_mm = draft.preload_mm
    typed = draft.text(LENGTH)
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
    )


def length_text(turns: float, unit: Unit, units: Units) -> str:
    """Write turns of the collar as the length that would be typed for them."""
    decimals = _DECIMALS[units.length]
    shown = f"{to_unit(preload_of_turns_mm(turns, unit), 'length', units.length):.{decimals}f}"
    return f"{shown.rstrip('0').rstrip('.')} {units.length}"

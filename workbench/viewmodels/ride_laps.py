"""A run's lap time as it is typed: a time, or a word that a recorder has it."""

from __future__ import annotations

from workbench.model.errors import InputError
from workbench.model.responses import check_lap
from workbench.viewmodels.shown import Units

ON_TRACK = "track"  # typed where the recorder has the time: it is read from the track afterwards
LAP_MISSING = f"Type the lap time first: this session is judged by it. If a recorder has it, type {ON_TRACK}."


def read_lap(text: str, units: Units) -> float | None:
    """Read a lap time [s]; None where there is none, or none yet. InputError says what cannot be read."""
    typed = text.strip()
    if not typed or typed.casefold() == ON_TRACK:
        return None
    try:
        return check_lap(units.parse(typed, "duration"), typed)
    except InputError as error:
        raise InputError("Lap time", typed, error.allowed) from error

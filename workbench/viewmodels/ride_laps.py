"""A run's lap time as it is typed: a time, or a word that a recorder has it."""

from __future__ import annotations

from datetime import datetime

from workbench.model.errors import InputError
from workbench.model.responses import check_lap, lap_text
from workbench.viewmodels.shown import Units

ON_TRACK = "track"  # typed where the recorder has the time: it is read from the track afterwards
LAP_MISSING = f"Type the lap time first: this session is judged by it. If a recorder has it, type {ON_TRACK}."


WATCH_RUNS = "The watch is still running: stop it, then keep the run."


def watch_text(begun: str, now: str) -> str:
    """Say how long a watch has been running, as a lap time; empty when it is not."""
    if not begun:
        return ""
    seconds = (datetime.fromisoformat(now) - datetime.fromisoformat(begun)).total_seconds()
    return lap_text(max(seconds, 0.0))


def read_lap(text: str, units: Units) -> float | None:
    """Read a lap time [s]; None where there is none, or none yet. InputError says what cannot be read."""
    typed = text.strip()
    if not typed or typed.casefold() == ON_TRACK:
        return None
    try:
        return check_lap(units.parse(typed, "duration"), typed)
    except InputError as error:
        raise InputError("Lap time", typed, error.allowed) from error

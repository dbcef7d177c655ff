"""Coil springs as records: the pairs of a progressive one, and preload as a length and as turns of the collar."""

from __future__ import annotations

import json
from collections.abc import Sequence

from workbench.model.sag_rules import USUAL_PITCH_MM
from workbench.model.unit import SPRING_HOWS, Spring, Unit

Rows = tuple[tuple[float, float], ...]  # travel from slack-free contact and force


def curve_text(rows: Sequence[tuple[float, float]]) -> str:
    """Write the pairs of a progressive spring as they are stored."""
    return json.dumps([[float(travel), float(force)] for travel, force in rows])


def curve_rows(spring: Spring) -> Rows:
    """Give the pairs of a progressive spring; none for one of a single rate."""
    pairs = json.loads(spring.curve) if spring.curve else []
    return tuple((float(travel), float(force)) for travel, force in pairs)


def how_known(spring: Spring) -> str:
    """Say how the rate of a spring is known."""
    return SPRING_HOWS.get(spring.how or "printed", SPRING_HOWS["printed"])


def pitch_of(unit: Unit) -> float:
    """Give what one turn of the collar moves: as stated for the unit, else the usual pitch."""
    return unit.preload_pitch_mm or USUAL_PITCH_MM


def turns_of(preload_mm: float, unit: Unit) -> float:
    """Give preload from slack-free contact as turns of the collar."""
    return preload_mm / pitch_of(unit)


def preload_of_turns_mm(turns: float, unit: Unit) -> float:
    """Give turns of the collar from slack-free contact as a length."""
    return turns * pitch_of(unit)

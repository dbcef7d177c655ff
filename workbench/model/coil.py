"""Coil springs as records: the pairs of a progressive one, and preload as a length and as turns of the collar."""

from __future__ import annotations

import json
from collections.abc import Collection, Sequence

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


def fitted_rows(unit: Unit, springs: Sequence[Spring], table_rates: Collection[float], rate: float | None) -> Rows:
    """Give the pairs of the progressive spring a rate on the bike stands for; none where it is a spring of one rate.

    Parameters
    ----------
    springs
        Those at hand for the unit.
    table_rates
        Rates that were noted on the unit by fitting a spring with a table, each force over compression somewhere in it.
    rate
        The rate on the bike, or the one a sag was measured with [N/mm].
    """
    if rate is None or rate not in table_rates:
        return ()
    curved = [(spring, curve_rows(spring)) for spring in springs if spring.unit_id == unit.id and spring.curve]
    found = [(spring, rows) for spring, rows in curved if _has_rate(rows, rate)]
    found.sort(key=lambda one: one[0].stroke_mm != unit.spring_stroke_mm)  # fitting notes the usable stroke as well
    return found[0][1] if found else ()


def _has_rate(rows: Rows, rate: float) -> bool:
    """Tell whether force over compression is the rate somewhere; between two pairs it goes one way only."""
    rates = [force / travel for travel, force in rows if travel > 0]
    return bool(rates) and min(rates) * (1 - 1e-6) <= rate <= max(rates) * (1 + 1e-6)


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

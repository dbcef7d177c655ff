"""What a coil changes in an air spring of unknown sizes: in place of the negative chamber, or beside the air."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from workbench.physics.shapes import OUTSIDE_KPA, Chances, Coil, Floats, Other, Shapes, rows_of, typical_shapes

# Common practice, no source. How far a negative coil reaches, over the travel; its push at full extension over that of
# the air at the pressure measured first; and areas of a piston [mm2].
_REACH = ((0.12, 0.25), (0.20, 0.40), (0.30, 0.35))
_BALANCE = ((0.70, 0.5), (0.95, 0.5))
_AREAS = {"front": ((650.0, 0.5), (950.0, 0.5)), "rear": ((950.0, 0.5), (1700.0, 0.5))}


def with_coil_back(pressure_kpa: float) -> Shapes:
    """Give typical springs in which a coil pushes back over the first part of the travel.

    No negative chamber: the air outside acts on the other side of the piston, and the load per area is
    (P + Pa) / (1 - s/a) - Pa - c max(reach - s, 0), with c reach a share of the pressure measured first [kPa gauge].
    """
    shapes = typical_shapes()
    # The length of the negative chamber and the scaling mean nothing here: one row for each positive chamber is kept.
    lengths, first, sets = np.unique(shapes.a, return_index=True, return_inverse=True)
    chance = np.asarray(np.bincount(sets, weights=shapes.chance), dtype=float)
    alone = replace(
        rows_of(shapes, first),
        a=lengths,
        r=np.zeros_like(lengths),
        outside_kpa=np.full_like(lengths, OUTSIDE_KPA),
        chance=chance,
        other=Other(steady_kpa=OUTSIDE_KPA),
    )
    spread, reach = _spread(alone, _REACH)
    spread, balance = _spread(replace(spread, back=Coil(reach, reach)), _BALANCE)
    reach = np.repeat(reach, len(_BALANCE))
    return replace(spread, back=Coil(balance * max(pressure_kpa, 1.0) / reach, reach))


def with_coil_beside(
    shapes: Shapes,
    *,
    rate_n_per_mm: float,
    preload_mm: float,
    travel_mm: float,
    end: str,
    area_mm2: float | None = None,
) -> Shapes:
    """Give the same springs with a coil that works along with the air; areas usual at that end where none is given."""
    spread, area = _spread(_absolute(shapes), _AREAS[end] if area_mm2 is None else ((area_mm2, 1.0),))
    return replace(
        spread, beside=Coil(rate_n_per_mm * travel_mm * 1000.0 / area, np.full_like(area, preload_mm / travel_mm))
    )


def _absolute(shapes: Shapes) -> Shapes:
    """Give the springs whose force goes with absolute pressure: how it scales is little beside what a coil does."""
    kept = rows_of(shapes, np.flatnonzero(shapes.outside_kpa == OUTSIDE_KPA))
    return replace(kept, chance=kept.chance / kept.chance.sum())


def _spread(shapes: Shapes, ways: Chances) -> tuple[Shapes, Floats]:
    """Give every row once for each value, its chance shared out, and the value of each row."""
    rows, count = len(shapes.a), len(ways)
    values = np.tile([value for value, _ in ways], rows)
    chances = np.tile([chance for _, chance in ways], rows)
    spread = rows_of(shapes, np.repeat(np.arange(rows), count))
    return replace(spread, chance=spread.chance * chances), values

"""Springs known only as a table of force over travel: progressive, dual, or measured ones."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from workbench.model.errors import InputError, NotEnoughData
from workbench.physics.limits import check_number


@dataclass(frozen=True, slots=True)
class SpringTable:
    """Pairs of travel and force in rising order [mm, N], straight lines between them."""

    rows: tuple[tuple[float, float], ...]

    def force_n(self, travel_mm: float) -> float:
        """Give the force at a travel within the table."""
        check_number("travel_mm", travel_mm, at_least=self.rows[0][0], at_most=self.rows[-1][0])
        (x0, f0), (x1, f1) = self._piece(travel_mm, 0)
        return f0 + (f1 - f0) * (travel_mm - x0) / (x1 - x0)

    def travel_mm(self, load_n: float) -> float:
        """Give the travel at which a load within the table comes to rest."""
        check_number("load_n", load_n, at_least=self.rows[0][1], at_most=self.rows[-1][1])
        (x0, f0), (x1, f1) = self._piece(load_n, 1)
        return x0 + (x1 - x0) * (load_n - f0) / (f1 - f0)

    def rate_n_per_mm(self, travel_mm: float) -> float:
        """Give the local rate; at a corner that of the piece before it."""
        check_number("travel_mm", travel_mm, at_least=self.rows[0][0], at_most=self.rows[-1][0])
        (x0, f0), (x1, f1) = self._piece(travel_mm, 0)
        return (f1 - f0) / (x1 - x0)

    def _piece(self, value: float, column: int) -> tuple[tuple[float, float], tuple[float, float]]:
        above = next(index for index, row in enumerate(self.rows) if index and row[column] >= value)
        return self.rows[above - 1], self.rows[above]


def spring_table(rows: Sequence[tuple[float, float]]) -> SpringTable:
    """Give a spring from pairs of travel and force in any order [mm, N].

    Raises
    ------
    NotEnoughData
        With fewer than two pairs.
    InputError
        If a number cannot be, a travel stands twice, or the force does not rise all the way.

    Examples
    --------
    >>> dual = spring_table([(0, 0), (20, 1000), (60, 4200)])
    >>> dual.travel_mm(1800), dual.rate_n_per_mm(30)
    (30.0, 80.0)
    """
    for travel, force in rows:
        check_number("travel_mm", travel, at_least=0)
        check_number("force_n", force, at_least=0)
    if len(rows) < 2:
        raise NotEnoughData("A spring table needs two pairs of travel and force or more.")
    ordered = sorted((float(travel), float(force)) for travel, force in rows)
    for (x0, f0), (x1, f1) in pairwise(ordered):
        if x1 <= x0:
            raise InputError("travel_mm", x1, "each travel once")
        if f1 <= f0:
            raise InputError("force_n", f1, f"above {f0:g} N, the force at {x0:g} mm")
    return SpringTable(tuple(ordered))


def dual_spring(
    *, stopped_rate_n_per_mm: float, stop_mm: float, other_rate_n_per_mm: float, stroke_mm: float
) -> SpringTable:
    """Give two springs, one behind the other, of which one is held by a stop.

    Parameters
    ----------
    stopped_rate_n_per_mm, stop_mm
        The spring that meets its stop, and how far it is pressed there [N/mm, mm].
    other_rate_n_per_mm
        The spring that works on alone [N/mm].
    stroke_mm
        How far both together can be pressed [mm].

    Raises
    ------
    InputError
        If a value is not above zero, or the stroke ends before the stop is met.

    Notes
    -----
    1 / k = 1 / k1 + 1 / k2 until the force reaches k1 s1, at the travel k1 s1 (1 / k1 + 1 / k2); then k2 alone.

    References
    ----------
    Springs in series, as in Meriam and Kraige, Engineering Mechanics: Dynamics, 8/2.

    Examples
    --------
    >>> dual_spring(stopped_rate_n_per_mm=50, stop_mm=20, other_rate_n_per_mm=100, stroke_mm=60).rows
    ((0.0, 0.0), (30.0, 1000.0), (60.0, 4000.0))
    """
    stopped = check_number("stopped_rate_n_per_mm", stopped_rate_n_per_mm, above=0)
    other = check_number("other_rate_n_per_mm", other_rate_n_per_mm, above=0)
    force_n = stopped * check_number("stop_mm", stop_mm, above=0)
    met_mm = force_n / stopped + force_n / other
    check_number("stroke_mm", stroke_mm, above=met_mm, hint="The stop is met there.")
    return SpringTable(((0.0, 0.0), (met_mm, force_n), (float(stroke_mm), force_n + other * (stroke_mm - met_mm))))


def spring_from_contact(rows: Sequence[tuple[float, float]]) -> SpringTable:
    """Give a spring from pairs counted from slack-free contact, where it pushes nothing; errors as for a table.

    Examples
    --------
    >>> spring_from_contact([(10, 400), (30, 1600)]).rows
    ((0.0, 0.0), (10.0, 400.0), (30.0, 1600.0))
    """
    for travel, force in rows:
        if travel == 0 and force > 0:
            raise InputError("force_n", force, "0 N at 0 mm", "Count from slack-free contact.")
    has_start = any(travel == 0 for travel, _ in rows)
    return spring_table(rows if has_start or not rows else [(0.0, 0.0), *rows])

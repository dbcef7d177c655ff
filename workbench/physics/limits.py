"""Refusing numbers that cannot be, by name; saying shares in sentences."""

from __future__ import annotations

from math import isfinite

from workbench.model.errors import InputError
from workbench.model.units import show


def check_number(
    field: str,
    value: float,
    *,
    above: float | None = None,
    below: float | None = None,
    at_least: float | None = None,
    at_most: float | None = None,
    hint: str = "",
) -> float:
    """Give the value as a float.

    Raises
    ------
    InputError
        If the value is not finite or outside the named bounds.
    """
    number = float(value)
    inside = (
        isfinite(number)
        and (above is None or number > above)
        and (below is None or number < below)
        and (at_least is None or number >= at_least)
        and (at_most is None or number <= at_most)
    )
    if not inside:
        raise InputError(field, value, _allowed(above, below, at_least, at_most), hint)
    return number


def _allowed(above: float | None, below: float | None, at_least: float | None, at_most: float | None) -> str:
    bounds = (("above", above), ("at least", at_least), ("below", below), ("at most", at_most))
    said = " and ".join(f"{word} {bound:.6g}" for word, bound in bounds if bound is not None)
    return f"a finite number {said}".rstrip()


def percent(share: float, decimals: int = 0) -> str:
    """Say a share in a sentence."""
    return show(round(share, decimals + 2), "fraction", unit="%")

"""Refusing numbers that cannot be, by name; saying shares in sentences."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite, nan

from workbench.model.errors import InputError
from workbench.model.units import show

# Far beyond anything that occurs, and near enough that no fourth power of it leaves the range of a float.
_HUGE, _TINY = 1e60, 1e-60


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
        If the value is no number, not finite or outside the named bounds. A text, True or None is no number.
    """
    number = as_number(value)
    inside = (
        abs(number) <= _HUGE
        and (above is None or number > above)
        and (above != 0 or number >= _TINY)
        and (below is None or number < below)
        and (at_least is None or number >= at_least)
        and (at_most is None or number <= at_most)
    )
    if inside:
        return number
    if isfinite(number) and (abs(number) > _HUGE or 0 < number < _TINY):
        raise InputError(field, value, f"a size between {_TINY:g} and {_HUGE:g}", hint)
    raise InputError(field, value, allowed_range(above, below, at_least, at_most), hint)


def check_numbers(field: str, values: Sequence[float], *, at_least: float | None = None) -> list[float]:
    """Give a row of values as floats, each checked as `check_number` does."""
    if isinstance(values, str | bytes | dict) or not hasattr(values, "__len__") or getattr(values, "ndim", 1) != 1:
        raise InputError(field, values, "a list of numbers")
    return [check_number(field, value, at_least=at_least) for value in values]


def as_number(value: object) -> float:
    """Give a number as a float and anything that is none as not-a-number; an array of no dimension is a number."""
    kind = getattr(getattr(value, "dtype", None), "kind", "")
    is_number = isinstance(value, (int, float)) if not kind else kind in "iuf" and getattr(value, "ndim", 1) == 0
    if isinstance(value, bool) or not is_number:
        return nan
    try:
        return float(value)  # type: ignore[arg-type]
    except OverflowError:
        return nan


def allowed_range(above: float | None, below: float | None, at_least: float | None, at_most: float | None) -> str:
    """Say bounds in words."""
    bounds = (("above", above), ("at least", at_least), ("below", below), ("at most", at_most))
    said = " and ".join(f"{word} {bound:.6g}" for word, bound in bounds if bound is not None)
    return f"a finite number {said}".rstrip()


def percent(share: float, decimals: int = 0) -> str:
    """Say a share in a sentence."""
    return show(round(share, decimals + 2), "fraction", unit="%")

"""The sizes of an air spring, and its chambers as filled."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import numpy.typing as npt

from workbench.model.errors import InputError
from workbench.physics.atmosphere import SEA_LEVEL_KPA
from workbench.physics.gas import Charge, Floats
from workbench.physics.limits import allowed_range, check_number

Number = float | npt.ArrayLike


@dataclass(frozen=True, slots=True)
class AirChamber:
    """The sizes of an air spring; volumes are those at full extension.

    Without a negative chamber (volume 0) the outside air acts on the other side of the piston. The negative chamber
    fills itself from the positive one at full extension unless its own pressure is given. A negative coil pushes
    against the spring over the first part of the travel, its reach. A coil beside the air works along with it from its
    preload on.
    """

    area_mm2: float
    positive_mm3: float
    negative_mm3: float
    travel_mm: float
    spacer_mm3: float = 0.0
    second_positive_mm3: float = 0.0
    negative_area_mm2: float | None = None  # the piston's area when not given
    negative_coil_n_per_mm: float = 0.0
    negative_coil_reach_mm: float = 0.0
    coil_n_per_mm: float = 0.0
    coil_preload_mm: float = 0.0

    def __post_init__(self) -> None:
        for name in ("area_mm2", "travel_mm", "positive_mm3"):
            check_number(name, getattr(self, name), above=0)
        not_negative = (
            "negative_mm3",
            "spacer_mm3",
            "second_positive_mm3",
            "negative_coil_n_per_mm",
            "negative_coil_reach_mm",
            "coil_n_per_mm",
            "coil_preload_mm",
        )
        for name in not_negative:
            check_number(name, getattr(self, name), at_least=0)
        if self.negative_area_mm2 is not None:
            check_number("negative_area_mm2", self.negative_area_mm2, above=0)
        swept_mm3 = self.area_mm2 * self.travel_mm
        room_mm3 = self.positive_mm3 + self.second_positive_mm3 - swept_mm3
        if room_mm3 <= 0:
            allowed = f"above {swept_mm3 - self.second_positive_mm3:.0f} mm3, what the piston sweeps"
            raise InputError("positive_mm3", self.positive_mm3, allowed, "The chamber is shorter than the travel.")
        limit_mm3 = min(room_mm3, self.positive_mm3)
        if self.spacer_mm3 >= limit_mm3:
            hint = "With more spacers the piston would meet them before the end of the travel."
            raise InputError("spacer_mm3", self.spacer_mm3, f"0 to below {limit_mm3:.0f} mm3", hint)


def with_spacers(chamber: AirChamber, spacer_mm3: float) -> AirChamber:
    """Give the same spring with spacers of that volume in all."""
    return replace(chamber, spacer_mm3=spacer_mm3)


def fill(
    chamber: AirChamber, pressure_kpa: Number, n: Number, second_kpa: Number | None, negative_kpa: Number | None
) -> tuple[Charge, Charge]:
    """Give the positive and the negative side as filled, after checking what was asked."""
    pressure = check_array("pressure_kpa", pressure_kpa, at_least=0)
    check_array("n", n, at_least=1.0, at_most=5 / 3)
    inside = pressure if negative_kpa is None else _negative(chamber, negative_kpa)
    second = _second(chamber, pressure, second_kpa)
    positive = Charge(
        -chamber.area_mm2,
        chamber.positive_mm3 - chamber.spacer_mm3,
        pressure + SEA_LEVEL_KPA,
        chamber.second_positive_mm3,
        second + SEA_LEVEL_KPA,
    )
    area_mm2 = chamber.negative_area_mm2 or chamber.area_mm2
    return positive, Charge(area_mm2, chamber.negative_mm3, inside + SEA_LEVEL_KPA)


def _second(chamber: AirChamber, pressure: Floats, second_kpa: Number | None) -> Floats:
    if chamber.second_positive_mm3 > 0:
        hint = "A second positive chamber needs its own pressure, at least that of the first."
        given = float("nan") if second_kpa is None else second_kpa
        return check_array("second_kpa", given, at_least=pressure, hint=hint)
    if second_kpa is not None:
        raise InputError("second_kpa", second_kpa, "None", "This spring has no second positive chamber.")
    return np.zeros(())


def _negative(chamber: AirChamber, negative_kpa: Number) -> Floats:
    if chamber.negative_mm3 > 0:
        return check_array("negative_kpa", negative_kpa, at_least=0)
    hint = "This spring has no negative chamber; the air outside acts there."
    return check_array("negative_kpa", negative_kpa, at_least=0, at_most=0, hint=hint)


def check_array(
    field: str,
    value: Number,
    *,
    at_least: float | Floats = -np.inf,
    at_most: float = np.inf,
    unit: str = "",
    hint: str = "",
) -> Floats:
    """Give a number or an array of numbers, each checked as `check_number` does."""
    try:
        values = np.asarray(value)
    except ValueError:  # rows of unequal length
        values = np.asarray(None)
    if values.dtype.kind not in "iuf":
        raise InputError(field, value, "a finite number, or an array of such", hint)
    numbers = values.astype(float)
    if np.ndim(at_least):
        numbers, at_least = fit_together(**{field: numbers, "pressure_kpa": np.asarray(at_least)})
    wrong = ~(np.isfinite(numbers) & (np.abs(numbers) <= 1e60) & (numbers >= at_least) & (numbers <= at_most))
    if not wrong.any():
        return numbers
    bound = float(np.broadcast_to(at_least, numbers.shape)[wrong].flat[0])
    if np.isfinite(bound) and np.isfinite(at_most):
        allowed = f"{bound:g} to {at_most:g} {unit}".rstrip()
    else:
        allowed = allowed_range(None, None, bound if np.isfinite(bound) else None, None)
    raise InputError(field, float(numbers[wrong].flat[0]), allowed, hint)


def fit_together(**arrays: Floats) -> tuple[Floats, ...]:
    """Give arrays of one shape, as numpy stretches them."""
    try:
        return tuple(np.broadcast_arrays(*arrays.values()))
    except ValueError:
        shapes = " and ".join(f"{name} {array.shape}" for name, array in arrays.items() if array.ndim)
        raise InputError(next(iter(arrays)), shapes, "a number, or arrays that fit together") from None

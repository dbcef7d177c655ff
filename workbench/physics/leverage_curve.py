"""A smooth leverage curve with its uncertainty: wheel travel against shock stroke, and back."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from numpy.polynomial import legendre

from workbench.physics.limits import check_number

Floats = npt.NDArray[np.float64]

_NINETY = 1.6448536269514722
_ROUNDING = 1 + 1e-9  # an end computed in another way may come out this much longer


@dataclass(frozen=True, slots=True)
class Leverage:
    """A smooth leverage curve; `travel_mm` of the wheel belongs to `stroke_mm` of the shock."""

    stroke_mm: float
    coefficients: tuple[float, ...]  # of the ratio over stroke, Legendre on -1..1
    covariance: tuple[tuple[float, ...], ...]
    beyond_mm: float = 0.0  # how far the last wheel reading lies beyond the curve's end; it counts as the end

    @property
    def travel_mm(self) -> float:
        """Wheel travel at the end of the surveyed stroke [mm]."""
        return self.wheel(self.stroke_mm)

    @property
    def mean(self) -> float:
        """Wheel travel over shock stroke, the whole way."""
        return self.travel_mm / self.stroke_mm

    @property
    def progression(self) -> float:
        """Fall of the ratio from start to end as a fraction of the start; negative when it rises."""
        start, end = (float(self._ratio_at(stroke)) for stroke in (0.0, self.stroke_mm))
        return (start - end) / start

    def wheel(self, stroke_mm: float) -> float:
        """Give the wheel travel that belongs to a shock stroke [mm]."""
        stroke_mm = check_number("stroke_mm", stroke_mm, at_least=0, at_most=self.stroke_mm * _ROUNDING)
        return max(float(self._travel_at(min(stroke_mm, self.stroke_mm), self._integral)), 0.0)  # no rounded -0

    def stroke(self, wheel_mm: float) -> float:
        """Give the shock stroke that belongs to a wheel travel [mm]."""
        integral = self._integral
        travel_mm = float(self._travel_at(self.stroke_mm, integral))
        wheel_mm = check_number("wheel_mm", wheel_mm, at_least=0, at_most=travel_mm * _ROUNDING + self.beyond_mm)
        if wheel_mm >= travel_mm:
            return self.stroke_mm
        low, high = 0.0, self.stroke_mm
        while high - low > 1e-11 * self.stroke_mm:
            middle = (low + high) / 2
            low, high = (middle, high) if self._travel_at(middle, integral) < wheel_mm else (low, middle)
        return (low + high) / 2

    def ratio(self, wheel_mm: float) -> float:
        """Give the leverage ratio at a wheel travel: wheel movement per shock movement."""
        return float(self._ratio_at(self.stroke(wheel_mm)))

    def slope_per_mm(self, wheel_mm: float) -> float:
        """Give how the ratio changes per mm of shock stroke at a wheel travel."""
        u = 2 * self.stroke(wheel_mm) / self.stroke_mm - 1
        return float(legendre.legval(u, legendre.legder(self._b))) * 2 / self.stroke_mm

    def interval(self, wheel_mm: float) -> tuple[float, float]:
        """Give the 90 % interval of the ratio at a wheel travel."""
        u = 2 * self.stroke(wheel_mm) / self.stroke_mm - 1
        row = legendre.legvander(np.asarray([u]), len(self.coefficients) - 1)[0]
        half = _NINETY * float(np.sqrt(row @ np.asarray(self.covariance) @ row))
        middle = float(row @ self._b)
        return middle - half, middle + half

    def rises(self) -> bool:
        """Say whether the wheel moves on with every mm of stroke."""
        return bool((self._ratio_at(np.linspace(0, self.stroke_mm, 101)) > 0).all())

    @property
    def _b(self) -> Floats:
        return np.asarray(self.coefficients)

    @property
    def _integral(self) -> Floats:
        return np.asarray(legendre.legint(self._b, lbnd=-1), dtype=float)

    def _travel_at(self, stroke_mm: float, integral: Floats) -> Floats:
        u = 2 * stroke_mm / self.stroke_mm - 1
        return np.asarray(legendre.legval(u, integral)) * self.stroke_mm / 2

    def _ratio_at(self, stroke_mm: float | Floats) -> Floats:
        return np.asarray(legendre.legval(2 * np.asarray(stroke_mm) / self.stroke_mm - 1, self._b))

"""Runs as the rider reported them, and how their numbers become points on a common inner scale."""

from __future__ import annotations

import math
from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from workbench.evidence.normal import Array
from workbench.model.errors import InputError

Flags = NDArray[np.bool_]
Scale = tuple[float, float, float] | Literal["log"] | None
Setting = Hashable | Mapping[str, object]

TYPICAL_SD = 0.6  # run-to-run scatter of a rider on a nine-point scale, in points
TYPICAL_TIME_SD = 0.01  # run-to-run scatter of a lap time, as a ratio; common practice, no source
INNER_SPAN = 8.0  # the inner scale is that of a 1..9 rating


@dataclass(frozen=True, slots=True)
class RunRecord:
    """One run: what was set, what the rider answered or the clock said, and what lowers its worth."""

    setting: Setting
    response: float | None
    warmup: bool = field(default=False, kw_only=True)
    confounded: bool = field(default=False, kw_only=True)
    day: int = field(default=0, kw_only=True)
    blind: bool = field(default=False, kw_only=True)
    compared: int | None = field(default=None, kw_only=True)

    def __post_init__(self) -> None:
        if self.response is not None and not _is_finite(self.response):
            raise InputError("response", self.response, "a finite number, or nothing")
        if self.compared not in (None, -1, 0, 1):
            raise InputError("compared", self.compared, "-1 worse, 0 the same, 1 better, or nothing")
        if isinstance(self.setting, Mapping):
            object.__setattr__(self, "setting", dict(self.setting))
        try:
            hash(key_of(self.setting))
        except TypeError:
            raise InputError("setting", str(self.setting), "a label, or a mapping from adjuster to position") from None


def _is_finite(value: object) -> bool:
    try:
        return math.isfinite(value)  # type: ignore[arg-type]
    except TypeError:
        return False


@dataclass(frozen=True, slots=True)
class Points:
    """Responses on the inner scale: higher is better, one point as on a 1..9 rating.

    A rating is the interval of feelings it was rounded from, around its middle; a time or plain number has equal
    bounds.
    """

    lower: Array
    upper: Array
    middle: Array
    given: Flags
    unit: float
    is_log: bool
    is_rating: bool

    def shown(self, difference: float) -> float:
        """A difference on the inner scale in the units of the response (a ratio minus 1 for times)."""
        return math.expm1(difference * self.unit) if self.is_log else difference * self.unit

    def inner(self, difference: float) -> float:
        """A difference in the units of the response as one on the inner scale."""
        return math.log1p(difference) / self.unit if self.is_log else difference / self.unit


def key_of(setting: Setting) -> Hashable:
    """A hashable stand-in for a setting: a mapping counts by its content, not by its order."""
    if isinstance(setting, Mapping):
        return frozenset((name, value) for name, value in setting.items())
    return setting


def count_differences(one: Setting, other: Setting) -> int:
    """How many adjusters differ between two settings; labels that differ count as one change."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        missing = object()
        return sum(one.get(name, missing) != other.get(name, missing) for name in {*one, *other})
    return int(key_of(one) != key_of(other))


def to_points(runs: Sequence[RunRecord], scale: Scale, *, higher_is_better: bool, past_sd: float | None) -> Points:
    """Bring the responses of a session to the inner scale."""
    raw = np.array([math.nan if run.response is None else run.response for run in runs], dtype=np.float64)
    given = np.isfinite(raw)
    if scale == "log":
        return _times(raw, given)
    if isinstance(scale, str) or (scale is not None and len(scale) != 3):
        raise InputError("scale", scale, '(low, high, step), "log" for times, or nothing for a plain number')
    sign = 1.0 if higher_is_better else -1.0
    if scale is None:
        return _numbers(raw, given, sign, _unit_of(runs, raw, past_sd))
    return _ratings(raw, given, sign, scale)


def _ratings(raw: Array, given: Flags, sign: float, scale: tuple[float, float, float]) -> Points:
    low, high, step = (float(part) for part in scale)
    if not (math.isfinite(low) and math.isfinite(high) and high > low):
        raise InputError("scale", scale, "(low, high, step) with low below high")
    if not 0 < step <= high - low:
        raise InputError("scale", scale, "(low, high, step) with a step above 0 and no larger than the span")
    for value in raw[given]:
        if not low <= value <= high:
            raise InputError("response", float(value), f"{low:g} to {high:g}")
    unit = (high - low) / INNER_SPAN
    below = np.where(raw <= low, -np.inf, raw - 0.5 * step)
    above = np.where(raw >= high, np.inf, raw + 0.5 * step)
    middle = 0.5 * (low + high)
    edges = np.stack([sign * (below - middle) / unit, sign * (above - middle) / unit])
    edges = np.where(given, edges, 0.0)
    centre = np.where(given, sign * (raw - middle) / unit, 0.0)
    return Points(edges.min(axis=0), edges.max(axis=0), centre, given, unit, is_log=False, is_rating=True)


def _times(raw: Array, given: Flags) -> Points:
    for value in raw[given]:
        if value <= 0:
            raise InputError("response", float(value), "a time above 0")
    logs = -np.log(np.where(given, raw, 1.0))
    unit = TYPICAL_TIME_SD / TYPICAL_SD
    centred = np.where(given, (logs - (np.median(logs[given]) if given.any() else 0.0)) / unit, 0.0)
    return Points(centred, centred, centred, given, unit, is_log=True, is_rating=False)


def _numbers(raw: Array, given: Flags, sign: float, unit: float) -> Points:
    middle = float(np.median(raw[given])) if given.any() else 0.0
    centred = np.where(given, sign * (raw - middle) / unit, 0.0)
    return Points(centred, centred, centred, given, unit, is_log=False, is_rating=False)


def _unit_of(runs: Sequence[RunRecord], raw: Array, past_sd: float | None) -> float:
    """Units of a plain number per inner point: from earlier sessions, else from repeats, else from the spread."""
    if past_sd is not None:
        return past_sd / TYPICAL_SD
    groups: dict[Hashable, list[float]] = {}
    for run, value in zip(runs, raw, strict=True):
        if math.isfinite(value) and not run.warmup:
            groups.setdefault((key_of(run.setting), run.day), []).append(float(value))
    gaps = [abs(a - b) for values in groups.values() for i, a in enumerate(values) for b in values[:i]]
    spread = float(np.median(gaps)) / 0.954 if gaps else 0.0
    if spread <= 0:
        spread = float(np.nanstd(raw)) if np.isfinite(raw).any() else 0.0
    return spread / TYPICAL_SD if spread > 0 else 1.0

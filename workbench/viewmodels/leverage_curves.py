"""The curves of a leverage survey, in pictures and in words."""

from __future__ import annotations

from typing import TYPE_CHECKING

from workbench.model.errors import NotEnoughData, WorkbenchError
from workbench.viewmodels.leverage_draft import LineError, Readings
from workbench.viewmodels.lines import Line, Lines
from workbench.viewmodels.shown import Units

if TYPE_CHECKING:
    from workbench.physics.leverage import Leverage

STEPS = 40
STEADY = 0.03  # a change of the ratio this small is called none
UNNAMED = "unnamed"
TOO_FEW = "Read at least three strokes beside full extension; more make the curve surer."


def fit_of(readings: Readings, units: Units) -> Leverage:
    """Fit the curve through readings; one that contradicts the others raises, naming its line."""
    from workbench.physics.leverage import OddReading, survey

    try:
        return survey(readings.stroke_mm, readings.wheel_mm, reading_sd_mm=readings.sd_mm)
    except OddReading as error:
        line = readings.lines[error.place]
        value = units.text(readings.wheel_mm[error.place], "length").replace("\u2009", " ")
        raise LineError(
            line, value, error.allowed, str(error).split("; allowed is ", 1)[1].split(". ", 1)[1]
        ) from error
    except NotEnoughData as error:
        raise NotEnoughData(TOO_FEW) from error


def problem_of(error: WorkbenchError) -> tuple[str, int | None]:
    """Give the sentence of what is wrong, and the line it is about."""
    return str(error), error.line if isinstance(error, LineError) else None


def words_of(fit: Leverage, units: Units) -> str:
    """Say a curve."""
    share = f"{100 * abs(fit.progression):.0f}\u2009%"
    steady = abs(fit.progression) < STEADY
    kind = "stays nearly the same" if steady else f"{'falls' if fit.progression > 0 else 'rises'} by {share}"
    (start_low, start_high), (end_low, end_high) = fit.interval(0.0), fit.interval(fit.travel_mm)
    return (
        f"{units.text(fit.travel_mm, 'length')} at the wheel over {units.text(fit.stroke_mm, 'length')} of stroke:"
        f" {fit.mean:.2f} on the whole. From start to end the ratio {kind}; nine times in ten it begins at"
        f" {start_low:.2f} to {start_high:.2f} and ends at {end_low:.2f} to {end_high:.2f}."
    )


def ratio_line(name: str, fit: Leverage, *, is_strong: bool) -> Line:
    """Give the ratio over wheel travel, with its 90 % band where it is the one that counts."""
    travel = _travels(fit)
    ratio = tuple(fit.ratio(x) for x in travel)
    if not is_strong:
        return Line(name, travel, ratio, is_strong=False)
    bounds = [fit.interval(x) for x in travel]
    return Line(name, travel, ratio, tuple(low for low, _ in bounds), tuple(high for _, high in bounds))


def travel_line(name: str, fit: Leverage, *, is_strong: bool) -> Line:
    """Give the wheel travel over the shock's stroke."""
    travel = _travels(fit)
    return Line(name, tuple(fit.stroke(x) for x in travel), travel, is_strong=is_strong)


def pictures(
    curves: list[tuple[str, Leverage, bool]], readings: Readings | None, said: str, odd: int | None
) -> tuple[Lines, Lines]:
    """Give both pictures of some named curves, one of them strong: ratio over wheel travel, travel over stroke."""
    names = [name if len(curves) > 1 else "" for name, _, _ in curves]
    ratios = tuple(
        ratio_line(name, fit, is_strong=strong) for name, (_, fit, strong) in zip(names, curves, strict=True)
    )
    travels = tuple(travel_line("", fit, is_strong=strong) for _, fit, strong in curves)  # too close to be named
    points = readings.pairs if readings is not None else ()
    place = readings.lines.index(odd) if readings is not None and odd in readings.lines else None
    among = f" Beside it: {', '.join(n for n, _, strong in curves if not strong)}." if len(curves) > 1 else ""
    return (
        Lines("wheel travel, mm", "leverage ratio", ratios, said=f"{said}{among}"),
        Lines(
            "shock stroke, mm",
            "wheel travel, mm",
            travels,
            points,
            place,
            True,
            f"{len(points)} points read, and the curve",
        ),
    )


def _travels(fit: Leverage) -> tuple[float, ...]:
    whole = fit.travel_mm
    return tuple(min(whole * step / STEPS, whole) for step in range(STEPS + 1))

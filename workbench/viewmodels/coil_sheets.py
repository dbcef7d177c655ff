"""What a sheet about coil springs shows: entries, a result with how far it is known, a plot, springs to choose from."""

from __future__ import annotations

from dataclasses import dataclass
from math import isfinite

from workbench.model.coil import Rows
from workbench.model.sag import SagMeasurement
from workbench.model.unit import Unit
from workbench.model.units import show
from workbench.viewmodels.coil_typed import CoilField, Pairs
from workbench.viewmodels.shown import Units


@dataclass(frozen=True, slots=True)
class Load:
    """What the spring of a unit carries, from its kept sag measurement."""

    load_n: float
    stroke_mm: float
    target: float
    sag: SagMeasurement


@dataclass(frozen=True, slots=True)
class CoilPlot:
    """Force over travel in N and mm, the readings it goes through, and where the rider sits in it."""

    travel_mm: tuple[float, ...]
    force_n: tuple[float, ...]
    points: tuple[tuple[float, float], ...] = ()
    rate_n_per_mm: tuple[float, ...] = ()  # of each straight piece, one fewer than travels
    at: tuple[float, float] | None = None  # compression and force under the rider

    def __post_init__(self) -> None:
        if not all(map(isfinite, (*self.travel_mm, *self.force_n, *self.rate_n_per_mm))):
            raise ValueError("a spring's line is finite")


@dataclass(frozen=True, slots=True)
class CoilResult:
    """A rate that was found, how far it is known, and what to hold against it."""

    rate_n_per_mm: float
    lead: str
    number: str
    unit: str
    also: str
    interval: str = ""
    notes: tuple[str, ...] = ()
    how: str = "printed"
    rows: tuple[tuple[float, float], ...] = ()
    stroke_mm: float | None = None
    label: str = ""


@dataclass(frozen=True, slots=True)
class SpringLine:
    """One spring that could be fitted, and what it would do."""

    key: str
    name: str
    known: str
    sag: str
    force: str
    bind: str = ""
    rate_n_per_mm: float = 0.0
    stroke_mm: float | None = None
    how: str = "printed"
    is_table: bool = False
    is_refused: bool = False
    is_nearest: bool = False
    is_on_bike: bool = False
    can_remove: bool = False


@dataclass(frozen=True, slots=True)
class CoilSheet:
    """One sheet, ready to be drawn."""

    intro: str = ""
    care: str = ""
    choice: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    fields: tuple[CoilField, ...] = ()
    heads: tuple[str, str] = ("", "")
    pairs: Pairs = ()
    pair_problems: tuple[str, ...] = ()
    result: CoilResult | None = None
    hint: str = ""
    plot: CoilPlot | None = None
    plot_words: str = ""
    load_words: str = ""
    exact: tuple[str, str, str] | None = None  # number, unit, beside it
    preload_fields: tuple[CoilField, ...] = ()
    preload_words: str = ""
    can_set_preload: bool = False
    springs: tuple[SpringLine, ...] = ()
    adds: tuple[CoilField, ...] = ()
    has_draft: bool = False


def load_of(unit: Unit, sag: SagMeasurement | None, rows: Rows = ()) -> Load | None:
    """Give the load a kept sag measurement tells of; ``rows`` is the table of the spring it was measured with."""
    if sag is None or not sag.rate_n_per_mm or not unit.travel_mm:
        return None
    load_n = coil_load_n(sag.rate_n_per_mm, sag.sag_mm + (sag.preload_mm or 0.0), rows)
    return Load(load_n, unit.travel_mm, sag.target, sag) if load_n > 0 else None


def coil_load_n(rate_n_per_mm: float, compressed_mm: float, rows: Rows = ()) -> float:
    """Give what a coil carries at a compression: by its table as far as that goes, else by its rate."""
    if not rows or compressed_mm > rows[-1][0]:
        return rate_n_per_mm * compressed_mm
    from workbench.physics.spring_table import spring_table

    return spring_table(rows).force_n(compressed_mm)


def coil_rate(rate_n_per_mm: float, compressed_mm: float, rows: Rows = ()) -> float:
    """Give the local rate of a coil at a compression: by its table as far as that goes, else its rate."""
    if not rows or not 0 < compressed_mm <= rows[-1][0]:
        return rate_n_per_mm
    from workbench.physics.spring_table import spring_table

    return spring_table(rows).rate_n_per_mm(compressed_mm)


def rate_parts(rate: float, units: Units) -> tuple[str, str, str]:
    """Give a rate as number and unit somebody reads, and said in the other common unit."""
    number, _, unit = units.text(rate, "spring_rate").partition("\u2009")
    other = "N/mm" if units.spring_rate != "N/mm" else "lbf/in"
    return number, unit, show(rate, "spring_rate", unit=other)


def rate_interval(low: float, high: float, units: Units) -> str:
    """Say the 90 % interval of a rate."""
    first = units.text(low, "spring_rate").partition("\u2009")[0]
    return f"Nine times in ten between {first} and {units.text(high, 'spring_rate')}."


def percent(share: float) -> str:
    """Say a sag."""
    return f"{100 * share:.1f}\u2009%"

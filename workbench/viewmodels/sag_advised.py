"""What follows from a round of readings, ready to be shown: verdict, number, what to expect, what could be set."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.sag_rules import Band
from workbench.viewmodels.coil_typed import CoilField


@dataclass(frozen=True, slots=True)
class Option:
    """One thing that can be set before measuring again."""

    verb: str  # "Set 172 psi and measure again"
    title: str
    detail: str
    is_refused: bool = False
    pressure_kpa: float | None = None
    rate_n_per_mm: float | None = None
    preload_mm: float | None = None
    cells: tuple[str, ...] = ()  # of a spring: sag, preload force, usable stroke; the detail as a table has it
    spring_stroke_mm: float | None = None  # usable stroke of the spring, where it is known
    is_table: bool = False  # the rate stands for a spring at hand with a table of travel and force


@dataclass(frozen=True, slots=True)
class Advice:
    """What follows from the readings so far."""

    verdict: str = ""
    is_met: bool = False
    lead: str = ""
    number: str = ""
    number_unit: str = ""
    also: str = ""
    known_to: str = ""  # how far the number is known, where that is not said with what to expect
    expected: str = ""
    outcome: str = ""  # settled or limited, in words
    reason: str = ""
    limits: str = ""
    large_move: str = ""
    care: str = ""
    preload: str = ""
    options: tuple[Option, ...] = ()
    springs: CoilField | None = None  # the entry for the springs at hand
    shows_options: bool = False  # more than one way: list them
    chosen: int | None = None  # the option that comes next; None: keep what is
    predicted_mm: float | None = None
    predicted_low_mm: float | None = None  # nine times in ten the sag lies between these
    predicted_high_mm: float | None = None
    problem: str = ""


def percent(fraction: float) -> str:
    """Say a sag in whole percent."""
    return f"{100 * fraction:.0f}\u2009%"


def band_text(band: Band) -> str:
    """Say a band in percent, with a half where it has one."""
    low, high = (f"{100 * end:.1f}".removesuffix(".0") for end in (band.low, band.high))
    return f"{low}\u2009%" if low == high else f"{low} to {high}\u2009%"


def verdict_words(sag: float, band: Band) -> str:
    """Say whether a sag lies in its band, and on which side of it otherwise."""
    if band.holds(sag):
        return f"In the band: {percent(sag)}."
    word = "Too little sag" if sag < band.low else "Too much sag"
    return f"{word}: {percent(sag)}, aimed at is {band_text(band)}."

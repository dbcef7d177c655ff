"""The units somebody reads, and values said in them."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from workbench.model.adjuster import Adjuster, from_open, steps_text
from workbench.model.person import Person
from workbench.model.units import parse, show

_FIXED = {
    "angle": "deg",
    "duration": "s",
    "fraction": "%",
    "count": "",
    "volume": "cm3",
    "area": "mm2",
    "altitude": "m",
    "force": "N",
    "modulus": "GPa",
    "ratio": "",
    "turns": "turn",
}


@dataclass(frozen=True, slots=True)
class Units:
    """The units one person reads."""

    pressure: str = "psi"
    length: str = "mm"
    mass: str = "kg"
    spring_rate: str = "lbf/in"
    temperature: str = "degC"

    def unit(self, quantity: str) -> str:
        """Give the unit a quantity is shown in."""
        return _FIXED[quantity] if quantity in _FIXED else str(getattr(self, quantity))

    def text(self, value: float | None, quantity: str) -> str:
        """Say a value with its unit; a dash where there is none."""
        if value is None:
            return "–"
        if quantity == "count":
            return f"{value:g}"
        return show(value, quantity, unit=self.unit(quantity))

    def parse(self, text: str, quantity: str) -> float:
        """Read a typed value; without a unit it is taken in this person's."""
        return parse(text, quantity, default_unit=self.unit(quantity))


def how_many(count: int, noun: str) -> str:
    """Say a count with its noun: 1 run, 2 runs."""
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def how_often(count: int) -> str:
    """Say how often: never, once, twice, 3 times."""
    return {0: "never", 1: "once", 2: "twice"}.get(count, how_many(count, "time"))


def units_of(person: Person | None) -> Units:
    """Give the units a person reads."""
    if person is None:
        return Units()
    return Units(person.pressure_unit, person.length_unit, person.mass_unit, person.rate_unit, person.temperature_unit)


def short_date(moment: str) -> str:
    """Say the day of an ISO time, as on a drawing: 14 May 2031."""
    if not moment:
        return "–"
    day = datetime.fromisoformat(moment)
    return f"{day.day} {day.strftime('%b %Y')}"


def short_time(moment: str) -> str:
    """Say day and minute of an ISO time."""
    return f"{short_date(moment)}, {datetime.fromisoformat(moment).strftime('%H:%M')}" if moment else "–"


def position_text(adjuster: Adjuster, position: float | None) -> str:
    """Say where an adjuster stands, counted from closed."""
    if position is None:
        return "not known"
    if adjuster.counting == "positions":
        return steps_text(adjuster, round(position))
    if round(position) == 0:
        return "fully closed"
    return f"{steps_text(adjuster, round(position))} from closed"


def from_open_text(adjuster: Adjuster, position: float | None, steps: int | None) -> str:
    """Say the same position counted from open; empty where that says nothing."""
    if position is None or steps is None or adjuster.counting == "positions" or not 0 <= position <= steps:
        return ""
    left = from_open(round(position), steps)
    return "fully open" if left == 0 else f"{steps_text(adjuster, left)} from open"

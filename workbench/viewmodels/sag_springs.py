"""The springs at hand as a short list: rates, with the usable stroke where it is printed beside them."""

from __future__ import annotations

import re

from workbench.model.errors import InputError
from workbench.viewmodels.coil_typed import Entry, read
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import as_meant

SPRINGS = "springs"
MOST_SPRINGS = 12
RATE = Entry("rate", "Springs at hand", "spring_rate", 1, 500)
STROKE = Entry("stroke", "Usable stroke of a spring at hand", "length", 10, 200)
LONGEST_INCHES = 10.0  # a bare stroke below this is printed in inches

# A comma parts two springs unless it can only be a decimal one: 78,8 and 78,81, but 450,500 and 450, 500.
_PARTS = re.compile(r"[;\n]|,(?=\s|$)|,(?=\d{3,}(?!\d))|\band\b")
_BESIDE = re.compile(r"\s*[x\u00d7*]\s*", re.IGNORECASE)


def read_springs(text: str, unit: str, units: Units) -> tuple[tuple[tuple[float, float | None], ...], str]:
    """Read a list such as "450, 500x65, 525".

    Parameters
    ----------
    text, unit
        As typed, and the unit a bare rate was meant in.
    units
        The units of whoever reads it now.

    Returns
    -------
    tuple
        Rate and usable stroke of each spring that could be read [N/mm, mm], and what is wrong with the first other one.
    """
    found: list[tuple[float, float | None]] = []
    problem = ""
    for part in (one.strip() for one in _PARTS.split(text)):
        if not part:
            continue
        try:
            spring = _read(part, unit, units)
        except InputError as error:
            problem = problem or str(error)
            continue
        if spring not in found:
            found.append(spring)
    if len(found) > MOST_SPRINGS:
        problem = problem or str(InputError(RATE.label, f"{len(found)} springs", f"up to {MOST_SPRINGS} springs"))
    return tuple(found[:MOST_SPRINGS]), problem


def _read(part: str, unit: str, units: Units) -> tuple[float, float | None]:
    rate_text, *beside = _BESIDE.split(part, maxsplit=1)
    rate = read(RATE, as_meant(rate_text, unit, units.unit("spring_rate")), units)
    if rate is None:
        raise InputError(RATE.label, part, "a rate, as 450")
    return rate, _stroke(beside[0], units) if beside else None


def _stroke(text: str, units: Units) -> float | None:
    """Read a stroke as printed on a spring: in millimetres, or in inches where it is too small for that."""
    if not text[-1:].isdigit():
        return read(STROKE, text, units)
    bare = read(Entry("stroke", STROKE.label, "ratio", 0, 1000), text, units)
    return read(STROKE, f"{text} {'in' if bare is not None and bare < LONGEST_INCHES else 'mm'}", units)

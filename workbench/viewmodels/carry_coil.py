"""A coil carried to another day: weather leaves it alone, another rider asks for another spring."""

from __future__ import annotations

from workbench.actions.sag import rows_of
from workbench.actions.spring import SpringRecords
from workbench.model.coil import curve_text
from workbench.model.setting import Item
from workbench.model.unit import Spring, Unit
from workbench.viewmodels.carry_row import NOTABLE_SHIFT, CarryRow
from workbench.viewmodels.coil_sheets import load_of
from workbench.viewmodels.sag_coil import judge
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_curves import kept_sag

LEAVE = "A coil carries the same in the cold, in the heat and at altitude: leave it."
PRELOAD = "Preload does not make up for it: it lifts the start of the stroke, the rate stays."


def coil_row(
    records: SpringRecords, unit: Unit, old_kg: float | None, rider_kg: float | None, units: Units
) -> CarryRow | None:
    """Say what a coil asks for; None where its rate is not known.

    ``old_kg``, the mass at its sag, is given where another rider is asked about. The load goes with the rider, and with
    the preload as it is so does the rate that keeps the sag.
    """
    parts = records.sag.parts
    rate = parts.value(Item.SPRING_RATE, unit.id)
    if rate is None:
        return None
    title, now = parts.subject_title(Item.SPRING_RATE, unit.id), units.text(rate, "spring_rate")
    if old_kg is None or rider_kg is None:
        return CarryRow(title, now, now, "\u2013", "\u2013", LEAVE, is_coil=True)
    heavier = rider_kg / old_kg
    rows = rows_of(records.sag, unit, rate)
    wanted = f"{_percent(abs(heavier - 1))} {'stiffer' if heavier > 1 else 'softer'}"
    wanted = wanted if rows else f"about {units.text(rate * heavier, 'spring_rate')}"
    word, way = ("heavier", "stiffer") if heavier > 1 else ("lighter", "softer")
    reasons = (
        f"The rider is {_percent(abs(heavier - 1))} {word}, so is the load: the sag stays with a spring that much {way}"
        f" at this preload. Measure the sag again. {PRELOAD}"
    )
    why = ["for the same sag at this preload; measure it"]
    if abs(heavier - 1) >= NOTABLE_SHIFT:  # rate and mass both change, and damping goes with the root of their product
        why.append(f"rebound about {_percent(abs(heavier - 1))} {'more' if heavier > 1 else 'less'}")
        reasons += f" With it the spring asks for about as much {'more' if heavier > 1 else 'less'} rebound damping."
    return CarryRow(
        title, now, wanted, "\u2013", _left(records, unit, rate, heavier, units), reasons, why=tuple(why), is_coil=True
    )


def _left(records: SpringRecords, unit: Unit, rate: float, heavier: float, units: Units) -> str:
    """Say the sag with the present spring under the other rider; a dash where no sag tells of the load."""
    parts, sag = records.sag.parts, kept_sag(records, unit)
    load = load_of(unit, sag, rows_of(records.sag, unit, sag.rate_n_per_mm) if sag else ())
    if load is None:
        return "\u2013"
    rows = rows_of(records.sag, unit, rate)
    spring = Spring("", unit.id, rate, unit.spring_stroke_mm, curve=curve_text(rows) if rows else None)
    there = judge(spring, unit, load.load_n * heavier, parts.value(Item.PRELOAD, unit.id) or 0.0)
    if not there.carries:
        return "pressed to the end"
    return f"sag {units.text(there.sag_mm, 'length')}, {100 * there.sag_fraction:.0f}\u2009%"


def _percent(share: float) -> str:
    return f"{100 * share:.0f}\u2009%"

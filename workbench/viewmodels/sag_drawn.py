"""What is drawn beside and below a stage of measuring sag."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.sag import TARGET_ORIGINS
from workbench.model.sag_rules import Band
from workbench.model.unit import Unit
from workbench.model.units import to_unit
from workbench.viewmodels.sag_advice import Advice, band_text, percent
from workbench.viewmodels.sag_draft import SagDraft, Stage, sag_fraction
from workbench.viewmodels.sag_ends import Ruler, travel_words
from workbench.viewmodels.sag_words import METHOD_NOTES
from workbench.viewmodels.shown import Units


@dataclass(frozen=True, slots=True)
class Drawing:
    """What the margin draws: which drawing, the distance in words, how far along the travel, and a remark below."""

    kind: str
    distance: str = ""
    share: float = 0.3
    remark: str = ""


def guide_ruler(draft: SagDraft, unit: Unit, band: Band | None, advice: Advice | None, units: Units) -> Ruler:
    """Give the travel to scale with the readings so far."""
    travel = unit.travel_mm or 1.0
    earlier = tuple(one.sag_mm for one in draft.rounds)
    sag = sag_fraction(draft, unit)
    return Ruler(
        travel_mm=travel,
        low_mm=band.low * travel if band else 0.0,
        high_mm=band.high * travel if band else 0.0,
        band_words=f"target {band_text(band)} ({TARGET_ORIGINS.get(band.origin, '')})" if band else "",
        ticks_mm=(*earlier, *draft.readings_mm),
        sag_mm=None if sag is None else sag * travel,
        sag_words="" if sag is None else percent(sag),
        predicted_mm=advice.predicted_mm if advice else None,
        predicted_words=f"{percent(advice.predicted_mm / travel)} expected" if advice and advice.predicted_mm else "",
        title=travel_words(unit, units),
        shown_per_mm=to_unit(1.0, "length", units.length),
        unit=units.length,
    )


def drawing_at(stage: Stage, unit: Unit, draft: SagDraft, units: Units) -> Drawing:
    """Give what the margin draws at a stage."""
    if stage == Stage.PREPARE:
        return Drawing("rider", remark=METHOD_NOTES[draft.method])
    if stage == Stage.SPRING and unit.spring == "coil":
        return Drawing("collar", remark="Turn the collar until the slack is just gone: preload is counted from there.")
    if stage == Stage.SPRING:
        return Drawing("valve", remark="Screwing the hose on takes a little air out of the spring.")
    if stage == Stage.PUT_BACK:
        return Drawing("rollout", remark="Closed is found on the knob's face; stop at first firm contact.")
    sag = sag_fraction(draft, unit)
    kind = "stanchion" if unit.kind == "fork" else "shock"
    distance = units.text(draft.sag_mm, "length") if draft.readings_mm else ""
    return Drawing(kind, distance, 0.3 if sag is None else sag, "Measure from the seal to the indicator.")

"""Turns what the view-model says of a ruler into the scale that is drawn."""

from __future__ import annotations

from workbench.ui.parts.rulers import SagRuler, SagScale, SagTick
from workbench.viewmodels.sag_ends import Ruler


def show_ruler(widget: SagRuler, ruler: Ruler) -> None:
    """Draw readings as ticks, the sag in bold, what is expected hollow."""
    ticks = [SagTick(at_mm) for at_mm in ruler.ticks_mm]
    if ruler.predicted_mm is not None:
        ticks.append(SagTick(ruler.predicted_mm, ruler.predicted_words, "predicted"))
    if ruler.sag_mm is not None:
        ticks.append(SagTick(ruler.sag_mm, ruler.sag_words, "centre"))
    has_band = ruler.high_mm > 0
    widget.set_scale(
        SagScale(
            travel_mm=ruler.travel_mm,
            ticks=tuple(ticks),
            target_low_mm=ruler.low_mm if has_band else None,
            target_high_mm=ruler.high_mm if has_band else None,
            target_words=ruler.band_words,
            caption=ruler.title,
            shown_per_mm=ruler.shown_per_mm,
            unit=ruler.unit,
        )
    )
    widget.setAccessibleName(f"{ruler.title}, sag {ruler.sag_words or 'not measured'}, {ruler.band_words}")

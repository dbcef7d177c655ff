"""What can be tried on paper on the spring sheet."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.model.item_facts import maker_limits
from workbench.model.sag import SagMeasurement
from workbench.model.setting import Item
from workbench.model.unit import Unit, Valve
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_curves import WhatIf
from workbench.viewmodels.spring_sizes import chamber_at


@dataclass(frozen=True, slots=True)
class Slider:
    """Something that can be tried on paper."""

    name: str
    label: str
    low: int
    high: int
    value: int
    text: str


def sliders_of(
    unit: Unit, sag: SagMeasurement, tried: WhatIf, shown: Units, valves: tuple[Valve, ...] = ()
) -> tuple[Slider, ...]:
    """Give what can be tried on a spring, within its limits; ``valves`` are those on record."""
    sliders = []
    if unit.spring == "coil":
        return (_coil_slider(sag, tried, shown),)
    now = sag.pressure_kpa or 0.0
    pressure = tried.pressure_kpa if tried.pressure_kpa is not None else now
    low = round(unit.minimum_kpa if unit.minimum_kpa is not None else 0.6 * now)
    high = round(unit.maximum_kpa if unit.maximum_kpa is not None else 1.5 * now)
    sliders.append(Slider("pressure_kpa", "Pressure", low, high, round(pressure), shown.text(pressure, "pressure")))
    is_known = chamber_at(unit, sag, spacers=0) is not None
    if is_known and unit.spring == "air_coil":
        sliders.append(replace(_coil_slider(sag, tried, shown), label="Coil beside the air"))
    if is_known and unit.negative == "separate":
        negative = tried.negative_kpa if tried.negative_kpa is not None else (sag.negative_kpa or 0.0)
        text = shown.text(negative, "pressure")
        least, most = maker_limits(Item.NEGATIVE_PRESSURE, unit, valves)
        ends = round(least or 0.0), round(most) if most is not None else max(round(1.5 * now), 1)
        sliders.append(Slider("negative_kpa", "Negative chamber", *ends, round(negative), text))
    if is_known and unit.spacer_volume_mm3 and unit.spacer_limit:
        count = tried.spacers if tried.spacers is not None else (sag.spacers or 0)
        sliders.append(Slider("spacers", "Volume spacers", 0, unit.spacer_limit, count, str(count)))
    return tuple(sliders)


def _coil_slider(sag: SagMeasurement, tried: WhatIf, shown: Units) -> Slider:
    rate = tried.rate_n_per_mm if tried.rate_n_per_mm is not None else (sag.rate_n_per_mm or 0.0)
    middle = max(round(sag.rate_n_per_mm or 0.0), 1)
    text = shown.text(rate, "spring_rate")
    return Slider("rate_n_per_mm", "Spring rate", max(1, middle // 2), middle * 2, round(rate), text)

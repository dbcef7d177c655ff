"""Which tyres drifted on a run, and the words for it: for the ride's sheet and the review."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.model.parts import BikeParts
from workbench.model.setting import Item
from workbench.model.tyres import has_drifted, tyre_drift_kpa
from workbench.viewmodels.shown import Units

Values = Mapping[tuple[str, str], float | None]


@dataclass(frozen=True, slots=True)
class TyreDrift:
    """One tyre that reads otherwise than its setup says."""

    end: str
    kpa: float  # negative where it lost air


def tyre_drifts(
    parts: BikeParts, values: Values, read_kpa: Mapping[str, float | None], air_c: float | None
) -> tuple[TyreDrift, ...]:
    """List the tyres to name, of readings by end, against the setup that was ridden."""
    found = []
    for tyre in parts.tyres:
        read, set_to = read_kpa.get(tyre.end), values.get((Item.TYRE_PRESSURE.value, tyre.id))
        if read is None or set_to is None:
            continue
        drift = tyre_drift_kpa(read, set_to, air_c=air_c)
        if has_drifted(drift):
            found.append(TyreDrift(tyre.end, drift))
    return tuple(found)


def drift_words(drift: TyreDrift, units: Units) -> str:
    """Say one drift: front tyre 2 psi below what it was set to."""
    way = "below" if drift.kpa < 0 else "above"
    return f"{drift.end} tyre {units.text(abs(drift.kpa), 'pressure')} {way} what it was set to"

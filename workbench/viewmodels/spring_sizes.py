"""The chambers of an air spring where their sizes were entered, and the coils in it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from workbench.model.unit import Unit

if TYPE_CHECKING:
    from workbench.physics.air import AirChamber
    from workbench.physics.sag import Coils

BACK_WORDS = "A coil works in place of the negative chamber. How far it reaches is not on record, so the range is wide."
BESIDE_WORDS = "The coil beside the air is reckoned with."
BESIDE_AREA_WORDS = (
    "The coil beside the air is reckoned with; without the piston's area and the chambers, which the garage takes, the"
    " range is wide."
)
BESIDE_UNKNOWN_WORDS = (
    "The coil beside the air is left out, for its rate is not stated: the sag moves less than the pressure alone would"
    " move it. State the rate with the spring."
)


class Filled(Protocol):
    """What tells how a spring was set: a measurement, a round or an entry."""

    @property
    def spacers(self) -> int | None: ...
    @property
    def negative_kpa(self) -> float | None: ...
    @property
    def rate_n_per_mm(self) -> float | None: ...
    @property
    def preload_mm(self) -> float | None: ...


def chamber_of(
    unit: Unit,
    spacers: int | None,
    negative_kpa: float | None = None,
    *,
    rate_n_per_mm: float | None = None,
    preload_mm: float | None = None,
) -> AirChamber | None:
    """Give the chambers of a unit with so many spacers; None where something of them is not known.

    A negative chamber with a valve of its own needs its pressure, a coil beside the air its rate. Of a negative coil no
    sizes are on record.
    """
    if unit.area_mm2 is None or unit.positive_mm3 is None or unit.negative_mm3 is None or unit.travel_mm is None:
        return None
    if unit.negative == "coil" or (unit.negative == "separate" and negative_kpa is None):
        return None
    if unit.spring == "air_coil" and rate_n_per_mm is None:
        return None
    from workbench.physics.air import AirChamber

    beside = (rate_n_per_mm or 0.0, preload_mm or 0.0) if unit.spring == "air_coil" else (0.0, 0.0)
    return AirChamber(
        unit.area_mm2,
        unit.positive_mm3,
        unit.negative_mm3,
        unit.travel_mm,
        (spacers or 0) * (unit.spacer_volume_mm3 or 0.0),
        coil_n_per_mm=beside[0],
        coil_preload_mm=beside[1],
    )


def chamber_at(unit: Unit, one: Filled, *, spacers: int | None = None) -> AirChamber | None:
    """Give the chambers as they were set, or with another number of spacers."""
    return chamber_of(
        unit,
        one.spacers if spacers is None else spacers,
        one.negative_kpa,
        rate_n_per_mm=one.rate_n_per_mm,
        preload_mm=one.preload_mm,
    )


def own_kpa(unit: Unit, negative_kpa: float | None) -> float | None:
    """Give the pressure of a separately filled negative chamber; None where it fills itself."""
    return negative_kpa if unit.negative == "separate" else None


def coils_of(unit: Unit, one: Filled) -> Coils:
    """Give the coils in an air spring whose sizes are not known."""
    from workbench.physics.sag import Coils

    rate = (one.rate_n_per_mm or 0.0) if unit.spring == "air_coil" else 0.0
    return Coils(unit.negative == "coil", rate, (one.preload_mm or 0.0) if rate else 0.0)


def coil_filling(unit: Unit, one: Filled) -> tuple[float | None, float]:
    """Give what of a coil beside the air must be alike for two readings to tell of the same spring."""
    return (one.rate_n_per_mm, one.preload_mm or 0.0) if unit.spring == "air_coil" else (None, 0.0)


def leaves_coil_out(unit: Unit, one: Filled) -> bool:
    """Tell whether a coil beside the air cannot be reckoned with."""
    return unit.spring == "air_coil" and one.rate_n_per_mm is None


def coil_words(unit: Unit, one: Filled, *, is_known: bool) -> str:
    """Say how far the coils of an air spring are reckoned with; ``is_known`` where the chambers' sizes are."""
    words = [BACK_WORDS] if unit.negative == "coil" and unit.spring != "coil" else []
    if leaves_coil_out(unit, one):
        words.append(BESIDE_UNKNOWN_WORDS)
    elif unit.spring == "air_coil":
        words.append(BESIDE_WORDS if is_known else BESIDE_AREA_WORDS)
    return " ".join(words)

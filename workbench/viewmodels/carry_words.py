"""What to leave alone when a gauge shows something else: in whole sentences with their numbers."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.model.setting import GAUGE_KPA
from workbench.viewmodels.shown import Units

NOTABLE_DEGREES = 3.0
NOTABLE_METRES = 100.0


def leave_spring(kpa: float, left_kpa: float, weather: Mapping[str, float], units: Units) -> tuple[str, ...]:
    """Say what a spring left alone shows at the ride, and what letting it down hot would do."""
    from workbench.physics.atmosphere import carry_pressure

    here, shows = units.text(kpa, "pressure"), units.text(left_kpa, "pressure")
    warmer_by = weather["there_c"] - weather["here_c"]
    if warmer_by >= NOTABLE_DEGREES:
        cold_kpa = carry_pressure(
            kpa,
            from_c=weather["there_c"],
            to_c=weather["here_c"],
            from_m=weather["there_m"],
            to_m=weather["here_m"],
        )
        cold, at = units.text(cold_kpa, "pressure"), units.text(weather["here_c"], "temperature")
        return (
            f"Left alone it shows {shows} there. If {here} were let down to there, {cold} would remain at {at}: "
            "that is a changed setup, and so are the runs after it.",
        )
    if warmer_by <= -NOTABLE_DEGREES:
        return (
            f"Left alone it shows {shows} there; to have {here} there, set it there after a soak, or here as above.",
        )
    if abs(weather["there_m"] - weather["here_m"]) >= NOTABLE_METRES:
        return (f"It shows {shows} there: leave it.",)
    return ()


def leave_tyre(kpa: float, left_kpa: float, units: Units) -> tuple[str, ...]:
    """Say which way a tyre is set at the ride, where a gauge can tell."""
    if abs(left_kpa - kpa) < GAUGE_KPA:
        return ()
    way = "let it down" if left_kpa > kpa else "pump it up"
    return (f"Left alone it shows {units.text(left_kpa, 'pressure')} there: {way} to {units.text(kpa, 'pressure')}.",)

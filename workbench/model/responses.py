"""What a run can be judged by: the one response named before riding, and attributes looked at beside it."""

from __future__ import annotations

from workbench.model.errors import InputError

RESPONSES = {"liking": "Liking", "lap_s": "Lap time"}
ATTRIBUTES = {
    "grip": "Grip",
    "comfort": "Comfort on small bumps",
    "support": "Support",
    "bottom_out": "Bottom-out control",
    "composure": "Composure",
}
LOWEST_SCORE, HIGHEST_SCORE = 1, 9
SHORTEST_LAP_S, LONGEST_LAP_S = 5.0, 7200.0


def check_rating(attribute: str, score: int, end: str) -> None:
    """Refuse a rating of something nobody asked about, or off its scale."""
    if attribute not in ATTRIBUTES or end not in ("", "front", "rear"):
        raise InputError("Attribute", f"{attribute} {end}".strip(), f"{', '.join(ATTRIBUTES)}; front or rear")
    if not LOWEST_SCORE <= score <= HIGHEST_SCORE:
        raise InputError(ATTRIBUTES[attribute], score, f"{LOWEST_SCORE} to {HIGHEST_SCORE}")


def is_lap(lap_s: float) -> bool:
    """Tell whether a time can be that of a run: 5 s to 2 h."""
    return SHORTEST_LAP_S <= lap_s <= LONGEST_LAP_S


def check_lap(lap_s: float, said: str = "") -> float:
    """Give a lap time back; refuse what is no time of a run, in the words in which it was said."""
    if not is_lap(lap_s):
        raise InputError("Lap time", said or f"{lap_s:.1f} s", "5 s to 2 h")
    return lap_s


def lap_text(lap_s: float) -> str:
    """Say a lap time as it is read off a watch: 2:41.3."""
    tenths = round(lap_s * 10)
    minutes, rest = divmod(tenths, 600)
    hours, minutes = divmod(minutes, 60)
    clock = f"{hours}:{minutes:02d}" if hours else f"{minutes}"
    return f"{clock}:{rest // 10:02d}.{rest % 10}"

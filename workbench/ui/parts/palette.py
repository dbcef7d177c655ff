"""The colours of the sheet: a few named tokens, light and dark, and a darker-on-white set for the bench."""

from __future__ import annotations

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Palette:
    """Colours by what they are for. Meaning never rests on colour alone."""

    paper: str
    card: str
    ink: str
    mute: str
    line: str
    accent: str
    on_accent: str
    care: str
    band: str
    faint: str
    data_1: str
    data_2: str
    data_3: str


LIGHT = Palette(
    paper="#FAF8F3",
    card="#FFFFFF",
    ink="#1D2730",
    mute="#5B6670",
    line="#8A8F94",
    accent="#0B6B75",
    on_accent="#FFFFFF",
    care="#A3470A",
    band="#DCEBEB",
    faint="#E6E4DE",
    data_1="#0072B2",
    data_2="#D55E00",
    data_3="#00805A",
)

DARK = Palette(
    paper="#1B2126",
    card="#242B31",
    ink="#ECE8DF",
    mute="#A9B2B9",
    line="#77828B",
    accent="#63C7CF",
    on_accent="#1B2126",
    care="#F0A35E",
    band="#23454B",
    faint="#39424A",
    data_1="#56B4E9",
    data_2="#E69F00",
    data_3="#3FBF94",
)

# At the bench, text is read standing: 7:1 instead of 4.5:1 for everything that is read.
LIGHT_BENCH = replace(
    LIGHT, paper="#FFFFFF", ink="#12191F", mute="#46505A", line="#6C7278", accent="#085760", care="#873A06"
)
DARK_BENCH = replace(DARK, mute="#BCC4CA", line="#8E98A0", accent="#7AD3DA", care="#F6B47B")


def palette_for(*, dark: bool, bench: bool) -> Palette:
    """Give the tokens for a theme."""
    if bench:
        return DARK_BENCH if dark else LIGHT_BENCH
    return DARK if dark else LIGHT


def contrast(first: str, second: str) -> float:
    """Contrast ratio of two colours by WCAG 2.2, from 1 (same) to 21 (black on white)."""
    brighter, darker = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (brighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    channels = [int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5)]
    red, green, blue = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue

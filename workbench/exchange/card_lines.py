"""What a card is made of: frozen lines, sections and figures, painted elsewhere."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class CardLine:
    """One line: what, as found, as left, and a remark in small print."""

    label: str
    found: str
    left: str
    remark: str = ""
    is_changed: bool = False  # known to be left otherwise than found; marked by a bar, not by colour


@dataclass(frozen=True, slots=True)
class CardSection:
    """A titled group of lines."""

    title: str
    lines: tuple[CardLine, ...]
    heads: tuple[str, str] = ("As found", "As left")
    is_aside: bool = False  # good to know, and less needed than what to take care of: it comes after that


@dataclass(frozen=True, slots=True)
class CardFigure:
    """One big figure for the frame, read from two metres."""

    end: str  # "front" | "rear"
    label: str
    figure: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class CardSheet:
    """Everything that stands on a card, in reading order."""

    title: str
    subtitle: str
    strip: tuple[CardFigure, ...]
    sections: tuple[CardSection, ...]
    cautions: tuple[str, ...]
    cells: tuple[tuple[str, str], ...]  # the title block
    note: str = ""  # what "as found" goes by
    signed: tuple[tuple[str, str], ...] = (("Handed over by", ""), ("Received by", ""))

"""Lay a card out on pages: where every word and line goes, in points, whatever it is painted on."""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import groupby

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont, QFontMetricsF

from workbench.exchange.card_lines import CardFigure, CardLine, CardSection, CardSheet
from workbench.ui.parts.labels import fit_lines, one_line
from workbench.ui.parts.theme import FAMILY

TITLE, HEADING, TEXT, NOTE, FIGURE = 20, 12, 10, 8, 20
FIGURES = (FIGURE, 17, 14, 11)  # the largest that fits is taken
MOST_LINES = 8  # of one cell: far beyond any name that is meant
COLUMNS = (0.0, 0.25, 0.465, 0.69)  # label, as found, as left, remark
GAP = 10.0
THIN, TIED = "\u2009", "\u00a0"
CHANGED = "A bar before the value: left otherwise than found."


@dataclass(frozen=True, slots=True)
class Paper:
    """A size of paper, upright, in points."""

    name: str
    width: float
    height: float
    margin: float
    foot: float  # height kept for the title block
    figures: int  # big figures in a row

    @property
    def inner(self) -> float:
        """The width that is written on."""
        return self.width - 2 * self.margin


A4 = Paper("A4", 595.0, 842.0, 32.0, 56.0, 5)
A5 = Paper("A5", 420.0, 595.0, 26.0, 54.0, 4)
PAPERS = {paper.name: paper for paper in (A4, A5)}


@dataclass(frozen=True, slots=True)
class TextMark:
    """Words on one line of a box."""

    box: QRectF
    words: str
    size: int = TEXT
    bold: bool = False
    colour: str = "ink"


@dataclass(frozen=True, slots=True)
class LineMark:
    """A straight line."""

    start: QPointF
    end: QPointF
    width: float = 0.7
    colour: str = "line"


@dataclass(slots=True)
class PaperPage:
    """One page of marks."""

    paper: Paper
    words: list[TextMark] = field(default_factory=list)
    lines: list[LineMark] = field(default_factory=list)


def card_font(size: int, *, bold: bool = False) -> QFont:
    """Give the card's font; sizes are points on paper."""
    font = QFont(FAMILY)
    font.setPixelSize(size)
    font.setBold(bold)
    return font


def lay_card_out(sheet: CardSheet, paper: Paper = A4) -> list[PaperPage]:
    """Give the pages of a card."""
    maker = _Maker(sheet, paper)
    maker.head()
    maker.strip()
    for section in (one for one in sheet.sections if not one.is_aside):
        maker.section(section)
    maker.legend()
    maker.cautions()
    for section in (one for one in sheet.sections if one.is_aside):
        maker.section(section)
    maker.signature()
    maker.number_pages()
    return maker.pages


class _Maker:
    """Places marks from top to bottom and turns the page when it is full."""

    def __init__(self, sheet: CardSheet, paper: Paper) -> None:
        self._sheet, self._paper = sheet, paper
        self.pages: list[PaperPage] = []
        self._top = paper.margin
        self._turn()

    @property
    def _page(self) -> PaperPage:
        return self.pages[-1]

    @property
    def _bottom(self) -> float:
        return self._paper.height - self._paper.margin - self._paper.foot

    def _turn(self) -> None:
        self.pages.append(PaperPage(self._paper))
        self._top = self._paper.margin
        self._foot()

    def _room(self, height: float) -> bool:
        """Turn the page if the height does not fit; true if it was turned."""
        is_full = self._top + height > self._bottom
        if is_full:
            self._turn()
        return is_full

    def _fit(self, words: str, width: float, size: int, *, bold: bool = False, most: int = MOST_LINES) -> list[str]:
        if not words:
            return []
        tied = one_line(words).replace(THIN, TIED)  # a line is never turned between a number and its unit
        return [line.replace(TIED, THIN) for line in fit_lines(tied, card_font(size, bold=bold), width, most)]

    def _put(self, lines: list[str], left: float, width: float, size: int, **look: object) -> float:
        """Set lines below each other from the top of what is free; gives their height."""
        step = line_height(size)
        for place, words in enumerate(lines):
            box = QRectF(self._paper.margin + left, self._top + place * step, width, step)
            self._page.words.append(TextMark(box, words, size, **look))  # type: ignore[arg-type]
        return len(lines) * step

    def _rule(self, width: float = 0.7) -> None:
        left = self._paper.margin
        start, end = QPointF(left, self._top), QPointF(left + self._paper.inner, self._top)
        self._page.lines.append(LineMark(start, end, width))

    def head(self) -> None:
        """Bike, setup and rider."""
        inner = self._paper.inner
        title = self._fit(self._sheet.title, inner * 0.66, TITLE, bold=True, most=3)
        beside = self._fit(self._sheet.subtitle, inner * 0.31, HEADING, bold=True, most=3)
        high = self._put(title, 0, inner * 0.66, TITLE, bold=True)
        lower = line_height(TITLE) - line_height(HEADING) - 2  # both stand on one line
        self._top += lower
        high = max(high, lower + self._put(beside, self._left(3), inner * 0.31, HEADING, bold=True))
        self._top -= lower
        self._top += high + 4
        self._rule(1.4)
        self._top += 8

    def strip(self) -> None:
        """The big figures, each end on rows of its own."""
        for _, figures in groupby(self._sheet.strip, key=lambda one: one.end):
            row = list(figures)
            for first in range(0, len(row), self._paper.figures):
                self._figures(row[first : first + self._paper.figures])
        self._top += 6 if self._sheet.strip else 0

    def _figures(self, row: list[CardFigure]) -> None:
        cell = self._paper.inner / self._paper.figures
        width = cell - GAP
        labels = [self._fit(one.label, width, NOTE, most=3) for one in row]
        label_high = max(len(lines) for lines in labels) * line_height(NOTE)
        self._room(label_high + line_height(FIGURE) + line_height(NOTE) + 6)
        top = self._top
        for place, (one, lines) in enumerate(zip(row, labels, strict=True)):
            left = place * cell
            self._top = top + label_high - len(lines) * line_height(NOTE)  # labels stand on one line above the figures
            self._put(lines, left, width, NOTE, colour="mute")
            self._top = top + label_high
            size = figure_size(one.figure, width)
            self._top += line_height(FIGURE) - line_height(size)
            self._put([one.figure], left, width, size, bold=True)
            self._top = top + label_high + line_height(FIGURE)
            self._put(self._fit(one.note, width, NOTE, most=1), left, width, NOTE, colour="mute")
        has_notes = any(one.note for one in row)
        self._top = top + label_high + line_height(FIGURE) + (line_height(NOTE) if has_notes else 0) + 6

    def section(self, section: CardSection) -> None:
        """A titled table; its heads stand again on the next page."""
        first = self._height(self._cells(section.lines[0])) if section.lines else 0
        self._room(34 + first)
        self._heads(section, section.title)
        for line in section.lines:
            cells = self._cells(line)
            if self._room(self._height(cells)):
                self._heads(section, f"{section.title}, continued")
            self._line(cells, line)
        self._top += 4

    def _heads(self, section: CardSection, title: str) -> None:
        self._rule()
        self._top += 5
        high = 0.0
        for place, words in enumerate((title, *section.heads)):
            size, is_title = (NOTE, False) if place else (HEADING, True)
            lines = self._fit(words, self._width(place), size, bold=is_title, most=3)
            look = {"bold": is_title, "colour": "ink" if is_title else "mute"}
            high = max(high, self._put(lines, self._left(place), self._width(place), size, **look))
        self._top += high + 3

    def _cells(self, line: CardLine) -> list[list[str]]:
        cells = (line.label, line.found, line.left, line.remark)
        return [
            self._fit(words, self._width(place), NOTE if place == 3 else TEXT, bold=place == 2)
            for place, words in enumerate(cells)
        ]

    @staticmethod
    def _height(cells: list[list[str]]) -> float:
        return max(len(lines) * line_height(NOTE if place == 3 else TEXT) for place, lines in enumerate(cells)) + 3

    def _line(self, cells: list[list[str]], line: CardLine) -> None:
        for place, lines in enumerate(cells):
            look = {"bold": place == 2, "colour": "mute" if place == 3 else "ink"}
            self._put(lines, self._left(place), self._width(place), NOTE if place == 3 else TEXT, **look)
        if line.is_changed:
            at = self._paper.margin + self._left(2) - 5
            end = self._top + max(len(cells[2]), 1) * line_height(TEXT)
            self._page.lines.append(LineMark(QPointF(at, self._top + 1), QPointF(at, end - 1), 2.6, "ink"))
        self._top += self._height(cells)

    def legend(self) -> None:
        """What the bar means, and what "as found" goes by."""
        is_marked = any(line.is_changed for section in self._sheet.sections for line in section.lines)
        words = f"{self._sheet.note} {CHANGED if is_marked else ''}".strip()
        self._block(words, NOTE, colour="mute")
        self._top += 4

    def cautions(self) -> None:
        """What to take care of."""
        self._room(48)
        self._rule(1.4)  # told apart from the tables in grey too
        self._top += 5
        self._block("Take care", HEADING, bold=True, colour="care")
        for words in self._sheet.cautions:
            self._block(words, NOTE + 1)
            self._top += 2
        self._top += 4

    def _block(self, words: str, size: int, *, bold: bool = False, colour: str = "ink") -> None:
        lines = self._fit(words, self._paper.inner, size, bold=bold)
        self._room(len(lines) * line_height(size))
        self._top += self._put(lines, 0, self._paper.inner, size, bold=bold, colour=colour)

    def signature(self) -> None:
        """Lines to sign on, with who handed over."""
        width = self._paper.inner / 2 - GAP
        named = [self._fit(name, width, TEXT, most=2) for _, name in self._sheet.signed]
        high = 18 + max((len(lines) for lines in named), default=0) * line_height(TEXT) + line_height(NOTE) + 4
        self._room(high)
        self._top = self._bottom - high + 14
        top = self._top
        for place, (label, _) in enumerate(self._sheet.signed[:2]):
            left = place * (width + 2 * GAP)
            start = QPointF(self._paper.margin + left, top)
            self._page.lines.append(LineMark(start, QPointF(start.x() + width, top), 0.9, "ink"))
            self._top = top + 2
            self._top += self._put([label], left, width, NOTE, colour="mute")
            self._put(named[place], left, width, TEXT)

    def number_pages(self) -> None:
        """Number the pages where there are several."""
        if len(self.pages) < 2:
            return
        paper = self._paper
        for number, page in enumerate(self.pages, 1):
            words = f"Page {number} of {len(self.pages)}"
            wide = QFontMetricsF(card_font(NOTE)).horizontalAdvance(words) + 2
            box = QRectF(paper.width - paper.margin - wide, paper.height - paper.margin + 3, wide, line_height(NOTE))
            page.words.append(TextMark(box, words, NOTE, colour="mute"))

    def _foot(self) -> None:
        paper = self._paper
        top, bottom = paper.height - paper.margin - paper.foot + 12, paper.height - paper.margin
        width = paper.inner / len(self._sheet.cells)
        size = TEXT if paper is A4 else NOTE + 1
        for place, (label, value) in enumerate(self._sheet.cells):
            left = paper.margin + place * width
            self._page.lines.append(LineMark(QPointF(left, top), QPointF(left, bottom)))
            self._top = top + 4
            self._top += self._put([label], left - paper.margin + 5, width - 8, NOTE, colour="mute")
            lines = self._fit(value, width - 8, size, bold=True, most=2)
            self._put(lines, left - paper.margin + 5, width - 8, size, bold=True)
        right = paper.margin + paper.inner
        for height in (top, bottom):
            self._page.lines.append(LineMark(QPointF(paper.margin, height), QPointF(right, height)))
        self._page.lines.append(LineMark(QPointF(right, top), QPointF(right, bottom)))
        self._top = paper.margin

    def _left(self, place: int) -> float:
        return COLUMNS[place] * self._paper.inner

    def _width(self, place: int) -> float:
        after = COLUMNS[place + 1] if place + 1 < len(COLUMNS) else 1.0
        return (after - COLUMNS[place]) * self._paper.inner - GAP


def figure_size(words: str, width: float) -> int:
    """Give the largest size a figure fits its width in."""
    fits = (size for size in FIGURES if QFontMetricsF(card_font(size, bold=True)).horizontalAdvance(words) <= width)
    return next(fits, FIGURES[-1])


def line_height(size: int) -> float:
    """Give the distance of two lines of a size."""
    return round(size * 1.25, 1)

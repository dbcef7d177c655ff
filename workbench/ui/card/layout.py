"""Lay a card out on A4 pages: where every word and line goes, in points, whatever it is painted on."""

from __future__ import annotations

from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QFont

from workbench.exchange.card import CardLine, CardSection, CardSheet
from workbench.ui.parts.labels import lay_out, one_line
from workbench.ui.parts.theme import FAMILY

WIDTH, HEIGHT, MARGIN = 595.0, 842.0, 40.0
FOOT = 52.0
INNER = WIDTH - 2 * MARGIN
COLUMNS = (0.0, 0.27, 0.50, 0.74)  # label, as found, as left, remark
TITLE, HEADING, TEXT, NOTE, FIGURE = 20, 12, 10, 8, 17


@dataclass(frozen=True, slots=True)
class TextMark:
    """Words in a box; what does not fit on one line is cut unless ``wraps``."""

    box: QRectF
    words: str
    size: int = TEXT
    bold: bool = False
    colour: str = "ink"
    wraps: bool = False


@dataclass(frozen=True, slots=True)
class LineMark:
    """A straight line."""

    start: QPointF
    end: QPointF
    width: float = 0.7


@dataclass(slots=True)
class PaperPage:
    """One page of marks."""

    words: list[TextMark] = field(default_factory=list)
    lines: list[LineMark] = field(default_factory=list)


def card_font(size: int, *, bold: bool = False) -> QFont:
    """Give the card's font; sizes are points on paper."""
    font = QFont(FAMILY)
    font.setPixelSize(size)
    font.setBold(bold)
    return font


def lay_card_out(sheet: CardSheet) -> list[PaperPage]:
    """Give the pages of a card."""
    maker = _Maker(sheet)
    maker.head()
    maker.strip()
    for section in sheet.sections:
        maker.section(section)
    maker.cautions()
    maker.signature()
    return maker.pages


class _Maker:
    """Places marks from top to bottom and turns the page when it is full."""

    def __init__(self, sheet: CardSheet) -> None:
        self._sheet = sheet
        self.pages: list[PaperPage] = []
        self._top = MARGIN
        self._turn()

    @property
    def _page(self) -> PaperPage:
        return self.pages[-1]

    def _turn(self) -> None:
        self.pages.append(PaperPage())
        self._top = MARGIN
        self._foot()

    def _room(self, height: float) -> None:
        if self._top + height > HEIGHT - MARGIN - FOOT:
            self._turn()

    def _words(self, words: str, left: float, width: float, height: float, **look: object) -> None:
        box = QRectF(MARGIN + left, self._top, width, height)
        self._page.words.append(TextMark(box, words, **look))  # type: ignore[arg-type]

    def _rule(self, width: float = 0.7) -> None:
        start = QPointF(MARGIN, self._top)
        self._page.lines.append(LineMark(start, QPointF(MARGIN + INNER, self._top), width))

    def head(self) -> None:
        """Bike and setup."""
        title = lay_out(one_line(self._sheet.title), card_font(TITLE, bold=True), INNER * 0.68)
        height = min(title.boundingRect().height(), 3 * 26.0)
        self._words(one_line(self._sheet.title), 0, INNER * 0.68, height, size=TITLE, bold=True, wraps=True)
        self._words(self._sheet.subtitle, INNER * 0.7, INNER * 0.3, 26, size=HEADING, bold=True)
        self._top += height + 6
        self._rule(1.4)
        self._top += 10

    def strip(self) -> None:
        """The big figures, four in a row."""
        cell = INNER / 4
        for place, (label, figure) in enumerate(self._sheet.strip):
            column = place % 4
            if column == 0 and place:
                self._top += 42
            self._words(label, column * cell, cell - 8, 12, size=NOTE, colour="mute")
            box = QRectF(MARGIN + column * cell, self._top + 12, cell - 8, 22)
            self._page.words.append(TextMark(box, figure, FIGURE, bold=True))
        self._top += 50 if self._sheet.strip else 0

    def section(self, section: CardSection) -> None:
        """A titled table."""
        self._room(60)
        self._rule()
        self._top += 6
        heads = (section.title, *section.heads, "")
        for place, words in enumerate(heads):
            is_title = place == 0
            look = {"size": HEADING if is_title else NOTE, "bold": is_title, "colour": "ink" if is_title else "mute"}
            self._words(words, self._left(place), self._width(place), 16, **look)
        self._top += 20
        for line in section.lines:
            self._line(line)
        self._top += 8

    def _line(self, line: CardLine) -> None:
        self._room(16)
        cells = (line.label, line.found, line.left, line.remark)
        for place, words in enumerate(cells):
            look = {"size": NOTE if place == 3 else TEXT, "bold": place == 2, "colour": "mute" if place == 3 else "ink"}
            self._words(words, self._left(place), self._width(place), 14, **look)
        self._top += 16

    def cautions(self) -> None:
        """What to take care of."""
        self._room(16 * len(self._sheet.cautions) + 24)
        self._rule()
        self._top += 6
        self._words("Take care", 0, INNER, 16, size=HEADING, bold=True, colour="care")
        self._top += 18
        for words in self._sheet.cautions:
            height = lay_out(words, card_font(NOTE + 1), INNER).boundingRect().height()
            self._room(height)
            self._words(words, 0, INNER, height, size=NOTE + 1, wraps=True)
            self._top += height + 3

    def signature(self) -> None:
        """A line to sign on."""
        self._room(40)
        self._top = max(self._top, HEIGHT - MARGIN - FOOT - 34)
        self._top += 14
        start = QPointF(MARGIN, self._top)
        self._page.lines.append(LineMark(start, QPointF(MARGIN + 200, self._top)))
        self._top += 2
        self._words("Signature", 0, 200, 12, size=NOTE, colour="mute")

    def _foot(self) -> None:
        top = HEIGHT - MARGIN - FOOT + 16
        bottom = HEIGHT - MARGIN
        width = INNER / len(self._sheet.cells)
        for place, (label, value) in enumerate(self._sheet.cells):
            left = MARGIN + place * width
            self._page.words.append(TextMark(QRectF(left + 5, top + 4, width - 8, 11), label, NOTE, colour="mute"))
            self._page.words.append(TextMark(QRectF(left + 5, top + 16, width - 8, 15), value, TEXT, bold=True))
            self._page.lines.append(LineMark(QPointF(left, top), QPointF(left, bottom)))
        for height in (top, bottom):
            self._page.lines.append(LineMark(QPointF(MARGIN, height), QPointF(MARGIN + INNER, height)))
        self._page.lines.append(LineMark(QPointF(MARGIN + INNER, top), QPointF(MARGIN + INNER, bottom)))

    @staticmethod
    def _left(place: int) -> float:
        return COLUMNS[place] * INNER

    @staticmethod
    def _width(place: int) -> float:
        after = COLUMNS[place + 1] if place + 1 < len(COLUMNS) else 1.0
        return (after - COLUMNS[place]) * INNER - 8

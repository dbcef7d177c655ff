"""The card's pages on screen."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.exchange.card_lines import CardLine, CardSheet
from workbench.ui.card.layout import A4, Paper, PaperPage, lay_card_out
from workbench.ui.card.painter import paint_page

GAP = 12


class CardPaper(QWidget):
    """The pages of the card, one below the other, as wide as there is room."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card_paper")
        self._pages: list[PaperPage] = []
        self._format = A4
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_card(self, card: CardSheet | None, paper: Paper = A4) -> None:
        """Show another card; screen readers hear its lines."""
        self._format = paper
        self._pages = lay_card_out(card, paper) if card else []
        self.setAccessibleName("The card")
        self.setAccessibleDescription(_spoken(card) if card else "")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """About the size of the paper."""
        return QSize(int(A4.width), self.heightForWidth(int(A4.width)))

    def heightForWidth(self, width: int) -> int:
        """Pages keep their proportion."""
        return int(len(self._pages) * (self._format.height * self._scale(width) + GAP))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the pages on white."""
        painter = QPainter(self)
        scale = self._scale(self.width())
        for place, page in enumerate(self._pages):
            painter.save()
            painter.translate(0.5, place * (self._format.height * scale + GAP) + 0.5)
            painter.setPen(QColor("#8A8F94"))
            painter.setBrush(QColor("#FFFFFF"))
            painter.drawRect(0, 0, int(self._format.width * scale) - 1, int(self._format.height * scale) - 1)
            paint_page(painter, page, scale)
            painter.restore()

    def _scale(self, width: int) -> float:
        return min(width, 900) / self._format.width


def _spoken(card: CardSheet) -> str:
    def was(line: CardLine) -> str:
        return f", changed, found {line.found}" if line.is_changed else ""

    lines = [f"{card.title}, {card.subtitle}"]
    for section in card.sections:
        lines.append(section.title)
        lines.extend(f"{line.label}: {line.left} {line.remark}{was(line)}".strip() for line in section.lines)
    return "; ".join(lines)

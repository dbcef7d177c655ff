"""The card through the system's printer, with a look at the pages first."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrintPreviewWidget
from PySide6.QtWidgets import QDialog, QGraphicsView, QHBoxLayout, QVBoxLayout, QWidget

from workbench.exchange.card_lines import CardSheet
from workbench.ui.card.layout import PAPERS, Paper
from workbench.ui.card.painter import paint_on, put_paper
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.theme import current


def printer_for(paper: Paper) -> QPrinter:
    """Give a printer set to the paper, with the sheet's corner as its origin."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setFullPage(True)
    put_paper(printer, paper)
    return printer


def paint_for(printer: QPrinter, card: CardSheet, paper: Paper) -> bool:
    """Paint on the paper picked in the printer's dialog, where it is one of ours."""
    return paint_on(printer, card, PAPERS.get(printer.pageLayout().pageSize().name(), paper))


class CardPreview(QDialog):
    """The pages as the printer will have them; it keeps the printer, which Qt does not own."""

    refused = Signal()

    def __init__(self, card: CardSheet, paper: Paper, parent: QWidget) -> None:
        super().__init__(parent)
        self._card, self._paper = card, paper
        self._printer = printer_for(paper)
        self.setObjectName("card_preview_dialog")
        self.setWindowTitle("Card as printed")
        self._pages = QPrintPreviewWidget(self._printer, self)
        self._pages.setObjectName("card_preview_pages")
        self._pages.setAccessibleName("Pages of the card as printed")
        self._pages.paintRequested.connect(self._paint)
        for view in self._pages.findChildren(QGraphicsView):
            view.setObjectName("card_preview_view")
            view.setAccessibleName("Pages of the card, to scroll")
            view.setBackgroundBrush(current().colour("faint"))  # a desk under the paper, in any theme
        buttons = QHBoxLayout()
        for words, name, deed in (
            ("All pages", "preview_all", self._show_all),
            ("One page", "preview_one", self._show_one),
            ("Larger", "preview_larger", self._pages.zoomIn),
            ("Smaller", "preview_smaller", self._pages.zoomOut),
        ):
            buttons.addWidget(self._button(words, "plain", name, deed))
        buttons.addStretch(1)
        buttons.addWidget(self._button("Print ...", "verb", "preview_print", self._print))
        buttons.addWidget(self._button("Close", "plain", "preview_close", self.reject))
        rows = QVBoxLayout(self)
        rows.addLayout(buttons)
        rows.addWidget(self._pages, 1)
        self.resize(1000, 720)

    @staticmethod
    def _button(words: str, kind: str, name: str, deed: Callable[..., object]) -> Button:
        button = Button(words, kind, name=name)
        button.clicked.connect(lambda: deed())
        return button

    def showEvent(self, event: QShowEvent) -> None:
        """Fit the pages in, once there is a size to fit them to."""
        super().showEvent(event)
        QTimer.singleShot(0, self, self._show_all)

    def _show_all(self) -> None:
        self._pages.setAllPagesViewMode()
        self._pages.fitInView()

    def _show_one(self) -> None:
        self._pages.setSinglePageViewMode()
        self._pages.fitInView()

    def _paint(self, printer: QPrinter) -> None:
        paint_on(printer, self._card, self._paper)

    def _print(self) -> None:
        if print_card(self._card, self._paper, self):
            self.accept()
        else:
            self.refused.emit()


def print_card(card: CardSheet, paper: Paper, parent: QWidget) -> bool:
    """Ask for a printer and print; false only if the printer refuses."""
    printer = printer_for(paper)
    dialog = QPrintDialog(printer, parent)
    is_wanted = dialog.exec() == QPrintDialog.DialogCode.Accepted
    dialog.deleteLater()
    return not is_wanted or paint_for(printer, card, paper)

"""The card through the system's printer, with a look at the pages first."""

from __future__ import annotations

from PySide6.QtPrintSupport import QPrintDialog, QPrinter, QPrintPreviewDialog
from PySide6.QtWidgets import QWidget

from workbench.exchange.card_lines import CardSheet
from workbench.ui.card.layout import PAPERS, Paper
from workbench.ui.card.painter import paint_on, put_paper


def printer_for(paper: Paper) -> QPrinter:
    """Give a printer set to the paper, with the sheet's corner as its origin."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setFullPage(True)
    put_paper(printer, paper)
    return printer


def paint_for(printer: QPrinter, card: CardSheet, paper: Paper) -> bool:
    """Paint on the paper picked in the printer's dialog, where it is one of ours."""
    return paint_on(printer, card, PAPERS.get(printer.pageLayout().pageSize().name(), paper))


class CardPreview(QPrintPreviewDialog):
    """The pages as the printer will have them; it keeps the printer, which Qt does not own."""

    def __init__(self, card: CardSheet, paper: Paper, parent: QWidget) -> None:
        self._printer = printer_for(paper)
        super().__init__(self._printer, parent)
        self._card, self._paper = card, paper
        self.setObjectName("card_preview_dialog")
        self.setWindowTitle("Card as printed")
        self.paintRequested.connect(self._paint)

    def _paint(self, printer: QPrinter) -> None:
        paint_for(printer, self._card, self._paper)


def print_card(card: CardSheet, paper: Paper, parent: QWidget) -> bool:
    """Ask for a printer and print; false only if the printer refuses."""
    printer = printer_for(paper)
    dialog = QPrintDialog(printer, parent)
    is_wanted = dialog.exec() == QPrintDialog.DialogCode.Accepted
    dialog.deleteLater()
    return not is_wanted or paint_for(printer, card, paper)

"""The card's sheet: the paper as it will be, and what to do with it."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QFileDialog, QHBoxLayout, QLineEdit, QSizePolicy, QVBoxLayout, QWidget

from workbench.exchange.card import CardSheet
from workbench.ui.card.layout import HEIGHT, WIDTH, PaperPage, lay_card_out
from workbench.ui.card.painter import paint_on, paint_page, write_pdf
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.card import CardState, CardViewModel

GAP = 12


class CardPaper(QWidget):
    """The pages of the card, one below the other, as wide as there is room."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("card_paper")
        self._pages: list[PaperPage] = []
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_card(self, card: CardSheet | None) -> None:
        """Show another card; screen readers hear its lines."""
        self._pages = lay_card_out(card) if card else []
        self.setAccessibleName("The card")
        self.setAccessibleDescription(_spoken(card) if card else "")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """About the size of the paper."""
        return QSize(int(WIDTH), self.heightForWidth(int(WIDTH)))

    def heightForWidth(self, width: int) -> int:
        """Pages keep their proportion."""
        return int(len(self._pages) * (HEIGHT * self._scale(width) + GAP))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the pages on white."""
        painter = QPainter(self)
        scale = self._scale(self.width())
        for place, page in enumerate(self._pages):
            painter.save()
            painter.translate(0.5, place * (HEIGHT * scale + GAP) + 0.5)
            painter.setPen(QColor("#8A8F94"))
            painter.setBrush(QColor("#FFFFFF"))
            painter.drawRect(0, 0, int(WIDTH * scale) - 1, int(HEIGHT * scale) - 1)
            paint_page(painter, page, scale)
            painter.restore()

    @staticmethod
    def _scale(width: int) -> float:
        return min(width, 900) / WIDTH


def _spoken(card: CardSheet) -> str:
    lines = [f"{card.title}, {card.subtitle}"]
    for section in card.sections:
        lines.append(section.title)
        lines.extend(f"{line.label}: {line.left} {line.remark}".strip() for line in section.lines)
    return "; ".join(lines)


class CardPage(Page):
    """Pick a setup, name it, print its card or write it as PDF, and note that it was handed over."""

    def __init__(self, view_model: CardViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._card = view_model
        self._sheet = Sheet("Card", name="card_sheet")
        self._empty = EmptyState(
            "A card shows a setup, and this bike has none yet.", "Go to the baseline", name="no_setup"
        )
        self._empty.action_requested.connect(self._to_baseline)
        self._setups = ListBox(())
        self._setups.setObjectName("card_setup")
        self._setups.setAccessibleName("Setup on the card")
        self._setups.activated.connect(self._pick)
        self._name = QLineEdit()
        self._name.setObjectName("card_name")
        self._name.setAccessibleName("Name of this setup")
        self._name.setPlaceholderText("Name, as: dry, wet, pack")
        self._name.editingFinished.connect(self._rename)
        self._over = Button("Hand over the card", "verb", name="card_hand_over")
        self._over.clicked.connect(view_model.note_handed_over)
        self._pdf = Button("Write PDF ...", "plain", name="card_pdf")
        self._pdf.clicked.connect(self.ask_for_pdf)
        self._print = Button("Print ...", "plain", name="card_print")
        self._print.clicked.connect(self.print_card)
        self._carry = Button("Carry it over ...", "link", name="card_carry")
        self._carry.clicked.connect(self._to_carry)
        self._said = Words("", "mute", name="card_said")
        self._paper = CardPaper()
        self._whole = self._build()
        self._sheet.body.addWidget(self._empty)
        self._sheet.body.addWidget(self._whole)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on handing over."""
        self._over.setFocus(Qt.FocusReason.OtherFocusReason)

    def _build(self) -> QWidget:
        whole = QWidget()
        line = QHBoxLayout()
        line.setSpacing(SPACE_8)
        for widget in (self._setups, self._name):
            line.addWidget(widget, 1)
        for button in (self._over, self._pdf, self._print):
            line.addWidget(button)
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addLayout(line)
        under = QHBoxLayout()
        under.addWidget(self._said, 1)
        under.addWidget(self._carry)
        rows.addLayout(under)
        rows.addWidget(self._paper)
        return whole

    def _render(self, state: CardState) -> None:
        has_card = state.card is not None
        self._empty.setVisible(not has_card)
        self._whole.setVisible(has_card)
        self._setups.clear()
        for setup_id, words in state.setups:
            self._setups.addItem(words, setup_id)
        self._setups.setCurrentIndex(self._setups.findData(state.setup_id))
        if not self._name.isModified():
            self._name.setText(state.setup_name)
        self._said.set_words(state.handed_over)
        self._paper.show_card(state.card)

    def _pick(self, place: int) -> None:
        self._card.pick(str(self._setups.itemData(place)))

    def _rename(self) -> None:
        self._name.setModified(False)
        self._card.name(self._name.text())

    def _to_carry(self) -> None:
        self.station_requested.emit("carry")

    def _to_baseline(self) -> None:
        self.station_requested.emit("baseline")

    def ask_for_pdf(self) -> None:
        """Ask where the PDF goes and write it."""
        path, _ = QFileDialog.getSaveFileName(self, "Write the card as PDF", self._card.state.file_name, "PDF (*.pdf)")
        if path:
            self.write_pdf(Path(path))

    def write_pdf(self, path: Path) -> None:
        """Write the card into a file and say where it went."""
        card = self._card.state.card
        if card is None:
            return
        try:
            write_pdf(card, path)
        except OSError:
            self.problem_raised.emit(f"{path} cannot be written. Choose another folder.")
            return
        self._said.set_words(f"Written to {path}")

    def print_card(self) -> None:
        """Print with the system's dialog."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        card = self._card.state.card
        if card is None:
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        dialog = QPrintDialog(printer, self)
        if dialog.exec() == QPrintDialog.DialogCode.Accepted and not paint_on(printer, card):
            self.problem_raised.emit("The printer refused the card. Write it as PDF and print that.")
        dialog.deleteLater()

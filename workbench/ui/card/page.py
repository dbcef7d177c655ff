"""The card's sheet: the paper as it will be, and what to do with it."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QLineEdit, QVBoxLayout, QWidget

from workbench.ui.card.layout import PAPERS
from workbench.ui.card.painter import write_pdf, write_whole
from workbench.ui.card.paper import CardPaper
from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_16
from workbench.viewmodels.card import CardState, CardViewModel

PICK_WIDTH = 264


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
        self._format = ListBox([(name, name) for name in PAPERS])
        self._format.setObjectName("card_format")
        self._format.setAccessibleName("Size of the paper")
        self._format.activated.connect(self._pick_format)
        self._preview = Button("Preview ...", "plain", name="card_preview")
        self._preview.clicked.connect(self.preview)
        self._pdf = Button("Write PDF or text ...", "plain", name="card_pdf")
        self._pdf.clicked.connect(self.ask_for_file)
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
        line = Flow()
        for widget in (self._setups, self._name):
            widget.setFixedWidth(PICK_WIDTH)
        for part in (self._setups, self._name, self._format, self._over):
            line.addWidget(part)
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(line)
        under = Flow()
        for button in (self._print, self._preview, self._pdf, self._carry):
            under.addWidget(button)
        rows.addWidget(under)
        rows.addWidget(self._said)
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
        self._format.setCurrentIndex(self._format.findData(state.paper))
        self._paper.show_card(state.card, PAPERS[state.paper])

    def _pick(self, place: int) -> None:
        self._card.pick(str(self._setups.itemData(place)))

    def _pick_format(self, place: int) -> None:
        self._card.pick_paper(str(self._format.itemData(place)))

    def _rename(self) -> None:
        self._name.setModified(False)
        self._card.name(self._name.text())

    def _to_carry(self) -> None:
        self.station_requested.emit("carry")

    def _to_baseline(self) -> None:
        self.station_requested.emit("baseline")

    def ask_for_file(self) -> None:
        """Ask where the file goes and write it: PDF, or text if its name says so."""
        kinds = "PDF (*.pdf);;Plain text (*.txt)"
        path, kind = QFileDialog.getSaveFileName(self, "Write the card", self._card.state.file_name, kinds)
        if path:
            is_text = path.casefold().endswith(".txt") or (kind.endswith("(*.txt)") and not path.endswith(".txt"))
            self.write_text(Path(path).with_suffix(".txt")) if is_text else self.write_pdf(Path(path))

    def write_pdf(self, path: Path) -> None:
        """Write the card into a PDF file and say where it went."""
        state = self._card.state
        if state.card is not None:
            card, paper = state.card, PAPERS[state.paper]
            self._write(path, lambda: write_pdf(card, path, paper))

    def write_text(self, path: Path) -> None:
        """Write the card as plain text and say where it went."""
        if self._card.state.card is not None:
            words = self._card.text()
            self._write(path, lambda: write_whole(path, words))

    def _write(self, path: Path, write: Callable[[], None]) -> None:
        try:
            write()
        except OSError:
            self.problem_raised.emit(f"{path} cannot be written. Choose another folder.")
            return
        self._said.set_words(f"Written to {path}")

    def preview(self) -> None:
        """Show the pages as the printer will have them; printing is offered there too."""
        from workbench.ui.card.printing import CardPreview

        state = self._card.state
        if state.card is not None:
            dialog = CardPreview(state.card, PAPERS[state.paper], self)
            dialog.refused.connect(self._say_refused)
            dialog.exec()
            dialog.deleteLater()

    def print_card(self) -> None:
        """Print with the system's dialog."""
        from workbench.ui.card.printing import print_card

        state = self._card.state
        if state.card is not None and not print_card(state.card, PAPERS[state.paper], self):
            self._say_refused()

    def _say_refused(self) -> None:
        self.problem_raised.emit("The printer refused the card. Write it as PDF and print that.")

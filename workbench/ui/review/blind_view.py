"""The result of a blind test: in words first, then the difference with its interval, pair by pair, and the proof."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_24
from workbench.ui.plots.effects import EffectsPlot
from workbench.viewmodels.review_blind import TWO_READINGS, BlindResult, PairRow


class BlindResultView(QWidget):
    """Hidden where no blind test is looked at."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("review_blind")
        self._title = Words("", "strong", name="blind_result_title")
        self._incomplete = CareNote("", name="blind_incomplete")
        self._ratings = Words("", "text", name="blind_ratings")
        self.plot = EffectsPlot()
        self.plot.setObjectName("review_blind_plot")
        self._by_order = Words("", "text", name="blind_by_order")
        self._guesses = Words("", "text", name="blind_guesses")
        self._readings = Words(TWO_READINGS, "note")
        self._rows: tuple[PairRow, ...] = ()
        self._table = QWidget()
        self._table.setObjectName("blind_pairs")
        self._grid = QGridLayout(self._table)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(SPACE_24)
        self._grid.setVerticalSpacing(SPACE_4)
        self._grid.setColumnStretch(4, 1)
        self._proof = Words("", "text", name="blind_proof")
        self._broken = CareNote("", name="blind_broken")
        self._seal = Words("", "note", name="blind_seal")
        self._seal.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for words in (self._title, self._incomplete, self._ratings, self.plot, self._by_order, self._guesses):
            rows.addWidget(words)
        for below in (self._readings, self._table, self._proof, self._broken, self._seal, Rule()):
            rows.addWidget(below)
        self.hide()

    def show_result(self, result: BlindResult | None) -> None:
        """Show a result, or nothing."""
        self.setVisible(result is not None)
        if result is None:
            return
        self._title.setText(result.title)
        self._incomplete.set_text(result.incomplete)
        self._ratings.set_words(result.ratings)
        self.plot.setVisible(bool(result.effects.rows))
        self.plot.show_effects(result.effects, "")
        self._by_order.set_words(result.by_order)
        self._guesses.set_words(result.guesses)
        self._readings.setVisible(bool(result.effects.rows))
        self._show_pairs(result.rows)
        self._proof.set_words(result.proof if result.is_proven else "")
        self._broken.set_text("" if result.is_proven else result.proof)
        self._seal.setText(result.seal)

    def _show_pairs(self, rows: tuple[PairRow, ...]) -> None:
        if rows == self._rows:
            return
        self._rows = rows
        while item := self._grid.takeAt(0):
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for place, row in enumerate(rows):
            cells = ((row.title, "mute"), (row.first, "text"), (row.second, "text"), (row.guess, "text"))
            for column, (text, role) in enumerate(cells):
                self._grid.addWidget(Words(text, role), place, column)

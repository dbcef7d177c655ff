"""The setup most likely to suit so far, how sure that is, and the way to have it on the bike."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_24
from workbench.viewmodels.review_data import Suited


class SuitedView(QWidget):
    """``wanted`` when it is to be put on the bike."""

    wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title = Words("", "strong", name="suited_title")
        self._sure = Words("", "text", name="suited_sure")
        self._advice = Words("", "text", name="suited_advice")
        self._put = Button("Put this on the bike ...", "plain", name="suited_put")
        self._put.clicked.connect(self.wanted)
        words = QVBoxLayout()
        words.setSpacing(SPACE_4)
        for widget in (self._title, self._sure, self._advice):
            words.addWidget(widget)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(SPACE_24)
        row.addLayout(words, 1)
        row.addWidget(self._put)

    def show_suited(self, suited: Suited) -> None:
        """Show the setup, or that it is too early to name one."""
        self._title.setText(suited.title)
        self._sure.set_words(suited.sure)
        self._advice.set_words(suited.advice)
        self._put.setVisible(bool(suited.setup_id))

"""Passing an adjuster over: reasons on number keys, or one of your own."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.rating_bar import KeyBar
from workbench.ui.parts.text_field import TextField
from workbench.ui.parts.theme import SPACE_8
from workbench.viewmodels.adjusters import AdjustersViewModel


class SkipPanel(QWidget):
    """Asks why the adjuster is passed over."""

    def __init__(self, view_model: AdjustersViewModel) -> None:
        super().__init__()
        self.setObjectName("skip_panel")
        self._view_model = view_model
        self._reasons: tuple[str, ...] = ()
        self.bar: KeyBar | None = None
        self.other = TextField(label="Another reason", name="skip_other")
        self.take = Button("Pass it over", "plain", name="skip_take")
        self.back = Button("Go on counting", "link", name="skip_back")
        self.take.clicked.connect(self._take)
        self.other.line.returnPressed.connect(self._take)
        self._holder = QVBoxLayout()
        row = QHBoxLayout()
        row.setSpacing(SPACE_8)
        row.addWidget(self.other, 1)
        row.addWidget(self.take)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(self._holder)
        rows.addWidget(Words("Another reason", "mute"))
        rows.addLayout(row)
        rows.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addStretch(1)

    def show_reasons(self, reasons: tuple[str, ...]) -> None:
        """Offer the usual reasons."""
        if reasons == self._reasons:
            return
        self._reasons = reasons
        self.bar = KeyBar(tuple(enumerate(reasons)), question="Why is it passed over?", name="skip_reason")
        self.bar.picked.connect(self._picked)
        self._holder.addWidget(self.bar)
        self.setFocusProxy(self.bar)

    def _picked(self, index: object) -> None:
        if isinstance(index, int) and self.bar is not None:
            self.bar.set_value(None)
            self._view_model.skip(self._reasons[index])

    def _take(self) -> None:
        self.other.commit()
        if self._view_model.skip(self.other.line.text()):
            self.other.set_value("")

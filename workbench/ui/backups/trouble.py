"""What is shown instead of the window when a library cannot be opened: what is wrong, and the ways out."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QFileDialog, QVBoxLayout, QWidget

from workbench.ui.backups.page import HEADS, SAMPLES
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Scrolled
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import SPACE_16, SPACE_24
from workbench.viewmodels.backups import BackupRow
from workbench.viewmodels.trouble import TroubleState, Way

FILES = "Trailbench library (*.trailbench)"


class TroubleDialog(QDialog):
    """The ways out as buttons; ``way`` is the one taken, ``target`` the file or backup it is about."""

    def __init__(self, state: TroubleState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("trouble")
        self.setWindowTitle("Trailbench")
        self.way = Way.QUIT
        self.target = state.picked
        self._table = Table(HEADS, SAMPLES, name="trouble_backups", label="Backups, the newest first")
        self._table.show_rows(
            tuple(TableRow(one.key, _cells(one), is_mute=not one.is_usable) for one in state.backups), state.picked
        )
        self._table.setVisible(bool(state.backups))
        self._table.row_picked.connect(self._pick)
        self._usable = {row.key for row in state.backups if row.is_usable}
        body = QWidget()
        rows = QVBoxLayout(body)
        rows.setContentsMargins(SPACE_24, SPACE_24, SPACE_24, SPACE_16)
        rows.setSpacing(SPACE_16)
        rows.addWidget(Words(state.title, "title", name="trouble_title"))
        rows.addWidget(Words(state.text, "text", name="trouble_text"))
        rows.addWidget(self._table)
        rows.addStretch(1)
        self._keys = Flow()
        first = state.ways[0][0]
        self._buttons = {way: self._button(way, words, is_first=way == first) for way, words in state.ways}
        foot = QVBoxLayout()
        foot.setContentsMargins(SPACE_24, 0, SPACE_24, SPACE_24)
        foot.addWidget(self._keys)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(Scrolled(body, name="trouble_scroll"), 1)
        whole.addLayout(foot)
        self._buttons[first].setFocus(Qt.FocusReason.OtherFocusReason)
        self.resize(760, 560 if state.backups else 340)

    def _button(self, way: Way, words: str, *, is_first: bool) -> Button:
        button = Button(words, "verb" if is_first else "plain", name=f"trouble_{way}")
        button.clicked.connect(partial(self._take, way))
        self._keys.addWidget(button)
        return button

    def _pick(self, key: str) -> None:
        self.target = key
        if Way.RESTORE in self._buttons:
            self._buttons[Way.RESTORE].setEnabled(key in self._usable)

    def _take(self, way: Way, _checked: bool = False) -> None:
        if way == Way.OTHER:
            self.target, _ = QFileDialog.getOpenFileName(self, "Open another library", "", FILES)
        elif way == Way.NEW:
            self.target, _ = QFileDialog.getSaveFileName(self, "Begin a new library", "garage.trailbench", FILES)
        if way in (Way.OTHER, Way.NEW) and not self.target:
            return
        self.way = way
        self.accept()


def _cells(row: BackupRow) -> tuple[str, ...]:
    return (row.when, row.why, row.size, row.bikes, row.checked)

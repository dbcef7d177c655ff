"""The backups: a list, a key to make one, and the way back to one."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QFrame, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.backups import BackupsState, BackupsViewModel

HEADS = ("When", "Made", "Size", "Bikes", "Checked")
SAMPLES = ("28 Sep 2031, 00:00", "", "000.0 MB", "00000", "when it was made")
ABOUT = (
    "A backup is the whole library as one file. One is made by itself about every half hour of work and when you close"
    " the window; it is opened and checked before it counts. The last ten stay, then one a day, a week and a month."
    " Those made by hand stay until you remove them."
)


class BackupsPage(Page):
    """The sheet of backups."""

    def __init__(self, view_model: BackupsViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._backups = view_model
        self._sheet = Sheet("Backups", name="backups_sheet")
        self._said = Words("", "strong", name="backups_said")
        self._back = Button("", "plain", name="backups_take_back")
        self._make = Button("Make a backup now", "verb", name="backups_make")
        self._check = Button("Check all", "plain", name="backups_check")
        self._table = Table(HEADS, SAMPLES, name="backups_table", label="Backups, the newest first")
        self._none = Words("None yet. The first one is made once something has been kept.", name="backups_none")
        self._copy = Button("Save a copy of it ...", "plain", name="backups_copy")
        self._restore = Button("Restore it ...", "plain", name="backups_restore")
        self._question = self._build_question()
        self._folder = Words("", "note", name="backups_folder")
        self._close = Button("Back to the garage", "link", name="backups_close")
        self._place()
        self._connect()
        self.listen()

    def _build_question(self) -> QFrame:
        frame = QFrame()
        frame.setProperty("role", "notice")
        self._asked = Words("", "strong", name="backups_question")
        self._yes = Button("Restore it", "verb", name="backups_restore_yes")
        self._no = Button("Leave it", "plain", name="backups_restore_no")
        keys = Flow()
        keys.addWidget(self._yes)
        keys.addWidget(self._no)
        rows = QVBoxLayout(frame)
        rows.setContentsMargins(SPACE_16, SPACE_16, SPACE_16, SPACE_16)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._asked)
        rows.addWidget(keys)
        frame.hide()
        return frame

    def _place(self) -> None:
        above, below = Flow(), Flow()
        for key in (self._make, self._check, self._back):
            above.addWidget(key)
        for key in (self._copy, self._restore):
            below.addWidget(key)
        for part in (Words(ABOUT), above, self._said, self._table, self._none, below, self._question, self._folder):
            self._sheet.body.addWidget(part)
        self._sheet.body.addWidget(self._close, 0, Qt.AlignmentFlag.AlignLeft)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)

    def _connect(self) -> None:
        self._make.clicked.connect(self._backups.make)
        self._check.clicked.connect(self._backups.check_all)
        self._back.clicked.connect(self._backups.take_back)
        self._table.row_picked.connect(self._backups.pick)
        self._copy.clicked.connect(self._ask_where)
        self._restore.clicked.connect(self._ask)
        self._yes.clicked.connect(self._backups.restore)
        self._no.clicked.connect(self._leave)
        self._close.clicked.connect(self._leave_sheet)
        self._backups.restored.connect(self.garage_replaced)

    def start(self) -> None:
        """Begin at the key that makes one."""
        self._make.setFocus(Qt.FocusReason.OtherFocusReason)

    def _render(self, state: BackupsState) -> None:
        rows = tuple(
            TableRow(row.key, (row.when, row.why, row.size, row.bikes, row.checked), is_mute=not row.is_usable)
            for row in state.rows
        )
        self._table.show_rows(rows, state.picked)
        self._table.setVisible(bool(rows))
        self._none.setVisible(not rows)
        self._said.set_words(state.said)
        self._back.setVisible(bool(state.take_back))
        self._back.set_text("Take the restore back")
        self._make.setEnabled(state.can_keep)
        self._make.setVisible(not state.question)  # one key leads on at a time
        self._check.setVisible(bool(rows))
        for key in (self._copy, self._restore):
            key.setVisible(bool(rows))
        self._copy.setEnabled(bool(state.picked))
        self._restore.setEnabled(state.can_restore)
        self._asked.setText(state.question)
        self._question.setVisible(bool(state.question))
        self._folder.setText(f"They lie in {state.folder}. A copy on another disk is worth having.")

    def _ask(self) -> None:
        self._backups.ask_restore()
        self._yes.setFocus(Qt.FocusReason.OtherFocusReason)
        self._sheet.scroll_area.ensureWidgetVisible(self._question)

    def _leave(self) -> None:
        self._backups.leave_it()
        self._restore.setFocus(Qt.FocusReason.OtherFocusReason)

    def _ask_where(self) -> None:
        path, _ = QFileDialog.getSaveFileName(
            self, "Save a copy of this backup", self._backups.copy_name(), "Trailbench library (*.trailbench)"
        )
        if path:
            self._backups.save_copy(Path(path))

    def _leave_sheet(self) -> None:
        self.station_requested.emit("garage")

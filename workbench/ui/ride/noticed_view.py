"""Tick what was noticed on a run; beneath it what to suspect, with a test each and the way to its next step."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ChoiceField, TickBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8
from workbench.ui.ride.tick_grid import TickGrid
from workbench.viewmodels.ride_noticed import NoticedLook, NoticedRow, SuspectLook


class NoticedView(QWidget):
    """``noticed(key, end)``: None for the likeliest end, empty to take it back; ``picked(adjuster)`` to work on it."""

    noticed = Signal(str, object)
    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("run_noticed")
        self._boxes: dict[str, TickBox] = {}
        self._shown: NoticedLook | None = None
        self._told: QWidget | None = None
        self._remark = Words("", "mute", name="noticed_remark")
        self._grid = TickGrid()
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(SPACE_8)
        self._rows.addWidget(Words("Noticed on this run", "strong"))
        self._rows.addWidget(self._grid)
        self._rows.addWidget(self._remark)

    def show_noticed(self, look: NoticedLook) -> None:
        """Show what is ticked and what to suspect."""
        if look == self._shown:
            return
        self._shown = look
        for row in look.rows:
            self._box(row).setChecked(bool(row.end))
        self._grid.set_boxes([self._boxes[row.key] for row in look.rows])
        for key, box in self._boxes.items():
            box.setVisible(any(row.key == key for row in look.rows))
        self._remark.set_words(look.remark)
        self._remark.setVisible(bool(look.remark))
        ticked = {row.key for row in look.rows if row.end}
        self._tell(look.told, ticked)

    def focus_first(self) -> None:
        """Put the focus on the list."""
        for box in self._boxes.values():
            box.setFocus(Qt.FocusReason.OtherFocusReason)
            return

    def _box(self, row: NoticedRow) -> TickBox:
        if row.key not in self._boxes:
            box = TickBox(row.words, name=f"noticed_{row.key}")
            box.setAccessibleName(f"Noticed: {row.words}")
            box.clicked.connect(partial(self._ticked, row.key, box))
            self._boxes[row.key] = box
        return self._boxes[row.key]

    def _ticked(self, key: str, box: TickBox, _checked: bool = False) -> None:
        self.noticed.emit(key, None if box.isChecked() else "")

    def _tell(self, told: tuple[NoticedRow, ...], ticked: set[str]) -> None:
        old, self._told = self._told, None
        if old is not None:
            self._rows.removeWidget(old)
            old.hide()
            old.deleteLater()
        if not told:
            return
        self._told = part = QWidget()
        rows = QVBoxLayout(part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for row in told:
            self._tell_one(rows, row, can_change=row.key in ticked)
        self._rows.addWidget(part)

    def _tell_one(self, rows: QVBoxLayout, row: NoticedRow, *, can_change: bool) -> None:
        rows.addWidget(Words(f"{row.words}: {dict(row.ends).get(row.end, '').lower()}", "strong"))
        if can_change and len(row.ends) > 1:
            where = ChoiceField(row.ends, label=f"Where: {row.words}", name=f"where_{row.key}")
            where.set_value(row.end)
            where.value_committed.connect(partial(self._placed, row.key))
            rows.addWidget(where, 0, Qt.AlignmentFlag.AlignLeft)
        if row.care:
            rows.addWidget(CareNote(row.care, name=f"noticed_care_{row.key}"))
        for place, suspect in enumerate(row.suspects, start=1):
            self._tell_suspect(rows, row.key, place, suspect)

    def _tell_suspect(self, rows: QVBoxLayout, key: str, place: int, suspect: SuspectLook) -> None:
        rows.addWidget(Words(f"{place}. {suspect.what}", "text", name=f"suspect_{key}_{place}"))
        rows.addWidget(Words(f"Test: {suspect.test}", "note", name=f"suspect_{key}_{place}_test"))
        if suspect.adjuster_id:
            work = Button(suspect.verb, "link", name=f"suspect_{key}_{place}_work")
            work.clicked.connect(partial(self._work, suspect.adjuster_id))
            rows.addWidget(work, 0, Qt.AlignmentFlag.AlignLeft)

    def _placed(self, key: str, end: object) -> None:
        self.noticed.emit(key, str(end))

    def _work(self, adjuster_id: str, _checked: bool = False) -> None:
        self.picked.emit(adjuster_id)

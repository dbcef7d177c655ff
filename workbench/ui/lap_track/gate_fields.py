"""Where a gate stands, typed: when the track is at it, or its two ends."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.ui.parts.labels import Words
from workbench.ui.parts.text_field import TextField
from workbench.ui.parts.theme import SPACE_4, SPACE_16
from workbench.viewmodels.base import Problem
from workbench.viewmodels.lap_gates import TITLES, Gates
from workbench.viewmodels.lap_track import LapTrackViewModel

HEADS = ("Into the track", "Its two ends, latitude and longitude")


class GateFields(QWidget):
    """A line a gate."""

    def __init__(self, view_model: LapTrackViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._fields: dict[str, TextField] = {}
        self._finish: list[QWidget] = []
        rows = QGridLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setHorizontalSpacing(SPACE_16)
        rows.setVerticalSpacing(SPACE_4)
        rows.setColumnStretch(2, 1)
        for column, head in enumerate(HEADS, start=1):
            rows.addWidget(Words(head, "mute"), 0, column)
        for place, (name, title) in enumerate(TITLES.items(), start=1):
            at = TextField(label=f"{title}, time into the track", placeholder="0:42", name=f"lap_{name}_at")
            ends = TextField(label=f"{title}, its two ends in degrees", name=f"lap_{name}_ends")
            at.value_committed.connect(partial(self._timed, view_model, name))
            ends.value_committed.connect(partial(self._placed, view_model, name))
            at.setFixedWidth(110)
            words = Words(title, "text")
            for column, widget in enumerate((words, at, ends)):
                rows.addWidget(widget, place, column, Qt.AlignmentFlag.AlignTop)
            self._fields[f"{name}_at"], self._fields[f"{name}_ends"] = at, ends
            if name == "finish":
                self._finish = [words, at, ends]

    def show_gates(self, gates: Gates) -> None:
        """Show where the gates are."""
        for name in TITLES:
            texts = gates.start if name == "start" else gates.finish
            self._fields[f"{name}_at"].set_value(texts.at)
            self._fields[f"{name}_ends"].set_value(texts.ends)
        for widget in self._finish:
            widget.setVisible(not gates.is_loop)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        found = self._fields.get(problem.field)
        if found is not None:
            found.refuse(problem.text)
            found.setFocus(Qt.FocusReason.OtherFocusReason)
        return found is not None

    def _timed(self, view_model: LapTrackViewModel, name: str, text: object) -> None:
        view_model.set_at(name, str(text))

    def _placed(self, view_model: LapTrackViewModel, name: str, text: object) -> None:
        view_model.set_ends(name, str(text))

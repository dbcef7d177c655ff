"""The last stage: what was opened goes back, one tick each."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QAbstractButton, QVBoxLayout, QWidget

from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.sag.entries import Stage
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import GuideShown


class PutBackStage(Stage):
    """A list to tick; what is not ticked stays due."""

    moved_on = Signal()  # one is back: the focus belongs to the next

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__(view_model, name="sag_put_back_stage")
        self._kept = Words("", "strong", name="sag_kept_words")
        self._note = Words("", "text", name="sag_put_back_note")
        self._list = StepList(name="sag_put_back")
        self._care = CareNote(name="sag_put_back_care")
        self._list.step_ticked.connect(self._ticked)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        for widget in (self._kept, self._note, self._list, self._care):
            rows.addWidget(widget)
        rows.addStretch(1)

    def show_guide(self, guide: GuideShown) -> None:
        self._kept.set_words(guide.kept_words)
        self._note.setText(guide.put_back_note)
        self._list.set_steps(
            [
                Step(str(place), f"{one.title}: {one.text}", False, one.relative)
                for place, one in enumerate(guide.put_back)
            ]
        )
        self._care.set_text(guide.put_back_care)

    def first(self) -> QWidget | None:
        return next((row for row in self._list.findChildren(QAbstractButton) if row.isVisibleTo(self)), None)

    def _ticked(self, key: str, _done: bool) -> None:
        self.view_model.take_step(int(key))
        self.moved_on.emit()

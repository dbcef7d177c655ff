"""The ratings along one adjuster, with the same in words."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.ui.plots.click_ruler import ClickRulerPlot
from workbench.ui.plots.response import ResponsePlot
from workbench.ui.review.read_line import ReadLine
from workbench.viewmodels.review_response import ResponseState

LEGEND = (
    "Dot: runs, larger for repeats. Curve: the liking, nine times in ten inside its band; thin: some of the curves it"
    " is made of. On the ruler each dot is one chance in 20 for the place liked most; bracket: nine in ten; bar: about"
    " as good; upright line: as it stands."
)

HOW = "Point at a position to read it, or go through them with the arrow keys."


class ResponseView(QWidget):
    """Pick an adjuster and see where it is liked; ``adjuster_picked`` with its key."""

    adjuster_picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._choice = ListBox(())
        self._choice.setObjectName("response_adjuster")
        self._choice.setAccessibleName("Adjuster")
        self._choice.setMinimumWidth(260)
        self._choice.activated.connect(self._pick)
        self._said = Words("", "text", name="response_said")
        self._answers = Words("", "note", name="response_answers")
        self.plot = ResponsePlot()
        self.ruler = ClickRulerPlot()
        self._read = ReadLine(HOW, (self.plot,), name="response_read")
        self._fold = Button("Position by position ...", "link", name="response_fold")
        self._fold.clicked.connect(self._unfold)
        self._places = Words("", "note", name="response_places")
        self._places.hide()
        head = QHBoxLayout()
        head.setSpacing(SPACE_16)
        head.addWidget(Words("Along one adjuster", "strong"))
        head.addWidget(self._choice)
        head.addStretch(1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addLayout(head)
        legend = Words(LEGEND, "note", name="response_legend")
        for widget in (self._said, self.plot, self._read, self.ruler, self._answers, legend):
            rows.addWidget(widget)
        rows.addWidget(self._fold, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self._places)

    def show_response(self, state: ResponseState) -> None:
        """Show the adjuster looked at; nothing when none was ridden at two positions."""
        self.setVisible(bool(state.choices))
        if not state.choices:
            return
        self._choice.clear()
        for key, title in state.choices:
            self._choice.addItem(" ".join(title.split()), key)
        self._choice.setCurrentIndex(max(self._choice.findData(state.response.adjuster_id), 0))
        self._said.setText(state.response.said)
        told = "; ".join(f"at {place}: {words}" for place, words in state.response.answers)
        self._answers.set_words(f"What was answered {told}." if told else "")
        self._places.setText("\n".join(place.said for place in state.response.places))
        self.plot.show_response(state.response)
        self.ruler.show_response(state.response)

    def _unfold(self) -> None:
        self._places.setVisible(self._places.isHidden())

    def _pick(self, place: int) -> None:
        self.adjuster_picked.emit(str(self._choice.itemData(place)))

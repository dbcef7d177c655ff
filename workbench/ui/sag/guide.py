"""The stages of measuring one end, in their sheet."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.drawings.view import DrawingValues, DrawingView
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Scrolled
from workbench.ui.parts.stage_sheet import StageSheet
from workbench.ui.sag.advice import AdviceStage
from workbench.ui.sag.entries import Stage
from workbench.ui.sag.measure import MeasureStage
from workbench.ui.sag.prepare import PrepareStage
from workbench.ui.sag.put_back import PutBackStage
from workbench.ui.sag.spring import SpringStage
from workbench.viewmodels.base import Problem
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import GuideShown


class Guide(StageSheet):
    """Five stages; what the verb does is told by the view-model."""

    station_requested = Signal(str)

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__("Sag", name="sag_guide")
        self._view_model = view_model
        self._place = ("", -1)
        prepare = PrepareStage(view_model)
        prepare.adjusters.station_requested.connect(self.station_requested)
        prepare.adjusters.moved_on.connect(self.take_focus)
        put_back = PutBackStage(view_model)
        put_back.moved_on.connect(self.take_focus)
        self.stages: tuple[Stage, ...] = (
            prepare,
            SpringStage(view_model),
            MeasureStage(view_model),
            AdviceStage(view_model),
            put_back,
        )
        self.set_stages(list(zip(view_model.stage_words(), self.stages, strict=True)))
        self.other = Button("", "link", name="sag_other_end")
        self.both = Button("Both ends", "link", name="sag_both_ends")
        self.discard = Button("Discard", "link", name="sag_discard")
        for button in (self.both, self.other, self.discard):
            self.keys.addWidget(button)
        self._drawing = DrawingView("rider", name="sag_drawing")
        self._remark = Words("", "note", name="sag_drawing_remark")
        self.set_margin(self._margin_part())
        self.verb_pressed.connect(self._verb)
        self.second_pressed.connect(self._second)
        self.back_pressed.connect(view_model.back)
        self.both.clicked.connect(view_model.both_ends)
        self.other.clicked.connect(view_model.switch_end)
        self.discard.clicked.connect(view_model.discard)

    def _margin_part(self) -> QWidget:
        margin = QWidget()
        rows = QVBoxLayout(margin)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self._drawing)
        rows.addWidget(self._remark)
        rows.addStretch(1)
        return margin

    def show_guide(self, guide: GuideShown) -> None:
        """Show one end at its stage; a fresh stage takes the focus to its next thing to do."""
        index = guide.stage - 1
        self.title.setText(guide.title)
        self.show_stage(index, verb=guide.verb, second=guide.second, can_go_back=guide.can_go_back)
        self.setAccessibleName(f"{guide.title}, {self.subtitle.text()}")
        self.stages[index].show_guide(guide)
        drawing = guide.drawing
        self._drawing.show_drawing(drawing.kind, DrawingValues(drawing.distance, share=drawing.share))
        self._remark.setText(drawing.remark)
        self.other.set_text(guide.other_verb)
        self.other.setVisible(bool(guide.other_end))
        self.discard.setVisible(guide.has_draft)
        place = (guide.end, index)
        if place != self._place:
            self._place = place
            self.say_problem("")
            self._scrolled().verticalScrollBar().setValue(0)
            self.take_focus()

    def leave(self) -> None:
        """Forget where the focus was; the next showing takes it anew."""
        self._place = ("", -1)

    def take_focus(self) -> None:
        """Put the focus on the next thing to do."""
        wanted: QWidget | None = self.stages[self.stage()].first() or self.verb
        if wanted is not None:
            wanted.setFocus(Qt.FocusReason.OtherFocusReason)
            QTimer.singleShot(0, self, self._reveal)  # the layout has to settle first

    def say(self, problem: Problem) -> None:
        """Say a problem below the stage and at its field."""
        stage = self.stages[self.stage()]
        field = stage.field(problem.field) if problem.field else None
        at_field = bool(problem.field) and stage.say(problem.field, problem.text)
        self.say_problem("" if at_field else problem.text, field)
        if at_field and field is not None:
            field.setFocus(Qt.FocusReason.OtherFocusReason)
            self._scrolled().ensureWidgetVisible(field)

    def _reveal(self) -> None:
        focus = self.stages[self.stage()].focusWidget()
        if focus is not None and focus.hasFocus():
            self._scrolled().ensureWidgetVisible(focus)

    def _scrolled(self) -> Scrolled:
        found = self.findChild(Scrolled)
        assert isinstance(found, Scrolled)
        return found

    def _verb(self) -> None:
        self.say_problem("")
        self._view_model.press_verb()

    def _second(self) -> None:
        self.say_problem("")
        self._view_model.press_second()

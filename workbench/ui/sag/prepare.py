"""The first stage: posture, method, target, and adjusters that stand open."""

from __future__ import annotations

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ChoiceField, FlagField
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.ui.sag.adjuster_rows import AdjusterRows
from workbench.ui.sag.entries import Labelled, Stage
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import GuideShown

POSTURE_WORDS = {"standing": "Standing", "seated": "Seated"}
METHOD_WORDS = {"helper": "Helper", "rider": "Rider", "alone": "At a wall", "length": "No indicator"}


class PrepareStage(Stage):
    """Before anybody sits on the bike."""

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__(view_model, name="sag_prepare_stage")
        self.posture = ChoiceField(POSTURE_WORDS, label="Posture", name="sag_posture")
        self.method = ChoiceField(METHOD_WORDS, label="Who reads", name="sag_method")
        self.travel = FlagField(label="Yes, that is right", name="sag_travel_confirmed")
        self.as_is = FlagField(label="Measure with them as they stand", name="sag_as_they_stand")
        self.adjusters = AdjusterRows(view_model)
        self._question = Words("", "care", name="sag_question")
        self._care = CareNote(name="sag_prepare_care")
        self.posture.value_committed.connect(self._posture_chosen)
        self.method.value_committed.connect(self._method_chosen)
        self.travel.value_committed.connect(self._travel_ticked)
        self.as_is.value_committed.connect(self._as_is_ticked)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(self._question)
        rows.addWidget(self.travel)
        rows.addWidget(self._how_row())
        rows.addWidget(self._care)
        rows.addWidget(self._target_row())
        rows.addWidget(self.adjusters)
        rows.addWidget(self.as_is)
        rows.addStretch(1)

    def _how_row(self) -> QWidget:
        row = QWidget()
        flow = QHBoxLayout(row)
        flow.setContentsMargins(0, 0, 0, 0)
        flow.setSpacing(SPACE_16)
        flow.addWidget(Labelled("Posture", self.posture), 2)
        flow.addWidget(Labelled("Who slides the indicator", self.method), 3)
        return row

    def _target_row(self) -> QWidget:
        self._origin = Words("", "note", name="sag_target_origin")
        self.maker = Button("", "plain", name="sag_aim_maker")
        self.usual = Button("", "plain", name="sag_aim_usual")
        self.maker.clicked.connect(self._aim_maker)
        self.usual.clicked.connect(self._aim_usual)
        whole = QWidget()
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        fields = QHBoxLayout()
        fields.setSpacing(SPACE_16)
        for name, label in (("target_low", "Target from"), ("target_high", "to")):
            box = self.entry(name, label=label).box
            box.setMaximumWidth(150)
            fields.addWidget(box, 1)
        self.entries["target_high"].field.set_about("Target")
        keys = QVBoxLayout()
        keys.addStretch(1)
        flow = Flow(gap=SPACE_8)
        flow.addWidget(self.maker)
        flow.addWidget(self.usual)
        keys.addWidget(flow)
        fields.addLayout(keys, 2)
        rows.addLayout(fields)
        rows.addWidget(self._origin)
        return whole

    def show_guide(self, guide: GuideShown) -> None:
        super().show_guide(guide)
        self._question.set_words(guide.question)
        self.travel.setVisible(bool(guide.question))
        self.travel.set_value(guide.draft.travel_confirmed)
        self.posture.set_value(guide.posture)
        self.method.set_value(guide.method)
        self._origin.setText(guide.origin_words)
        self.maker.set_text(f"Maker: {guide.maker_words}")
        self.maker.setVisible(bool(guide.maker_words))
        self.usual.set_text(f"Usual: {guide.practice_words}")
        self.adjusters.show_rows(guide.adjusters, guide.count_link)
        self.as_is.setVisible(guide.asks_as_they_stand)
        self.as_is.set_value(guide.draft.as_they_stand)
        self._care.set_text(guide.prepare_care)

    def first(self) -> QWidget | None:
        if self.travel.isVisibleTo(self) and not self.travel.value():
            return self.travel
        return self.adjusters.first()

    def field(self, name: str) -> QWidget | None:
        if name == "travel_confirmed":
            return self.travel
        if name == "as_they_stand":
            return self.as_is
        return super().field(name) or self.adjusters.field(name)

    def _posture_chosen(self, value: object) -> None:
        self.view_model.set_field("posture", value)

    def _method_chosen(self, value: object) -> None:
        self.view_model.set_field("method", value)

    def _travel_ticked(self, value: object) -> None:
        self.view_model.set_field("travel_confirmed", value)

    def _as_is_ticked(self, value: object) -> None:
        self.view_model.set_field("as_they_stand", value)

    def _aim_maker(self) -> None:
        self.view_model.aim("maker")

    def _aim_usual(self) -> None:
        self.view_model.aim("usual")

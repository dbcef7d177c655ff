"""The second stage: what the spring stands at."""

from __future__ import annotations

from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.theme import SPACE_4, SPACE_16, SPACE_24
from workbench.ui.sag.entries import Labelled, Stage
from workbench.ui.sag.pump_row import PumpRow
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_guide import GuideShown

HOW_WORDS = {"as_pumped": "As pumped", "as_attached": "As attached"}


class SpringStage(Stage):
    """Air: pressure, how it was read, temperature. Coil: rate, preload, usable stroke."""

    def __init__(self, view_model: SagViewModel) -> None:
        super().__init__(view_model, name="sag_spring_stage")
        self._ask = Words("", "text", name="sag_spring_ask")
        self._known = Words("", "note", name="sag_spring_known")
        self._care = CareNote(name="sag_spring_care")
        self._cycle = Words("", "text", name="sag_cycle")
        self._air, self._coil = self._air_rows(), self._coil_rows()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        for widget in (self._ask, self._care, self._air, self._coil, self._known, self._cycle):
            rows.addWidget(widget)
        rows.addStretch(1)

    def _air_rows(self) -> QWidget:
        air = QWidget()
        pressure = self.entry("pressure_kpa", label="Pressure now", big=True)
        pressure.box.setMaximumWidth(260)
        self.how = ChoiceField(HOW_WORDS, label="How it was read", name="sag_pressure_how")
        self.how.value_committed.connect(self._how_chosen)
        first = QHBoxLayout()
        first.setSpacing(SPACE_24)
        first.addWidget(pressure.box, 2)
        first.addWidget(Labelled("Read off", self.how), 3)
        second = QHBoxLayout()
        second.setSpacing(SPACE_16)
        for name, label in (
            ("temperature_c", "Temperature there"),
            ("spacers", "Volume spacers in it"),
            ("second_kpa", "Second chamber"),
            ("negative_kpa", "Negative chamber"),
        ):
            second.addWidget(self.entry(name, label=label).box, 1)
        rows = QVBoxLayout(air)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        self.pump = PumpRow(self.view_model, self.entry("again_kpa").box)
        rows.addLayout(first)
        rows.addWidget(self.pump)
        rows.addLayout(second)
        return air

    def _coil_rows(self) -> QWidget:
        coil = QWidget()
        rate = self.entry("rate_n_per_mm", label="Rate printed on the spring", big=True)
        grid = QGridLayout(coil)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(SPACE_16)
        for column in (0, 1):
            grid.setColumnStretch(column, 1)
        grid.addWidget(rate.box, 0, 0)
        self.turns = QuantityField("turns", label="The same in turns of the collar", low=0, name="sag_preload_turns")
        self.turns.line.textEdited.connect(self.view_model.set_turns)
        self.turns.value_committed.connect(self._turns_committed)
        self._pitch = Words("", "note", name="sag_preload_pitch")
        turns = QVBoxLayout()
        turns.setSpacing(SPACE_4)
        turns.addWidget(Labelled("The same in turns of the collar", self.turns))
        turns.addWidget(self._pitch)
        grid.addWidget(self.entry("preload_mm", label="Preload from slack-free contact").box, 1, 0)
        grid.addLayout(turns, 1, 1)
        grid.addWidget(self.entry("spring_stroke_mm", label="Usable stroke of this spring").box, 2, 0)
        return coil

    def show_guide(self, guide: GuideShown) -> None:
        self._air.setVisible(guide.is_air)
        self._coil.setVisible(guide.has_coil)
        self.entries["second_kpa"].box.setVisible(guide.has_second)
        self.entries["negative_kpa"].box.setVisible(guide.has_negative)
        self._ask.setText(guide.spring_ask)
        self._known.set_words(guide.spring_known)
        self._care.set_text(guide.limits)
        self._cycle.setText(guide.cycle_words)
        self.pump.show_guide(guide)
        self.how.set_value(guide.draft.pressure_how)
        self.turns.set_limits(0, guide.preload.most_turns)
        if guide.preload.typed is None:
            self.turns.set_value(guide.preload.turns)
        else:
            self.turns.show_typed(guide.preload.typed)
        self._pitch.setText(guide.preload.pitch)
        super().show_guide(guide)

    def field(self, name: str) -> QWidget | None:
        return self.turns if name == "preload_turns" else super().field(name)

    def say(self, name: str, text: str) -> bool:
        if name != "pump":
            return super().say(name, text)
        self.pump.say(text)
        return True

    def _turns_committed(self, value: object) -> None:
        self.view_model.set_turns("" if value is None else f"{value}")

    def _how_chosen(self, value: object) -> None:
        self.view_model.set_field("pressure_how", value)

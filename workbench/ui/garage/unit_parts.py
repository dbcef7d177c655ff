"""Valves and hardware of one unit: what each valve is for and where, what was done, what falls due."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import FlagField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.text_field import NoteField, TextField
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.viewmodels.garage_rows import UnitParts


class UnitPartsView(QWidget):
    """Draws valves and hardware."""

    valve_placed = Signal(str, str)  # purpose, place
    gas_said = Signal(bool)
    hardware_noted = Signal(str, str)  # generation, note

    def __init__(self, key: str) -> None:
        super().__init__()
        self._key = key
        self._generation = ""
        self._places: dict[str, TextField] = {}
        self._words: dict[str, Words] = {}
        self._order = Words("", "note", name=f"valve_order_{key}")
        self._gas = FlagField(label="A valve for the damper's gas charge", name=f"valve_gas_{key}")
        self._gas.value_committed.connect(self._gas_picked)
        self._gas_care = CareNote(name=f"care_gas_{key}")
        self._due = Words("", "strong", name=f"hardware_due_{key}")
        self._travel_care = CareNote(name=f"care_travel_{key}")
        self._hardware = Words("", "text", name=f"hardware_list_{key}")
        self._note = NoteField(label="What was done last", lines=2, name=f"hardware_note_{key}")
        self._note.value_committed.connect(self._noted)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(SPACE_16)
        self._grid.setVerticalSpacing(SPACE_4)
        self._grid.setColumnStretch(1, 1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(Words("Valves", "mute"))
        rows.addWidget(self._order)
        rows.addLayout(self._grid)
        rows.addWidget(self._gas)
        rows.addWidget(self._gas_care)
        rows.addWidget(Words("Hardware, the newest first", "mute"))
        for part in (self._due, self._travel_care, self._hardware, Words("What was done last", "mute"), self._note):
            rows.addWidget(part)

    def show_parts(self, parts: UnitParts, unit: str) -> None:
        """Show valves and hardware of a unit; what is being typed stays."""
        self._order.set_words(parts.order)
        wanted = [valve.purpose for valve in parts.valves]
        if wanted != list(self._places):
            self._rebuild(wanted)
        for field in (self._gas, self._note, *self._places.values()):
            field.set_about(unit)
        for valve in parts.valves:
            self._words[valve.purpose].set_words(valve.words)
            self._words[valve.purpose].set_role("problem" if valve.is_care else "text")
            self._places[valve.purpose].set_value(valve.place)
        self._gas.set_value(parts.has_gas)
        self._gas_care.set_text(parts.gas_care)
        self._due.set_words(parts.due)
        self._travel_care.set_text(parts.travel_care)
        self._hardware.set_words("\n".join(parts.hardware))
        self._generation = parts.generation_id
        self._note.set_value(parts.note)

    def _rebuild(self, purposes: list[str]) -> None:
        for old in (*self._places.values(), *self._words.values()):
            old.hide()
            old.deleteLater()
        self._words = {purpose: Words("", "text") for purpose in purposes}
        self._places = {}
        for row, purpose in enumerate(purposes):
            place = TextField(
                label=f"Where the valve is: {purpose.replace('_', ' ')}",
                placeholder="Where it is, such as: left leg, top",
                name=f"valve_{purpose}_{self._key}",
            )
            place.value_committed.connect(partial(self._placed, purpose))
            self._places[purpose] = place
            self._grid.addWidget(self._words[purpose], row, 0)
            self._grid.addWidget(place, row, 1)

    def _placed(self, purpose: str, place: object) -> None:
        self.valve_placed.emit(purpose, str(place))

    def _gas_picked(self, has_gas: object) -> None:
        self.gas_said.emit(bool(has_gas))

    def _noted(self, text: object) -> None:
        self.hardware_noted.emit(self._generation, str(text))

"""One titled group of facts on a bike's sheet."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from workbench.ui.facts_form import FactsForm
from workbench.ui.garage.unit_parts import UnitPartsView
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_8, SPACE_16
from workbench.viewmodels.garage_deeds import Section

EXCHANGE = "exchange"  # no reason for new hardware of this unit: another one is fitted


class SectionView(QWidget):
    """Title, note, form, and where it applies the button for new hardware."""

    fact_committed = Signal(str, str, object)  # section, field, value
    text_kept = Signal(str, str, str)  # section, field, text that could not be read
    hardware_renewed = Signal(str, str)  # unit, reason
    spring_requested = Signal(str)  # unit
    valve_placed = Signal(str, str, str)  # unit, purpose, place
    gas_said = Signal(str, bool)  # unit, whether there is such a valve
    hardware_noted = Signal(str, str)  # generation, what was done
    exchange_wanted = Signal(str)  # fork or shock

    def __init__(self, key: str, reasons: tuple[tuple[str, str], ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName(f"section_{key}")
        self._key = key
        self._unit_id = ""
        self._title = Words("", "strong")
        self._note = Words("", "note")
        self._care = CareNote(name=f"care_{key}")
        self._form = FactsForm(f"facts_{key}")
        self._form.row_committed.connect(self._commit)
        self._form.row_kept.connect(self._keep)
        self._rows = QVBoxLayout(self)
        self._parts: UnitPartsView | None = None
        self._hardware = Button("New hardware, service ...", "link", name=f"hardware_{key}")
        self._hardware.setMenu(self._reason_menu(reasons))
        self._spring = Button("Spring curve", "plain", name=f"spring_{key}")
        self._spring.clicked.connect(self._to_spring)
        head = QHBoxLayout()
        head.setSpacing(SPACE_16)
        head.addWidget(self._title)
        head.addWidget(self._note, 1)
        head.addWidget(self._spring)
        head.addWidget(self._hardware)
        rows = self._rows
        rows.setContentsMargins(0, 0, 0, SPACE_16)
        rows.setSpacing(SPACE_8)
        rows.addWidget(Rule())
        rows.addLayout(head)
        rows.addWidget(self._care)
        rows.addWidget(self._form)

    def show_section(self, section: Section) -> None:
        """Show the facts."""
        self._unit_id = section.unit_id
        self._title.setText(section.title)
        self._note.set_words(section.note)
        self._care.set_text(section.care)
        self._hardware.setVisible(bool(section.unit_id))
        self._spring.setVisible(bool(section.unit_id))
        self._spring.setAccessibleName(f"{section.title}: spring curve")
        self._hardware.setAccessibleName(f"{section.title}: new hardware or service")
        self._form.set_about(section.title)
        self._form.show_facts(section.rows)
        if section.parts is not None:
            if self._parts is None:
                self._add_parts()
            if self._parts is not None:
                self._parts.show_parts(section.parts, section.title)

    def _add_parts(self) -> None:
        view = UnitPartsView(self._key)
        view.valve_placed.connect(self._valve_placed)
        view.gas_said.connect(self._gas_said)
        view.hardware_noted.connect(self.hardware_noted)
        self._parts = view
        self._rows.addWidget(view)

    def _valve_placed(self, purpose: str, place: str) -> None:
        self.valve_placed.emit(self._unit_id, purpose, place)

    def _gas_said(self, has_gas: bool) -> None:
        self.gas_said.emit(self._unit_id, has_gas)

    def _to_spring(self) -> None:
        self.spring_requested.emit(self._unit_id)

    def set_problem(self, field: str, text: str) -> None:
        """Say at a field what is wrong."""
        self._form.set_problem(field, text)

    def has_field(self, field: str) -> bool:
        """Whether the form has this field."""
        try:
            self._form.field(field)
        except KeyError:
            return False
        return True

    def focus_first(self) -> None:
        """Put the focus on the first field."""
        self._form.focusNextChild()

    def _reason_menu(self, reasons: tuple[tuple[str, str], ...]) -> QMenu:
        menu = QMenu(self)
        for key, words in reasons:
            menu.addAction(words).setData(key)
        menu.addSeparator()
        menu.addAction(f"Another {self._key}, or none ...").setData(EXCHANGE)
        menu.triggered.connect(self._renew)
        return menu

    def _renew(self, action: object) -> None:
        reason = str(action.data())  # type: ignore[attr-defined]
        if reason == EXCHANGE:
            self.exchange_wanted.emit(self._key)
        else:
            self.hardware_renewed.emit(self._unit_id, reason)

    def _keep(self, field: str, text: str) -> None:
        self.text_kept.emit(self._key, field, text)

    def _commit(self, field: str, value: object) -> None:
        self.fact_committed.emit(self._key, field, value)

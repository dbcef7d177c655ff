"""Entry fields of the sag sheet: every letter is handed on, every value when its field is left."""

from __future__ import annotations

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.field_base import FieldBase
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.theme import SPACE_4
from workbench.viewmodels.sag import SagViewModel
from workbench.viewmodels.sag_draft import TYPED
from workbench.viewmodels.sag_guide import GuideShown


class Labelled(QWidget):
    """A field with its name above it."""

    def __init__(self, label: str, field: QWidget, *, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.label = Words(label, "mute")
        self.label.setBuddy(field)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        rows.addWidget(self.label)
        rows.addWidget(field)
        rows.addStretch(1)


class Entry(QObject):
    """One typed entry of the measuring and its field."""

    def __init__(self, name: str, view_model: SagViewModel, *, label: str = "", big: bool = False) -> None:
        super().__init__()
        quantity, usual_label, low, high = TYPED[name]
        self.name = name
        self._view_model = view_model
        self._quantity = quantity
        self.field = QuantityField(
            quantity, label=label or usual_label, low=low, high=high, big=big, name=f"sag_{name}"
        )
        self.box = Labelled(label or usual_label, self.field)
        self.field.line.textEdited.connect(self._typed)
        self.field.line.reverted.connect(self._reverted)
        if big:  # the one figure a stage is about: Enter goes on
            self.field.line.returnPressed.connect(self._entered)
        self.field.value_committed.connect(self._committed)

    def show(self, guide: GuideShown) -> None:
        """Show the value or the text as it was typed; a field being edited keeps its text."""
        self.field.set_unit(guide.units.unit(self._quantity))
        typed = guide.draft.text(self.name)
        text = "" if typed is None else typed.text
        if self.field.is_editing() and (self.field.line.hasFocus() or text == self.field.typed()):
            return
        if self.field.is_editing() and typed is None:
            self.field.revert()  # its twin took the typing back
        if typed is not None:
            self.field.set_typed(typed.text)
        else:
            self.field.set_value(getattr(guide.draft, self.name))

    def _typed(self, text: str) -> None:
        self._view_model.set_text(self.name, text)

    def _entered(self) -> None:
        self._view_model.next()

    def _reverted(self) -> None:
        self._view_model.set_text(self.name, "")

    def _committed(self, value: object) -> None:
        self._view_model.set_field(self.name, value)


class Stage(QWidget):
    """One stage of the measuring."""

    def __init__(self, view_model: SagViewModel, *, name: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self.view_model = view_model
        self.entries: dict[str, Entry] = {}

    def entry(self, name: str, *, label: str = "", big: bool = False) -> Entry:
        """Make one typed entry of this stage."""
        made = Entry(name, self.view_model, label=label, big=big)
        self.entries[name] = made
        return made

    def show_guide(self, guide: GuideShown) -> None:
        """Show the measuring as it stands."""
        for one in self.entries.values():
            one.show(guide)

    def field(self, name: str) -> QWidget | None:
        """Give the widget a problem is about."""
        return self.entries[name].field if name in self.entries else None

    def first(self) -> QWidget | None:
        """Give the widget that is the next thing to do."""
        return next((one.field for one in self.entries.values() if one.field.isVisibleTo(self)), None)

    def say(self, name: str, text: str) -> bool:
        """Say a problem at its field; false when the field is not here."""
        field = self.field(name)
        if isinstance(field, FieldBase):
            field.set_problem(text)
        return field is not None

"""A field for one quantity: typed in any unit, shown in one, kept exactly as it was when nobody typed."""

from __future__ import annotations

import re
from math import isfinite

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.model import units
from workbench.model.errors import InputError
from workbench.ui.parts.field_base import EntryLine, FieldBase
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import announcer

_PLAIN_NUMBER = re.compile(r"[-+−]?\d+(\.\d+)?")
TEXT_LIMIT = 60


class UnitLine(EntryLine):
    """A line of typing with the unit in mute at its end."""

    def __init__(self) -> None:
        super().__init__()
        self.unit = Words("", "mute", parent=self)
        self._label = ""
        announcer.changed.connect(self._place_unit)

    def set_label(self, text: str) -> None:
        """Take a name for screen readers; the unit is said after it."""
        self._label = text
        unit = self.unit.text()
        self.setAccessibleName(f"{text}, {unit}" if text and unit else text)

    def set_unit(self, text: str) -> None:
        self.unit.setText(text)
        if self._label:
            self.set_label(self._label)
        self._place_unit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_unit()

    def _place_unit(self, _theme: object = None) -> None:
        hint = self.unit.sizeHint()
        self.setTextMargins(0, 0, hint.width() + 8 if self.unit.text() else 0, 0)
        top = (self.height() - hint.height()) // 2
        self.unit.setGeometry(self.width() - hint.width() - 10, top, hint.width(), hint.height())


class QuantityField(FieldBase):
    """Entry of one quantity of `model.units`; an empty unit means the one used inside.

    The value is in internal units. ``low`` and ``high`` refuse; `value()` gives the very double that was set
    as long as nobody typed. ``big`` shows the number at the size of the number being worked on.
    """

    def __init__(
        self,
        quantity: str,
        unit: str = "",
        *,
        label: str = "",
        low: float | None = None,
        high: float | None = None,
        big: bool = False,
        name: str = "",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(label=label, name=name, parent=parent)
        self._quantity, self._unit = quantity, unit or units.units_of(quantity)[0]
        self._low, self._high = low, high
        self._value: float | None = None
        self._shown = ""
        self._kept = ""  # text last given away as unusable
        self.line = UnitLine()
        self.line.setMaxLength(TEXT_LIMIT)
        self.line.set_unit(self._symbol())
        if big:
            self.line.setProperty("figure", "number")
        self._take_editor(self.line)
        self.line.editingFinished.connect(self.commit)
        self.line.left.connect(self._try_again)
        self.line.textEdited.connect(self._echo)
        self.line.reverted.connect(self.revert)

    def value(self) -> float | None:
        """The committed value in internal units, or None when there is none."""
        return self._value

    def typed(self) -> str:
        """The text as it stands in the field."""
        return self.line.text()

    def unit(self) -> str:
        """The unit the value is shown in and a bare number is read in."""
        return self._unit

    def set_unit(self, unit: str) -> None:
        """Show the same value in another unit."""
        self._unit = unit or units.units_of(self._quantity)[0]
        self.line.set_unit(self._symbol())
        if not self.is_editing():
            self._render()

    def set_limits(self, low: float | None, high: float | None) -> None:
        """Change what is refused."""
        self._low, self._high = low, high

    def set_value(self, value: float | None) -> None:
        """Show a value, unless somebody is typing here; refused text stays until the value itself differs."""
        is_same = value == self._value
        self._value = value
        if self.is_editing() and (is_same or self.line.hasFocus()):
            return
        if self.is_editing() or self._shown_value() != self.line.text():
            self._render()
        elif self._problem:
            self.set_problem("")

    def set_typed(self, text: str) -> None:
        """Put back text that could not be read when it was left, and say again what is wrong with it."""
        self.line.setText(text)
        self.line.setModified(True)
        self._read(text)

    def show_typed(self, text: str) -> None:
        """Put back kept text, unless it stands here already or somebody is typing."""
        self._kept = text
        if self.line.text() != text and not self.line.hasFocus():
            self.set_typed(text)

    def refuse(self, text: str) -> None:
        super().refuse(text)
        self.line.setModified(True)
        self._keep(self.line.text())

    def is_editing(self) -> bool:
        return self.line.isModified()

    def revert(self) -> None:
        """Forget the typing and show the value."""
        self._is_refused = False
        self._render()
        self._keep("")

    def commit(self) -> bool:
        text = self.line.text()
        if not self.line.isModified():
            return not self._problem
        if text == self._shown and not self._is_refused:
            self.revert()
            return True
        is_read, value = self._read(text)
        if not is_read:
            self._keep(text)
            return False
        is_new = self._is_news(value != self._value)
        self._value = value
        echo = self.said.text()
        self._render()
        self._say(echo)
        self._keep("")
        if is_new:
            self.value_committed.emit(value)
        return not self._problem

    def _try_again(self) -> None:
        if self._is_refused:
            self.commit()

    def _keep(self, text: str) -> None:
        """Give unusable text away to be kept, and an empty one once it is put right."""
        if text != self._kept:
            self._kept = text
            self.text_kept.emit(text)

    def _name_editor(self) -> None:
        self.line.set_label(self.spoken())

    def _render(self) -> None:
        self._shown = self._shown_value()
        self.line.setText(self._shown)
        self.line.setCursorPosition(0)
        self.set_problem("")

    def _shown_value(self) -> str:
        return "" if self._value is None else self._show_number(self._value)

    def _read(self, text: str) -> tuple[bool, float | None]:
        """Read typed text, or say what is wrong with it."""
        if not text.strip():
            return True, None
        try:
            value = self._parse(text)
        except InputError as error:
            self.set_problem(str(error))
            return False, None
        if self._is_outside(value):
            self.set_problem(self._limits_sentence(value))
            return False, None
        return True, value

    def _is_outside(self, value: float) -> bool:
        too_low = self._low is not None and value < self._low
        return too_low or (self._high is not None and value > self._high) or not isfinite(value)

    def _limits_sentence(self, value: float) -> str:
        what = self.label or "This value"
        ends = [f"at least {self._show(self._low)}"] if self._low is not None else []
        ends += [f"at most {self._show(self._high)}"] if self._high is not None else []
        return f"{what} can be {' and '.join(ends) or 'a finite number'}; {self._show(value)} was read."

    def _echo(self, text: str) -> None:
        """While typing: say how the text is read, when that is not plain from the text itself."""
        self.set_problem("")
        if not text.strip() or _PLAIN_NUMBER.fullmatch(text.strip()):
            return
        try:
            self._say(f"read as {self._show(self._parse(text))}")
        except InputError:
            return  # half-typed text is no mistake yet; leaving the field says it

    def _parse(self, text: str) -> float:
        return units.parse(text, self._quantity, default_unit=self._unit)

    def _show(self, value: float) -> str:
        return units.show(value, self._quantity, unit=self._unit)

    def _show_number(self, value: float) -> str:
        return units.show_number(value, self._quantity, unit=self._unit)

    def _symbol(self) -> str:
        return units.symbol_of(self._quantity, self._unit)

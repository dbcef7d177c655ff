"""Service by hours: what is ridden, and for every part its interval, its last service and what falls due."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import Segments
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, announcer, current
from workbench.viewmodels.checkin_state import CheckInState
from workbench.viewmodels.checkin_wear import WearRow

SOURCES = (("stated", "The rider says"), ("log", "Ride log or computer"))
RULES = "The maker's manual rules: put its intervals in. Wet ground and e-bikes shorten them."
MOST_S = 100_000 * 3600.0
NARROW = 680
FIELDS = (
    ("interval", "Every", "duration", "h", MOST_S),
    ("months", "Or months", "count", "", 240.0),
    ("last", "Last at", "duration", "h", MOST_S),
)


class WearList(QWidget):
    """The parts, one line each."""

    hours_told = Signal(object, str)
    field_committed = Signal(str, str, object)  # key, interval | months | last, value
    serviced = Signal(str)

    def __init__(self) -> None:
        super().__init__()
        self._rows: dict[str, _WearLine] = {}
        self._hours = Words("", "text", name="wear_hours_said")
        self._field = QuantityField("duration", "h", label="Hours ridden so far", low=0, high=MOST_S, name="wear_hours")
        self._source = Segments(SOURCES, label="Who says so", name="wear_source")
        self._source.choose("stated")
        self._source.group.idClicked.connect(self._pick_source)
        self._note = Button("Note hours", "plain", name="wear_note_hours")
        self._note.clicked.connect(self._tell)
        self._list = QVBoxLayout()
        self._list.setSpacing(SPACE_16)
        line = Flow(gap=SPACE_16)
        for part in (Words("Hours ridden so far", "mute"), self._field, self._source, self._note):
            line.addWidget(part)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(SPACE_8)
        whole.addWidget(self._hours)
        whole.addWidget(line)
        whole.addWidget(Words(RULES, "note"))
        whole.addSpacing(SPACE_8)
        whole.addLayout(self._list)
        announcer.changed.connect(self._restyle)
        self._restyle()

    def show_state(self, state: CheckInState) -> None:
        """Show hours and parts."""
        self._hours.set_words(state.hours)
        if [row.key for row in state.wear] != list(self._rows):
            self._build(state.wear)
        for row in state.wear:
            self._rows[row.key].show_row(row)

    def say(self, place: str, text: str) -> bool:
        """Say at a field what is wrong with it; false if it is not here."""
        if place == "hours":
            field: QuantityField | None = self._field
        else:
            found = (line.fields.get(place.removeprefix(f"wear_{key}_")) for key, line in self._rows.items())
            field = next(
                (one for key, one in zip(self._rows, found, strict=True) if one and place.startswith(f"wear_{key}_")),
                None,
            )
        if field is None:
            return False
        field.refuse(text)
        field.setFocus(Qt.FocusReason.OtherFocusReason)
        return True

    def _build(self, rows: tuple[WearRow, ...]) -> None:
        while item := self._list.takeAt(0):
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self._rows = {}
        for row in rows:
            line = _WearLine(row.key)
            line.committed.connect(self.field_committed)
            line.pressed.connect(self.serviced)
            self._rows[row.key] = line
            self._list.addWidget(line)

    def last_entry(self) -> QWidget | None:
        """The last thing Tab comes to in the list."""
        return next(reversed(self._rows.values())).last_entry() if self._rows else None

    def _pick_source(self, index: int) -> None:
        self._source.choose(SOURCES[index][0])

    def _tell(self) -> None:
        if self._field.commit():
            self.hours_told.emit(self._field.value(), self._source.chosen() or "stated")

    def clear_hours(self) -> None:
        """Empty the field once the hours are noted."""
        self._field.set_value(None)

    def _restyle(self, _theme: object = None) -> None:
        self._field.setFixedWidth(round(150 * current().sizes.text / 14))


class _Ear(QObject):
    """Passes a field's value on with its name."""

    def __init__(self, line: _WearLine, name: str) -> None:
        super().__init__(line)
        self._line, self._name = line, name

    def value_committed(self, value: object) -> None:
        self._line.committed.emit(self._line.key, self._name, value)


class _WearLine(QWidget):
    """One part that is serviced."""

    committed = Signal(str, str, object)
    pressed = Signal(str)

    def __init__(self, key: str) -> None:
        super().__init__()
        self.key = key
        self._title, self._state = Words("", "strong"), Words("", "text", name=f"wear_{key}_state")
        self._origin = Words("", "note")
        self._serviced = Button("Serviced now", "plain", name=f"wear_{key}_serviced")
        self._serviced.clicked.connect(self._press)
        self.fields: dict[str, QuantityField] = {}
        self._whole = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._whole.setContentsMargins(0, 0, 0, 0)
        self._whole.setSpacing(SPACE_8)
        across = QHBoxLayout()
        across.setSpacing(SPACE_8)
        words = QVBoxLayout()
        words.setSpacing(0)
        for one in (self._title, self._state, self._origin):
            words.addWidget(one)
        self._whole.addLayout(words, 1)
        self._whole.addLayout(across)
        for name, label, quantity, unit, high in FIELDS:
            field = QuantityField(quantity, unit, low=0, high=high, label=label, name=f"wear_{key}_{name}")
            ear = _Ear(self, name)
            field.value_committed.connect(ear.value_committed)
            self.fields[name] = field
            cell = QVBoxLayout()
            cell.setSpacing(SPACE_4)
            cell.addWidget(Words(label, "mute"))
            cell.addWidget(field)
            cell.addStretch(1)
            across.addLayout(cell)
        last = QVBoxLayout()
        last.setSpacing(SPACE_4)
        last.addWidget(Words("\u00a0", "mute"))  # keeps the key level with the fields
        last.addWidget(self._serviced)
        last.addStretch(1)
        across.addLayout(last)
        announcer.changed.connect(self._restyle)
        self._restyle()

    def show_row(self, row: WearRow) -> None:
        """Show where the part stands."""
        self._title.set_words(row.title)
        self._state.set_words(row.words)
        self._state.set_role("care" if row.state == "due" else "text")
        self._origin.set_words(f"{row.origin} {row.begins}".strip())
        self._serviced.setAccessibleName(f"Serviced now: {row.title}")
        self._serviced.setAccessibleDescription(row.begins)
        for field in self.fields.values():
            field.set_about(row.title)
        for name, value in (("interval", row.interval_s), ("months", row.months), ("last", row.last_s)):
            self.fields[name].set_value(value)

    def last_entry(self) -> QWidget:
        """The last thing Tab comes to."""
        return self._serviced

    def _press(self) -> None:
        self.pressed.emit(self.key)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The fields stand beside the words, or below them where there is no room for both."""
        super().resizeEvent(event)
        is_narrow = event.size().width() < NARROW * current().sizes.text / 14
        way = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        if self._whole.direction() != way:
            self._whole.setDirection(way)

    def _restyle(self, _theme: object = None) -> None:
        for field in self.fields.values():
            field.setFixedWidth(round(96 * current().sizes.text / 14))

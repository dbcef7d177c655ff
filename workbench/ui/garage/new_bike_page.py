"""The sheet for a new bike: every entry is kept at once, as typed."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QStringListModel, Qt, QTimer, Signal
from PySide6.QtWidgets import QCompleter, QGridLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ChoiceField, FlagField, ListBox
from workbench.ui.parts.field_base import set_refused, show_whole
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.quantity_field import UnitLine
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_16, SPACE_24
from workbench.viewmodels.base import Problem
from workbench.viewmodels.new_bike import BUILT, LABELS, YES, NewBikeState, NewBikeViewModel

_SHOCK_LINES = ("shock_stroke", "rear_travel")
_HELP = {
    "rider": "Someone new or someone the garage knows.",
    "rider_mass": "With helmet, shoes, pack and water.",
    "fork_travel": "As built, not as sold.",
    "shock_stroke": "How far the shaft moves, not the wheel. Often 45 to 75 mm.",
    "rear_travel": "At the wheel, if known.",
}


class _Line(QWidget):
    """One typed entry: label, line, unit, help or what is wrong."""

    typed = Signal(str, str)

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name
        self.line = UnitLine()
        self.line.setObjectName(f"new_bike_{name}")
        self.line.set_label(LABELS[name])
        self.line.textEdited.connect(self._typed)
        self._said = Words(_HELP.get(name, ""), "note")
        label = Words(LABELS[name], "mute")
        label.setBuddy(self.line)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        rows.addWidget(label)
        rows.addWidget(self.line)
        rows.addWidget(self._said)
        self._said.setVisible(bool(_HELP.get(name)))

    def show_text(self, text: str, unit: str) -> None:
        """Show what was typed; the caret stays where it is."""
        if self.line.text() != text:
            self.line.setText(text)
        self.line.set_unit(unit)

    def set_problem(self, text: str) -> None:
        """Say what is wrong, or the help again."""
        self._said.set_role("problem" if text else "note")
        self._said.set_words(text or _HELP.get(self._name, ""))
        self.line.setAccessibleDescription(text)
        set_refused(self.line, bool(text))

    def _typed(self, text: str) -> None:
        self.set_problem("")
        self.typed.emit(self._name, text)


class NewBikePage(Page):
    """Add a bike in under a minute; only its name is needed."""

    def __init__(self, view_model: NewBikeViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._new = view_model
        self._lines = {name: _Line(name) for name in LABELS if name not in ("front", "rear", "discipline")}
        state = view_model.state
        self._ends = {
            end: ChoiceField(choices, label=LABELS[end], name=f"new_bike_{end}")
            for end, choices in (("front", state.fronts), ("rear", state.rears))
        }
        self._negative = ChoiceField(state.negatives, label="Negative chamber", name="new_bike_negative")
        self._ticks = {name: FlagField(label=words, name=f"new_bike_{name}") for name, words in BUILT.items()}
        self._discipline = ChoiceField(state.disciplines, label=LABELS["discipline"], name="new_bike_discipline")
        picks = {**self._ends, **self._ticks, "negative": self._negative}
        for name, field in picks.items():
            field.value_committed.connect(partial(self._pick, name))
        self._discipline.value_committed.connect(self._pick_discipline)
        self._template = ListBox(())
        self._template.setObjectName("new_bike_template")
        self._template.setAccessibleName("Start from a template")
        self._template.activated.connect(self._pick_template)
        self._open_template = Button("Open this template", "link", name="new_bike_open_template")
        self._open_template.clicked.connect(self._new.open_template)
        self._names = QStringListModel(self)
        completer = QCompleter(self._names, self)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self._lines["rider"].line.setCompleter(completer)
        completer.activated.connect(self._pick_rider)
        self._add = Button("Add bike", "verb", name="new_bike_add")
        self._add.clicked.connect(self._add_bike)
        self._discard = Button("Discard", "plain", name="new_bike_discard")
        self._discard.clicked.connect(self._new.discard)
        for line in self._lines.values():
            line.typed.connect(self._new.set_field)
            line.line.returnPressed.connect(self._add_bike)
        self._build()
        self.listen()

    def _build(self) -> None:
        sheet = Sheet(
            "New bike", "A name is enough to begin. Travel and mass are needed before sag.", name="new_bike_sheet"
        )
        rows = sheet.body
        self._lines["name"].setMaximumWidth(608)  # two columns of three
        rows.addWidget(self._lines["name"])
        self._template_cell = _labelled("Start from", self._template)
        self._template_cell.setMaximumWidth(608)
        rows.addWidget(self._template_cell)
        rows.addWidget(self._open_template, 0, Qt.AlignmentFlag.AlignLeft)
        self._built = QWidget()
        ends = QGridLayout(self._built)
        ends.setContentsMargins(0, 0, 0, 0)
        ends.setHorizontalSpacing(SPACE_24)
        self._negative_cell = _labelled("Negative chamber", self._negative)
        cells = (*(_labelled(LABELS[end], field) for end, field in self._ends.items()), self._negative_cell)
        for column, cell in enumerate(cells):
            ends.addWidget(cell, 0, column, Qt.AlignmentFlag.AlignTop)
            ends.setColumnStretch(column, 1)
        rows.addWidget(self._built)
        self._flow = ticks = Flow(gap=SPACE_16)
        for tick in self._ticks.values():
            ticks.addWidget(tick)
        rows.addWidget(ticks)
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE_24)
        grid.setVerticalSpacing(SPACE_16)
        places = ("rider", "rider_mass", "fork_travel", "shock_stroke", "rear_travel")
        for place, name in enumerate(places):
            grid.addWidget(self._lines[name], place // 3, place % 3, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(_labelled(LABELS["discipline"], self._discipline), 1, 2, Qt.AlignmentFlag.AlignTop)
        for column in range(3):
            grid.setColumnStretch(column, 1)
        rows.addLayout(grid)
        rows.addStretch(1)
        sheet.add_keys(self._add, self._discard)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(sheet)

    def start(self) -> None:
        """Put the focus where typing begins."""
        self._lines["name"].line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _render(self, state: NewBikeState) -> None:
        for name, line in self._lines.items():
            unit = "" if name in ("name", "rider") else state.units.unit("mass" if name == "rider_mass" else "length")
            line.show_text(getattr(state.draft, name), unit)
            line.setVisible(name not in _SHOCK_LINES or state.has_shock)
        self._lines["fork_travel"].setVisible(state.front != "rigid")
        self._show_templates(state)
        self._ends["front"].set_value(state.front)
        self._ends["rear"].set_value(state.rear)
        self._negative.set_value(state.draft.negative)
        self._negative_cell.setVisible(state.has_air_fork)
        for name, tick in self._ticks.items():
            tick.set_value(getattr(state.draft, name) == YES)
            tick.setVisible(name in state.ticks)
        self._discipline.set_value(state.draft.discipline)
        self._names.setStringList(list(state.riders))
        self._discard.setVisible(state.is_kept)

    def _show_templates(self, state: NewBikeState) -> None:
        """Offer templates where there are any; what a template brings is not asked again."""
        self._template.clear()
        self._template.addItem("Nothing: say what it is", "")
        for key, name in state.templates:
            self._template.addItem(one_line(name), key)
        self._template.setCurrentIndex(max(self._template.findData(state.draft.template), 0))
        has_template = bool(state.draft.template)
        self._template_cell.setVisible(bool(state.templates))
        self._open_template.setVisible(has_template)
        for part in (self._built, self._flow):
            part.setVisible(not has_template)
        if has_template:
            for name in ("fork_travel", *_SHOCK_LINES):
                self._lines[name].hide()

    def _pick_template(self, place: int) -> None:
        self._new.set_field("template", str(self._template.itemData(place)))

    def _pick(self, name: str, value: object) -> None:
        self._new.set_field(name, (YES if value else "") if isinstance(value, bool) else str(value))

    def _pick_discipline(self, key: object) -> None:
        self._new.set_field("discipline", str(key))

    def _pick_rider(self, name: str) -> None:
        self._new.set_field("rider", name)

    def _add_bike(self) -> None:
        for line in self._lines.values():
            line.set_problem("")
        self._new.add()

    def _show_problem(self, problem: Problem) -> None:
        line = self._lines.get(problem.field)
        if line is None:
            self.problem_raised.emit(problem.text)
            return
        line.set_problem(problem.text)
        line.line.setFocus(Qt.FocusReason.OtherFocusReason)
        QTimer.singleShot(0, line, partial(show_whole, line))  # once the sentence has its room


def _labelled(label: str, field: QWidget) -> QWidget:
    cell = QWidget()
    rows = QVBoxLayout(cell)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(SPACE_4)
    words = Words(label, "mute")
    words.setBuddy(field)
    rows.addWidget(words)
    rows.addWidget(field)
    return cell

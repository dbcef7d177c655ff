"""The springs that could be fitted: load and exact rate, preload in two entries, a row for each spring."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.big_number import BigNumber
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.ui.spring.coil_fields import FieldGrid
from workbench.viewmodels.coil import CoilViewModel
from workbench.viewmodels.coil_sheets import CoilSheet, SpringLine

CARE = (
    "Back the collar off until the spring is slack before it comes out. If you have not done it before, leave it to a"
    " mechanic."
)
HEADS = ("Spring", "Sag", "Preload force", "Usable stroke", "")
STRETCH = (5, 4, 3, 6, 0)


class SpringRow(QWidget):
    """One spring: what it would do, and the keys to fit it or to take it from the list."""

    fitted = Signal(str)
    removed = Signal(str)

    def __init__(self, place: int) -> None:
        super().__init__()
        self._key = ""
        self._name = Words("", "strong")
        self._nearest = Words("nearest to the target", "note_strong")
        self._known = Words("", "note")
        self._sag, self._force, self._bind = Words(""), Words(""), Words("")
        self._fit = Button("Fit", "plain", name=f"coil_fit_{place}")
        self._fit.clicked.connect(self._fit_pressed)
        self._remove = Button("Remove", "link", name=f"coil_remove_{place}")
        self._remove.clicked.connect(self._remove_pressed)
        first = QVBoxLayout()
        first.setSpacing(SPACE_4)
        first.addWidget(self._name)
        first.addWidget(self._nearest)
        first.addWidget(self._known)
        keys = QHBoxLayout()
        keys.setSpacing(SPACE_8)
        keys.addWidget(self._fit)
        keys.addWidget(self._remove)
        keys.addStretch(1)
        kept = self._fit.sizePolicy()
        kept.setRetainSizeWhenHidden(True)
        self._fit.setSizePolicy(kept)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_16)
        grid.addLayout(first, 0, 0)
        for column, words in enumerate((self._sag, self._force, self._bind), 1):
            grid.addWidget(words, 0, column)
        grid.addLayout(keys, 0, 4)
        for column, stretch in enumerate(STRETCH):
            grid.setColumnStretch(column, stretch)
        grid.setColumnMinimumWidth(4, 170)
        grid.addWidget(Rule(), 1, 0, 1, len(HEADS))

    def show_line(self, line: SpringLine) -> None:
        """Show one spring; one that binds has no key to fit it."""
        self._key = line.key
        self._name.setText(line.name)
        self._nearest.setVisible(line.is_nearest)
        self._known.set_words(line.known)
        self._sag.setText(line.sag)
        self._force.setText(line.force)
        self._bind.set_role("care" if line.is_refused else "note")
        self._bind.setText(line.bind)
        self._fit.setVisible(not line.is_refused and not line.is_on_bike)
        self._fit.setAccessibleName(f"Fit {line.name}")
        self._remove.setVisible(line.can_remove)
        self._remove.setAccessibleName(f"Remove {line.name} from the list")

    def _fit_pressed(self) -> None:
        self.fitted.emit(self._key)

    def _remove_pressed(self) -> None:
        self.removed.emit(self._key)


class AtHandView(QWidget):
    """The list of springs with preload above it."""

    def __init__(self, view_model: CoilViewModel, sheet: CoilSheet) -> None:
        super().__init__()
        self._view_model = view_model
        self._load = Words("", "text", name="coil_load")
        self._exact_lead = Words("Exact rate at this preload", "mute")
        self._exact = BigNumber(name="coil_exact")
        self._hint = Words("", "text", name="coil_at_hand_hint")
        self.preload = FieldGrid(view_model.set_text, columns=2)
        self._set = Button("Set this preload", "plain", name="coil_set_preload")
        self._set.clicked.connect(view_model.set_preload)
        self._preload_care = CareNote(name="coil_preload_care")
        self._lists = ChoiceField(sheet.choices, label="Springs", name="coil_list")
        self._lists.value_committed.connect(self._chosen)
        self._empty = Words("None yet: type the first one below, or find out the rate of an unmarked one.", "text")
        self._rows: list[SpringRow] = []
        self._row_box = QVBoxLayout()
        self._row_box.setSpacing(SPACE_4)
        self.adds = FieldGrid(view_model.set_text, columns=3)
        self._add = Button("Add to the list", "plain", name="coil_add")
        self._add.clicked.connect(view_model.add)
        self._heads = self._head_row()
        self._lay_out()

    def _lay_out(self) -> None:
        preload = QHBoxLayout()
        preload.setSpacing(SPACE_16)
        exact = QVBoxLayout()
        exact.setSpacing(SPACE_4)
        exact.addWidget(self._exact_lead)
        exact.addWidget(self._exact)
        exact.addStretch(1)
        preload.addLayout(exact, 3)
        preload.addWidget(self.preload, 4)
        preload.addWidget(self._set, 0, Qt.AlignmentFlag.AlignVCenter)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        for widget in (self._load, self._hint):
            rows.addWidget(widget)
        rows.addLayout(preload)
        for below in (self._preload_care, self._lists, self._empty, self._heads):
            rows.addWidget(below)
        rows.addLayout(self._row_box)
        rows.addWidget(self.adds)
        rows.addWidget(self._add, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(CareNote(CARE, name="coil_fit_care"))

    def _head_row(self) -> QWidget:
        heads = QWidget()
        grid = QGridLayout(heads)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_16)
        for column, (head, stretch) in enumerate(zip(HEADS, STRETCH, strict=True)):
            grid.addWidget(Words(head, "note"), 0, column)
            grid.setColumnStretch(column, stretch)
        grid.setColumnMinimumWidth(4, 170)
        return heads

    def show_sheet(self, sheet: CoilSheet) -> None:
        """Show the load, the preload and every spring."""
        self._load.set_words(sheet.load_words)
        for widget in (self._exact_lead, self._exact):
            widget.setVisible(sheet.exact is not None)
        if sheet.exact is not None:
            self._exact.set_number(*sheet.exact)
        self._hint.set_words(sheet.hint)
        self.preload.show_fields(sheet.preload_fields)
        self._set.setVisible(sheet.can_set_preload)
        self._preload_care.set_text(sheet.preload_words)
        self._lists.set_value(sheet.choice)
        is_own = sheet.choice == "own"
        self._empty.setVisible(is_own and not sheet.springs)
        self._heads.setVisible(bool(sheet.springs))
        self._show_lines(sheet.springs)
        self.adds.show_fields(sheet.adds)
        self._add.setVisible(is_own)

    def _show_lines(self, lines: tuple[SpringLine, ...]) -> None:
        while len(self._rows) < len(lines):
            row = SpringRow(len(self._rows) + 1)
            row.fitted.connect(self._view_model.fit)
            row.removed.connect(self._view_model.remove)
            self._row_box.addWidget(row)
            self._rows.append(row)
        for place, row in enumerate(self._rows):
            row.setVisible(place < len(lines))
            if place < len(lines):
                row.show_line(lines[place])

    def say(self, field: str, text: str) -> bool:
        """Say a problem at its field; false when it is not here."""
        box = self.preload.boxes.get(field) or self.adds.boxes.get(field)
        if box is not None:
            box.refuse(text)
        return box is not None

    def take_focus(self) -> None:
        """Put the caret into the preload."""
        box = self.preload.boxes.get("preload_mm")
        if box is not None:
            box.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _chosen(self, choice: object) -> None:
        self._view_model.choose(str(choice))

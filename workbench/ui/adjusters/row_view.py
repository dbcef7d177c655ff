"""One adjuster of the list: what is known of it, its ruler, and its facts when opened."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.adjusters.facts_view import FactsView
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.parts.rulers import AdjusterRuler, AdjusterScale, Marker
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.ui.what_it_does import WhatItDoes
from workbench.viewmodels.adjusters import AdjustersViewModel
from workbench.viewmodels.adjusters_edit import EditState
from workbench.viewmodels.adjusters_list import AdjusterRow

LABELS = ("As found", "Range", "Now", "Advice")


class RowView(QWidget):
    """Words at the left, the ruler in the middle, what to do at the right."""

    def __init__(self, view_model: AdjustersViewModel, adjuster_id: str) -> None:
        super().__init__()
        self._view_model = view_model
        self._id = adjuster_id
        self.title = Words("", "strong")
        self.values = {label: Words("", "text") for label in LABELS}
        self._labels = {label: Words(label, "note") for label in LABELS}
        self.note = Words("", "note")
        self.ruler = AdjusterRuler()
        self.count = Button("", "plain")
        self.facts_link = Button("Facts", "link")
        self.what = WhatItDoes()
        self.facts = FactsView(view_model, adjuster_id)
        self.count.clicked.connect(self._count)
        self.facts_link.clicked.connect(self._open_facts)
        across = QHBoxLayout()
        across.setSpacing(SPACE_16)
        across.addLayout(self._words(), 4)
        across.addWidget(self.ruler, 5)
        across.addLayout(self._keys(), 0)
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(SPACE_8)
        stack.addLayout(across)
        stack.addWidget(self.note)
        stack.addWidget(self.facts)

    def show_row(self, row: AdjusterRow, edit: EditState | None, unit: str = "") -> None:
        """Show what is known of the adjuster; ``unit`` is what it is on, for screen readers."""
        said = f"{unit}: {row.title}" if unit else row.title
        self._name(row, said)
        self.title.setText(row.title)
        told = dict(zip(LABELS, (row.as_found, row.skipped or row.range, row.now, row.advice), strict=True))
        self._labels["Range"].setText("Passed over" if row.skipped else "Range")
        for label, text in told.items():
            self._labels[label].setVisible(bool(text))
            self.values[label].set_words(text)
        self.note.set_role("problem" if row.is_fault else "note")
        self.note.set_words(row.note)
        self.count.set_text(row.verb)
        self.count.setAccessibleName(f"{row.verb}: {said}")
        self.what.ask_about(row.about, said)
        self._show_ruler(row, said)
        self.facts.setVisible(edit is not None)
        if edit is not None:
            self.facts.show_facts(edit, row, said)

    def set_problem(self, name: str, text: str) -> bool:
        """Say a problem at its field, if the facts are open here."""
        return self.facts.isVisibleTo(self) and self.facts.set_problem(name, text)

    def _name(self, row: AdjusterRow, said: str) -> None:
        self.setObjectName(f"adjuster_{row.key}")
        named = {"count": self.count, "open_facts": self.facts_link, "what": self.what, "ruler": self.ruler}
        for part, widget in named.items():
            widget.setObjectName(f"{part}_{row.key}")
        self.facts_link.setAccessibleName(f"Facts: {said}")

    def _show_ruler(self, row: AdjusterRow, said: str) -> None:
        self.ruler.setVisible(row.steps is not None)
        if row.steps is None:
            return
        marks = tuple(Marker(mark.position, mark.word, "now" if mark.is_now else "other") for mark in row.marks)
        self.ruler.set_scale(AdjusterScale(row.steps, marks, names=row.names))
        self.ruler.setAccessibleName(f"{said}: as found {row.as_found}, range {row.range}, now {row.now}")

    def _words(self) -> QVBoxLayout:
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE_8)
        grid.setVerticalSpacing(SPACE_4)
        grid.setColumnStretch(1, 1)
        for line, label in enumerate(LABELS):
            grid.addWidget(self._labels[label], line, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(self.values[label], line, 1)
        words = QVBoxLayout()
        words.setSpacing(SPACE_4)
        words.addWidget(self.title)
        words.addLayout(grid)
        words.addStretch(1)
        return words

    def _keys(self) -> QVBoxLayout:
        keys = QVBoxLayout()
        keys.setSpacing(SPACE_4)
        keys.addWidget(self.count)
        keys.addWidget(self.facts_link)
        keys.addWidget(self.what)
        keys.addStretch(1)
        return keys

    def _count(self) -> None:
        self._view_model.count(self._id)

    def _open_facts(self) -> None:
        self._view_model.open_facts(self._id)

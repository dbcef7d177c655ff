"""Plan a blind test: A, B, how many pairs, and the most that can show."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_4, SPACE_16, SPACE_24
from workbench.ui.ride.typed_line import TypedLine
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_blind_plan import PlanState

HOW = (
    "Two people: the rider rates, the helper sets the bike out of sight. Every pair of runs has A and B once, in an"
    " order drawn now, sealed, and shown to nobody but the helper. Ride warm first: every run counts."
)


class BlindPlanView(QWidget):
    """What is compared; the rest of the start lies below."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._a = _list("blind_a", "A, the setup to compare with")
        self._a.activated.connect(self._pick_a)
        self._b = _list("blind_b", "B, the setup it is compared with")
        self._b.activated.connect(self._pick_b)
        self._item = _list("blind_item", "What B changes")
        self._item.activated.connect(self._pick_item)
        self._value = TypedLine("value", "B stands at", prefix="blind")
        self._pairs = TypedLine("pairs", "Pairs of runs", prefix="blind")
        for line in (self._value, self._pairs):
            line.typed.connect(view_model.set_plan)
            line.line.returnPressed.connect(view_model.begin_blind)
        self._b_said = Words("", "problem", name="blind_b_said")
        self._differs = Words("", "strong", name="blind_differs")
        self._most = Words("", "text", name="blind_most")
        self._weak = CareNote("", name="blind_weak")
        self._begin = Button("Draw the order and begin", "verb", name="blind_begin")
        self._begin.clicked.connect(view_model.begin_blind)
        self._drop = Button("Ride an open session instead", "link", name="blind_drop")
        self._drop.clicked.connect(view_model.drop_plan)
        self.keys = (self._begin, self._drop)  # the sheet places them, where they stay in sight
        self._change = self._change_part()
        self._build()

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE_24)
        grid.setVerticalSpacing(SPACE_16)
        grid.addWidget(_cell("A, to compare with", self._a), 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(_cell("B", self._b, self._b_said), 0, 1, 1, 2, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._pairs, 1, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._change, 1, 1, 1, 2, Qt.AlignmentFlag.AlignTop)
        for column in range(3):
            grid.setColumnStretch(column, 1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(Words(HOW, "mute"))
        rows.addLayout(grid)
        for widget in (self._differs, self._most, self._weak, Rule()):
            rows.addWidget(widget)

    def _change_part(self) -> QWidget:
        part = QWidget()
        grid = QGridLayout(part)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_24)
        grid.addWidget(_cell("B changes", self._item), 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self._value, 0, 1, Qt.AlignmentFlag.AlignTop)
        for column in range(2):
            grid.setColumnStretch(column, 1)
        return part

    def show_plan(self, plan: PlanState) -> None:
        """Show what was entered, and what it comes to."""
        _fill(self._a, plan.setups, plan.a_id)
        _fill(self._b, plan.others, plan.draft.b_id)
        _fill(self._item, tuple((one.key, one.title) for one in plan.choices), plan.item)
        self._change.setVisible(not plan.draft.b_id)
        self._value.show_text(plan.draft.value)
        self._value.set_unit(next((one.unit for one in plan.choices if one.key == plan.item), ""))
        self._pairs.show_text(plan.draft.pairs)
        self._b_said.set_words("")
        self._differs.set_words(plan.differs)
        self._most.set_words("" if plan.is_weak else plan.most)
        self._weak.set_text(plan.most if plan.is_weak else "")

    def focus_first(self) -> None:
        """Put the caret where typing begins."""
        target = self._value.line if self._value.isVisible() else self._pairs.line
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        if problem.field == "b":
            self._b_said.set_words(problem.text)
            self._b.setFocus(Qt.FocusReason.OtherFocusReason)
            return True
        line = {"value": self._value, "pairs": self._pairs}.get(problem.field)
        if line is not None:
            line.set_problem(problem.text)
        return line is not None

    def _pick_a(self, place: int) -> None:
        self._ride.set_plan("a_id", str(self._a.itemData(place)))

    def _pick_b(self, place: int) -> None:
        self._ride.set_plan("b_id", str(self._b.itemData(place)))

    def _pick_item(self, place: int) -> None:
        self._ride.set_plan("item", str(self._item.itemData(place)))


def _list(name: str, words: str) -> ListBox:
    made = ListBox(())
    made.setObjectName(name)
    made.setAccessibleName(words)
    return made


def _fill(box: ListBox, pairs: tuple[tuple[str, str], ...], chosen: str) -> None:
    box.clear()
    for key, words in pairs:
        box.addItem(words, key)
    box.setCurrentIndex(max(box.findData(chosen), 0))


def _cell(label: str, field: QWidget, said: QWidget | None = None) -> QWidget:
    cell = QWidget()
    rows = QVBoxLayout(cell)
    rows.setContentsMargins(0, 0, 0, 0)
    rows.setSpacing(SPACE_4)
    words = Words(label, "mute")
    words.setBuddy(field)
    rows.addWidget(words)
    rows.addWidget(field)
    if said is not None:
        rows.addWidget(said)
        said.hide()
    return cell

"""Enter a run in seconds: liking, direction, travel used; the rest folds away."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import FlagField, ListBox
from workbench.ui.parts.labels import Words
from workbench.ui.parts.rating_bar import ComparedBar, DirectionBar, RatingBar
from workbench.ui.parts.theme import SPACE_16, SPACE_24
from workbench.ui.ride.lap_line import LapLine
from workbench.ui.ride.noticed_view import NoticedView
from workbench.ui.ride.score_grid import ScoreGrid, bring_in_sight
from workbench.ui.ride.typed_line import TypedLine
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_run import LABELS, RunEntry

FIRST = ("travel_front", "travel_rear")
LEVER_RIGHT = "Where its setup has it"
MORE = {"bottom_front": (1, 0), "bottom_rear": (1, 1), "lap": (2, 0), "note": (2, 1)}  # row and column
TYRES = {"tyre_front": (3, 0), "tyre_rear": (3, 1)}


class RunEntryView(QWidget):
    """The run being entered; number keys rate it wherever the focus is not in a line of text."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._title = Words("", "strong", name="run_title")
        self._warmup = FlagField(label="Warm-up: seen, not counted", name="run_warmup")
        self._warmup.value_committed.connect(self._set_warmup)
        self._liking = RatingBar(question="Liking, 1 to 9", name="run_liking")
        self._liking.picked.connect(self._set_liking)
        self._direction = DirectionBar(name="run_direction")
        self._direction.picked.connect(self._set_direction)
        self._compared = ComparedBar(question="Against the run before", name="run_compared")
        self._compared.picked.connect(self._set_compared)
        self._lap = LapLine(view_model.watch_time, prefix="run")
        typed = (name for name in (*FIRST, *MORE, *TYRES) if name != "lap")
        self._lines = {name: TypedLine(name, LABELS[name], prefix="run") for name in typed} | {"lap": self._lap}
        self._lap.watch_pressed.connect(view_model.press_watch)
        for line in self._lines.values():
            line.typed.connect(view_model.set_run)
            line.line.returnPressed.connect(view_model.keep_run)
        self._lever = ListBox((("", LEVER_RIGHT),))
        self._lever.setObjectName("run_lever")
        self._lever.setAccessibleName("Lever on this run")
        self._lever.setMinimumContentsLength(len(LEVER_RIGHT) + 4)
        self._lever.activated.connect(self._set_lever)
        self._tyres = Words("", "note_strong", name="run_tyres")
        self._keep = Button("Keep run", "verb", name="run_keep")
        self._keep.clicked.connect(view_model.keep_run)
        self._discard = Button("Discard", "plain", name="run_discard")
        self._discard.clicked.connect(view_model.discard_run)
        self._fold = Button("More ...", "link", name="run_more")
        self._fold.clicked.connect(self._unfold)
        self._scores = ScoreGrid()
        self._scores.scored.connect(view_model.rate)
        self._scores.hide()
        self._attributes = Button("Attributes ...", "link", name="run_attributes")
        self._attributes.clicked.connect(self._unfold_scores)
        self.noticed = NoticedView()
        self.noticed.noticed.connect(view_model.notice)
        self.noticed.picked.connect(view_model.work_on)
        self.noticed.hide()
        self._notice = Button("Noticed ...", "link", name="run_notice")
        self._notice.clicked.connect(self._unfold_noticed)
        # the sheet places them, where they stay in sight
        self.keys = (self._keep, self._discard, self._fold, self._attributes, self._notice)
        self._said = Words("", "problem", name="run_said")
        self._more = self._more_part()
        self._more.hide()
        self._build()

    def _build(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(SPACE_24)
        head.addWidget(self._title, 1)
        head.addWidget(self._warmup)
        self._travel = QHBoxLayout()
        self._travel.setSpacing(SPACE_24)
        for name in FIRST:
            self._travel.addWidget(self._lines[name], 1, Qt.AlignmentFlag.AlignTop)
        self._travel.addStretch(1)
        self._rows = rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addLayout(head)
        for widget in (self._liking, self._said, self._direction):
            rows.addWidget(widget)
        rows.addLayout(self._travel)
        rows.addWidget(self._scores)
        rows.addWidget(self._more)
        rows.addWidget(self.noticed)

    def _more_part(self) -> QWidget:
        part = QWidget()
        self._grid = grid = QGridLayout(part)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(SPACE_24)
        grid.setVerticalSpacing(SPACE_16)
        grid.addWidget(self._compared, 0, 0, 1, 2)
        lever = QHBoxLayout()
        lever.setSpacing(SPACE_16)
        words = Words("Lever on this run", "mute")
        words.setBuddy(self._lever)
        lever.addWidget(words)
        lever.addWidget(self._lever)
        lever.addStretch(1)
        grid.addWidget(self._tyres, 4, 0, 1, 2)
        grid.addLayout(lever, 5, 0, 1, 2)
        for name, at in (MORE | TYRES).items():
            grid.addWidget(self._lines[name], *at, Qt.AlignmentFlag.AlignTop)
        for column in (0, 1):
            grid.setColumnStretch(column, 1)
        return part

    def show_entry(self, entry: RunEntry) -> None:
        """Show what was entered."""
        draft = entry.draft
        self._title.setText(f"Run {entry.number}")
        self._warmup.set_value(entry.is_warmup)
        self._liking.set_value(draft.liking)
        self._direction.setVisible(bool(entry.direction_words))
        if entry.direction_words:
            self._direction.set_question(entry.direction_question)
            self._direction.set_words(entry.direction_words)
        self._direction.set_value(draft.direction)
        self._compared.set_value(draft.compared)
        self._compared.setVisible(entry.can_compare)
        for name, line in self._lines.items():
            line.show_text(getattr(draft, name))
            if name in FIRST:
                line.set_unit(entry.length_unit)
            if name in TYRES:
                line.set_unit(entry.pressure_unit)
        self._tyres.set_words(entry.tyres)
        for name in ("travel_rear", "bottom_rear"):
            self._lines[name].setVisible(entry.has_rear)
        self._lap.show_watch(is_running=bool(draft.watch))
        self._show_lever(entry)
        self._place_lap(entry.response == "lap_s")
        self._scores.show_scores(entry.scores)
        self._discard.setVisible(entry.has_draft)
        self._said.set_words("")

    def _place_lap(self, comes_first: bool) -> None:
        """A session judged by lap time has it above all else; otherwise it folds away with the rest."""
        lap = self._lap
        if comes_first == (self._rows.indexOf(lap) >= 0):
            return
        if comes_first:
            self._rows.insertWidget(1, lap, 0, Qt.AlignmentFlag.AlignLeft)
            lap.show()
        else:
            self._grid.addWidget(lap, *MORE["lap"], Qt.AlignmentFlag.AlignTop)

    def focus_first(self) -> None:
        """Put the focus on what the session is judged by: a line for the lap time, or where a number key rates."""
        lap = self._lap
        is_due = self._rows.indexOf(lap) >= 0 and not lap.line.text()
        (lap.line if is_due else self._liking).setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        if problem.field == "liking":
            self._said.set_words(problem.text)
            self._liking.setFocus(Qt.FocusReason.OtherFocusReason)
            return True
        line = self._lines.get(problem.field)
        if line is None:
            return False
        if problem.field in (*MORE, *TYRES):
            self._more.show()
        line.set_problem(problem.text)
        return True

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter keep the run from anywhere in the entry."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not event.isAutoRepeat():
            self._ride.keep_run()
            return
        super().keyPressEvent(event)

    def _unfold(self) -> None:
        self._more.setVisible(self._more.isHidden())

    def _unfold_scores(self) -> None:
        self._scores.setVisible(self._scores.isHidden())
        if not self._scores.isHidden():
            bring_in_sight(self._scores)
            self._scores.focus_first()

    def _unfold_noticed(self) -> None:
        self.noticed.setVisible(self.noticed.isHidden())
        if not self.noticed.isHidden():
            bring_in_sight(self.noticed)
            self.noticed.focus_first()

    def _show_lever(self, entry: RunEntry) -> None:
        keys = ["", *(key for key, _ in entry.levers)]
        if [self._lever.itemData(at) for at in range(self._lever.count())] != keys:
            self._lever.clear()
            for key, words in (("", LEVER_RIGHT), *entry.levers):
                self._lever.addItem(words, key)
        self._lever.setCurrentIndex(max(self._lever.findData(entry.draft.lever), 0))

    def _set_lever(self, place: int) -> None:
        self._ride.set_run("lever", str(self._lever.itemData(place)))

    def _set_warmup(self, value: object) -> None:
        self._ride.set_run("is_warmup", bool(value))

    def _set_liking(self, value: object) -> None:
        self._ride.set_run("liking", value)

    def _set_direction(self, value: object) -> None:
        self._ride.set_run("direction", value)

    def _set_compared(self, value: object) -> None:
        self._ride.set_run("compared", value)

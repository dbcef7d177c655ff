"""The rider's screen: rate the run just ridden, and once there is none left, guess."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QMenu, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.labels import Words
from workbench.ui.parts.rating_bar import KeyBar, RatingBar
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.ride.blind_parts import column
from workbench.ui.ride.lap_line import LapLine
from workbench.ui.ride.score_grid import ScoreGrid
from workbench.ui.ride.typed_line import TypedLine
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride import RideViewModel
from workbench.viewmodels.ride_blind import SPOILT, BlindState

CARE = (
    "Before every run: three pushes on each end, both brakes, a hundred metres of easy rolling."
    " Stop the test if anything feels wrong."
)
ASKED = (
    "Before anything is revealed: which run of each pair was B, the one with the change? Guess, however unsure;"
    " whether it can be told apart is part of the result."
)
FINAL = "The reveal is final. It is not undone, so that ratings and guesses stay what they were."


class RiderPart(QWidget):
    """Liking and lap time, what the test is judged by first, and if wanted the attributes; nothing of the setup."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._liking = RatingBar(question="Liking, 1 to 9", name="blind_liking")
        self._liking.picked.connect(self._rate)
        self._said = Words("", "problem", name="blind_said")
        self._scores = ScoreGrid()
        self._scores.setObjectName("blind_scores")
        self._scores.scored.connect(view_model.score_blind)
        self._scores.hide()
        self._lap = LapLine(view_model.blind_watch_time, prefix="blind")
        self._lap.watch_pressed.connect(view_model.press_blind_watch)
        self._note = TypedLine("note", "Note", prefix="blind")
        for line in (self._lap, self._note):
            line.typed.connect(view_model.rate_blind)
            line.line.returnPressed.connect(view_model.keep_blind)
        self._keep = Button("Keep run", "verb", name="blind_keep")
        self._keep.clicked.connect(view_model.keep_blind)
        self._fold = Button("Attributes ...", "link", name="blind_attributes")
        self._fold.clicked.connect(self._unfold)
        self._spoilt = Button("This run does not count ...", "link", name="blind_spoilt")
        menu = QMenu(self._spoilt)
        for reason in SPOILT:
            menu.addAction(reason).triggered.connect(partial(self._spoil, reason))
        self._spoilt.setMenu(menu)
        self._back = Button("Hand over to the helper", "link", name="blind_back")
        self._back.clicked.connect(view_model.to_door)
        self.keys = (self._keep, self._fold, self._spoilt, self._back)
        self._rows = rows = column(self)
        for widget in (
            CareNote(CARE, name="blind_care"),
            self._liking,
            self._said,
            self._scores,
            self._lap,
            self._note,
        ):
            rows.addWidget(widget)

    def show_state(self, state: BlindState) -> None:
        """Show what was rated."""
        self._liking.set_value(state.draft.liking)
        self._scores.show_scores(state.scores)
        self._lap.show_text(state.draft.lap)
        self._lap.show_watch(is_running=bool(state.draft.watch))
        self._note.show_text(state.draft.note)
        self._said.set_words("")
        self._place_lap(state.response == "lap_s")

    def _place_lap(self, comes_first: bool) -> None:
        """A test judged by lap time asks for it first; else it stands before the note."""
        if (self._rows.indexOf(self._lap) < self._rows.indexOf(self._liking)) != comes_first:
            self._rows.removeWidget(self._lap)
            self._rows.insertWidget(self._rows.indexOf(self._liking if comes_first else self._note), self._lap)

    def focus_first(self) -> None:
        """Put the focus on what the test is judged by: a line for the lap time, or where a number key rates."""
        is_due = self._rows.indexOf(self._lap) < self._rows.indexOf(self._liking) and not self._lap.line.text()
        (self._lap.line if is_due else self._liking).setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        if problem.field == "blind_liking":
            self._said.set_words(problem.text)
            self._liking.setFocus(Qt.FocusReason.OtherFocusReason)
        elif problem.field == "blind_note":
            self._note.set_problem(problem.text)
        elif problem.field == "blind_lap":
            self._lap.set_problem(problem.text)
        return problem.field in ("blind_liking", "blind_note", "blind_lap")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Let Enter keep the run from anywhere on the screen."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not event.isAutoRepeat():
            self._ride.keep_blind()
            return
        super().keyPressEvent(event)

    def _rate(self, value: object) -> None:
        self._ride.rate_blind("liking", value)

    def _spoil(self, reason: str, _checked: bool = False) -> None:
        self._ride.keep_blind(spoilt=reason)

    def _unfold(self) -> None:
        self._scores.setVisible(self._scores.isHidden())
        if not self._scores.isHidden():
            self._scores.focus_first()


class GuessPart(QWidget):
    """One guess a pair, then the reveal."""

    def __init__(self, view_model: RideViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._ride = view_model
        self._asked = Words("", "text", name="blind_asked")
        self._said = Words("", "problem", name="blind_guess_said")
        self._bars: list[KeyBar] = []
        self._guesses = QVBoxLayout()
        self._guesses.setSpacing(SPACE_16)
        self._reveal = Button("Reveal", "verb", name="blind_reveal")
        self._go_on = Button("Ride on after all", "link", name="blind_go_on")
        self._go_on.clicked.connect(view_model.go_on)
        self.reveal_button = self._reveal
        self.keys = (self._reveal, self._go_on)
        rows = column(self)
        rows.addWidget(self._asked)
        rows.addLayout(self._guesses)
        for widget in (self._said, Words(FINAL, "mute")):
            rows.addWidget(widget)

    def show_state(self, state: BlindState) -> None:
        """Show the pairs with what was guessed."""
        self._asked.setText(_asked(state))
        if len(self._bars) != state.pairs:
            self._build(state.pairs)
        for pair, bar in enumerate(self._bars):
            which = state.guess.guess(pair)
            bar.set_value(which if which >= 0 else None)
        self._said.set_words("")
        self._go_on.setVisible(state.can_go_on)

    def focus_first(self) -> None:
        """Put the focus on the first pair not guessed yet, or on the way on."""
        target = next((bar for bar in self._bars if bar.value() is None), self._reveal)
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_problem(self, problem: Problem) -> bool:
        """Say a problem at its field; false when it has none here."""
        if not problem.field.startswith("guess_") or not self._bars:
            return False
        self._said.set_words(problem.text)
        self._bars[int(problem.field.removeprefix("guess_"))].setFocus(Qt.FocusReason.OtherFocusReason)
        return True

    def _build(self, pairs: int) -> None:
        for bar in self._bars:
            self._guesses.removeWidget(bar)
            bar.hide()
            bar.deleteLater()
        self._bars = []
        for pair in range(pairs):
            keys = tuple((which, f"Run {2 * pair + which + 1}") for which in (0, 1))
            bar = KeyBar(keys, question=f"Pair {pair + 1}: B was", name=f"blind_guess_{pair + 1}")
            bar.picked.connect(partial(self._ride.guess, pair))
            self._guesses.addWidget(bar)
            bar.show()
            self._bars.append(bar)


def _asked(state: BlindState) -> str:
    asked = ASKED if state.pairs else "No pair was ridden to the end, so there is nothing to guess."
    if not state.can_go_on:
        return asked
    return f"Stopped after {state.pairs} of {state.total // 2} pairs: the result will say so. {asked}"

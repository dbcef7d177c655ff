"""In and out: take bikes along, or bring a file in after looking at what it would change."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFileDialog, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Rule, Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_16, SPACE_24
from workbench.viewmodels.bundle import SUFFIX, BundleState, BundleViewModel, ChoiceRow

FILES = f"Bundle (*{SUFFIX} *.json)"
SIDES = (("here", "As here"), ("file", "As in the file"))
ABOUT_OUT = (
    "A file with everything that belongs to the bike: its riders with their names and masses, parts, setups, runs and"
    " photos. Whoever has the file can read all of it."
)


class _Choice(QWidget):
    """One record of which two versions stand side by side."""

    chosen = Signal(str, str, str)

    def __init__(self, row: ChoiceRow, place: int) -> None:
        super().__init__()
        self.key = (row.table, row.row_id)
        self._text = Words("", name=f"bundle_choice_{place}_text")
        self._kind = Words("", "note")
        self._side = ChoiceField(SIDES, label=row.text, name=f"bundle_choice_{place}")
        self._side.value_committed.connect(self._committed)
        words = QVBoxLayout()
        words.setSpacing(SPACE_4)
        words.addWidget(self._text)
        words.addWidget(self._kind)
        across = QHBoxLayout(self)
        across.setContentsMargins(0, 0, 0, 0)
        across.setSpacing(SPACE_24)
        across.addLayout(words, 1)
        across.addWidget(self._side)

    def show_row(self, row: ChoiceRow) -> None:
        """Show which version is chosen."""
        self._text.setText(row.text)
        self._kind.setText(row.kind)
        self._side.set_value(row.chosen or None)

    def _committed(self, side: object) -> None:
        self.chosen.emit(*self.key, str(side))


class BundlePage(Page):
    """The sheet on which bikes go in and out."""

    def __init__(self, view_model: BundleViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._bundle = view_model
        self._sheet = Sheet("In and out", name="bundle_sheet")
        self._said = Words("", "strong", name="bundle_said")
        self._problem = Words("", "care", name="bundle_problem")
        self._out = QWidget()
        self._before = Words("You see what a file would change before anything is taken from it.")
        self._one = Button("", "plain", name="bundle_take_bike")
        self._all = Button("", "plain", name="bundle_take_all")
        self._open = Button("Open a file ...", "plain", name="bundle_open")
        self._file = Words("", "strong", name="bundle_file")
        self._groups = QGridLayout()
        self._rows = QVBoxLayout()
        self._shown: tuple[tuple[str, str], ...] = ()
        self._choices: list[_Choice] = []
        self._more = Words("", "note", name="bundle_more")
        self._every = QWidget()
        self._left = Words("", "note", name="bundle_left")
        self._bring = Button("", "verb", name="bundle_bring")
        self._leave = Button("Take nothing", "plain", name="bundle_leave")
        self._close = Button("Back to the garage", "link", name="bundle_close")
        self._place()
        self._connect()
        self.listen()

    def _place(self) -> None:
        body = self._sheet.body
        out, keys, every = Flow(), Flow(), Flow()
        for key in (self._one, self._all):
            out.addWidget(key)
        for key in (self._bring, self._leave):
            keys.addWidget(key)
        self._all_here = Button("All as here", "plain", name="bundle_all_here")
        self._all_file = Button("All as in the file", "plain", name="bundle_all_file")
        every.addWidget(self._all_here)
        every.addWidget(self._all_file)
        stack = QVBoxLayout(self._every)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.addWidget(every)
        self._groups.setHorizontalSpacing(SPACE_24)
        self._groups.setVerticalSpacing(SPACE_4)
        self._groups.setColumnStretch(1, 1)
        self._rows.setSpacing(SPACE_16)
        taking = QVBoxLayout(self._out)
        taking.setContentsMargins(0, 0, 0, 0)
        taking.setSpacing(SPACE_16)
        for part in (Words("Take along", "strong"), Words(ABOUT_OUT), out, Rule()):
            taking.addWidget(part)
        self._problem.hide()
        for shown in (self._said, self._problem, self._out):
            body.addWidget(shown)
        body.addWidget(Words("Bring in", "strong"))
        body.addWidget(self._before)
        body.addWidget(self._open, 0, Qt.AlignmentFlag.AlignLeft)
        body.addWidget(self._file)
        body.addLayout(self._groups)
        body.addWidget(self._every)
        body.addLayout(self._rows)
        for part in (self._more, self._left, keys):
            body.addWidget(part)
        body.addWidget(self._close, 0, Qt.AlignmentFlag.AlignLeft)
        body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)

    def _connect(self) -> None:
        self._one.clicked.connect(partial(self._ask_where, False))
        self._all.clicked.connect(partial(self._ask_where, True))
        self._open.clicked.connect(self._ask_which)
        self._all_here.clicked.connect(partial(self._bundle.choose_all, "here"))
        self._all_file.clicked.connect(partial(self._bundle.choose_all, "file"))
        self._bring.clicked.connect(self._bring_in)
        self._leave.clicked.connect(self._bundle.close_file)
        self._close.clicked.connect(self._leave_sheet)

    def start(self) -> None:
        """Begin at opening a file."""
        self._open.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_problem(self, problem: object) -> None:
        """Say a refusal where the file was asked for, so that it stays."""
        self._problem.set_words(str(getattr(problem, "text", problem)))
        self._sheet.scroll_area.verticalScrollBar().setValue(0)

    def _render(self, state: BundleState) -> None:
        self._one.set_text(f"Take {state.bike_name} along ..." if state.bike_name else "Take this bike along ...")
        self._one.setEnabled(bool(state.bike_name))
        self._all.set_text(f"Take all along: {state.bikes_text} ...")
        for part in (self._out, self._before):
            part.setVisible(not state.file_text)  # one thing at a time
        self._said.set_words(state.said)
        self._open.setEnabled(state.can_keep)
        self._file.set_words(state.file_text)
        self._render_groups(state)
        self._render_choices(state)
        self._every.setVisible(len(state.choices) > 1)
        self._more.set_words(state.more)
        self._left.set_words(state.left_to_say)
        self._bring.set_text(state.verb)
        self._bring.setVisible(bool(state.verb))
        self._leave.setVisible(bool(state.file_text))

    def _render_groups(self, state: BundleState) -> None:
        if state.groups == self._shown:
            return
        self._shown = state.groups
        while (item := self._groups.takeAt(0)) is not None:
            if (widget := item.widget()) is not None:
                widget.hide()
                widget.deleteLater()
        for place, (kind, words) in enumerate(state.groups):
            self._groups.addWidget(Words(kind, "mute"), place, 0)
            self._groups.addWidget(Words(words), place, 1)

    def _render_choices(self, state: BundleState) -> None:
        keys = [(row.table, row.row_id) for row in state.choices]
        if keys != [choice.key for choice in self._choices]:
            for choice in self._choices:
                self._rows.removeWidget(choice)
                choice.hide()
                choice.deleteLater()
            self._choices = [_Choice(row, place) for place, row in enumerate(state.choices, start=1)]
            for choice in self._choices:
                choice.chosen.connect(self._bundle.choose)
                self._rows.addWidget(choice)
        for choice, row in zip(self._choices, state.choices, strict=True):
            choice.show_row(row)

    def _ask_where(self, whole: bool, _checked: bool = False) -> None:
        self._problem.set_words("")
        name = self._bundle.file_name(whole=whole)
        path, _ = QFileDialog.getSaveFileName(self, "Take along", name, FILES)
        if path:
            self._bundle.take_along(Path(path), whole=whole)

    def _ask_which(self) -> None:
        self._problem.set_words("")
        path, _ = QFileDialog.getOpenFileName(self, "Bring in", "", FILES)
        if path and self._bundle.open_file(Path(path)):
            self._bring.setFocus(Qt.FocusReason.OtherFocusReason)

    def _bring_in(self) -> None:
        self._problem.set_words("")
        self._bundle.bring_in()

    def _leave_sheet(self) -> None:
        self.station_requested.emit("garage")

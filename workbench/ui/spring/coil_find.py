"""Finding out what a spring is: entries at the left, the rate with its line at the right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.big_number import BigNumber
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_8, SPACE_16, SPACE_24
from workbench.ui.plots.coil import CoilForcePlot, CoilRatePlot
from workbench.ui.spring.coil_fields import FieldGrid, PairLines
from workbench.viewmodels.coil import CoilViewModel
from workbench.viewmodels.coil_sheets import CoilPlot, CoilSheet


class FindView(QWidget):
    """One way to find a rate: from the wire, by pressing, or from a table."""

    def __init__(self, view_model: CoilViewModel, view: str, sheet: CoilSheet) -> None:
        super().__init__()
        self._intro = Words("", "text", name=f"coil_{view}_intro")
        self._care = CareNote(name=f"coil_{view}_care")
        self._choice = ChoiceField(sheet.choices, label="Kind of entry", name=f"coil_{view}_choice")
        self._choice.value_committed.connect(self._chosen)
        self._view_model = view_model
        self.fields = FieldGrid(view_model.set_text, columns=2)
        self.pairs = PairLines(view_model.set_pair)
        self._lead = Words("", "mute")
        self._number = BigNumber(name=f"coil_{view}_rate")
        self._interval = Words("", "strong", name=f"coil_{view}_interval")
        self._notes = Words("", "text", name=f"coil_{view}_notes")
        self._hint = Words("", "text", name=f"coil_{view}_hint")
        self._view = view
        self._plots = QVBoxLayout()
        self._force: CoilForcePlot | None = None  # made when there is something to draw
        self._rate: CoilRatePlot | None = None
        self._keep = Button("Add to the springs at hand", "verb", name=f"coil_{view}_keep")
        self._keep.clicked.connect(view_model.keep_result)
        self._fit = Button("It is on the bike", "plain", name=f"coil_{view}_fit")
        self._fit.clicked.connect(view_model.fit_result)
        self._discard = Button("Discard", "link", name=f"coil_{view}_discard")
        self._discard.clicked.connect(view_model.discard)
        self._lay_out()

    def _lay_out(self) -> None:
        left, right = QVBoxLayout(), QVBoxLayout()
        left.setSpacing(SPACE_16)
        for widget in (self._choice, self.pairs, self.fields):
            left.addWidget(widget)
        left.addStretch(1)
        keys = Flow(gap=SPACE_8)
        for key in (self._keep, self._fit, self._discard):
            keys.addWidget(key)
        right.setSpacing(SPACE_8)
        for part in (self._lead, self._number, self._interval, self._notes, self._hint, keys):
            right.addWidget(part)
        right.addLayout(self._plots)
        right.addStretch(1)
        across = QHBoxLayout()
        across.setSpacing(SPACE_24)
        across.addLayout(left, 4)
        across.addLayout(right, 5)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(self._intro)
        rows.addWidget(self._care)
        rows.addLayout(across)

    def show_sheet(self, sheet: CoilSheet) -> None:
        """Show the entries, and the rate once there is one."""
        self._intro.set_words(sheet.intro)
        self._care.set_text(sheet.care)
        self._choice.setVisible(bool(sheet.choices))
        self._choice.set_value(sheet.choice)
        self.pairs.show_sheet(sheet)
        self.fields.show_fields(sheet.fields)
        result = sheet.result
        self._lead.set_words(result.lead if result else "")
        self._number.setVisible(result is not None)
        if result is not None:
            self._number.set_number(result.number, result.unit, result.also)
        self._interval.set_words(result.interval if result else "")
        self._notes.set_words(" ".join(result.notes) if result else "")
        self._hint.set_words(sheet.hint)
        self._discard.setVisible(sheet.has_draft)
        self._show_plots(sheet.plot, sheet.plot_words)

    def _show_plots(self, plot: CoilPlot | None, words: str) -> None:
        has_rate = plot is not None and bool(plot.rate_n_per_mm)
        if plot is not None and self._force is None:
            self._force = CoilForcePlot(f"coil_{self._view}_plot")
            self._plots.addWidget(self._force)
        if has_rate and self._rate is None:
            self._rate = CoilRatePlot(f"coil_{self._view}_rate_plot")
            self._plots.addWidget(self._rate)
        for drawn, is_wanted in ((self._force, plot is not None), (self._rate, has_rate)):
            if drawn is not None:
                drawn.setVisible(is_wanted)
            if drawn is not None and is_wanted and plot is not None:
                drawn.show_plot(plot, words)

    def say(self, field: str, text: str) -> bool:
        """Say a problem at its field; false when it is not here."""
        if field in self.fields.boxes:
            self.fields.boxes[field].refuse(text)
        elif field.startswith("line_"):
            self.pairs.refuse(int(field.removeprefix("line_")) - 1, text)
        else:
            return False
        return True

    def take_focus(self) -> None:
        """Put the caret into the first entry."""
        lines = [entries[0] for entries in self.pairs.lines] or [box.line for box in self.fields.boxes.values()]
        shown = [line for line in lines if line.isVisibleTo(self)] or [
            box.line for box in self.fields.boxes.values() if box.line.isVisibleTo(self)
        ]
        if shown:
            shown[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def _chosen(self, choice: object) -> None:
        self._view_model.choose(str(choice))

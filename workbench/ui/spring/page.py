"""The spring sheet: the curve, what is tried on paper, and the findings in words."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QSlider, QVBoxLayout, QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ChoiceField
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.labels import Words
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16, current
from workbench.ui.parts.word_pairs import WordPairs
from workbench.ui.plots.spring import SpringPlot
from workbench.ui.spring.coil_page import CoilPart
from workbench.viewmodels.spring import SpringState, SpringViewModel
from workbench.viewmodels.spring_sliders import Slider

LEGEND = (
    "A band, where there is one, holds the true curve nine times in ten. The dot is the sag; a ring, the one measured."
)


class SliderRow(QWidget):
    """Something to try, with its value in words; ``moved(name, value)``."""

    moved = Signal(str, int)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._name = name
        self._label = Words("", "mute")
        self._text = Words("", "strong")
        self._slider = QSlider(Qt.Orientation.Horizontal)
        self._slider.setObjectName(f"spring_{name}")
        self._slider.valueChanged.connect(self._moved)
        head = QHBoxLayout()
        head.addWidget(self._label, 1)
        head.addWidget(self._text)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        rows.addLayout(head)
        rows.addWidget(self._slider)

    def show_slider(self, slider: Slider) -> None:
        """Show a value; this is not a move."""
        self._slider.setMinimumHeight(current().sizes.target)
        self._label.setText(slider.label)
        self._text.setText(slider.text)
        self._slider.setAccessibleName(f"{slider.label} {slider.text}")
        self._slider.blockSignals(True)
        self._slider.setRange(slider.low, slider.high)
        self._slider.setPageStep(max(1, (slider.high - slider.low) // 10))
        self._slider.setValue(slider.value)
        self._slider.blockSignals(False)

    def _moved(self, value: int) -> None:
        self.moved.emit(self._name, value)


class SpringPage(Page):
    """The springs of the bike on the bench."""

    def __init__(self, view_model: SpringViewModel, parent: QWidget | None = None) -> None:
        super().__init__(view_model, parent)
        self._spring = view_model
        self._sheet = Sheet("Spring", name="spring_sheet")
        self._blocked = EmptyState("", "Go to sag", name="spring_blocked")
        self._blocked.action_requested.connect(self._to_sag)
        self._ends = ChoiceField((("front", "Front"), ("rear", "Rear")), label="End", name="spring_end")
        self._ends.value_committed.connect(self._pick_end)
        self._plot = SpringPlot()
        self._sliders = {name: SliderRow(name) for name in ("pressure_kpa", "negative_kpa", "rate_n_per_mm", "spacers")}
        for row in self._sliders.values():
            row.moved.connect(view_model.try_value)
        self._reset = Button("As measured", "plain", name="spring_reset")
        self._reset.clicked.connect(view_model.as_measured)
        self._leverage = Button("Leverage survey ...", "link", name="spring_leverage")
        self._leverage.clicked.connect(self._to_leverage)
        self._findings = WordPairs("strong")
        self._remarks = Words("", "note", name="spring_remarks")
        self._coil = CoilPart(view_model.coil)
        for heard, passed_on in (
            (self._coil.problem_raised, self.problem_raised),
            (self._coil.kept, self.kept),
            (self._coil.discarded, self.discarded),
        ):
            heard.connect(passed_on)
        view_model.coil.state_changed.connect(self._show_parts)
        self._whole, self._side = self._main(), self._margin()
        for part in (self._ends, self._coil, self._blocked, self._whole):
            self._sheet.body.addWidget(part)
        self._sheet.body.addStretch(1)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self._sheet)
        self.listen()

    def start(self) -> None:
        """Put the focus on the ends, or on what is typed about a coil."""
        if self._shows_curve():
            self._ends.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self._coil.start()

    def _main(self) -> QWidget:
        whole = QWidget()
        rows = QVBoxLayout(whole)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        rows.addWidget(self._plot)
        rows.addWidget(Words(LEGEND, "note", name="spring_legend"))
        rows.addWidget(self._remarks)
        rows.addWidget(self._leverage, 0, Qt.AlignmentFlag.AlignLeft)
        return whole

    def _margin(self) -> QWidget:
        side = QWidget()
        rows = QVBoxLayout(side)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_16)
        rows.addWidget(Words("Try on paper", "strong"))
        for row in self._sliders.values():
            rows.addWidget(row)
        rows.addWidget(self._reset, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self._findings)
        return side

    def _render(self, state: SpringState) -> None:
        curve = state.curve
        self._spring.coil.pick_end(state.end)
        self._sheet.set_title(state.title or "Spring")
        self._ends.set_value(state.end)
        self._ends.setVisible(len(state.ends) > 1)
        self._show_parts()
        if curve is None:
            self._blocked.set_words(state.blocked, "Go to sag")
            return
        self._plot.show_curve(curve, state.kept, state.force_label, state.travel_label)
        shown = {slider.name: slider for slider in state.sliders}
        for name, row in self._sliders.items():
            row.setVisible(name in shown)
            if name in shown:
                row.show_slider(shown[name])
        self._reset.setVisible(state.is_tried)
        self._leverage.setVisible(state.end == "rear")
        self._findings.show_pairs(state.findings)
        self._remarks.set_words(" ".join(state.remarks))
        self._plot.say("Force over travel. " + "; ".join(f"{label} {text}" for label, text in state.findings))

    def _shows_curve(self) -> bool:
        return not self._spring.state.has_coil or self._coil.is_curve()

    def _show_parts(self, _state: object = None) -> None:
        """Show the curve, or the coil's sheet that was asked for."""
        state = self._spring.state
        has_curve = state.curve is not None
        self._coil.setVisible(state.has_coil)
        self._blocked.setVisible(self._shows_curve() and not has_curve)
        self._whole.setVisible(self._shows_curve() and has_curve)
        self._sheet.set_margin(self._side if self._shows_curve() and has_curve else None)

    def _pick_end(self, end: object) -> None:
        self._spring.pick_end(str(end))

    def _to_sag(self) -> None:
        self.station_requested.emit("sag")

    def _to_leverage(self) -> None:
        self.station_requested.emit("leverage")

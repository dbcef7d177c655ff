"""The paper a station is on: a raised card with title, body and, where it helps, a margin at the right."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QScrollArea, QVBoxLayout, QWidget

from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import NORMAL_SIZES, SPACE_4, SPACE_8, SPACE_16, SPACE_24, announcer, current

MARGIN_WIDTH = 280
NARROW = 800
WIDEST = 1160  # what lies on a sheet is not pulled further apart than this
TIGHT = 640  # a narrower sheet has narrower edges
LOW = 280  # on a lower sheet the keys scroll along, so that something can be seen beside them


class Rule(QFrame):
    """A thin line between two parts of a sheet."""

    def __init__(self, *, upright: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "rule")
        if upright:
            self.setFixedWidth(1)
        else:
            self.setFixedHeight(1)


class Scrolled(QScrollArea):
    """A scroll area that takes its widget's height for its width, and never scrolls sideways."""

    def __init__(self, widget: QWidget, *, name: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        if name:
            self.setObjectName(name)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setWidgetResizable(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.horizontalScrollBar().valueChanged.connect(self._stay)  # also where something is a little too wide
        widget.setProperty("role", "scrolled")
        self.setWidget(widget)
        self.viewport().setAutoFillBackground(False)
        widget.setAutoFillBackground(False)

    def _stay(self, _value: int) -> None:
        self.horizontalScrollBar().setValue(0)


class Sheet(QFrame):
    """A card with a title, a sub-title, a body to fill, and an optional margin.

    Put widgets into ``body`` (a vertical layout). ``set_margin(widget)`` puts a drawing or an explanation at the
    right; on a narrow sheet it goes below. ``set_foot(widget)`` is the place of the title block. Keys stand on a strip
    at the foot: in sight while the rest scrolls, under a line where there is more than fits.
    """

    def __init__(
        self, title: str = "", subtitle: str = "", *, name: str = "sheet", parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self.setProperty("role", "card")
        self.widest = WIDEST
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.setSpacing(0)
        self.title = Words("", "title", name=f"{name}_title")
        self.subtitle = Words("", "mute", name=f"{name}_subtitle")
        self._paper = QWidget()
        self._across = QBoxLayout(QBoxLayout.Direction.LeftToRight, self._paper)
        self._across.setContentsMargins(SPACE_24, SPACE_16, SPACE_24, SPACE_24)
        self._across.setSpacing(SPACE_24)
        self._main = main = QVBoxLayout()
        main.setSpacing(SPACE_4)
        main.addWidget(self.title)
        main.addWidget(self.subtitle)
        main.addSpacing(SPACE_16 - SPACE_4)
        self.body = QVBoxLayout()
        self.body.setSpacing(SPACE_16)
        main.addLayout(self.body, 1)
        self._across.addLayout(main, 1)
        self._rule = Rule(upright=True)
        self._across.addWidget(self._rule)
        self._rule.hide()
        self._margin: QWidget | None = None
        self.scroll_area = Scrolled(self._paper, name=f"{name}_scroll")
        outer.addWidget(self.scroll_area, 1)
        self._outer = outer
        self._foot: QWidget | None = None
        self._strip: QWidget | None = None
        self._edge = Rule()
        self._edge.hide()
        outer.addWidget(self._edge)
        self.scroll_area.verticalScrollBar().rangeChanged.connect(self._draw_edge)
        self.set_title(title, subtitle)
        announcer.changed.connect(self._turn)

    def set_title(self, title: str, subtitle: str = "") -> None:
        """Name the sheet; an empty sub-title takes no room."""
        self.title.set_words(title)
        self.subtitle.set_words(subtitle)
        self.setAccessibleName(title)

    def set_margin(self, widget: QWidget | None) -> None:
        """Put a widget at the right, or take it away."""
        if self._margin is widget:
            return
        if self._margin is not None:
            self._across.removeWidget(self._margin)
            self._margin.hide()
        self._margin = widget
        if widget is not None:
            self._across.addWidget(widget, 0, Qt.AlignmentFlag.AlignTop)
            widget.show()
        self._turn()

    def set_foot(self, widget: QWidget | None) -> None:
        """Put the title block at the foot, or take it away."""
        if self._foot is not None:
            self._outer.removeWidget(self._foot)
            self._foot.hide()
        self._foot = widget
        if widget is not None:
            widget.setProperty("is_inset", True)
            self._outer.addWidget(widget)
            widget.show()

    def add_keys(self, *keys: QWidget) -> QWidget:
        """Put keys on a strip at the foot, where they stay in sight while the sheet scrolls."""
        strip = QWidget()
        row = Flow(gap=SPACE_16)
        for key in keys:
            row.addWidget(key)
        stack = QVBoxLayout(strip)
        stack.addWidget(row)
        self.hold(strip)
        return strip

    def hold(self, strip: QWidget) -> None:
        """Take a strip of keys made elsewhere."""
        self._strip = strip
        self._place_strip()

    def _place_strip(self) -> None:
        """Keep the strip at the foot, or let it scroll along where the sheet is too low for both."""
        if self._strip is None:
            return
        is_low = 0 < self.height() < LOW
        goal, other = (self._main, self._outer) if is_low else (self._outer, self._main)
        other.removeWidget(self._strip)
        if goal.indexOf(self._strip) < 0:
            goal.addWidget(self._strip)
        beside = self._edge_width()
        margins = (0, SPACE_16, 0, 0) if is_low else (beside, SPACE_8, beside, SPACE_16)
        layout = self._strip.layout()
        if layout is not None:
            layout.setContentsMargins(*margins)
        self._draw_edge()

    def _edge_width(self) -> int:
        return SPACE_16 if 0 < self.width() < TIGHT else SPACE_24

    def _draw_edge(self, _least: int = 0, _most: int = 0) -> None:
        is_held = self._strip is not None and self._outer.indexOf(self._strip) >= 0
        self._edge.setVisible(is_held and self.scroll_area.verticalScrollBar().maximum() > 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._turn()
        self._place_strip()

    def _turn(self, _theme: object = None) -> None:
        """Put the margin beside the body, or below it when there is no room."""
        enlarged = current().sizes.text / NORMAL_SIZES.text
        is_narrow = self.width() < NARROW * enlarged
        direction = QBoxLayout.Direction.TopToBottom if is_narrow else QBoxLayout.Direction.LeftToRight
        if self._across.direction() != direction:
            self._across.setDirection(direction)
        self._rule.setVisible(self._margin is not None and not is_narrow)
        spare = self.width() - SPACE_24 - round(self.widest * enlarged)
        self._across.setContentsMargins(self._edge_width(), SPACE_16, max(self._edge_width(), spare), SPACE_24)
        if self._margin is not None:
            width = round(MARGIN_WIDTH * min(enlarged, 1.2))
            self._margin.setMaximumWidth(16_777_215 if is_narrow else width)
            self._margin.setMinimumWidth(0 if is_narrow else width)

"""A list of steps to tick off at the bench: big rows, one tap each."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen, QResizeEvent, QTextLayout
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import draw_focus
from workbench.ui.parts.labels import lay_out
from workbench.ui.parts.theme import SPACE_8, SPACE_16, announcer, current


@dataclass(frozen=True, slots=True)
class Step:
    """One step: its key, what to do, whether it is done, and a remark in small print."""

    key: str
    text: str
    done: bool = False
    remark: str = ""


class _StepRow(QAbstractButton):
    """One row of the list."""

    def __init__(self, number: int, step: Step, name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.number = number
        self._laid_out: tuple[int, QTextLayout, QTextLayout | None] | None = None
        self.setCheckable(True)
        self.setObjectName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        announcer.changed.connect(self._restyle)
        self.take(step)

    def take(self, step: Step) -> None:
        """Show another text or state."""
        self.step = step
        self.setText(step.text.replace("&", "&&"))
        self.setChecked(step.done)
        self.setAccessibleName(f"Step {self.number}: {step.text}")
        self.setAccessibleDescription(step.remark)
        self._restyle()

    def heightForWidth(self, width: int) -> int:
        text, remark = self._texts(width)
        inner = text.boundingRect().height() + (remark.boundingRect().height() if remark else 0)
        return max(current().sizes.key, int(inner) + 2 * SPACE_8)

    def sizeHint(self) -> QSize:
        return QSize(360, self.heightForWidth(max(self.width(), 200)))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, current().sizes.key)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def paintEvent(self, event: QPaintEvent) -> None:
        theme = current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = QRectF(self.rect())
        if self.isDown() or self.underMouse():
            painter.fillRect(area, theme.colour("band"))
        painter.setPen(QPen(theme.colour("faint"), 1))
        painter.drawLine(area.bottomLeft() - QPointF(0, 0.5), area.bottomRight() - QPointF(0, 0.5))
        self._draw_box(painter)
        text, remark = self._texts(self.width())
        height = text.boundingRect().height() + (remark.boundingRect().height() if remark else 0)
        top = (self.height() - height) / 2
        painter.setPen(theme.colour("mute" if self.isChecked() else "ink"))
        text.draw(painter, QPointF(self._indent(), top))
        if remark:
            painter.setPen(theme.colour("mute"))
            remark.draw(painter, QPointF(self._indent(), top + text.boundingRect().height()))
        if self.hasFocus():
            draw_focus(painter, area)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            event.ignore()
        else:
            super().keyPressEvent(event)

    def _side(self) -> int:
        return current().sizes.text + 10

    def _indent(self) -> int:
        return SPACE_8 + self._side() + SPACE_16

    def _draw_box(self, painter: QPainter) -> None:
        theme, side = current(), self._side()
        box = QRectF(SPACE_8 + 1, (self.height() - side) / 2, side, side)
        ink = theme.colour("ink" if self.isChecked() else "mute")
        painter.setPen(QPen(ink, 2))
        painter.setBrush(ink if self.isChecked() else Qt.BrushStyle.NoBrush)
        painter.drawRect(box)
        if self.isChecked():
            painter.setPen(QPen(theme.colour("card"), 2.2))
            steps = [QPointF(-0.26, 0.02), QPointF(-0.07, 0.2), QPointF(0.27, -0.2)]
            painter.drawPolyline([box.center() + step * side for step in steps])
        else:
            painter.setFont(theme.font("note", bold=True))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, str(self.number))

    def _texts(self, width: int) -> tuple[QTextLayout, QTextLayout | None]:
        """Lay out text and remark, once for each width."""
        if self._laid_out is None or self._laid_out[0] != width:
            self._laid_out = (width, *self._lay_out(width))
        return self._laid_out[1:]

    def _lay_out(self, width: int) -> tuple[QTextLayout, QTextLayout | None]:
        room = width - self._indent() - SPACE_8
        theme = current()
        text = lay_out(self.step.text, theme.font("text", bold=not self.isChecked()), room)
        remark = lay_out(self.step.remark, theme.font("note"), room) if self.step.remark else None
        return text, remark

    def _restyle(self, _theme: object = None) -> None:
        self._laid_out = None
        self.updateGeometry()
        self.update()


class StepList(QWidget):
    """Steps in order; ``step_ticked(key, done)`` when one is pressed. Up and down move, Space or Enter ticks."""

    step_ticked = Signal(str, bool)

    def __init__(self, *, name: str = "steps", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self._rows: list[_StepRow] = []
        self._stack = QVBoxLayout(self)
        self._stack.setContentsMargins(0, 0, 0, 0)
        self._stack.setSpacing(0)
        self.set_steps(())

    def set_steps(self, steps: Sequence[Step]) -> None:
        """Show steps; rows of the same keys stay, so that the focus stays too."""
        if [step.key for step in steps] != [row.step.key for row in self._rows]:
            self._build(steps)
        for row, step in zip(self._rows, steps, strict=True):
            if row.step != step:
                row.take(step)
        done = sum(step.done for step in steps)
        self.setAccessibleName(f"Steps, {done} of {len(steps)} done")

    def steps(self) -> tuple[Step, ...]:
        """The steps shown."""
        return tuple(row.step for row in self._rows)

    def is_all_done(self) -> bool:
        """Whether every step is ticked."""
        return all(row.step.done for row in self._rows)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        move = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}.get(Qt.Key(event.key()))
        here = next((i for i, row in enumerate(self._rows) if row.hasFocus()), None)
        if move is None or here is None:
            super().keyPressEvent(event)
            return
        there = min(max(here + move, 0), len(self._rows) - 1)
        self._rows[there].setFocus(Qt.FocusReason.TabFocusReason)

    def _build(self, steps: Sequence[Step]) -> None:
        focused = next((place for place, row in enumerate(self._rows) if row.hasFocus()), None)
        self.setFocusProxy(None)  # type: ignore[arg-type]
        for row in self._rows:
            row.hide()
            row.deleteLater()
        self._rows = []
        for number, step in enumerate(steps, 1):
            row = _StepRow(number, step, f"{self.objectName()}_{step.key}", self)
            row.clicked.connect(self._pressed)
            self._stack.addWidget(row)
            row.show()  # a layout would show it only at its next turn, too late to take the focus
            self._rows.append(row)
        if not self._rows:
            return
        self.setFocusProxy(self._rows[0])
        if focused is not None:
            self._rows[min(focused, len(self._rows) - 1)].setFocus(Qt.FocusReason.TabFocusReason)

    def _pressed(self, done: bool) -> None:
        row = self.sender()
        if isinstance(row, _StepRow):
            row.take(Step(row.step.key, row.step.text, done, row.step.remark))
            self.step_ticked.emit(row.step.key, done)

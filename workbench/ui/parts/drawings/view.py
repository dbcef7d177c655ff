"""The widget that shows one drawing and follows the theme."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.ui.parts.drawings import adjusters, bench, body, springs
from workbench.ui.parts.drawings.ink import PLAN_HEIGHT, PLAN_WIDTH, Ink
from workbench.ui.parts.drawings.values import DrawingValues
from workbench.ui.parts.theme import SPACE_8, announcer, current

_DRAWINGS = {
    "stanchion": (springs.stanchion, "A fork leg: measure from the seal to the indicator."),
    "shock": (springs.shock, "A shock: measure from the seal to the indicator."),
    "collar": (springs.collar, "A coil spring on a shock: the collar just touches the spring, with no slack."),
    "valve": (springs.valve, "An air valve with a pump screwed on."),
    "compression": (adjusters.compression, "A damper pressed together: oil has to get past its piston."),
    "rebound": (adjusters.rebound, "A damper pushed out again by the spring: oil gets past its piston the other way."),
    "spacers": (adjusters.spacers, "An air chamber without and with spacers: less air is left at full travel."),
    "knob": (bench.knob, "A knob seen on its face, with the way to turn it."),
    "brakes": (bench.brakes, "Two brake levers; one of them stays open."),
    "rider": (body.rider, "The rider stands over the bike and a helper holds the bars."),
    "course": (bench.course, "The profile of a course with its heavy hit."),
    "rollout": (body.rollout, "The roll-out check: three pushes, the brakes, then a gentle hundred metres."),
}
KINDS = tuple(_DRAWINGS)

__all__ = ["KINDS", "DrawingValues", "DrawingView"]


class DrawingView(QWidget):
    """One of the drawings of `KINDS`, with the values and words of `DrawingValues`."""

    def __init__(
        self,
        kind: str,
        values: DrawingValues | None = None,
        *,
        name: str = "drawing",
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setObjectName(name)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        announcer.changed.connect(self._restyle)
        self.show_drawing(kind, values)

    def show_drawing(self, kind: str, values: DrawingValues | None = None) -> None:
        """Show another drawing or other values."""
        if kind not in _DRAWINGS:
            raise ValueError(f"kind is one of {KINDS}")
        self.kind = kind
        self.values = values or DrawingValues()
        said = _DRAWINGS[kind][1]
        self.setAccessibleName(f"Drawing. {said} {self.values.distance}".rstrip())
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(int(PLAN_WIDTH), int(PLAN_HEIGHT))

    def minimumSizeHint(self) -> QSize:
        width = PLAN_WIDTH if current().bench else PLAN_WIDTH - 40  # the words need as much
        return QSize(int(width), int(width * PLAN_HEIGHT / PLAN_WIDTH))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        inset = SPACE_8 / 2
        ink = Ink(painter, QRectF(self.rect()).adjusted(inset, inset, -inset, -inset))
        _DRAWINGS[self.kind][0](ink, self.values)

    def _restyle(self, _theme: object = None) -> None:
        self.update()

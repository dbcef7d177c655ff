"""The real program in a process of its own that also says where its widgets are, and does nothing else.

Started as ``python -m tests.journeys.driver ARGUMENTS``: a question is a line on stdin, the answer a line of JSON on
stdout. All input comes from outside, as events of the X server.
"""

from __future__ import annotations

import json
import os
import sys
from typing import Any

from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QSocketNotifier
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QLabel,
    QLineEdit,
    QMenu,
    QMenuBar,
    QPlainTextEdit,
    QWidget,
)

from workbench.__main__ import main
from workbench.app import make_application


class Presses(QObject):
    """Counts what the mouse has pressed: a window manager may hand a press on later than keys sent after it."""

    def __init__(self) -> None:
        super().__init__()
        self.count = 0

    def watch(self) -> None:
        """Watch all windows there are now."""
        for window in QApplication.topLevelWindows():
            if not window.property("is_watched"):
                window.setProperty("is_watched", True)
                window.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        self.count += event.type() == QEvent.Type.MouseButtonPress
        return False


def everything() -> dict[str, Any]:
    """All that is in sight, with its place on the screen, and where the focus is."""
    focus = QApplication.focusWidget()
    menu = QApplication.activePopupWidget()
    window = QApplication.activeModalWidget() or QApplication.activeWindow()
    return {
        "things": [_thing(widget) for widget in QApplication.allWidgets() if widget.isVisible()] + _lines(),
        "focus": _name(focus) if focus is not None else "",
        "focus_kind": type(focus).__name__ if focus is not None else "",
        "window": window.objectName() or window.windowTitle() if window is not None else "",
        "popup": isinstance(menu, QMenu),
        "line": menu.activeAction().text().replace("&", "") if isinstance(menu, QMenu) and menu.activeAction() else "",
    }


def _name(widget: QWidget) -> str:
    """The widget's own name, or that of the nearest one around it."""
    step: QWidget | None = widget
    while step is not None and (not step.objectName() or step.objectName().startswith("qt_")):
        step = step.parentWidget()
    return step.objectName() if step is not None else type(widget).__name__


def _thing(widget: QWidget) -> dict[str, Any]:
    seen = widget.visibleRegion().boundingRect()
    return {
        "name": widget.objectName(),
        "kind": type(widget).__name__,
        "text": _text(widget),
        "spoken": f"{widget.accessibleName()} {widget.accessibleDescription()}".strip(),
        "enabled": widget.isEnabled(),
        "checked": bool(isinstance(widget, QAbstractButton) and widget.isChecked()),
        "whole": _on_screen(widget, widget.rect()),
        "seen": _on_screen(widget, seen) if not seen.isEmpty() else None,
        "can_focus": bool(widget.focusPolicy()),
        "pointed": widget.underMouse(),
    }


def _text(widget: QWidget) -> str:
    if isinstance(widget, QAbstractButton | QLabel | QLineEdit):
        return str(widget.text())
    if isinstance(widget, QPlainTextEdit):
        return widget.toPlainText()
    if isinstance(widget, QComboBox):
        return widget.currentText()
    return widget.windowTitle() if widget.isWindow() else ""


def _lines() -> list[dict[str, Any]]:
    """Lines of menus and lists in sight, as things of their own."""
    found = []
    for widget in QApplication.allWidgets():
        if not widget.isVisible():
            continue
        if isinstance(widget, QMenu | QMenuBar):
            places = [(action.text(), widget.actionGeometry(action), widget) for action in widget.actions()]
        elif isinstance(widget, QAbstractItemView) and widget.model() is not None:
            model, port = widget.model(), widget.viewport()
            indexes = [model.index(row, 0) for row in range(min(model.rowCount(), 200))]
            places = [(str(one.data() or ""), widget.visualRect(one) & port.rect(), port) for one in indexes]
        else:
            continue
        for text, rect, holder in places:
            if not rect.isEmpty():
                place = _on_screen(holder, rect)
                found.append(
                    {"name": "", "kind": "line", "text": text.replace("&&", "\0").replace("&", "").replace("\0", "&"),
                     "spoken": "", "enabled": True, "checked": False, "whole": place, "seen": place,
                     "can_focus": False, "pointed": holder.underMouse()}
                )  # fmt: skip
    return found


def _on_screen(widget: QWidget, rect: QRect) -> tuple[int, int, int, int]:
    corner = widget.mapToGlobal(QPoint(rect.x(), rect.y()))
    return corner.x(), corner.y(), rect.width(), rect.height()


class Answers:
    """Hears a line on stdin and answers it."""

    def __init__(self) -> None:
        self._rest = b""
        self._presses = Presses()
        self._ear = QSocketNotifier(0, QSocketNotifier.Type.Read)
        self._ear.activated.connect(self._hear)

    def _hear(self) -> None:
        self._rest += os.read(0, 4096)
        asked, self._rest = self._rest.rsplit(b"\n", 1) if b"\n" in self._rest else (b"", self._rest)
        if asked:
            self._presses.watch()
            sys.stdout.write(json.dumps({**everything(), "presses": self._presses.count}) + "\n")
            sys.stdout.flush()


if __name__ == "__main__":
    make_application()
    answers = Answers()
    sys.exit(main(sys.argv[1:]))

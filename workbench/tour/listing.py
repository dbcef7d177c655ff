"""What can be seen and worked on a screen: every visible control with its name, text and place."""

from __future__ import annotations

from typing import Any

from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QComboBox,
    QGraphicsView,
    QHeaderView,
    QLabel,
    QLineEdit,
    QMainWindow,
    QMenuBar,
    QPlainTextEdit,
    QWidget,
)

from workbench.ui.parts.tab_order import in_reading_order

CONTROLS = (QAbstractButton, QLineEdit, QPlainTextEdit, QComboBox, QAbstractItemView)


def listing_of(window: QWidget) -> list[dict[str, Any]]:
    """List the controls and words of a window, top to bottom."""
    stops = _stops(window)
    found = [_entry(widget, window, stops) for widget in window.findChildren(QWidget) if _is_listed(widget)]
    return sorted(found, key=lambda entry: (entry["rect"][1], entry["rect"][0], entry["object_name"]))


def names_of(window: QWidget) -> list[dict[str, str]]:
    """Tell what screen readers say of each control of a window and its pictures, scrolled out of sight or not."""
    return [
        {"object_name": one.objectName(), "said": one.accessibleName(), "kind": _kind(one), "unit": _unit(one)}
        for one in window.findChildren(QWidget)
        if one.isVisible() and (_is_control(one) or isinstance(one, QGraphicsView))
    ]


def _is_listed(widget: QWidget) -> bool:
    if not widget.isVisible() or widget.visibleRegion().isEmpty():
        return False
    return isinstance(widget, QLabel) or _is_control(widget)


def _is_control(widget: QWidget) -> bool:
    if isinstance(widget, QMenuBar | QHeaderView):
        return False
    if isinstance(widget, CONTROLS):
        return not widget.objectName().startswith("qt_")
    if widget.focusProxy() is not None:  # it stands for one of its parts, which is listed
        return False
    return widget.focusPolicy() & Qt.FocusPolicy.TabFocus == Qt.FocusPolicy.TabFocus


def _unit(widget: QWidget) -> str:
    """Give the unit that stands at the end of a line."""
    unit = getattr(widget, "unit", None)
    return str(unit.text()) if isinstance(unit, QLabel) else ""


def _stops(window: QWidget) -> set[int]:
    """Give the addresses of what Tab comes to."""
    root = window.centralWidget() if isinstance(window, QMainWindow) else window
    return {id(one) for one in in_reading_order(root) if _takes_tab(one)} if root is not None else set()


def _takes_tab(widget: QWidget) -> bool:
    return widget.focusPolicy() & Qt.FocusPolicy.TabFocus == Qt.FocusPolicy.TabFocus


def _is_reached(widget: QWidget, stops: set[int]) -> bool:
    """Say whether Tab comes to a widget or to what it is a part of, or arrows do from a key of the same row."""
    if id(widget) in stops:
        return True
    above = widget.parentWidget()
    if above is None:
        return False
    row = above.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
    if isinstance(widget, QAbstractButton) and any(
        id(one) in stops and isinstance(one, QAbstractButton) for one in row
    ):
        return widget.focusPolicy() == Qt.FocusPolicy.ClickFocus
    return above.focusProxy() is widget or _is_inside_a_stop(above, stops)


def _is_inside_a_stop(widget: QWidget | None, stops: set[int]) -> bool:
    while widget is not None:
        if id(widget) in stops:
            return True
        widget = widget.parentWidget()
    return False


def _entry(widget: QWidget, window: QWidget, stops: set[int]) -> dict[str, Any]:
    place = widget.mapTo(window, QPoint(0, 0))
    seen: QRect = widget.visibleRegion().boundingRect()
    return {
        "object_name": widget.objectName(),
        "accessible_name": widget.accessibleName(),
        "text": _text(widget),
        "rect": [place.x(), place.y(), widget.width(), widget.height()],
        "seen": [place.x() + seen.x(), place.y() + seen.y(), seen.width(), seen.height()],
        "kind": _kind(widget),
        "enabled": widget.isEnabled(),
        "focused": widget.hasFocus(),
        "by_keys": _is_reached(widget, stops),
        "is_next_step": getattr(widget, "kind", "") == "verb",
        "scrolls": _scrolls(widget),
        "cut": bool(widget.is_cut()) if hasattr(widget, "is_cut") else False,
    }


def _scrolls(widget: QWidget) -> bool:
    """Say whether a widget lies on paper that scrolls, so that being out of sight is no fault."""
    above = widget.parentWidget()
    while above is not None and not isinstance(above, QAbstractScrollArea):
        above = above.parentWidget()
    return above is not None


def _kind(widget: QWidget) -> str:
    if isinstance(widget, CONTROLS):
        return "control"
    return "words" if isinstance(widget, QLabel) else "drawn control"


def _text(widget: QWidget) -> str:
    if isinstance(widget, QAbstractButton | QLabel | QLineEdit):
        return str(widget.text())
    if isinstance(widget, QPlainTextEdit):
        return widget.toPlainText()
    if isinstance(widget, QComboBox):
        return widget.currentText()
    return widget.accessibleName()

"""Tab goes through the window as it is read: in the order things are laid out, not in the order they were made."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QGridLayout, QLayout, QScrollArea, QWidget

from workbench.ui.parts.field_base import show_whole
from workbench.ui.parts.flow import Flow


def go_on(root: QWidget, *, forward: bool) -> bool:
    """Put the focus on the next stop inside a widget, or the one before; after the last comes the first."""
    here = _listed(QApplication.focusWidget(), places := in_reading_order(root))
    ahead = places[here + 1 :] + places[: here + 1] if forward else places[:here][::-1] + places[here:][::-1]
    stop = next((widget for widget in ahead if _is_stop(widget)), None)
    if stop is None:
        return False
    stop.setFocus(Qt.FocusReason.TabFocusReason if forward else Qt.FocusReason.BacktabFocusReason)
    show_whole(stop)
    return True


def in_reading_order(root: QWidget) -> list[QWidget]:
    """Give the widgets inside that take the focus themselves, as they are laid out."""
    found: list[QWidget] = []
    for widget in _inside(root):
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus and widget.focusProxy() is None:
            found.append(widget)
        found.extend(in_reading_order(widget))
    return found


def _is_stop(widget: QWidget) -> bool:
    takes_tab = widget.focusPolicy() & Qt.FocusPolicy.TabFocus == Qt.FocusPolicy.TabFocus
    return takes_tab and widget.isVisible() and widget.isEnabled()


def _listed(widget: QWidget | None, places: list[QWidget]) -> int:
    """Find where a widget, or the one it is a part of, stands; -1 when nothing has the focus."""
    while widget is not None and widget not in places:
        widget = widget.parentWidget()
    return places.index(widget) if widget is not None else -1


def _inside(widget: QWidget) -> list[QWidget]:
    if isinstance(widget, Flow):
        return widget.widgets()
    if isinstance(widget, QScrollArea):
        return [inner] if (inner := widget.widget()) is not None else []
    layout = widget.layout()
    if layout is not None:
        return _laid_out(layout)
    if widget.focusPolicy() != Qt.FocusPolicy.NoFocus:
        return []  # its parts are its own affair
    parts = widget.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
    return [part for part in parts if not part.isWindow()]


def _laid_out(layout: QLayout) -> list[QWidget]:
    """Give the widgets of a layout and of those inside it, in order.

    The items themselves are not asked for: PySide would remember each, also once Qt has deleted it, and take the next
    object at its place in memory for a layout item.
    """
    parent = layout.parentWidget()
    widgets = parent.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly) if parent else []
    inner = [child for child in layout.children() if isinstance(child, QLayout)]
    things: list[tuple[int, QWidget | QLayout]] = [(layout.indexOf(one), one) for one in widgets]
    things = [*things, *((layout.indexOf(one), one) for one in inner)]
    placed = [(place, thing) for place, thing in things if place >= 0]
    if isinstance(layout, QGridLayout):
        placed.sort(key=lambda pair: layout.getItemPosition(pair[0]))  # type: ignore[arg-type, return-value]
    else:
        placed.sort(key=lambda pair: pair[0])
    found: list[QWidget] = []
    for _, thing in placed:
        found.extend(_laid_out(thing) if isinstance(thing, QLayout) else [thing])
    return found

"""The menus: everything the window can do, with its shortcut, in one table."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow

from workbench.ui.parts.field_base import commit_focused


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a menu. ``is_switch`` makes it a tick that stays."""

    name: str
    text: str
    run: Callable[[], object]
    keys: str = ""
    is_switch: bool = False


SEPARATOR = Entry("", "", lambda: None)


class _Deed(QAction):
    """A menu line that first lets the field in focus keep what was typed."""

    def __init__(self, entry: Entry, parent: QMainWindow) -> None:
        super().__init__(entry.text, parent)
        self._run = entry.run
        self.setObjectName(f"menu_{entry.name}")
        self.setCheckable(entry.is_switch)
        if entry.keys:
            self.setShortcut(QKeySequence(entry.keys))
        self.triggered.connect(self._triggered)

    def _triggered(self) -> None:
        commit_focused()
        self._run()


def build_menus(window: QMainWindow, menus: Sequence[tuple[str, Sequence[Entry]]]) -> dict[str, QAction]:
    """Fill the menu bar and give the lines by name."""
    made: dict[str, QAction] = {}
    for title, entries in menus:
        menu = window.menuBar().addMenu(title)
        for entry in entries:
            if entry is SEPARATOR:
                menu.addSeparator()
                continue
            action = _Deed(entry, window)
            menu.addAction(action)
            made[entry.name] = action
    return made

"""The quiet key beside an adjuster that opens the page on what it does, at the right place."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from workbench.ui.page import Page
from workbench.ui.parts.buttons import Button
from workbench.viewmodels.what_it_does import PAGE

ASKED = "What does this do?"


class WhatItDoes(Button):
    """Asks the page it lies on for help; hidden where there is nothing to say."""

    def __init__(self, *, name: str = "") -> None:
        super().__init__(ASKED, "link", name=name)
        self._heading = ""
        self.clicked.connect(self._ask)

    def ask_about(self, heading: str, title: str) -> None:
        """Name the heading to open, and what is asked about for those who hear it read."""
        self._heading = heading
        self.setAccessibleName(f"{ASKED} {title}")
        self.setVisible(bool(heading))

    def _ask(self) -> None:
        around: QWidget | None = self.parentWidget()
        while around is not None and not isinstance(around, Page):
            around = around.parentWidget()
        if around is not None:
            around.help_wanted.emit(PAGE, self._heading)

"""The way through the screens."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from PySide6.QtCore import QEvent
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from workbench.app import Workbench, make_application
from workbench.demo import demo_library
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.options import Options
from workbench.tour import FIXED_NOW
from workbench.tour.lengthen import lengthen
from workbench.tour.listing import listing_of, names_of
from workbench.tour.stops import STOPS
from workbench.ui.parts.theme import ColourChoice, apply_choice


@dataclass(frozen=True, slots=True)
class Screen:
    """One screen: its name, its picture and what can be seen on it."""

    name: str
    picture: QPixmap
    listing: dict[str, Any]


class Walk:
    """Opens an empty library, then the sample one, and goes from stop to stop."""

    def __init__(self, options: Options) -> None:
        self._options = options
        self._application = make_application()
        self._colour = ColourChoice(options.theme or "light")
        apply_choice(self._application, self._colour, bench=False)
        self._folder = TemporaryDirectory(prefix="trailbench-tour-")
        self._now = options.now if options.has_fixed_now else lambda: FIXED_NOW

    def __enter__(self) -> Walk:
        return self

    def __exit__(self, *_trouble: object) -> None:
        self._folder.cleanup()

    def screens(self) -> Iterator[Screen]:
        """Give the screens in order."""
        for library_name, name, is_bench, go in STOPS:
            workbench = self._open(library_name)
            try:
                apply_choice(self._application, self._colour, bench=is_bench)
                yield self._screen(workbench, name, go, is_bench=is_bench)
            finally:
                workbench.close()
                settle(self._application)

    def _open(self, library_name: str) -> Workbench:
        path = Path(self._folder.name) / f"{library_name}.trailbench"
        if library_name == "sample":
            path.unlink(missing_ok=True)
            demo_library(path)
        workbench = Workbench(open_library(path, schema, now=self._now))
        workbench.window.resize(*self._options.size)
        workbench.window.show()
        settle(self._application)
        return workbench

    def _screen(
        self, workbench: Workbench, name: str, go: Callable[[Workbench], QWidget | None], *, is_bench: bool
    ) -> Screen:
        seen = go(workbench) or workbench.window
        settle(self._application)
        if self._options.pseudo_long:
            lengthen(seen)
            settle(self._application)
        listing = {
            "screen": name,
            "size": list(self._options.size),
            "theme": self._colour.value,
            "scale": self._options.scale,
            "bench": is_bench,
            "controls": listing_of(seen),
            "names": names_of(seen),
        }
        return Screen(name, seen.grab(), listing)

    def write_card(self, path: Path) -> None:
        """Write the card of the finished sample bike."""
        from workbench.ui.card.page import CardPage

        workbench = self._open("sample")
        STOPS[-1][3](workbench)
        settle(self._application)
        page = workbench.window.page("card")
        assert isinstance(page, CardPage)
        page.write_pdf(path)
        workbench.close()


def settle(application: QApplication) -> None:
    """Let everything asked for be laid out and drawn."""
    for _ in range(12):
        application.processEvents()
    application.sendPostedEvents(None, QEvent.Type.DeferredDelete)

"""Puts the pieces together: opens the library, builds view-models, pages and the window."""

from __future__ import annotations

import sys
import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from workbench.actions.desk import Desk
from workbench.library.library import Library, open_library
from workbench.library.tables import schema
from workbench.model.errors import WorkbenchError

# isort: split
# PySide6 slows every import after it: the library comes first, which makes the window appear a third sooner.
from PySide6.QtCore import QEvent, QObject, QProcess, QTimer
from PySide6.QtWidgets import QApplication

from workbench.options import Options
from workbench.places import default_library, log_file
from workbench.stations import page_makers
from workbench.ui import messages
from workbench.ui.parts.theme import ColourChoice, announcer, apply_choice
from workbench.ui.window import MainWindow
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.window import WindowViewModel

VERSION = "0.1.0"


class Workbench:
    """One open library and the window over it."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.desk = Desk(library)
        self.bench = Bench(self.desk)
        self.view_model = WindowViewModel(self.desk, self.bench)
        self.window = MainWindow(self.view_model, page_makers(self.desk, self.bench))
        self.window.look_picked.connect(self.look)
        self.window.sample_requested.connect(self._open_sample)
        self.window.about_requested.connect(self._about)
        announcer.changed.connect(self._look_changed)
        self._look_changed()

    def look(self, dark: bool, bench: bool) -> None:
        """Apply a look and remember it."""
        self.desk.set_setting("look/colour", ColourChoice.DARK if dark else ColourChoice.LIGHT)
        self.desk.set_setting("look/bench", "1" if bench else "0")
        apply_choice(_application(), ColourChoice.DARK if dark else ColourChoice.LIGHT, bench=bench)

    def close(self) -> None:
        """Give the window and the file free."""
        announcer.changed.disconnect(self._look_changed)
        self.window.close()
        self.library.close()

    def _look_changed(self, _theme: object = None) -> None:
        self.window.set_look(announcer.theme.dark, announcer.theme.bench)

    def _open_sample(self) -> None:
        QProcess.startDetached(sys.executable, ["-m", "workbench", "--demo"], str(Path(__file__).parents[1]))

    def _about(self) -> None:
        messages.about(VERSION, self.view_model.library_path(), self.window)


def open_the_library(options: Options) -> Library:
    """Open the library that was asked for: the sample one, a named one, or the user's own."""
    if options.is_demo:
        from workbench.demo import demo_library

        return open_library(demo_library(Path(options.library) if options.library else None), schema, now=options.now)
    return open_library(options.library or default_library(), schema, now=options.now)


def run(options: Options, *, shown: Callable[[], object] | None = None) -> int:
    """Open the window and stay until it is closed; ``shown`` is called once it has been painted."""
    library = open_the_library(options)
    try:
        application = make_application()
        desk = Desk(library)
        choice = ColourChoice(options.theme or desk.setting("look/colour", ColourChoice.SYSTEM))
        apply_choice(application, choice, bench=desk.setting("look/bench", "0") == "1")
        workbench = Workbench(library)
        sys.excepthook = excepthook(log_file(), workbench.window.say)
        workbench.window.resize(1280, 800)
        workbench.window.show()
        if shown is not None:
            _FirstPaint(workbench.window, workbench.window.side, shown)
        return application.exec()
    finally:
        library.close()


class _FirstPaint(QObject):
    """Calls back once, after a widget has first been painted."""

    def __init__(self, owner: QObject, widget: QObject, then: Callable[[], object]) -> None:
        super().__init__(owner)
        self._then = then
        widget.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            QTimer.singleShot(0, self._then)
        return False


def make_application() -> QApplication:
    """Give the application, made on first asking."""
    found = QApplication.instance()
    application = found if isinstance(found, QApplication) else QApplication(["trailbench"])
    application.setApplicationName("trailbench")
    application.setApplicationDisplayName("Trailbench")
    application.setDesktopFileName("trailbench")
    return application


def _application() -> QApplication:
    application = QApplication.instance()
    assert isinstance(application, QApplication)
    return application


def excepthook(
    log: Path, say: Callable[[str], object]
) -> Callable[[type[BaseException], BaseException, TracebackType | None], None]:
    """Give the hook for what no sheet has caught: a refusal is said as it is, as when the disk is full.

    A failure nobody foresaw is written down and said in one sentence; either way the work goes on.
    """

    def hook(kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        if isinstance(error, WorkbenchError):
            say(str(error))
            return
        details = "".join(traceback.format_exception(kind, error, trace))
        try:
            log.parent.mkdir(parents=True, exist_ok=True)
            with log.open("a", encoding="utf-8") as file:
                file.write(details + "\n")
        except OSError:
            print(details, file=sys.stderr)
        messages.failure("Something went wrong that should not have.", details)

    return hook

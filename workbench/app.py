"""Puts the pieces together: opens the library, builds view-models, pages and the window."""

from __future__ import annotations

import gc
import os
import sys
import traceback
from collections.abc import Callable
from pathlib import Path
from types import TracebackType

from workbench.actions.desk import Desk
from workbench.actions.trouble import is_gone
from workbench.library.library import Library, open_library
from workbench.library.tables import schema
from workbench.model.errors import LibraryError, WorkbenchError

# isort: split
# PySide6 slows every import after it: the library comes first, which makes the window appear a third sooner.
from PySide6.QtCore import QEvent, QObject, QProcess, QTimer
from PySide6.QtGui import QIcon
from PySide6.QtWidgets import QApplication

from workbench.options import Options
from workbench.places import default_library, log_file
from workbench.resource import resource
from workbench.stations import page_makers
from workbench.ui import messages
from workbench.ui.parts.theme import ColourChoice, announcer, apply_choice
from workbench.ui.window import MainWindow
from workbench.viewmodels.backups import BackupKeeper
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.trouble import gone
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
    location = options.library or default_library()
    if not options.begins_anew and is_gone(location):
        raise gone(str(location))
    return open_library(location, schema, now=options.now, read_only=options.looks_only)


def run(options: Options, *, shown: Callable[[], object] | None = None) -> int:
    """Open the window and stay until it is closed; ``shown`` is called once it has been painted.

    A library that is refused is talked over on a page of its own where there is a screen, and raised where there is
    none or nobody knows a way out.
    """
    while True:
        try:
            library, workbench = _opened(options)
            break
        except LibraryError as error:
            if not _has_screen():
                raise
            from workbench.trouble import way_out

            choice = ColourChoice(options.theme or ColourChoice.SYSTEM)
            apply_choice(make_application(), choice, bench=False)
            options = way_out(error, options)
    return _stay(options, library, workbench, shown)


def _opened(options: Options) -> tuple[Library, Workbench]:
    """Open the library and make the window over it; what can be damaged in it is read here for the first time."""
    library = open_the_library(options)
    try:
        application = make_application()
        desk = Desk(library)
        choice = ColourChoice(options.theme or desk.setting("look/colour", ColourChoice.SYSTEM))
        apply_choice(application, choice, bench=desk.setting("look/bench", "0") == "1")
        gc.freeze()  # what was imported stays for good, and need not be gone through while thousands of rows are read
        return library, Workbench(library)
    except BaseException:
        library.close()
        raise


def _stay(options: Options, library: Library, workbench: Workbench, shown: Callable[[], object] | None) -> int:
    keeper = BackupKeeper(workbench.desk)
    keeper.failed.connect(workbench.window.say)
    try:
        sys.excepthook = excepthook(log_file(), workbench.window.say)
        workbench.window.resize(1280, 800)
        workbench.window.show()
        if library.read_only:
            workbench.window.say_lasting("Opened to look at only: nothing you enter here is kept.")
        if shown is not None:
            _FirstPaint(workbench.window, workbench.window.side, shown)
        if not options.is_demo and not library.read_only:
            keeper.begin()
        code = _application().exec()
        if not options.is_demo and not library.read_only:
            keeper.blockSignals(True)  # the window is gone: there is nobody left to tell
            keeper.finish()
        return code
    finally:
        library.close()


def _has_screen() -> bool:
    """Whether a page would be seen by anybody."""
    if os.environ.get("QT_QPA_PLATFORM", "").partition(":")[0] in ("offscreen", "minimal", "vnc"):
        return False
    return sys.platform != "linux" or bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


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
    application.setWindowIcon(QIcon(str(resource("icons/trailbench.svg"))))
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

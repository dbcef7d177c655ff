"""The commands: set up and run, set up and test, and an entry for the desktop's menu."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterable

import checks
import desktop
import environment
import system
from trouble import SetupError, complain, say

USAGE = (
    "Use it as: python3 packaging/start.py run [what the app takes], "
    "or: python3 packaging/start.py test [what pytest takes], or: python3 packaging/start.py desktop"
)
NEEDS_NO_SCREEN = frozenset(("--tour", "--export", "--check", "--help", "-h"))


def main(arguments: list[str]) -> int:
    """Do what the first argument says; the exit code of the program that was started."""
    commands = {"run": run, "test": test, "desktop": put_into_menu}
    if not arguments or arguments[0] not in commands:
        complain(USAGE)
        return 2
    try:
        return commands[arguments[0]](arguments[1:])
    except SetupError as error:
        complain(str(error))
        return 1
    except KeyboardInterrupt:
        complain("Stopped.")
        return 130


def run(arguments: list[str]) -> int:
    """Set up, then start the app; without a screen, make the tour."""
    environment.make_ready()
    platform, reason = _screen()
    _bring_libraries(platform)
    if platform == "xcb" and not system.screen_answers(environment.python()):
        platform, reason = "offscreen", f"The screen {os.environ['DISPLAY']} does not answer"
    child = environment.child_environment()
    if platform == "offscreen":
        child["QT_QPA_PLATFORM"] = "offscreen"
        if not NEEDS_NO_SCREEN.intersection(argument.split("=")[0] for argument in arguments):
            say(f"{reason}, so Trailbench walks through the whole job without one and puts the pictures into ./tour.")
            arguments = ["--tour", "./tour", *arguments]
    return _become([str(environment.python()), "-m", "workbench", *arguments], child)


def test(arguments: list[str]) -> int:
    """Set up, then run all checks; with pytest's arguments, only the tests they choose."""
    environment.make_ready()
    trouble = _bring_test_packages()
    return checks.run_all(environment.python(), environment.child_environment(), arguments, trouble)


def put_into_menu(arguments: list[str]) -> int:
    """Set up, then write an entry for the desktop's menu."""
    if arguments:
        complain(USAGE)
        return 2
    environment.make_ready()
    _bring_libraries(_screen()[0])
    say(f"Trailbench stands in the menu now: {desktop.write_entry(os.environ)}")
    return 0


def _screen() -> tuple[str, str]:
    """The Qt platform to start on, and why if it is no screen."""
    if not sys.platform.startswith("linux"):  # macOS and Windows always have one: not tried
        return "native", ""
    if os.environ.get("QT_QPA_PLATFORM", "").startswith("offscreen"):
        return "offscreen", "QT_QPA_PLATFORM asks for no screen"
    if os.environ.get("DISPLAY"):
        return "xcb", ""
    if os.environ.get("WAYLAND_DISPLAY"):  # not tried
        return "wayland", ""
    return "offscreen", "There is no screen here (DISPLAY is not set)"


def _missing(platform: str) -> list[str]:
    return system.missing_libraries(environment.python(), environment.site_packages(), platform)


def _bring_libraries(platform: str) -> None:
    """Install what Qt lacks on this platform, or say the one line that does."""
    missing = _missing(platform)
    if not missing:
        return
    packages = system.qt_packages(platform)
    if system.install(packages):
        missing = _missing(platform)
    if missing:
        raise SetupError(_qt_trouble(missing, packages))


def _bring_test_packages() -> str:
    """Install what the tests lack; why the window tests cannot run, or nothing."""
    if not sys.platform.startswith("linux"):
        return "they need Linux with an X server"
    missing = _missing("xcb")
    packages = [*(system.qt_packages("xcb") if missing else ()), *system.missing_test_packages()]
    if not packages or (system.install(packages) and not _missing("xcb")):
        return ""
    missing = _missing("offscreen")
    if missing:
        raise SetupError(_qt_trouble(missing, packages))
    return f"a virtual screen or its tools are missing: {system.advice(packages, packages)}"


def _qt_trouble(missing: list[str], packages: Iterable[str]) -> str:
    return f"Qt cannot start without {', '.join(missing)}: {system.advice(packages, missing)}"


def _become(command: list[str], child: dict[str, str]) -> int:
    """Go on as the program itself, so that signals reach it."""
    sys.stdout.flush()
    if os.name != "nt":
        os.execve(command[0], command, child)
    return subprocess.call(command, env=child)  # not tried

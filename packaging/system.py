"""What the operating system must bring: libraries under Qt, and the programs of the window tests."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

from trouble import say

OFFSCREEN_PACKAGES = ("libegl1", "libgl1", "libdbus-1-3", "libfontconfig1", "libxkbcommon0", "libglib2.0-0")
XCB_PACKAGES = ("libxcb-cursor0", "libxcb-icccm4", "libxcb-keysyms1", "libxcb-shape0", "libxkbcommon-x11-0")
# Program the tests call -> Debian package that brings it.
TEST_PROGRAMS = {
    "Xvfb": "xvfb",
    "xauth": "xauth",
    "openbox": "openbox",
    "xdotool": "xdotool",
    "pdftotext": "poppler-utils",
}

# Runs in a child, because loading a broken library may end the process, and Qt itself aborts instead of failing.
PROBE = """
import ctypes, sys
for path in sys.argv[1:]:
    try:
        ctypes.CDLL(path)
    except OSError as error:
        print(error)
"""
# Asks the X server named by DISPLAY whether it answers: Qt would abort if it does not.
SCREEN_PROBE = """
import ctypes, sys
xcb = ctypes.CDLL("libxcb.so.1")
xcb.xcb_connect.restype = ctypes.c_void_p
xcb.xcb_connect.argtypes = [ctypes.c_void_p, ctypes.c_void_p]
xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
sys.exit(1 if xcb.xcb_connection_has_error(xcb.xcb_connect(None, None)) else 0)
"""


def qt_packages(platform: str) -> tuple[str, ...]:
    """Debian packages under Qt on this platform."""
    return OFFSCREEN_PACKAGES if platform == "offscreen" else OFFSCREEN_PACKAGES + XCB_PACKAGES


def missing_libraries(python: Path, packages: Path, platform: str) -> list[str]:
    """What keeps Qt's platform plugin from loading, in the loader's words; empty when it loads."""
    if not sys.platform.startswith("linux"):  # macOS and Windows bring all of it: not tried
        return []
    pyside = packages / "PySide6"
    plugin = pyside / "Qt" / "plugins" / "platforms" / f"libq{platform}.so"
    wanted = [plugin, pyside / "QtWidgets.abi3.so", pyside / "QtSvg.abi3.so", pyside / "QtPrintSupport.abi3.so"]
    done = subprocess.run(
        [str(python), "-I", "-S", "-c", PROBE, *map(str, wanted)], capture_output=True, text=True, check=False
    )
    if done.returncode:
        return [f"the libraries under {plugin.name} cannot be loaded"]
    return sorted({line.split(":")[0] for line in done.stdout.splitlines()})


def screen_answers(python: Path) -> bool:
    """Whether the X server of DISPLAY takes a connection."""
    return (
        subprocess.run([str(python), "-I", "-S", "-c", SCREEN_PROBE], capture_output=True, check=False).returncode == 0
    )


def missing_test_packages() -> list[str]:
    """Debian packages whose program is not there."""
    return [package for program, package in TEST_PROGRAMS.items() if not shutil.which(program)]


def install(packages: Iterable[str]) -> bool:
    """Install Debian packages where that is allowed without asking (root, apt-get); whether it was done."""
    if not (hasattr(os, "geteuid") and os.geteuid() == 0 and shutil.which("apt-get")):
        return False
    names = list(packages)
    say(f"Installing system packages: {' '.join(names)}.")
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for command in (["apt-get", "update", "-q"], ["apt-get", "install", "-qy", "--no-install-recommends", *names]):
        done = subprocess.run(
            command, env=environment, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
            check=False,
        )  # fmt: skip
    return done.returncode == 0


def advice(packages: Iterable[str], missing: Iterable[str]) -> str:
    """The one thing to do about what is missing."""
    if shutil.which("apt-get"):
        sudo = "" if hasattr(os, "geteuid") and os.geteuid() == 0 else "sudo "
        install = f"{sudo}apt-get install -y --no-install-recommends {' '.join(packages)}"
        return f"type  {sudo}apt-get update && {install}"
    return f"install what brings {', '.join(missing)} with this system's package manager"

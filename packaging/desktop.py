"""An entry for the menu of a Linux desktop, after the Desktop Entry Specification of freedesktop.org."""

from __future__ import annotations

import os
import shutil
import sys
from collections.abc import Mapping
from pathlib import Path

import environment
from trouble import SetupError

NAME = "trailbench"
RESERVED = '"`$\\'  # what the specification wants escaped inside quotes


def write_entry(variables: Mapping[str, str]) -> Path:
    """Put the entry and its icon where this person's desktop looks for them; gives the entry's path."""
    if not sys.platform.startswith("linux"):  # macOS and Windows have their own ways: not tried
        raise SetupError("A menu entry is made on Linux only; elsewhere start Trailbench by its command.")
    home = _data_home(variables)
    entry = home / "applications" / f"{NAME}.desktop"
    icon = home / "icons" / "hicolor" / "scalable" / "apps" / f"{NAME}.svg"
    try:
        for path in (entry, icon):
            path.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(environment.ROOT / "resources" / "icons" / f"{NAME}.svg", icon)
        entry.write_text(entry_text(Path(sys.executable), environment.ROOT, icon), encoding="utf-8")
    except OSError as error:
        raise SetupError(f"The menu entry cannot be written ({error.strerror}): {error.filename}.") from error
    return entry


def entry_text(python: Path, root: Path, icon: Path) -> str:
    """The entry: it starts by the same script as by hand, so that a newer checkout is set up first."""
    command = " ".join([quoted(str(python)), quoted(str(root / "packaging" / "start.py")), "run"])
    return (
        "[Desktop Entry]\n"
        "Type=Application\n"
        "Name=Trailbench\n"
        "GenericName=Suspension workbench\n"
        "Comment=Set up a mountain bike's suspension and find out which change helped\n"
        f"Exec={command}\n"
        f"Icon={_string(str(icon))}\n"
        "Terminal=false\n"
        "Categories=Utility;\n"
        f"StartupWMClass={NAME}\n"
    )


def quoted(word: str) -> str:
    """One argument of the Exec key: quoted, then escaped as a string of the file; a percent sign stands twice."""
    inside = "".join(f"\\{letter}" if letter in RESERVED else letter for letter in word)
    return _string(f'"{inside}"').replace("%", "%%")


def _string(text: str) -> str:
    return text.replace("\\", "\\\\").replace("\n", "\\n")


def _data_home(variables: Mapping[str, str]) -> Path:
    told = variables.get("XDG_DATA_HOME", "")
    return Path(told) if os.path.isabs(told) else Path.home() / ".local" / "share"

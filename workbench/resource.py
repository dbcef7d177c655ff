"""Where the files shipped with Trailbench are: help pages, icons, fonts, the demo."""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def resource(name: str) -> Path:
    """Give the path of a shipped file or folder, such as `help/glossary.md`, in a checkout or an installed package."""
    installed = _PACKAGE / "resources"
    home = installed if installed.is_dir() else _PACKAGE.parent / "resources"
    path = (home / name).resolve()
    if not path.is_relative_to(home.resolve()) or not path.exists():
        raise FileNotFoundError(f"Trailbench ships no file named {name!r}.")
    return path

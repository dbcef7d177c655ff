"""Where things lie on this computer, unless the command line says otherwise."""

from __future__ import annotations

from pathlib import Path

import platformdirs

LIBRARY_NAME = "garage.trailbench"


def default_library() -> Path:
    """Give the user's own library; its folder is made if need be."""
    folder = Path(platformdirs.user_data_dir("trailbench", appauthor=False, roaming=False))
    return folder / LIBRARY_NAME


def log_file() -> Path:
    """Give the file that unexpected failures are written to."""
    return Path(platformdirs.user_log_dir("trailbench", appauthor=False)) / "trouble.log"


def cache_folder() -> Path:
    """Give the folder for what can be made again."""
    return Path(platformdirs.user_cache_dir("trailbench", appauthor=False))

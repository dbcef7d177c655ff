"""The tour: walk every station over the sample garage and write a picture and a list of controls of each screen."""

from __future__ import annotations

import json
import os
import sys
from pathlib import Path

from workbench.model.errors import ExchangeError
from workbench.options import Options

FIXED_NOW = "2026-05-20T10:00:00+00:00"  # pictures made on two days are the same


def run(options: Options) -> int:
    """Write the tour into the folder asked for."""
    os.environ["QT_QPA_PLATFORM"] = "offscreen"
    os.environ["QT_SCALE_FACTOR"] = str(options.scale)
    folder = _folder(options)
    from PySide6.QtCore import qInstallMessageHandler

    from workbench.tour.walk import Walk

    qInstallMessageHandler(say_what_matters)
    with Walk(options) as walk:
        for number, screen in enumerate(walk.screens(), start=1):
            name = f"{number:03}-{screen.name}"
            picture = folder / f"{name}.png"
            if not screen.picture.save(str(picture)):
                raise ExchangeError(f"{picture} cannot be written. Free some space or choose another folder.")
            _write(folder / f"{name}.json", json.dumps(screen.listing, ensure_ascii=False, indent=1) + "\n")
        walk.write_card(folder / "card.pdf")
    print(f"The tour is in {folder}: one picture a screen, and the card as PDF.")
    return 0


def say_what_matters(_kind: object, _context: object, message: str) -> None:
    """Pass on what Qt complains about, but for what a platform without a screen says of every window."""
    if not message.startswith("This plugin does not support"):
        print(message, file=sys.stderr)


def _folder(options: Options) -> Path:
    assert options.tour is not None
    try:
        options.tour.mkdir(parents=True, exist_ok=True)
        for old in [*options.tour.glob("[0-9][0-9][0-9]-*.png"), *options.tour.glob("[0-9][0-9][0-9]-*.json")]:
            old.unlink()
    except OSError as error:
        raise ExchangeError(f"{options.tour} cannot be written ({error.strerror}). Choose another folder.") from error
    return options.tour


def _write(path: Path, text: str) -> None:
    try:
        path.write_text(text, encoding="utf-8")
    except OSError as error:
        raise ExchangeError(f"{path} cannot be written ({error.strerror}). Choose another folder.") from error

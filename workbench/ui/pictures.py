"""Asking for the file of a picture."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtWidgets import QFileDialog, QWidget

FILES = "Pictures (*.jpg *.jpeg *.png *.webp *.gif *.bmp)"


def ask_picture(parent: QWidget) -> Path | None:
    """Ask for a picture's file; None if none is picked."""
    path, _ = QFileDialog.getOpenFileName(parent, "Add a picture", "", FILES)
    return Path(path) if path else None

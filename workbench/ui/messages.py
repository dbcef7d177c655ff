"""The dialogs that may pop up: only when data or the program itself is in danger, or somebody asked."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMessageBox, QWidget

_said: set[str] = set()


def failure(sentence: str, details: str = "", parent: QWidget | None = None) -> None:
    """Say once that something failed in a way nobody foresaw; what happened can be copied."""
    if details in _said:
        return
    _said.add(details)
    box = QMessageBox(parent)
    box.setObjectName("failure")
    box.setIcon(QMessageBox.Icon.Warning)
    box.setWindowTitle("Trailbench")
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(sentence)
    box.setInformativeText("What was kept before is safe. You can go on working.")
    copy = box.addButton("Copy details", QMessageBox.ButtonRole.ActionRole)
    box.addButton("Go on", QMessageBox.ButtonRole.AcceptRole)
    box.exec()
    if box.clickedButton() is copy:
        QGuiApplication.clipboard().setText(details)


def about(version: str, library_path: str, parent: QWidget | None = None) -> None:
    """Say what this is and where the data lies."""
    box = QMessageBox(parent)
    box.setObjectName("about")
    box.setWindowTitle("About Trailbench")
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(f"Trailbench {version}")
    box.setInformativeText(
        f"Your library lies here:\n{library_path}\n\n"
        "It is one file. Nothing leaves this computer.\n\n"
        "The maker's manual and a qualified mechanic come before this tool."
    )
    box.setTextInteractionFlags(
        Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
    )
    box.exec()

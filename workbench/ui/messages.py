"""The dialogs that may pop up: only when data or the program itself is in danger, or somebody asked."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QDialog, QMessageBox, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.labels import Words
from workbench.ui.window_dialogs import paper, show

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


def about_paper(version: str, library_path: str, parent: QWidget) -> QDialog:
    """Make the page that says what this is and where the data lies; the place can be copied."""
    dialog, rows = paper("Trailbench", "about", parent)
    dialog.resize(560, 400)
    rows.addWidget(Words(f"Version {version}", "mute"))
    rows.addWidget(Words("Your library lies here:", "text"))
    place = Words(library_path, "strong", name="about_path")
    place.setTextInteractionFlags(
        Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
    )
    rows.addWidget(place)
    copy = Button("Copy this path", "plain", name="about_copy")
    copy.clicked.connect(partial(_copy, library_path))
    rows.addWidget(copy, 0, Qt.AlignmentFlag.AlignLeft)
    rows.addWidget(Words("It is one file. Nothing leaves this computer."))
    rows.addWidget(Words("The maker's manual and a qualified mechanic come before this tool."))
    rows.addStretch(1)
    return dialog


def about(version: str, library_path: str, parent: QWidget) -> None:
    """Say what this is and where the data lies."""
    show(about_paper(version, library_path, parent))


def _copy(text: str, _checked: bool = False) -> None:
    QGuiApplication.clipboard().setText(text)

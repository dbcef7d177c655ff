"""Make every text as long as it may get in another language, to see what clips."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtWidgets import QAbstractButton, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.job_line import JobLine
from workbench.ui.parts.labels import Words
from workbench.ui.parts.step_list import StepList
from workbench.ui.parts.title_block import TitleBlock


def longer(text: str) -> str:
    """Give a text about two fifths longer, its letters still readable."""
    if not any(char.isalpha() for char in text):
        return text
    doubled = "".join(char * 2 if char in "aeiou" else char for char in text)
    return doubled + "en" * (len(text) // 12 + 1)


def lengthen(window: QWidget) -> None:
    """Lengthen what a window shows now; the next drawing of its state puts the real words back."""
    for widget in window.findChildren(QWidget):
        if isinstance(widget, Words) and widget.text():
            widget.setText(longer(widget.text()))
        elif isinstance(widget, Button):
            widget.set_text(longer(widget.text().replace("&&", "&")))
        elif isinstance(widget, JobLine):
            widget.set_marks([replace(mark, word=longer(mark.word)) for mark in widget.marks()])
        elif isinstance(widget, TitleBlock):
            widget.set_cells([(longer(label), longer(value)) for label, value in widget.cells()])
        elif isinstance(widget, StepList):
            steps = widget.steps()
            widget.set_steps([replace(one, text=longer(one.text), remark=longer(one.remark)) for one in steps])
        elif isinstance(widget, QAbstractButton) and widget.text() and not hasattr(widget, "mark"):
            widget.setText(longer(widget.text()))

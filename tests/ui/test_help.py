"""The help pages in the window: every block is read as plain words."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QPushButton, QScrollArea, QWidget

from workbench.resource import resource
from workbench.ui.help import Block, blocks_of, help_paper
from workbench.ui.parts.drawings import DrawingView


def test_a_page_is_read_block_by_block():
    text = "# Sag\n\nOne\nline.\n\n## Take care\n\n- first\n- second\n"
    assert blocks_of(text) == (
        Block("title", "Sag"),
        Block("text", "One line."),
        Block("heading", "Take care"),
        Block("point", "first"),
        Block("point", "second"),
    )


def test_a_table_of_words_is_read_row_by_row():
    text = "# Words\n\n| Term | Code name | Symbol | Unit | What it is | Not |\n|---|---|---|---|---|---|\n"
    text += "| load | `load_n` | F | N | what the spring carries | weight |\n| run | `Run` | | | one ride | |\n"
    assert blocks_of(text)[1:] == (
        Block("point", "load [N]: what the spring carries"),
        Block("point", "run: one ride"),
    )


@pytest.mark.parametrize("page", ["garage", "verdicts", "whats-new", "glossary"])
def test_a_page_shows_every_word_as_plain_text(qtbot, page):
    window = QWidget()
    qtbot.addWidget(window)
    dialog = help_paper(page, window)
    dialog.show()
    labels = dialog.findChildren(QLabel)
    assert {label.textFormat() for label in labels} == {Qt.TextFormat.PlainText}
    shown = "\n".join(label.text() for label in labels)
    for block in blocks_of(resource(f"help/{page}.md").read_text(encoding="utf-8")):
        assert block.text in shown


def test_a_drawing_stands_where_the_page_names_it_and_says_what_it_shows(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    dialog = help_paper("what_it_does", window)
    drawn = dialog.findChildren(DrawingView)
    assert [one.kind for one in drawn] == ["valve", "spacers", "collar", "rebound", "compression"]
    assert all(one.accessibleName().startswith("Drawing. ") for one in drawn)


def test_a_page_is_closed_by_its_button(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    dialog = help_paper("sag", window)
    dialog.show()
    qtbot.mouseClick(dialog.findChild(QPushButton, "help_sag_close"), Qt.MouseButton.LeftButton)
    assert dialog.isHidden()


def test_a_long_page_is_read_with_the_keys_and_left_with_escape(qtbot):
    window = QWidget()
    qtbot.addWidget(window)
    dialog = help_paper("verdicts", window)
    dialog.show()
    text = dialog.findChild(QScrollArea, "help_verdicts_text")
    qtbot.waitUntil(lambda: dialog.focusWidget() is not None)
    qtbot.keyClick(dialog.focusWidget(), Qt.Key.Key_PageDown)
    assert text.verticalScrollBar().value() > 0
    qtbot.keyClick(dialog.focusWidget(), Qt.Key.Key_Escape)
    assert dialog.isHidden()

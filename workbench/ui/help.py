"""The pages of the help menu: short texts of our own, shown as plain words, never as marked-up text."""

from __future__ import annotations

from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QDialog, QScrollArea, QWidget

from workbench.resource import resource
from workbench.ui.parts.drawings import DrawingView
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_16
from workbench.ui.window_dialogs import paper

ROLE_OF = {"title": "title", "heading": "strong", "point": "text", "text": "text"}
BULLET = "\u2022\u2002"


@dataclass(frozen=True, slots=True)
class Block:
    """One piece of a page: its title, a heading, a point of a list, a drawing or a paragraph."""

    kind: str
    text: str


def blocks_of(text: str) -> tuple[Block, ...]:
    """Part a page: `#` a title, `##` a heading, `- ` a point, `! ` a drawing, a table, anything else a paragraph."""
    found: list[Block] = []
    for part in text.split("\n\n"):
        lines = part.strip().splitlines()
        if lines and all(line.startswith("- ") for line in lines):
            found.extend(Block("point", line.removeprefix("- ")) for line in lines)
        elif lines and lines[0].startswith("| "):
            found.extend(_table_points(lines))
        elif lines and lines[0].startswith("## "):
            found.append(Block("heading", lines[0].removeprefix("## ")))
        elif lines and lines[0].startswith("! "):
            found.append(Block("drawing", lines[0].removeprefix("! ")))
        elif lines and lines[0].startswith("# "):
            found.append(Block("title", lines[0].removeprefix("# ")))
        elif lines:
            found.append(Block("text", " ".join(lines).replace("`", "")))
    return tuple(found)


def _table_points(lines: list[str]) -> list[Block]:
    """Say each row of a table of words as a point: the word, its unit, and what it is."""
    heads, _, *rows = ([cell.strip() for cell in line.strip("|").split("|")] for line in lines)
    term, unit, meaning = (heads.index(head) for head in ("Term", "Unit", "What it is"))
    return [Block("point", f"{row[term]}{f' [{row[unit]}]' if row[unit] else ''}: {row[meaning]}") for row in rows]


def page_of(station: str) -> str:
    """Give the name of the page that explains a station's sheet; a new bike belongs to the garage."""
    try:
        resource(f"help/{station}.md")
    except FileNotFoundError:
        return "garage"
    return station


def help_paper(page: str, parent: QWidget, *, heading: str = "") -> QDialog:
    """Make one page of the help; shown from one of its headings on if it is named."""
    blocks = blocks_of(resource(f"help/{page}.md").read_text(encoding="utf-8"))
    dialog, rows = paper(blocks[0].text, f"help_{page.replace('-', '_')}", parent)
    for block in blocks[1:]:
        if block.kind == "drawing":
            rows.addWidget(DrawingView(block.text, name=f"help_drawing_{block.text}"))
            continue
        words = Words(f"{BULLET}{block.text}" if block.kind == "point" else block.text, ROLE_OF[block.kind])
        rows.addWidget(words)
        if block == Block("heading", heading):
            QTimer.singleShot(0, words, partial(_turn_to, dialog, words))  # once it is laid out
    rows.addStretch(1)
    return dialog


def _turn_to(dialog: QDialog, words: QWidget) -> None:
    """Scroll a page so that a heading stands at its top."""
    scroll = dialog.findChild(QScrollArea)
    if isinstance(scroll, QScrollArea) and (whole := scroll.widget()) is not None:
        place = words.mapTo(whole, words.rect().topLeft()).y()
        scroll.verticalScrollBar().setValue(place - SPACE_16)

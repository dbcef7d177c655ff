"""The one style sheet, built from the tokens. Widgets say what they are by the properties `role` and `kind`."""

from __future__ import annotations

from typing import Protocol

from workbench.resource import resource
from workbench.ui.parts.palette import Palette


class _Sizes(Protocol):
    @property
    def number(self) -> int: ...
    @property
    def title(self) -> int: ...
    @property
    def text(self) -> int: ...
    @property
    def note(self) -> int: ...
    @property
    def target(self) -> int: ...


def style_sheet(palette: Palette, sizes: _Sizes, scheme: str) -> str:
    """Give the style sheet of a theme; ``scheme`` is "light" or "dark" and picks the small pictures."""
    return "\n".join(
        (_words(palette, sizes), _fields(palette, sizes, scheme), _lists(palette, sizes), _frames(palette))
    )


def _picture(name: str, scheme: str) -> str:
    return resource(f"theme/{name}-{scheme}.svg").as_posix()


def _words(c: Palette, s: _Sizes) -> str:
    return f"""
QLabel {{ background: transparent; }}
QToolTip {{ background: {c.card}; color: {c.ink}; border: 1px solid {c.line}; padding: 4px; }}
QPushButton, QToolButton {{ background: {c.card}; color: {c.ink}; border: 1px solid {c.line}; border-radius: 2px;
    padding: 4px 15px; min-height: {s.target - 10}px; }}
QPushButton:default {{ background: {c.accent}; color: {c.on_accent}; font-weight: bold; border-color: {c.accent}; }}
QPushButton:hover, QToolButton:hover {{ border-color: {c.ink}; }}
QPushButton:focus, QToolButton:focus {{ border: 2px solid {c.accent}; padding: 3px 14px; }}
QPushButton:default:focus {{ border: 2px solid {c.ink}; }}
QPushButton:disabled, QToolButton:disabled {{ color: {c.mute}; border-style: dashed; }}
"""


def _fields(c: Palette, s: _Sizes, scheme: str) -> str:
    inner = s.target - 14
    return f"""
QLineEdit, QPlainTextEdit, QTextEdit, QComboBox, QSpinBox, QDateEdit, QDateTimeEdit {{ background: {c.card};
    color: {c.ink}; border: 1px solid {c.line}; border-radius: 2px; padding: 6px 9px; min-height: {inner}px;
    selection-background-color: {c.accent}; selection-color: {c.on_accent};
    placeholder-text-color: {c.mute}; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QComboBox:focus, QComboBox:on, QSpinBox:focus,
QDateEdit:focus, QDateTimeEdit:focus {{ border: 2px solid {c.accent}; padding: 5px 8px; }}
QLineEdit[refused="true"], QPlainTextEdit[refused="true"] {{ border: 2px solid {c.care}; padding: 5px 8px; }}
QLineEdit:read-only, QPlainTextEdit:read-only {{ background: {c.paper}; }}
QLineEdit:disabled, QComboBox:disabled {{ color: {c.mute}; background: {c.paper}; }}
QLineEdit[figure="number"] {{ font-size: {s.number}px; font-weight: bold; min-height: {s.number + 16}px; }}
QComboBox {{ combobox-popup: 0; }}
QComboBox::drop-down {{ border: none; width: 28px; }}
QComboBox::down-arrow {{ image: url("{_picture("down", scheme)}"); width: 16px; height: 16px; }}
QComboBox QAbstractItemView {{ background: {c.card}; color: {c.ink}; border: 1px solid {c.line}; outline: 0;
    selection-background-color: {c.accent}; selection-color: {c.on_accent}; }}
QComboBox QAbstractItemView::item {{ min-height: {s.target - 8}px; padding: 0 8px; }}
QCheckBox, QRadioButton {{ color: {c.ink}; spacing: 8px; min-height: {s.target - 4}px; padding: 0;
    border: 2px solid transparent; border-radius: 2px; }}
QCheckBox:focus, QRadioButton:focus {{ border: 2px solid {c.accent}; }}
QCheckBox::indicator, QRadioButton::indicator {{ width: 20px; height: 20px; border: 2px solid {c.mute};
    background: {c.card}; border-radius: 2px; }}
QRadioButton::indicator {{ border-radius: 12px; }}
QCheckBox::indicator:hover, QRadioButton::indicator:hover {{ border-color: {c.ink}; }}
QCheckBox::indicator:checked {{ background: {c.ink}; border-color: {c.ink};
    image: url("{_picture("tick", scheme)}"); }}
QRadioButton::indicator:checked {{ background: {c.ink}; border-color: {c.ink};
    image: url("{_picture("dot", scheme)}"); }}
"""


def _lists(c: Palette, s: _Sizes) -> str:
    row = s.target - 8
    return f"""
QListView, QTreeView, QTableView {{ background: {c.card}; alternate-background-color: {c.paper}; color: {c.ink};
    border: 1px solid {c.line}; outline: 0; gridline-color: {c.faint};
    selection-background-color: {c.band}; selection-color: {c.ink}; }}
QListView:focus, QTreeView:focus, QTableView:focus {{ border: 2px solid {c.accent}; }}
QListView::item {{ min-height: {row}px; padding: 2px 8px; }}
QListView::item:selected, QTableView::item:selected {{ background: {c.band}; color: {c.ink}; }}
QTableView::item {{ padding: 0 8px; }}
QHeaderView::section {{ background: {c.paper}; color: {c.mute}; font-size: {s.note}px; border: none;
    border-bottom: 1px solid {c.line}; padding: 6px 8px; }}
QMenuBar {{ background: {c.paper}; color: {c.ink}; }}
QMenuBar::item {{ padding: 6px 12px; background: transparent; }}
QMenuBar::item:selected {{ background: {c.band}; color: {c.ink}; }}
QMenu {{ background: {c.card}; color: {c.ink}; border: 1px solid {c.line}; padding: 4px 0; }}
QMenu::item {{ padding: 9px 24px; }}
QMenu::item:selected {{ background: {c.accent}; color: {c.on_accent}; }}
QMenu::item:disabled {{ color: {c.mute}; }}
QMenu::separator {{ height: 1px; background: {c.faint}; margin: 4px 8px; }}
QTabBar::tab {{ background: transparent; color: {c.mute}; padding: 12px 16px; border-bottom: 2px solid transparent; }}
QTabBar::tab:selected {{ color: {c.ink}; font-weight: bold; border-bottom-color: {c.ink}; }}
QTabBar::tab:focus {{ border-bottom-color: {c.accent}; }}
QTabWidget::pane {{ border: none; border-top: 1px solid {c.faint}; }}
QScrollBar {{ background: transparent; border: none; }}
QScrollBar:vertical {{ width: 14px; }}
QScrollBar:horizontal {{ height: 14px; }}
QScrollBar::handle {{ background: {c.line}; border-radius: 2px; margin: 3px; min-height: 32px; min-width: 32px; }}
QScrollBar::handle:hover {{ background: {c.mute}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
"""


def _frames(c: Palette) -> str:
    return f"""
QMainWindow, QDialog {{ background: {c.paper}; }}
QScrollArea, QScrollArea > QWidget > QWidget[role="scrolled"] {{ background: transparent; border: none; }}
QScrollArea:focus {{ border: none; }}
QFrame[role="card"] {{ background: {c.card}; border: 1px solid {c.line}; border-radius: 2px; }}
QFrame[role="notice"] {{ background: {c.card}; border: 2px solid {c.ink}; border-radius: 2px; }}
QFrame[role="rule"] {{ background: {c.faint}; border: none; }}
QSplitter::handle {{ background: {c.faint}; }}
QProgressBar {{ border: 1px solid {c.line}; border-radius: 2px; background: {c.card}; color: {c.ink};
    text-align: center; min-height: 18px; }}
QProgressBar::chunk {{ background: {c.accent}; }}
QGroupBox {{ border: 1px solid {c.line}; border-radius: 2px; margin-top: 12px; padding-top: 12px; }}
"""

"""The look of the whole program: colours, type sizes, target sizes, and how they reach Qt.

Widgets that paint themselves read `current()` when they paint and are repainted when `announcer.changed` is sent.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication

from workbench.resource import resource
from workbench.ui.parts.palette import Palette, palette_for
from workbench.ui.parts.sheet_style import style_sheet

FAMILY = "B612"
SPACE_4, SPACE_8, SPACE_16, SPACE_24, SPACE_40 = 4, 8, 16, 24, 40
GAP = "\u2009"  # the thin space between a value and its unit


class ColourChoice(StrEnum):
    """What a person asks for: as the system has it, or one of ours."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True)
class Sizes:
    """Type and target sizes in device-independent pixels."""

    number: int
    title: int
    text: int
    note: int
    target: int
    key: int


NORMAL_SIZES = Sizes(number=34, title=20, text=14, note=12, target=44, key=44)
BENCH_SIZES = Sizes(number=44, title=26, text=18, note=15, target=57, key=76)


@dataclass(frozen=True, slots=True)
class Theme:
    """One look: light or dark, normal or bench."""

    dark: bool = False
    bench: bool = False

    @property
    def palette(self) -> Palette:
        """The colours of this theme."""
        return palette_for(dark=self.dark, bench=self.bench)

    @property
    def sizes(self) -> Sizes:
        """The type and target sizes of this theme."""
        return BENCH_SIZES if self.bench else NORMAL_SIZES

    def colour(self, token: str) -> QColor:
        """Give one colour by its name in `Palette`."""
        return QColor(str(getattr(self.palette, token)))

    def font(self, size: str = "text", *, bold: bool = False) -> QFont:
        """Give the font of one size by its name in `Sizes`."""
        font = QFont(FAMILY)
        font.setPixelSize(int(getattr(self.sizes, size)))
        font.setBold(bold)
        return font


class Announcer(QObject):
    """Says when the theme has changed and follows the system's colour scheme when asked to."""

    changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.theme = Theme()
        self.choice = ColourChoice.LIGHT
        self.is_following = False

    def scheme_changed(self, _scheme: object = None) -> None:
        """Hear that the system went light or dark."""
        app = QApplication.instance()
        if self.choice is ColourChoice.SYSTEM and isinstance(app, QApplication):
            apply_theme(app, Theme(dark=is_dark(self.choice), bench=self.theme.bench))


announcer = Announcer()


def current() -> Theme:
    """Give the theme in use."""
    return announcer.theme


def is_dark(choice: ColourChoice) -> bool:
    """Resolve a choice to light or dark; a system that does not say counts as light."""
    if choice is ColourChoice.SYSTEM:
        return QApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
    return choice is ColourChoice.DARK


def apply_choice(app: QApplication, choice: ColourChoice, *, bench: bool = False) -> None:
    """Apply what a person asked for, and go on following the system if that is the choice."""
    announcer.choice = choice
    if not announcer.is_following:
        app.styleHints().colorSchemeChanged.connect(announcer.scheme_changed)
        announcer.is_following = True
    apply_theme(app, Theme(dark=is_dark(choice), bench=bench))


def apply_theme(app: QApplication, theme: Theme) -> None:
    """Give the whole application one look."""
    load_fonts()
    announcer.theme = theme
    if app.style().objectName().lower() != "fusion":
        app.setStyle("Fusion")
    app.setFont(theme.font())
    app.setPalette(_qt_palette(theme))
    app.setStyleSheet(style_sheet(theme.palette, theme.sizes, "dark" if theme.dark else "light"))
    announcer.changed.emit(theme)


def load_fonts() -> None:
    """Register the bundled family; a second call does nothing."""
    if FAMILY in QFontDatabase.families():
        return
    for weight in ("Regular", "Bold"):
        QFontDatabase.addApplicationFont(str(resource(f"fonts/{FAMILY}-{weight}.otf")))


def _qt_palette(theme: Theme) -> QPalette:
    roles = {
        "Window": "paper",
        "WindowText": "ink",
        "Base": "card",
        "AlternateBase": "paper",
        "Text": "ink",
        "Button": "card",
        "ButtonText": "ink",
        "BrightText": "care",
        "ToolTipBase": "card",
        "ToolTipText": "ink",
        "PlaceholderText": "mute",
        "Highlight": "accent",
        "HighlightedText": "on_accent",
        "Link": "accent",
        "LinkVisited": "accent",
        "Light": "card",
        "Midlight": "faint",
        "Mid": "line",
        "Dark": "line",
        "Shadow": "line",
        "Accent": "accent",
    }
    palette = QPalette()
    for role, token in roles.items():
        palette.setColor(getattr(QPalette.ColorRole, role), theme.colour(token))
    for role in ("Text", "WindowText", "ButtonText"):
        palette.setColor(QPalette.ColorGroup.Disabled, getattr(QPalette.ColorRole, role), theme.colour("mute"))
    return palette

"""The look: contrast, the bundled family, and what a change of theme reaches."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QRawFont

from workbench.resource import resource
from workbench.ui.parts import theme as themes
from workbench.ui.parts.palette import contrast, palette_for
from workbench.ui.parts.theme import ColourChoice, Theme, announcer, apply_theme, current, is_dark

GLYPHS_IN_USE = "0123456789.,:;%+−-–×→←↑↓°½¼¾³²·…“”’✓⚠±≤≥ßäöüéñ"


@pytest.mark.parametrize("dark", [False, True])
@pytest.mark.parametrize("bench", [False, True])
def test_all_that_is_read_stands_out_from_what_it_stands_on(dark, bench):
    colours = palette_for(dark=dark, bench=bench)
    least = 6.9 if bench else 4.5
    for ground in (colours.paper, colours.card):
        for token in ("ink", "mute", "accent", "care"):
            assert contrast(getattr(colours, token), ground) >= least, token
        assert contrast(colours.line, ground) >= 3
    assert contrast(colours.on_accent, colours.accent) >= 4.5
    assert contrast(colours.ink, colours.band) >= 4.5


def test_black_on_white_has_the_contrast_wcag_gives_it():
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21)


@pytest.mark.parametrize("weight", ["Regular", "Bold"])
def test_the_bundled_family_has_every_sign_in_use_and_figures_of_one_width(qapp, weight):
    font = QRawFont(str(resource(f"fonts/B612-{weight}.otf")), 100)
    assert [sign for sign in GLYPHS_IN_USE if not font.supportsCharacter(ord(sign))] == []
    widths = {font.advancesForGlyphIndexes(font.glyphIndexesForString(figure))[0].x() for figure in "0123456789"}
    assert len(widths) == 1


def test_the_licence_of_the_family_comes_with_it():
    assert "SIL OPEN FONT LICENSE Version 1.1" in resource("fonts/OFL.txt").read_text()


def test_a_theme_reaches_the_application_and_says_so(qapp):
    heard = []
    announcer.changed.connect(heard.append)
    apply_theme(qapp, Theme(dark=True, bench=True))
    announcer.changed.disconnect(heard.append)
    assert heard == [Theme(dark=True, bench=True)]
    assert current().sizes.key == 76
    assert qapp.font().family() == "B612"
    assert qapp.font().pixelSize() == current().sizes.text
    assert qapp.palette().windowText().color().name().upper() == current().palette.ink


@pytest.mark.parametrize(
    ("scheme", "expected"),
    [(Qt.ColorScheme.Dark, True), (Qt.ColorScheme.Light, False), (Qt.ColorScheme.Unknown, False)],
)
def test_a_system_that_does_not_say_counts_as_light(qapp, monkeypatch, scheme, expected):
    class Hints:
        def colorScheme(self):
            return scheme

    monkeypatch.setattr(themes.QApplication, "styleHints", Hints)
    assert is_dark(ColourChoice.SYSTEM) is expected
    assert is_dark(ColourChoice.DARK) is True
    assert is_dark(ColourChoice.LIGHT) is False

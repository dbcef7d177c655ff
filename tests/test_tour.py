"""The tour says what is wrong and nothing else."""

from __future__ import annotations

from workbench.tour import say_what_matters


def test_the_tour_passes_on_what_qt_complains_about(capsys):
    say_what_matters(None, None, "QPainter::begin: Paint device returned engine == 0")
    assert "QPainter::begin" in capsys.readouterr().err


def test_the_tour_keeps_quiet_about_what_holds_of_every_window_without_a_screen(capsys):
    say_what_matters(None, None, "This plugin does not support propagateSizeHints()")
    assert capsys.readouterr().err == ""

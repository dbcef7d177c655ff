"""The window pass has what it promises: an X server that draws and a window manager that obeys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QGuiApplication, QPalette
from PySide6.QtWidgets import QWidget

pytestmark = pytest.mark.window


def test_the_screen_is_a_real_one(qapp):
    assert qapp.platformName() == "xcb"


def test_a_window_is_painted_on_the_screen(qtbot):
    widget = QWidget()
    qtbot.addWidget(widget)
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.Window, QColor(10, 200, 30))
    widget.setPalette(palette)
    widget.setWindowFlag(Qt.WindowType.WindowStaysOnTopHint)
    with qtbot.waitExposed(widget):
        widget.show()
    middle = widget.mapToGlobal(widget.rect().center())

    def shows_green():
        picture = QGuiApplication.primaryScreen().grabWindow(0).toImage()
        assert picture.pixelColor(middle).getRgb()[:3] == (10, 200, 30)

    qtbot.waitUntil(shows_green)


def test_the_window_manager_maximises(qtbot):
    widget = QWidget()
    qtbot.addWidget(widget)
    widget.showMaximized()
    screen = QGuiApplication.primaryScreen().geometry()
    qtbot.waitUntil(lambda: widget.width() == screen.width() and widget.height() > 0.9 * screen.height())

"""The pinned PySide6 keeps count of None and True.

PySide6 6.12.0 on Python 3.10 and 3.11 drops one reference to None with every call that returns nothing, and one to True
with every emit; after some thousand calls Python ends the process. Newer Pythons never free these objects.
"""

from __future__ import annotations

import sys

import pytest
from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

CALLS = 100
STRAY = 50  # references that come and go for other reasons; the fault loses one with each call


class Sender(QObject):
    """Something that emits."""

    sent = Signal()


def test_calls_that_return_nothing_do_not_use_none_up(qtbot):
    widget = QWidget()
    qtbot.addWidget(widget)
    before = sys.getrefcount(None)
    for _ in range(CALLS):
        widget.update()
    assert sys.getrefcount(None) - before > -STRAY


@pytest.mark.usefixtures("qapp")
def test_emitting_does_not_use_true_up():
    sender = Sender()
    before = sys.getrefcount(True)
    for _ in range(CALLS):
        sender.sent.emit()
    assert sys.getrefcount(True) - before > -STRAY

"""What pages are tested on: a real library, and the light theme unless the test says otherwise."""

from __future__ import annotations

import pytest

from workbench.ui.parts.theme import Theme, apply_theme, current


@pytest.fixture(autouse=True)
def themed(qapp):
    """The light theme before each test, whatever the last one left."""
    if current() != Theme() or not qapp.styleSheet():
        apply_theme(qapp, Theme())

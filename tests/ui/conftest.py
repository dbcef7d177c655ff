"""What pages are tested on: a real library, and the light theme unless the test says otherwise."""

from __future__ import annotations

import pytest

from tests.fixtures import make_desk
from workbench.ui.parts.theme import Theme, apply_theme, current


@pytest.fixture(autouse=True)
def themed(qapp):
    """The light theme before each test, whatever the last one left."""
    if current() != Theme() or not qapp.styleSheet():
        apply_theme(qapp, Theme())


@pytest.fixture
def desk(tmp_path):
    """A real library in a folder of the test's own."""
    with make_desk(tmp_path) as desk:
        yield desk

"""Every part is tested as it looks: themed, and in the light theme unless the test says otherwise."""

import pytest

from workbench.ui.parts.theme import Theme, apply_theme, current


@pytest.fixture(autouse=True)
def themed(qapp):
    """The light theme before each test, whatever the last one left."""
    if current() != Theme() or not qapp.styleSheet():
        apply_theme(qapp, Theme())

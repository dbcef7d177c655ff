"""View-models are tested without a window: whoever asks for one is told so."""

from __future__ import annotations

import pytest

REASON = "a view-model is tested without an application or a window: connect a list's append to its signal"


@pytest.fixture(scope="session")
def qapp():
    """Refuse the application."""
    pytest.fail(REASON)


@pytest.fixture
def qtbot():
    """Refuse the window driver."""
    pytest.fail(REASON)

"""A real library in a folder of the test's own."""

from __future__ import annotations

import pytest

from tests.fixtures import make_desk


@pytest.fixture
def desk(tmp_path):
    """The desk over it."""
    with make_desk(tmp_path) as desk:
        yield desk

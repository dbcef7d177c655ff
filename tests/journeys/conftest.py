"""A hand at the program for each story."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.journeys.hand import Hand


@pytest.fixture
def hand(tmp_path: Path) -> Iterator[Hand]:
    """The program over a library of the test's own; it is ended with the test."""
    worked = Hand(tmp_path / "garage.trailbench", tmp_path / "stderr.txt")
    yield worked
    worked.close()

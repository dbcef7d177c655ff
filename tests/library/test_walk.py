from __future__ import annotations

from pathlib import Path

import pytest

from tests.library.garden import Bike, Part, Reading, Ride, garden
from tests.library.walk import Walk
from workbench.actions.desk import Desk
from workbench.library.dump import check
from workbench.library.library import Library, open_library

STEPS = 700
KINDS = {"bike": Bike, "part": Part, "reading": Reading, "ride": Ride}


def open_garden(path: Path) -> Library:
    return open_library(path, garden, now=lambda: "2031-05-14T09:00:00+00:00")


def stored(library: Library) -> tuple[dict, dict]:
    """All records and their versions, read past the library's own reader."""
    records, versions = {}, {}
    for table, kind in KINDS.items():
        for *values, version in library.raw.execute(f"SELECT * FROM {table}"):
            record = kind(*values)
            records[kind, record.id] = record
            versions[table, record.id] = version
    return records, versions


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_random_walk_of_deeds_undos_redos_and_reopens_equals_a_plain_dictionary(tmp_path, seed):
    path = tmp_path / "walk.trailbench"
    library = open_garden(path)
    walk = Walk(seed, Desk(library))
    highest: dict[tuple[str, str], int] = {}
    known: dict = {}
    for number in range(STEPS):
        written, counted = library.raw.total_changes, library.tally.total()
        walk.step()
        assert library.raw.total_changes - written == library.tally.total() - counted, "something bypassed the gate"
        records, versions = stored(library)
        assert records == walk.shadow.records
        for key, version in versions.items():
            row = (KINDS[key[0]], key[1])
            same = row in known and known[row] == records[row]
            assert version >= highest.get(key, 0) if same else version > highest.get(key, 0)
            highest[key] = version
        known = records
        if number % 97 == 0:
            library.close()
            library = open_garden(path)
            walk.desk = Desk(library)
    with library.reader() as reader:
        for kind in KINDS.values():
            assert list(reader.find(kind)) == sorted(walk.shadow.of(kind), key=lambda record: record.id)
    assert check(library) == []
    assert len(walk.shadow.past) > 50
    library.close()

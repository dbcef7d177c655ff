"""How long a backup, its checks, a page of the history and a bundle take on a library of many deeds.

Run by hand:  python -m tests.bench.backups [deeds]
Rows are written past the gate, as nobody else may: a journal of this length takes a season to make by deeds.
"""

from __future__ import annotations

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.fixtures import a_bike, make_desk
from workbench.actions import bundle as bundles
from workbench.actions.desk import Desk, Search
from workbench.exchange.bundle import write_bundle

BIKES = 200


def grow(desk: Desk, deeds: int) -> None:
    """Add a note to one bike after another, until there are so many deeds."""
    bikes = [a_bike(desk, name=f"Bike {number}", rider=f"Rider {number}") for number in range(BIKES)]
    raw, start = desk._library.raw, desk.history.page(Search(), most=1)[0].number
    image = raw.execute("SELECT after FROM deed_row WHERE table_name = 'bike' LIMIT 1").fetchone()[0]
    plain = json.loads(image)
    rows, changes = [], []
    for number in range(start + 1, start + deeds + 1):
        bike, key = bikes[number % BIKES], f"deed-{number}"
        rows.append((number, key, bike.created_at, f"Note {number} on {bike.name}", bike.id, number + start))
        before, after = (json.dumps({**plain, "id": bike.id, "note": f"note {n}"}) for n in (number - 1, number))
        changes.append((key, "bike", bike.id, before, after))
    raw.execute("BEGIN")
    raw.executemany(
        "INSERT INTO deed (number, id, at, label, bike_id, station, state, stamp, schema_number, start_id)"
        " VALUES (?, ?, ?, ?, ?, 'garage', 'done', ?, (SELECT version_num FROM alembic_version), 'bench')",
        rows,
    )
    raw.executemany("INSERT INTO deed_row (deed_id, table_name, row_id, before, after) VALUES (?, ?, ?, ?, ?)", changes)
    raw.execute("COMMIT")


def timed(what: str, work: Callable[[], object], times: int = 5) -> None:
    """Say the median time of a piece of work."""
    taken = []
    for _ in range(times):
        begin = time.perf_counter()
        work()
        taken.append(time.perf_counter() - begin)
    print(f"{what:<44} {sorted(taken)[times // 2] * 1000:9.1f} ms")


def main(deeds: int) -> None:
    """Grow a library and time what is done with it."""
    with TemporaryDirectory() as folder, make_desk(Path(folder)) as desk:
        grow(desk, deeds)
        size = sum(path.stat().st_size for path in Path(folder).iterdir() if path.is_file()) / 1e6
        print(f"{deeds} deeds on {BIKES} bikes, {size:.0f} MB")
        bike = desk.history.page(Search(), most=1)[0].bike_id
        timed("bare copy of the pages", lambda: _bare_copy(desk, Path(folder) / "bare"))
        timed("copy alone: the pause on a large library", lambda: desk.backups.begin("by itself").let_go(), times=3)
        timed("backup, checked", lambda: desk.backups.make("by itself"), times=3)
        timed("whether one is due", desk.backups.is_due)
        timed("first page of the history", lambda: desk.history.page(Search()))
        timed("page of one bike", lambda: desk.history.page(Search(bike_id=bike)))
        timed("page of one bike and words", lambda: desk.history.page(Search(bike_id=bike, text="note 77")))
        timed("page of words found nowhere", lambda: desk.history.page(Search(text="found nowhere")))
        timed("names for the choices", desk.history.who_and_what)
        timed("bundle of one bike", lambda: _bundle(desk, (bike,)), times=3)
        timed("bundle of everything", lambda: _bundle(desk, None), times=1)


def _bare_copy(desk: Desk, target: Path) -> None:
    import sqlite3

    target.unlink(missing_ok=True)
    copy = sqlite3.connect(target)
    desk._library.raw.backup(copy)
    copy.close()


def _bundle(desk: Desk, bikes: tuple[str, ...] | None) -> None:
    made, _ = desk.ask(bundles.gather(bikes, "x", schema=desk.schema_number, now=desk.now()))
    write_bundle(made, desk.ask(bundles.layout()))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200_000)

"""How long it takes to open a library of some megabytes and read it: `python -m tests.bench.open_library`."""

from __future__ import annotations

import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from tests.library.garden import Bike, Part, Reading
from tests.library.help import open_garden
from workbench.actions.desk import Desk
from workbench.library.dump import check, export_json


def timed(what: str, work: Callable[[], object], times: int = 1) -> None:
    """Does the work and prints how long one turn took."""
    start = time.perf_counter()
    for _ in range(times):
        work()
    print(f"{what:50}{(time.perf_counter() - start) / times * 1000:10.2f} ms")


def fill(path: Path) -> None:
    """Ninety bikes with three parts each and forty readings a part, each part's readings one deed."""
    library = open_garden(path)
    desk = Desk(library)
    for number in range(90):
        bike = Bike(f"bike-{number}", "x" * 40)
        parts = [Part(f"{bike.id}-{place}", bike.id, place) for place in ("front", "rear", "post")]
        desk.do("Add bike", lambda gate, all_=(bike, *parts): gate.put(*all_))
        for part in parts:
            readings = [Reading(f"{part.id}-{n}", part.id, n / 7, "note " * 10) for n in range(40)]
            desk.do("Read", lambda gate, some=readings: gate.put(*some))
    library.close()


def main() -> None:
    """Prints one line for each thing done."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "big.trailbench"
        fill(path)
        print(f"file of {path.stat().st_size / 1e6:.1f} MB")
        timed("open and close", lambda: open_garden(path).close(), 20)
        library = open_garden(path)
        desk = Desk(library)
        timed("read 90 bikes", lambda: desk.ask(lambda reader: reader.find(Bike)), 50)
        timed("read 40 readings of one part", lambda: desk.ask(lambda r: r.find(Reading, part_id="bike-7-rear")), 50)
        timed("read all 10,800 readings", lambda: desk.ask(lambda reader: reader.find(Reading)), 5)
        turn = iter(range(10_000))
        timed("one small deed", lambda: desk.do("n", lambda gate: gate.put(Bike("n", str(next(turn))))), 200)
        timed("undo", desk.undo, 90)
        timed("keep a draft", lambda: desk.keep_draft("sag", str(next(turn)), bike_id=None), 200)
        timed("export", lambda: export_json(library))
        timed("check", lambda: check(library))
        library.close()


if __name__ == "__main__":
    main()

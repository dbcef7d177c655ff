"""How long the workbench takes over 5 000 bikes and 200 000 runs, beside the bare SQL or the bare plot.

    python -m tests.bench.large_garage [BIKES RUNS] [--profile WORD]

The garage is made once and kept in a folder for temporary files; a copy of it is opened. Bare SQL is what was asked of
the file, each question once, asked again of the same connection with nothing made of the rows; the plot is pyqtgraph's
own with the same points. Medians, each time over bikes not looked at before, in milliseconds of the processor, so that
waiting for others does not show (that they crowd the caches does); the file is in memory by then. The list of bikes
paints a row without what is due where that is not known, and reads it after the painting, a moment at a time: the
painting and the reading are told apart. With ``--profile`` the lines with that word are shown with where their time
went.
"""

from __future__ import annotations

import argparse
import gc
import os
import shutil
import sqlite3
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from functools import partial
from itertools import count
from pathlib import Path
from statistics import median

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication

from tests.bench.garage_maker import BIKES, EVERY, RUNS, START, big_garage
from workbench.actions.desk import Desk, Search
from workbench.actions.edit import edit
from workbench.app import Workbench, make_application
from workbench.library.library import Library, open_library
from workbench.library.tables import schema
from workbench.model.bike import Bike
from workbench.stations import page_makers
from workbench.ui.garage.side import GarageSide
from workbench.ui.page import Page
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.review import ALL

TIMES = 7
LIMIT_MS = 100.0
NOW = START.replace(year=2032).isoformat()
PROFILED = ""


class Asked:
    """What is asked of a file while something is done."""

    def __init__(self, raw: sqlite3.Connection) -> None:
        self._raw = raw
        self.lines: list[str] = []

    def during(self, work: Callable[[], object]) -> None:
        """Do the work and note every question."""
        self.lines = []
        self._raw.set_trace_callback(self._note)
        try:
            work()
        finally:
            self._raw.set_trace_callback(None)

    def _note(self, line: str) -> None:
        if line.lstrip().upper().startswith("SELECT"):
            self.lines.append(line)

    def again(self) -> None:
        """Ask each question once more."""
        for line in dict.fromkeys(self.lines):
            self._raw.execute(line).fetchall()


def ms(work: Callable[[], object]) -> float:
    """Give how long the work takes, by the processor's clock: others on the machine do not count."""
    begun = time.process_time()
    work()
    return (time.process_time() - begun) * 1000


def say(what: str, taken: float, bare: float, note: str = "") -> None:
    """Print a line of the table."""
    mark = "over" if taken > LIMIT_MS else ""
    print(f"{what:<50} {taken:8.1f} {bare:8.2f} {taken / max(bare, 1e-3):7.1f}  {mark:<5}{note}", flush=True)


def measured(
    what: str,
    raw: sqlite3.Connection,
    work: Callable[[str], object],
    bikes: Iterator[str],
    before: Callable[[], object] = tuple,
) -> None:
    """Time a piece of work over several bikes, and what it asks of the file; ``before`` each is not counted."""
    asked, taken, bare, questions = Asked(raw), [], [], 0
    work(next(bikes))  # what is loaded and built once
    for turn in range(TIMES):
        bike_id = next(bikes)
        before()
        with profiled(what):
            taken.append(ms(partial(work, bike_id)))
        before()
        if turn < 3:
            asked.during(partial(work, next(bikes)))
            questions = len(asked.lines)
            bare.append(ms(asked.again))
    say(what, median(taken), median(bare), f"{questions} questions")


@contextmanager
def profiled(what: str) -> Iterator[None]:
    """Show where the time went if this line was asked for."""
    if not PROFILED or PROFILED not in what:
        yield
        return
    import cProfile
    import pstats

    profile = cProfile.Profile()
    with profile:
        yield
    pstats.Stats(profile).sort_stats("cumulative").print_stats(45)


def opening(path: Path) -> None:
    """Time the opening of the file."""

    def bare() -> None:
        raw = sqlite3.connect(path)
        raw.execute("SELECT version_num FROM alembic_version").fetchall()
        raw.close()

    bare()
    open_it = partial(open_library, path, schema, now=lambda: NOW)
    open_it().close()
    taken = []
    for _ in range(TIMES):
        begun = time.process_time()
        library = open_it()
        taken.append((time.process_time() - begun) * 1000)
        library.close()
    say("open the library", median(taken), median(ms(bare) for _ in range(TIMES)))


def window(library: Library, bikes: list[str]) -> None:
    """Time the window: first paint, what is due in sight, scrolling, searching, picking a bike, a deed."""
    application, raw = make_application(), library.raw
    gc.freeze()  # as the program does once it is loaded
    bench, asked = [Workbench(library)], Asked(raw)  # once for what is loaded once
    shown(application, bench[0])
    bench[0].window.close()
    made: list[Workbench] = []

    def begin() -> None:
        made.append(Workbench(library))
        made[-1].window.resize(1280, 800)
        made[-1].window.show()
        made[-1].window.side.list.viewport().grab()

    with profiled("first paint of the garage"):
        taken = ms(begin)
    asked.during(begin)
    say("window made, garage list painted", taken, ms(asked.again), f"{len(asked.lines)} questions")
    made[0].window.close()
    workbench = made[1]
    side = workbench.window.side
    rest = partial(settle, application, side)
    scrolls, in_sight = count(1), side.list.viewport().height() // side.list.sizeHintForRow(0)

    def scroll(_bike_id: str) -> None:
        side.list.scrollTo(side.list.model().index(next(scrolls) * 97), side.list.ScrollHint.PositionAtTop)
        side.list.viewport().grab()

    def due(bike_id: str) -> None:
        first = bikes.index(bike_id) * in_sight
        for one in bikes[first : first + in_sight]:
            workbench.view_model.due(one)

    measured("scroll to bikes not seen before", raw, scroll, iter(bikes), rest)
    measured(f"what is due on {in_sight} bikes, as many as in sight", raw, due, iter(bikes))
    words = iter(
        ("l", "la", "lar", "larc", "larch", "larch 1", "larch 12", "larch 120", "larch", "shelf 7", "falk 11") * 2
    )

    def search(_bike_id: str) -> None:
        side.search.setText(next(words))
        side.list.viewport().grab()

    found = [ms(lambda: search("")) for _ in range(11)]
    like = "SELECT bike.id, bike.name, person.name FROM bike JOIN bike_rider ON bike_id = bike.id"
    like += " JOIN person ON person.id = person_id WHERE bike.name LIKE '%larch 12%' OR person.name LIKE '%larch 12%'"
    bare = median(ms(lambda: raw.execute(like).fetchall()) for _ in range(TIMES))
    say("a letter more in the search", median(found), bare, f"slowest {max(found):.0f}")
    side.search.setText("no such bike")
    side.search.setText("")
    application.processEvents()
    picks = iter(bikes[len(bikes) // 2 :])

    def pick(bike_id: str) -> None:
        workbench.view_model.open_bike(bike_id)
        workbench.window.grab()

    measured("pick a bike, its sheet painted", raw, pick, picks, rest)
    for station in ("garage", "new_bike", "people", "history", "ride", "review"):

        def another(bike_id: str, station: str = station) -> None:
            workbench.bench.put_bike(bike_id, station=station)
            workbench.window.grab()

        measured(f"another bike at {station.replace('_', ' ')}, painted", raw, another, picks, rest)

    def note(bike_id: str) -> None:
        workbench.desk.do("Note", edit(Bike, bike_id, "note", f"seen {time.perf_counter()}"), bike_id=bike_id)

    measured("a note kept, everything in sight read again", raw, note, picks)
    workbench.window.close()
    application.processEvents()


def settle(application: QApplication, side: GarageSide) -> None:
    """Let the list read what is still to be read for an earlier painting."""
    while side.list.model()._awaited:
        application.processEvents()


def shown(application: QApplication, workbench: Workbench) -> None:
    """Show a window and let it paint."""
    workbench.window.resize(1280, 800)
    workbench.window.show()
    application.processEvents()


def sheets(library: Library, bikes: list[str], much: list[str]) -> None:
    """Time what each station's sheet reads for a bike."""
    desk = Desk(library)
    bench = Bench(desk)
    for station, make in page_makers(desk, bench).items():
        page = make()
        ids = iter(much if station == "review" else bikes)
        if station == "review":
            measured("read the review, 400 runs, its last session", library.raw, partial(read, bench, page), ids)
            page.view_model._choices = replace(page.view_model._choices, session=ALL)
            measured("read the review, 400 runs, all sessions", library.raw, partial(read, bench, page), ids)
            ids = iter(bikes)
        words = "read the review, 40 runs" if station == "review" else f"read {station.replace('_', ' ')}"
        measured(words, library.raw, partial(read, bench, page), ids)
        if station == "ride":
            measured("read ride, 400 runs", library.raw, partial(read, bench, page), iter(much))
        if station == "review":
            pictures(bench, page, much[-TIMES - 1 :])
        page.deleteLater()


def read(bench: Bench, page: Page, bike_id: str) -> None:
    """Read a sheet for a bike."""
    bench._bike_id = bike_id
    page.view_model.read()


def pictures(bench: Bench, page: Page, much: list[str]) -> None:
    """Time the drawing of reviews of all sessions beside a plot with as many points."""
    import pyqtgraph

    states = []
    for bike_id in much:
        bench._bike_id = bike_id
        states.append(page.view_model.read())
    page.resize(1000, 760)
    taken = []
    for state in states:
        with profiled("draw the review"):
            taken.append(ms(lambda one=state: (page._render(one), page.grab())))
    points = states[-1].timeline.points

    def plot() -> None:
        widget = pyqtgraph.PlotWidget()
        widget.resize(1000, 300)
        widget.plot([one.place for one in points], [one.liking for one in points], pen=None, symbol="o")
        widget.grab()

    bare = median(ms(plot) for _ in range(TIMES))
    say("draw the review, 400 runs, all sessions", median(taken[1:]), bare, f"plot of {len(points)}")


def history(library: Library, bikes: list[str]) -> None:
    """Time a page of the journal."""
    desk = Desk(library)
    measured("history, a page", library.raw, lambda _: desk.history.page(Search()), iter(bikes))
    measured("history, a page of one bike", library.raw, lambda b: desk.history.page(Search(bike_id=b)), iter(bikes))
    nowhere = Search(text="found nowhere")
    measured("history, words found nowhere", library.raw, lambda _: desk.history.page(nowhere), iter(bikes))
    foreign = Search(text="gefünden nirgendwö")
    measured("history, words beyond plain letters", library.raw, lambda _: desk.history.page(foreign), iter(bikes))
    measured("history, who and what", library.raw, lambda _: desk.history.who_and_what(), iter(bikes))


def main(bikes: int, runs: int) -> None:
    """Make the garage if need be, and measure."""
    path = big_garage(Path(tempfile.gettempdir()) / "trailbench-bench", bikes=bikes, runs=runs)
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(shutil.copyfile(path, Path(folder) / "garage.trailbench"))
        print(f"{bikes} bikes, {runs} runs, {path.stat().st_size / 1e6:.0f} MB, load {os.getloadavg()[0]:.1f}")
        print(f"{'':<50} {'ms':>8} {'bare':>8} {'ratio':>7}")
        opening(copy)
        library = open_library(copy, schema, now=lambda: NOW)
        try:
            ids = [row[0] for row in library.raw.execute("SELECT id FROM bike ORDER BY rowid")]
            much = ids[::EVERY]
            rest = [one for place, one in enumerate(ids) if place % EVERY]
            window(library, rest)
            sheets(library, rest[len(rest) // 4 :], much)
            history(library, rest)
        finally:
            library.close()


if __name__ == "__main__":
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("size", nargs="*", type=int, default=[BIKES, RUNS])
    words.add_argument("--profile", default="")
    told = words.parse_args()
    PROFILED = told.profile
    main(*told.size)
    sys.stdout.flush()
    os._exit(0)  # pages that were never shown need no tidying

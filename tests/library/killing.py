"""A writer that is killed in the middle of its work, and what must hold of the file it leaves behind."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

from tests.library.garden import Bike, Part, Reading
from tests.library.help import ROOT, open_garden, opened
from workbench.actions.desk import Desk
from workbench.library.dump import check

PLACES = ("front", "rear", "post")


def write_for_ever(path: Path | str) -> None:
    """Keeps an entry, then keeps a bike with three parts and readings as one deed; every third is undone and redone.

    After each commit it says so; what it has said must never be lost.
    """
    desk = Desk(open_garden(path))
    number = desk.ask(lambda reader: reader.count(Bike))
    while True:
        number += 1
        draft = desk.keep_draft("bike", f'"{number}"', bike_id=None)
        say(f"draft {number}")
        desk.do(f"Bike {number}", lambda gate, n=number, d=draft.id: plant(gate, n, d))
        say(f"deed {number}")
        if number % 3 == 0:
            desk.undo()
            say(f"undo {number}")
            desk.redo()
            say(f"deed {number}")


def plant(gate, number: int, draft_id: str) -> None:
    """One bike with all its rows, and the draft it was entered in closed."""
    bike = Bike(f"b{number}", "x" * 500)
    parts = [Part(f"p{number}{place}", bike.id, place) for place in PLACES]
    gate.put(*(Reading(f"r{part.id}", part.id, float(number)) for part in parts))
    gate.put(*parts, bike)
    gate.remove_draft(draft_id)


def say(text: str) -> None:
    """Tells the killer what is safely kept."""
    os.write(1, f"{text}\n".encode())


def kill_one(path: Path, lines: int, delay_s: float = 0.0) -> str:
    """Starts a writer, kills it after so many lines (and a delay), and gives the last thing it had said."""
    command = [sys.executable, "-c", f"from tests.library.killing import write_for_ever as w; w({str(path)!r})"]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE) as writer:
        said = [writer.stdout.readline() for _ in range(lines)]
        with suppress(subprocess.TimeoutExpired):
            writer.wait(delay_s)
        writer.kill()
        said += writer.stdout.readlines()
    return said[-1].decode().strip() if said else ""


def survivors(path: Path, last_said: str) -> int:
    """How many bikes the file holds; every one is whole, and nothing that was said to be kept is missing."""
    with opened(path) as library:
        assert check(library) == []
        desk = Desk(library)
        bikes, parts, readings = desk.ask(lambda reader: [reader.count(kind) for kind in (Bike, Part, Reading)])
        drafts = [int(draft.body.strip('"')) for draft in desk.drafts()]
    assert parts == readings == bikes * len(PLACES)
    assert not last_said or (bikes, drafts) in possible(last_said)
    return bikes


def possible(last_said: str) -> list[tuple[int, list[int]]]:
    """Bikes and open drafts after the last word, or after the one step that may have been kept unsaid."""
    what, number = last_said.split()
    n = int(number)
    if what != "deed":
        return [(n - 1, [n]), (n, [])]
    return [(n, []), (n, [n + 1]), *([(n - 1, [n])] if n % 3 == 0 else [])]


def cut_off_at(work: str, folder: Path, sizes: list[int]) -> list[Path]:
    """Files left by processes that died in the very write that went beyond the size, one for each size.

    They are forked from an interpreter of their own, which has no other threads and no open library.
    """
    command = [
        sys.executable,
        "-c",
        f"from tests.library import killing as k; k.die(k.{work}, {str(folder)!r}, {sizes})",
    ]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout == "died\n" * len(sizes)
    return [folder / f"{size}.trailbench" for size in sizes]


def die(work: Callable[[Path], object], folder: str, sizes: list[int]) -> None:
    """Does the work once for each size, each time in a process that dies of it."""
    import resource

    for size in sizes:
        child = os.fork()
        if child == 0:
            try:
                os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
                resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
                signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
                resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))
                work(Path(folder) / f"{size}.trailbench")
            finally:
                os._exit(0)
        status = os.waitpid(child, 0)[1]
        say("died" if os.WIFSIGNALED(status) and os.WTERMSIG(status) == signal.SIGXFSZ else f"status {status}")

"""A hand at the real program: mouse and keys of the X server, and eyes that read what is in sight."""

from __future__ import annotations

import json
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tests.journeys.fingers import Fingers
from workbench.__main__ import main
from workbench.library.dump import check, export_json
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.viewmodels.carry_plan import PLANNED

ROOT = Path(__file__).resolve().parents[2]
LONGEST_WAIT_S = 30.0
PAUSE_S = 0.01
MOMENT = "2031-05-14T09:00:00+00:00"
Sight = dict[str, Any]


class Hand:
    """Starts the program over a library, works it, kills it, starts it again."""

    def __init__(self, library: Path, log: Path) -> None:
        self.library, self._log = library, log
        self._program: subprocess.Popen[bytes] | None = None
        self._fingers = Fingers()
        self._pointed: tuple[int, int, int, int] | None = None  # where the pointer was moved to
        self._now = datetime.fromisoformat(MOMENT)  # what the program takes for now; an hour later at every start
        self.events = 0  # keys pressed and mouse clicks made
        self.kills = 0  # survived

    # The process

    def start(self, window: str = "window") -> None:
        """Start the program and wait until its window, or the one named, has the focus."""
        with self._log.open("ab") as log:
            told = ["--library", str(self.library), "--now", self._now.isoformat()]
            self._program = subprocess.Popen(
                [sys.executable, "-m", "tests.journeys.driver", *told],
                cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=log,
            )  # fmt: skip
        self._now += timedelta(hours=1)
        self.wait(lambda sight: sight["window"] == window, f"the {window} has the focus")

    def kill(self) -> None:
        """End the program in the middle of whatever it does."""
        assert self._program is not None
        self._program.send_signal(signal.SIGKILL)
        self._end()

    def kill_and_start(self, holds: Callable[[dict[str, Any]], object]) -> None:
        """Kill the program, see that the file still holds all it held, this among it, and start again."""
        before = export(self.library)
        assert holds(before), before["drafts"]
        self.kill()
        self.kills += 1
        assert export(self.library) == before
        self.start()

    def close(self) -> None:
        """End the program if it still runs."""
        self._fingers.rest()
        if self._program is not None:
            self._program.kill()
            self._end()

    def wait_for_end(self) -> int:
        """Wait until the program has ended by itself; its exit code."""
        assert self._program is not None
        code = self._program.wait(LONGEST_WAIT_S)
        self._end()
        return code

    def _end(self) -> None:
        assert self._program is not None
        self._program.wait(LONGEST_WAIT_S)
        for pipe in (self._program.stdin, self._program.stdout):
            assert pipe is not None
            pipe.close()
        self._program = None

    def quit(self) -> dict[str, Any]:
        """Quit as a person does; nothing was complained of. Gives all records, exported."""
        self.keys("ctrl+q")
        assert self.wait_for_end() == 0
        assert self.trouble() == ""
        return exported(self.library)

    def process_id(self) -> int:
        """The process the program runs in."""
        assert self._program is not None
        return self._program.pid

    def trouble(self) -> str:
        """What the program wrote to its standard error."""
        return self._log.read_text(encoding="utf-8") if self._log.exists() else ""

    # Eyes

    def look(self) -> Sight:
        """All that is in sight now."""
        assert self._program is not None
        assert self._program.stdin is not None
        assert self._program.stdout is not None
        self._program.stdin.write(b"?\n")
        self._program.stdin.flush()
        answer = self._program.stdout.readline()
        assert answer, f"the program has ended: {self.trouble()}"
        sight: Sight = json.loads(answer)
        return sight

    def wait(self, is_so: Callable[[Sight], object], what: str) -> Sight:
        """Look until something is so."""
        end = time.monotonic() + LONGEST_WAIT_S
        while time.monotonic() < end:
            sight = self.look()
            if is_so(sight):
                return sight
            time.sleep(PAUSE_S)  # looking takes time of the program's own
        raise AssertionError(f"waited in vain: {what}; focus on {sight['focus']}; in sight: {words_of(sight)}")

    def sees(self, *texts: str) -> None:
        """Wait until all these words are in sight."""
        self.wait(lambda sight: all(text in words_of(sight) for text in texts), f"to see {texts}")

    def hears(self, name: str, *texts: str) -> None:
        """Wait until a widget is spoken with all these words, as one that paints them itself says them."""
        self.wait(
            lambda sight: all(text in (find(sight, name) or {"spoken": ""})["spoken"] for text in texts),
            f"{name} to say {texts}",
        )

    def is_in_sight(self, name: str) -> bool:
        """Whether a widget of this name is in sight."""
        return find(self.look(), name) is not None

    def text_of(self, name: str) -> str:
        """The text of a widget in sight."""
        thing = find(self.look(), name)
        assert thing is not None, name
        return str(thing["text"])

    def wait_for(self, name: str) -> None:
        """Wait until a widget of this name is in sight."""
        self.wait(lambda sight: find(sight, name), f"{name} to be in sight")

    def text_soon(self, name: str, text: str) -> bool:
        """Whether a widget comes to show a text that begins so."""
        end = time.monotonic() + 0.4
        while time.monotonic() < end:
            if str((find(self.look(), name) or {"text": ""})["text"]).startswith(text):
                return True
        return False

    def wait_text(self, name: str, text: str) -> None:
        """Wait until a widget holds a text."""
        self.wait(lambda sight: (find(sight, name) or {}).get("text") == text, f"{name} to hold {text!r}")

    def wait_focus(self, name: str) -> None:
        """Wait until a widget has the focus."""
        self.wait(lambda sight: sight["focus"] == name, f"the focus on {name}")

    def settle(self, focus: str) -> None:
        """Wait a little for the focus to move on; a row of the same name may follow."""
        end = time.monotonic() + 0.4
        while time.monotonic() < end and self.look()["focus"] == focus:
            pass

    # Keys

    def keys(self, *names: str) -> None:
        """Press keys one after the other, by their X names: Return, Tab, ctrl+z, 5."""
        self.events += len(names)
        self._fingers.do("key", "--delay", "2", *names)

    def type(self, text: str) -> None:
        """Type a text."""
        self.events += len(text)
        self._fingers.do("type", "--delay", "2", text)

    # Mouse

    def click(self, name: str, *, text: str = "") -> None:
        """Click a widget, after turning the wheel until it is in sight."""
        self._click(lambda sight: find(sight, name, text=text), name)

    def click_line(self, text: str) -> None:
        """Click a line of a menu or list."""
        self._click(lambda sight: find_line(sight, text), text)

    def fill(self, name: str, text: str) -> None:
        """Click into a field, replace what stands there, wait until it is typed."""
        before = self._click(lambda sight: find(sight, name), name)
        self.wait(lambda sight: sight["presses"] > before and sight["focus"] == name, f"{name} pressed, with the focus")
        self.keys("ctrl+a")
        self.type(text)
        self.wait_text(name, text)

    def _click(self, look_for: Callable[[Sight], dict[str, Any] | None], what: str) -> int:
        """Click a thing once it stands still with the pointer on it; a window may still be on its way to its place.

        Gives how many presses the program had seen before.
        """
        end, before, aside = time.monotonic() + LONGEST_WAIT_S, None, 0
        while time.monotonic() < end:
            sight = self.look()
            thing = look_for(sight)
            seen, whole = (thing["seen"], thing["whole"]) if thing else (None, None)
            if whole is not None and (seen is None or seen[3] * 2 < min(whole[3], 600)):
                self._turn_wheel(whole)
            elif thing is not None and seen is not None and seen == before:
                if thing["pointed"] and self._pointed == seen:
                    self.events += 1
                    self._fingers.do("click", "--delay", "2", "1")
                    return int(sight["presses"])
                aside = 1 - aside  # a pointer that does not move tells nobody that it is there
                self._point(seen, aside)
            before = seen
        raise AssertionError(f"not in sight: {what}; in sight: {words_of(self.look())}")

    def _point(self, seen: tuple[int, int, int, int], aside: int) -> None:
        x, y, width, height = seen
        self._pointed = seen
        self._fingers.do("mousemove", str(x + width // 2 + aside), str(y + height // 2))

    def _turn_wheel(self, whole: tuple[int, int, int, int]) -> None:
        frame = find(self.look(), "sheet_frame")
        assert frame is not None
        x, y, width, height = frame["seen"]
        self._pointed = None
        button = "5" if whole[1] + whole[3] / 2 > y + height / 2 else "4"
        self._fingers.do("mousemove", str(x + width - 40), str(y + height // 2), "click", "--delay", "2", button)


def find(sight: Sight, name: str, *, text: str = "") -> dict[str, Any] | None:
    """The thing of this name, and of this text if one is given."""
    found = (one for one in sight["things"] if one["name"] == name and text in one["text"])
    return next(found, None)


def find_line(sight: Sight, text: str) -> dict[str, Any] | None:
    """The line of a menu or list that says this, or else begins so."""
    found = [one for one in sight["things"] if one["kind"] == "line" and one["text"].startswith(text)]
    return next((one for one in found if one["text"] == text), found[0] if found else None)


def words_of(sight: Sight) -> str:
    """All words in sight from top to bottom, one thing a line, with ordinary spaces."""
    told = sorted((one["whole"][1], one["whole"][0], one["text"]) for one in sight["things"] if one["text"])
    words = "\n".join(text for _, _, text in told)
    return words.replace("\u2009", " ").replace("\u00a0", " ")


def draft(content: dict[str, Any], kind: str) -> str:
    """The body of the open draft of a kind, in what the library holds; empty if there is none."""
    return next((one["body"] for one in content["drafts"] if one["kind"] == kind and not one["closed_by"]), "")


def export(library: Path) -> dict[str, Any]:
    """Everything the library holds, read from a copy so that the open one is left alone."""
    with TemporaryDirectory() as folder:
        copy = Path(folder) / library.name
        for suffix in ("", "-wal"):
            source = library.with_name(library.name + suffix)
            if source.exists():
                shutil.copy(source, copy.with_name(copy.name + suffix))
        held = open_library(copy, schema, now=lambda: MOMENT)
        try:
            assert check(held) == []
            whole: dict[str, Any] = json.loads(export_json(held))
        finally:
            held.close()
    return whole


def exported(library: Path) -> dict[str, Any]:
    """The records that the program's own export writes of a library nobody has open, and finds sound."""
    target = library.with_name("export.json")
    assert main(["--library", str(library), "--check", "--export", str(target)]) == 0
    content: dict[str, Any] = json.loads(target.read_text(encoding="utf-8"))
    under_way = [draft["kind"] for draft in content["drafts"] if not draft["closed_by"]]
    assert [kind for kind in under_way if kind != PLANNED] == [], "a plan for another day stays, entries do not"
    records: dict[str, Any] = content["records"]
    return records

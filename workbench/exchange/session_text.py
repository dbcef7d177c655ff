"""A session written down as text lines: what each line says, and which lines say nothing we understand.

A head line is ``course: NAME``, ``date: 2031-05-14``, ``surface: dry``, ``temperature: 18 C`` or ``note: ...``. A run
is its number and pieces with commas between: a change (``fork rebound 2 out``), a liking (``like 6``), ``better``,
``same`` or ``worse``, ``lap 1:32.4``, ``travel front 132``, ``hard contacts rear 1``, ``warm-up``,
``set aside ...``, ``note ...``. A line that begins with # is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime

from workbench.exchange.session_words import Thing
from workbench.model.errors import InputError
from workbench.model.facts import TEXT_LIMIT, clean_text
from workbench.model.reading import Units, position_text
from workbench.model.responses import is_lap, lap_text
from workbench.model.ride import SURFACES

MOST_LINES = 500
UNDERSTOOD, NOT_UNDERSTOOD, LEFT_ALONE = "understood", "not understood", "left alone"
DATES = ("%Y-%m-%d", "%Y-%m-%d %H:%M", "%d %b %Y", "%d %B %Y")
COMPARED = {"better": 1, "same": 0, "worse": -1}
Values = dict[tuple[str, str], float | None]
_RUN = re.compile(r"(?:run\s+)?(\d{1,3})\s*[.:)]?(?:\s+|$)(.*)", re.IGNORECASE)
_HEAD = re.compile(r"(course|date|surface|temperature|note)\s*:\s*(.*)", re.IGNORECASE)
_MOVE = re.compile(r"(?:by\s+)?(\d{1,3})(?:\s+clicks?)?\s+(in|out)")
_PLACE = re.compile(r"(?:at\s+|to\s+)?(\d{1,3})(?:\s+clicks?)?(?:\s+from\s+(closed|open))?(?:\s+out)?")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the text and what was made of it."""

    number: int
    text: str
    state: str
    said: str = ""


@dataclass(frozen=True, slots=True)
class ToldRun:
    """One run as it was written down; ``changes`` are what was set before it, as it then stood."""

    number: int
    changes: Mapping[tuple[str, str], float] = field(default_factory=dict)
    liking: int | None = None
    compared: int | None = None
    direction: int | None = None
    direction_of: str | None = None
    lap_s: float | None = None
    travel_front_mm: float | None = None
    travel_rear_mm: float | None = None
    bottom_outs_front: int | None = None
    bottom_outs_rear: int | None = None
    is_warmup: bool = False
    set_aside: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class ToldSession:
    """A session as it was written down."""

    lines: tuple[Line, ...] = ()
    runs: tuple[ToldRun, ...] = ()
    course: str = ""
    date: str = ""
    surface: str = "dry"
    temperature_c: float | None = None
    note: str = ""

    @property
    def not_understood(self) -> tuple[Line, ...]:
        """The lines that say nothing we understand."""
        return tuple(line for line in self.lines if line.state == NOT_UNDERSTOOD)


class _Unclear(Exception):
    """Why a piece of a line cannot be taken."""


def read_session(
    text: str,
    things: tuple[Thing, ...],
    start: Mapping[tuple[str, str], float | None],
    units: Units,
    directions: Mapping[str, tuple[str, ...]],
    *,
    now: str,
    doubt: Callable[[str, str, float], str] = lambda item, subject_id, value: "",
) -> ToldSession:
    """Read a session line by line; ``start`` is where everything stood before the first run.

    ``doubt`` says why an item cannot be set to a value, or nothing.
    """
    reader = _Reader(things, dict(start), units, directions, now, doubt)
    told = ToldSession()
    for number, raw in enumerate(text.splitlines()[:MOST_LINES], start=1):
        line = clean_text(raw)
        try:
            told, state, said = reader.line(told, line)
        except _Unclear as trouble:
            state, said = NOT_UNDERSTOOD, str(trouble)
        except InputError as trouble:
            state, said = NOT_UNDERSTOOD, f"allowed is {trouble.allowed}"
        told = replace(told, lines=(*told.lines, Line(number, line, state, said)))
    if len(text.splitlines()) > MOST_LINES:
        told = replace(told, lines=(*told.lines, Line(MOST_LINES + 1, "...", NOT_UNDERSTOOD, "too many lines")))
    return told


class _Reader:
    """Reads lines one after the other and knows where everything stands by then."""

    def __init__(
        self,
        things: tuple[Thing, ...],
        values: Values,
        units: Units,
        directions: Mapping[str, tuple[str, ...]],
        now: str,
        doubt: Callable[[str, str, float], str],
    ) -> None:
        self._things, self._values, self._units = things, values, units
        self._directions, self._now, self._doubt = directions, now, doubt

    def line(self, told: ToldSession, line: str) -> tuple[ToldSession, str, str]:
        """Take one line; give the session with it, and what was made of it."""
        if not line or line.startswith("#"):
            return told, LEFT_ALONE, ""
        if head := _HEAD.fullmatch(line):
            told, said = self._head(told, head[1].casefold(), head[2].strip())
            return told, UNDERSTOOD, said
        if run := _RUN.fullmatch(line):
            kept, said = self._run(told, int(run[1]), run[2])
            return replace(told, runs=(*told.runs, kept)), UNDERSTOOD, said
        raise _Unclear("begin with the number of the run, or with course:, date:, surface:, temperature: or note:")

    def _head(self, told: ToldSession, name: str, value: str) -> tuple[ToldSession, str]:
        if not value:
            raise _Unclear(f"nothing stands after {name}:")
        if name in ("course", "note"):
            limit = TEXT_LIMIT if name == "course" else 10 * TEXT_LIMIT
            if len(value) > limit:
                raise _Unclear(f"up to {limit} characters, this has {len(value)}")
            return (replace(told, course=value) if name == "course" else replace(told, note=value)), f"{name}: {value}"
        if name == "surface":
            if value.casefold() not in SURFACES:
                raise _Unclear(f"one of {', '.join(SURFACES)}")
            return replace(told, surface=value.casefold()), f"surface: {value.casefold()}"
        if name == "temperature":
            degrees = self._units.parse(value, "temperature")
            if not -40 <= degrees <= 60:
                raise _Unclear(f"from {self._units.text(-40, 'temperature')} to {self._units.text(60, 'temperature')}")
            return replace(told, temperature_c=degrees), f"temperature: {self._units.text(degrees, 'temperature')}"
        moment = self._date(value)
        return replace(told, date=moment), f"date: {moment[:10]}"

    def _date(self, text: str) -> str:
        for form in DATES:
            try:
                moment = datetime.strptime(text, form)
            except ValueError:
                continue
            told = moment.isoformat(timespec="seconds") + "+00:00"
            if told[:10] > self._now[:10]:
                raise _Unclear("that day is still to come")
            if moment.year < 1990:
                raise _Unclear("that is too long ago")
            return told
        raise _Unclear("write the day as 2031-05-14 or 14 May 2031")

    def _run(self, told: ToldSession, number: int, rest: str) -> tuple[ToldRun, str]:
        wanted = told.runs[-1].number + 1 if told.runs else 1
        if number != wanted:
            raise _Unclear(f"here comes run {wanted}")
        before, run, said = dict(self._values), ToldRun(number), []
        try:
            for piece in _pieces(rest):
                run, words = self._piece(run, piece)
                said.append(words)
        except (_Unclear, InputError):
            self._values = before
            raise
        if not said:
            raise _Unclear("nothing is said of this run")
        return run, f"run {number}: {', '.join(said)}"

    def _piece(self, run: ToldRun, piece: str) -> tuple[ToldRun, str]:
        plain = " ".join(piece.casefold().split())
        first, _, rest = plain.partition(" ")
        if first == "note" and rest:
            return replace(run, note=piece.split(maxsplit=1)[1]), f"note “{piece.split(maxsplit=1)[1]}”"
        if plain.startswith("set aside"):
            reason = piece.strip()[len("set aside") :].strip()[:TEXT_LIMIT]
            return replace(run, set_aside=reason or "set aside"), f"set aside: {reason or 'no reason given'}"
        if plain in ("warm-up", "warmup", "warm up"):
            return replace(run, is_warmup=True), "warm-up"
        if first in COMPARED:
            return replace(run, compared=COMPARED[first]), f"{first} than the one before"
        if first in ("like", "liking") or plain.isdecimal():
            return self._liking(run, rest if not plain.isdecimal() else plain)
        if first in ("lap", "travel") or plain.startswith(("hard contacts", "bottom")):
            return self._measured(run, first, plain)
        return self._change_or_feel(run, plain)

    def _liking(self, run: ToldRun, text: str) -> tuple[ToldRun, str]:
        if not text.isdecimal() or not 1 <= int(text[:4]) <= 9:
            raise _Unclear("a liking goes from 1 to 9")
        return replace(run, liking=int(text)), f"liking {int(text)}"

    def _measured(self, run: ToldRun, first: str, plain: str) -> tuple[ToldRun, str]:
        if first == "lap":
            seconds = self._units.parse(plain.removeprefix("lap").strip(), "duration")
            if not is_lap(seconds):
                raise _Unclear("a lap takes from 5 s to 2 h")
            return replace(run, lap_s=seconds), f"lap {lap_text(seconds)}"
        found = re.fullmatch(r"(travel|hard contacts|bottom(?:ed)?)\s+(front|fork|rear|shock)\s+(.+)", plain)
        if found is None:
            raise _Unclear("write travel front 132, or hard contacts rear 1")
        end = "front" if found[2] in ("front", "fork") else "rear"
        if found[1] == "travel":
            length = self._units.parse(found[3], "length")
            if not 0 <= length <= 400:
                raise _Unclear(f"travel goes up to {self._units.text(400, 'length')}")
            said = f"travel {end} {self._units.text(length, 'length')}"
            return replace(run, **{f"travel_{end}_mm": length}), said  # type: ignore[arg-type]
        if not found[3].isdecimal() or int(found[3][:4]) > 50:
            raise _Unclear("hard contacts go from 0 to 50")
        said = f"hard contacts {end} {int(found[3])}"
        return replace(run, **{f"bottom_outs_{end}": int(found[3])}), said  # type: ignore[arg-type]

    def _change_or_feel(self, run: ToldRun, plain: str) -> tuple[ToldRun, str]:
        thing, rest = self._thing(plain)
        if thing.adjuster is not None:
            words = self._directions.get(thing.adjuster.kind, ())
            if rest.removeprefix("was ") in words:
                way = words.index(rest.removeprefix("was ")) - len(words) // 2
                return replace(run, direction=way, direction_of=thing.subject_id), f"{thing.title} {words[way + 2]}"
            return self._turned(run, thing, rest)
        value = self._units.parse(rest, thing.quantity)
        if value < 0 or (thing.quantity == "count" and not value.is_integer()):
            raise _Unclear(f"{rest} is nothing {thing.title} can be set to")
        return self._set(run, thing, value, f"{thing.title} {self._units.text(value, thing.quantity)}")

    def _thing(self, plain: str) -> tuple[Thing, str]:
        calls = [(word, thing) for thing in self._things for word in thing.words if plain.startswith(f"{word} ")]
        if not calls:
            raise _Unclear(f"“{plain[:40]}” is no part of this bike, or could be two: write fork or shock before it")
        word, thing = max(calls, key=lambda call: len(call[0]))
        return thing, plain[len(word) :].strip()

    def _turned(self, run: ToldRun, thing: Thing, rest: str) -> tuple[ToldRun, str]:
        adjuster, steps = thing.adjuster, thing.steps
        assert adjuster is not None
        if steps is None:
            raise _Unclear(f"{thing.title} is not counted yet")
        if adjuster.counting == "turns":
            raise _Unclear(f"{thing.title} is counted in turns: set it at the ride station")
        place = self._place(thing, rest)
        if not 0 <= place <= steps:
            raise _Unclear(f"{thing.title} would stand at {place}; it goes from 0 (closed) to {steps} (open)")
        before = self._values.get((thing.item, thing.subject_id))
        stood = f", before {before:g}" if before is not None and before != place else ""
        return self._set(run, thing, float(place), f"{thing.title} {position_text(adjuster, place)}{stood}")

    def _place(self, thing: Thing, rest: str) -> int:
        """Where a piece of a change leaves an adjuster, in steps from closed."""
        steps, before = thing.steps or 0, self._values.get((thing.item, thing.subject_id))
        if rest in thing.positions:
            return thing.positions.index(rest)
        if rest.removeprefix("fully ") in ("closed", "open"):
            return 0 if rest.endswith("closed") else steps
        if (move := _MOVE.fullmatch(rest)) is not None:
            if before is None:
                raise _Unclear(f"where {thing.title} stood is not known: write at 8")
            return round(before) + (int(move[1]) if move[2] == "out" else -int(move[1]))
        if (place := _PLACE.fullmatch(rest)) is not None:
            return steps - int(place[1]) if place[2] == "open" else int(place[1])
        raise _Unclear(f"write {thing.title.casefold()} 2 out, or at 8, not “{rest[:30]}”")

    def _set(self, run: ToldRun, thing: Thing, value: float, said: str) -> tuple[ToldRun, str]:
        key = (thing.item, thing.subject_id)
        if said_no := self._doubt(*key, value):
            raise _Unclear(f"{thing.title}: {said_no.rstrip('.')}")
        self._values[key] = value
        return replace(run, changes={**run.changes, key: value}), said


def _pieces(rest: str) -> list[str]:
    """The pieces of a run; a note takes the rest of its line, commas and all."""
    found: list[str] = []
    while rest := rest.lstrip(" ,;\t"):
        if rest.casefold().startswith("note "):
            return [*found, rest]
        piece, *more = re.split(r"[,;](?!\d)", rest, maxsplit=1)
        found.append(piece.strip())
        rest = more[0] if more else ""
    return found

"""A session typed or pasted as text: what each line says beside it, and one deed that keeps all of it."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass

from workbench.actions.desk import Desk, Touched
from workbench.actions.history import sealed_since
from workbench.actions.ride import RideRecords, courses, ride_records
from workbench.actions.session_text import Start, keep_told, kept_already, moves_the_bike, session_key
from workbench.exchange.session_text import LEFT_ALONE, NOT_UNDERSTOOD, Line, ToldSession, read_session
from workbench.exchange.session_words import things_of
from workbench.model.baseline import baseline_question
from workbench.model.errors import WorkbenchError
from workbench.model.reading import short_date
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.ride_run import DIRECTION_WORDS
from workbench.viewmodels.shown import how_many

DRAFT = "session_notes"
NOT_SURE = "unsure"
EXAMPLE = """\
course: Quarry loop
date: 2031-05-14
1 warm-up, like 5
2 fork rebound 2 out, like 6, better, lap 1:32.4
3 shock pressure 165 psi, like 7, note arms tired, rain
"""


@dataclass(frozen=True, slots=True)
class NotesDraft:
    """What has been typed so far, and which setup the bike stood on before the first run."""

    text: str = ""
    start: str = ""

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> NotesDraft:
        """Read a kept draft; what this version does not know is left out."""
        held = json.loads(text)
        return cls(str(held.get("text", "")), str(held.get("start", "")))


@dataclass(frozen=True, slots=True)
class NoteLine:
    """One line of the text and what was made of it."""

    number: int
    said: str
    is_unclear: bool = False


@dataclass(frozen=True, slots=True)
class NotesState:
    """The whole sheet."""

    blocked: str = ""
    text: str = ""
    lines: tuple[NoteLine, ...] = ()
    starts: tuple[tuple[str, str], ...] = ()
    start: str = ""
    summary: str = ""
    after: str = ""  # where the bike stands afterwards
    verb: str = "Keep this session"
    has_draft: bool = False


class SessionNotesViewModel(ViewModel[NotesState]):
    """The sheet. Nothing is kept before every line was shown and the verb pressed."""

    station = "ride"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._told = ToldSession()
        self._records: RideRecords | None = None
        super().__init__(desk, bench)

    def read(self) -> NotesState:
        """Read the text against the bike."""
        if blocked := self._blocked():
            return NotesState(blocked=blocked)
        records = self._desk.ask(ride_records(self.bike_id, self._bench.rider_id))
        if records.rider is None or not records.setups:
            return NotesState(blocked="Write the baseline first: runs are told by what was changed from there.")
        self._records = records
        kept = self._draft()
        start = self._start(records, kept)
        self._told = self._read_text(records, kept.text, start)
        return NotesState(
            text=kept.text,
            lines=tuple(_line(line) for line in self._told.lines if line.state != LEFT_ALONE),
            starts=(*((one.id, _setup_words(one.number, one.name)) for one in reversed(records.setups)), _UNSURE),
            start=kept.start or start,
            summary=self._summary(),
            after=self._after(start) if self._told.runs else "",
            verb=f"Keep {how_many(len(self._told.runs), 'run')}" if self._told.runs else "Keep this session",
            has_draft=bool(kept.text.strip()),
        )

    def _blocked(self) -> str:
        if not self.bike_id:
            return "Pick a bike first."
        if self._desk.ask(sealed_since(self.bike_id)):
            return "A blind test is under way on this bike. Reveal it first."
        return ""

    def _draft(self) -> NotesDraft:
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        return NotesDraft.from_json(kept.body) if kept is not None else NotesDraft()

    def _start(self, records: RideRecords, kept: NotesDraft) -> str:
        """Which setup the first run begins from: the one chosen, else what stands on the bike, else the newest."""
        if any(one.id == kept.start for one in records.setups):
            return kept.start
        return (records.current or records.setups[-1]).id

    def _read_text(self, records: RideRecords, text: str, start: str) -> ToldSession:
        parts = records.parts
        return read_session(
            text,
            things_of(parts),
            records.values[start],
            self._bench.units,
            DIRECTION_WORDS,
            now=self._desk.now(),
            doubt=lambda item, subject_id, value: baseline_question(parts, item, subject_id, value, self._bench.units),
        )

    def _courses(self) -> set[str]:
        return {one.name.casefold() for one in self._desk.ask(courses())}

    def _summary(self) -> str:
        told = self._told
        if not told.lines:
            return ""
        unclear = len(told.not_understood)
        known = not told.course or told.course.casefold() in self._courses()
        where = f" on {told.course}{'' if known else ', a new course'}" if told.course else ""
        when = f", {short_date(told.date)}" if told.date else ", today"
        head = f"{how_many(len(told.runs), 'run')}{where}{when}."
        return f"{head} {how_many(unclear, 'line')} not understood." if unclear else head

    def _after(self, start: str) -> str:
        if self._desk.ask(moves_the_bike(self.bike_id, start, self._told.date)):
            return "The bike stands as the last run left it."
        return "What is on the bike now stays as it is on record: other sessions came later, or it was set otherwise."

    # What is asked for

    def set_text(self, text: str) -> None:
        """Take the text as typed so far."""
        self._keep(NotesDraft(text, self._draft().start))

    def set_start(self, start: str) -> None:
        """Say which setup the bike stood on before the first run."""
        self._keep(NotesDraft(self._draft().text, start))

    def _keep(self, draft: NotesDraft) -> None:
        try:
            self._desk.keep_draft(DRAFT, draft.to_json(), bike_id=self.bike_id)
        except WorkbenchError as error:
            self.refuse(error, "text")
        self.refresh()

    def hear(self, touched: Touched) -> None:
        """The draft is read again where it is kept; deeds on other bikes change nothing here."""
        if touched.tables:
            super().hear(touched)

    def discard(self) -> None:
        """Put the text aside; it can be taken back."""
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        if kept is not None:
            self.discard_draft("Put the session's text aside", kept.id)
            self.refresh()

    def take_back_draft(self, draft_id: str) -> None:
        super().take_back_draft(draft_id)
        self.refresh()

    def problem(self) -> tuple[str, int]:
        """Say what keeps the text from being kept, and at which line; empty when nothing does."""
        unclear = self._told.not_understood
        if unclear:
            line = unclear[0]
            return f"Line {line.number} is not understood: {line.said}. Mend it, or put # before it.", line.number
        if not self._told.runs:
            return "There is no run in it yet: a line a run, as 1 like 5.", 0
        if not self._told.course:
            return "Say where it was ridden, in a line such as course: Quarry loop.", 0
        return "", 0

    def keep(self) -> bool:
        """Keep the whole session, as one step."""
        said, _ = self.problem()
        records = self._records
        if said or records is None or records.rider is None:
            self.refused.emit(Problem(said or self.state.blocked, "text"))
            return False
        kept, draft = self._draft(), self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        key = session_key(self.bike_id, kept.text)
        if (before := self._desk.ask(kept_already(key))) is not None:
            day = short_date(before.started_at)
            self.refused.emit(Problem(f"Nothing new: this session of {day} has been kept already.", "text"))
            return False
        start = Start(self._start(records, kept), is_sure=kept.start != NOT_SURE)
        deed = keep_told(
            self.bike_id, records.rider.id, self._told, start, key=key, draft_id=draft.id if draft else None
        )
        count = how_many(len(self._told.runs), "run")
        return self.act(f"Keep {count} on {self._told.course}"[:60], deed) is not None


_UNSURE = (NOT_SURE, "Not sure: keep the runs, count none")


def _line(line: Line) -> NoteLine:
    is_unclear = line.state == NOT_UNDERSTOOD
    return NoteLine(line.number, f"Not understood: {line.said}." if is_unclear else line.said, is_unclear)


def _setup_words(number: int, name: str) -> str:
    return f"Setup no. {number}, {name}" if name else f"Setup no. {number}"

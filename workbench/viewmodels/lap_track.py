"""Lap times from a recorded track: a file, two gates on it, the laps beside the runs, and one deed that writes them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime
from pathlib import Path

from workbench.actions.desk import Desk
from workbench.actions.ride import SessionRecords
from workbench.actions.ride_laps import timed_records, write_laps
from workbench.exchange.files import read_whole
from workbench.exchange.gpx import Lap, TrackPoint, read_track, text_of
from workbench.exchange.track_gates import Plan, Spot
from workbench.model.errors import InputError, WorkbenchError
from workbench.viewmodels import lap_rows
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.lap_gates import (
    Gates,
    GateTexts,
    TrackPlan,
    ends_text,
    find_laps,
    gate_when,
    plan_of,
    read_ends,
)
from workbench.viewmodels.lap_rows import LapRow
from workbench.viewmodels.review_timeline import session_words
from workbench.viewmodels.shown import how_many

LARGEST_BYTES = 60_000_000


@dataclass(frozen=True, slots=True)
class LapTrackState:
    """The sheet."""

    blocked: str = ""
    sessions: tuple[tuple[str, str], ...] = ()
    session: str = ""
    file_text: str = ""  # empty until a track was read
    plan: TrackPlan = field(default_factory=TrackPlan)
    gates: Gates = field(default_factory=Gates)
    setting: str = "start"  # which gate the next click sets
    gates_said: str = ""
    rows: tuple[LapRow, ...] = ()
    summary: str = ""
    caution: str = ""
    verb: str = "Write the lap times"


@dataclass(frozen=True, slots=True)
class _Track:
    name: str
    segments: list[list[TrackPoint]]
    plan: Plan

    @property
    def begun_s(self) -> float:
        return self.segments[0][0].at_s

    def said(self) -> str:
        """Say what was read."""
        points = sum(len(segment) for segment in self.segments)
        first, last = (datetime.fromtimestamp(at, UTC) for at in (self.begun_s, self.segments[-1][-1].at_s))
        when = f"{first.day} {first.strftime('%b %Y, %H:%M')} to {last.strftime('%H:%M')} UTC"
        return f"{self.name}: {how_many(points, 'point')} with times, {when}"


class LapTrackViewModel(ViewModel[LapTrackState]):
    """The sheet. Nothing is written before every lap was shown beside its run and the verb pressed."""

    station = "review"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._track: _Track | None = None
        self._session_id = ""
        self._gates: dict[str, Gates] = {}  # by course, until the window closes
        self._setting = "start"
        self._chosen: dict[int, str] = {}
        self._chosen_in = ""  # the session to whose runs they go: of another one nothing was said
        self._found: tuple[Gates, tuple[Lap, ...], str] | None = None
        super().__init__(desk, bench)

    def read(self) -> LapTrackState:
        """Lay the track beside the session."""
        if not self.bike_id:
            return LapTrackState(blocked="Pick a bike first.")
        sessions = self._desk.ask(timed_records(self.bike_id, self._bench.rider_id))
        if not sessions:
            return LapTrackState(blocked="There are no runs yet to which lap times could go. Ride first.")
        session = next((one for one in sessions if one.session.id == self._session_id), sessions[0])
        gates = self._gates.get(session.course.id, Gates())
        base = LapTrackState(
            sessions=tuple((one.session.id, session_words(one)) for one in sessions),
            session=session.session.id,
            gates=gates,
            setting=self._setting,
        )
        return base if self._track is None else self._with_track(base, self._track, session)

    def _with_track(self, base: LapTrackState, track: _Track, session: SessionRecords) -> LapTrackState:
        laps, nothing = self._laps(track, base.gates)
        rows = lap_rows.rows_of(laps, session, self._chosen if session.session.id == self._chosen_in else {})
        news = lap_rows.news_of(rows)
        return replace(
            base,
            file_text=track.said(),
            plan=plan_of(track.plan, base.gates),
            gates_said=f"The gates hold for {session.course.name} until this window closes.",
            rows=rows,
            summary=nothing or lap_rows.summary(laps, rows, session),
            caution=lap_rows.other_day(laps, session),
            verb=f"Write {how_many(len(news), 'lap time')}" if news else "Write the lap times",
        )

    def _laps(self, track: _Track, gates: Gates) -> tuple[tuple[Lap, ...], str]:
        """Find the laps once per track and gates."""
        if self._found is None or self._found[0] != gates:
            try:
                self._found = (gates, *find_laps(track.segments, gates))
            except InputError as error:
                self._found = (gates, (), str(error))
        return self._found[1:]

    # What is asked for

    def open_file(self, source: Path) -> bool:
        """Read a track; what cannot be read says why, and the one before stays."""
        try:
            segments = read_track(text_of(read_whole(source, most_bytes=LARGEST_BYTES)))
        except WorkbenchError as error:
            self.refused.emit(Problem(f"{source.name} gives no track. {error}", "file"))
            return False
        self._track, self._found, self._chosen = _Track(source.name, segments, Plan(segments)), None, {}
        self._gates = {course: gates.without_times() for course, gates in self._gates.items()}
        self.refresh()
        return True

    def close_file(self) -> None:
        """Put the track away; nothing was written."""
        self._track, self._found, self._chosen = None, None, {}
        self.refresh()

    def pick_session(self, session_id: str) -> None:
        """Time the runs of another session."""
        self._session_id, self._found, self._chosen = session_id, None, {}
        self.refresh()

    def set_next(self, name: str) -> None:
        """Say which gate the next click on the plan sets."""
        self._setting = name
        self.refresh()

    def pick_spot(self, east_m: float, north_m: float) -> bool:
        """Set a gate across the track, where it comes nearest to a spot of the plan."""
        if self._track is None:
            return False
        track, spot = self._track, (east_m, north_m)
        return self._set(self._setting, lambda: gate_when(track.plan, track.begun_s, self._since(track, spot)))

    def set_at(self, name: str, text: str) -> bool:
        """Set a gate across the track where it was at a time, counted from where it begins."""
        track = self._track
        if track is None:
            return False

        def made() -> GateTexts:
            if not text.strip():
                return GateTexts()
            return gate_when(track.plan, track.begun_s, self._bench.units.parse(text, "duration"))

        return self._set(name, made, f"{name}_at")

    def set_ends(self, name: str, text: str) -> bool:
        """Set a gate by its two ends."""
        return self._set(
            name, lambda: GateTexts("", ends_text(read_ends(text)) if text.strip() else ""), f"{name}_ends"
        )

    def set_loop(self, is_loop: bool) -> None:
        """Say that the finish is the start."""
        self._keep(replace(self.state.gates, is_loop=is_loop))
        self._setting = "start" if is_loop else self._setting
        self.refresh()

    def choose(self, place: int, run_id: str) -> None:
        """Say which run a lap goes to; the laps after it follow in order."""
        before = self._chosen if self.state.session == self._chosen_in else {}
        self._chosen = {at: key for at, key in before.items() if at < place} | {place: run_id}
        self._chosen_in = self.state.session
        self.refresh()

    def write(self) -> bool:
        """Write the lap times shown to their runs, as one step."""
        state = self.state
        news = lap_rows.news_of(state.rows)
        if not state.rows or not news:
            self.refused.emit(Problem(self._nothing(state), "rows"))
            return False
        label = f"Write {how_many(len(news), 'lap time')} from {self._track.name if self._track else 'a track'}"[:60]
        return self.act(label, write_laps(state.session, news)) is not None

    def _nothing(self, state: LapTrackState) -> str:
        if not state.file_text:
            return "Open a track first."
        if not state.rows:
            return state.summary
        if any(row.run_id for row in state.rows):
            return "Nothing new: these runs have their lap times already."
        return "Every lap is said to be no run, so there is nothing to write."

    def _since(self, track: _Track, spot: Spot) -> float:
        return track.plan.nearest_s(spot) - track.begun_s

    def _set(self, name: str, made: Callable[[], GateTexts], at: str = "plan") -> bool:
        try:
            texts = made()
        except WorkbenchError as error:
            self.refused.emit(Problem(str(error), at))
            return False
        self._keep(self.state.gates.with_gate(name, texts))
        missing = self.state.gates.missing()
        self._setting = missing or name
        self.refresh()
        return True

    def _keep(self, gates: Gates) -> None:
        session = self.state.session
        sessions = self._desk.ask(timed_records(self.bike_id, self._bench.rider_id))
        course = next((one.course.id for one in sessions if one.session.id == session), "")
        self._gates[course], self._chosen = gates, {}
        self.refresh()

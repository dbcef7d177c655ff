"""Blind tests: draw and seal the order, keep runs that say nothing, reveal once."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.actions.ride import keep_run
from workbench.actions.setups import Values, find_setups, read_values, values_of, write_setup
from workbench.library.gate import Gate, Reader
from workbench.model.blind import (
    CONCEALED,
    LETTERS,
    MOST_PAIRS,
    is_concealed,
    labels_text,
    letter_at,
    pairs_of,
    setups_of,
    tested,
    unfit,
    valid,
)
from workbench.model.errors import InputError
from workbench.model.parts import BikeParts
from workbench.model.ride import BlindPlan, Run, Session
from workbench.model.setting import PRESSURE_ITEMS, Change, Item, OnBike, Setup, changes_between


@dataclass(frozen=True, slots=True)
class BlindRecords:
    """A blind test as the helper knows it: what is drawn, what was ridden, and what A and B set."""

    parts: BikeParts
    session: Session
    plan: BlindPlan
    runs: tuple[Run, ...]
    setups: Mapping[str, Setup]  # by letter
    values: Mapping[str, Values]  # by letter

    @property
    def changes(self) -> tuple[Change, ...]:
        """What A and B differ in."""
        return tested(self.values["A"], self.values["B"])

    @property
    def place(self) -> int:
        """Which place of the order is to be ridden next, from 0."""
        return len(valid(self.runs))

    @property
    def is_ridden(self) -> bool:
        """Whether every run planned was kept."""
        return self.place >= len(self.plan.order)


def blind_records(session_id: str) -> Callable[[Reader], BlindRecords]:
    """Give the query for a blind test, order and all. Only the test's own screens ask it."""

    def query(reader: Reader) -> BlindRecords:
        session = reader.need(Session, session_id)
        plan = _plan(reader, session_id)
        setups = {letter: reader.need(Setup, setup_id) for letter, setup_id in setups_of(plan).items()}
        return BlindRecords(
            parts=read_parts(reader, session.bike_id),
            session=session,
            plan=plan,
            runs=reader.find(Run, session_id=session_id, order_by=("number",)),
            setups=setups,
            values={letter: read_values(reader, setup.id) for letter, setup in setups.items()},
        )

    return query


def _plan(reader: Reader, session_id: str) -> BlindPlan:
    plans = reader.find(BlindPlan, session_id=session_id)
    if not plans:
        raise InputError("Blind test", "no order", "a session whose order was drawn", "Start another blind test.")
    return plans[0]


def begin_blind(
    session: Session,
    a_id: str,
    *,
    pairs: int,
    seed: int,
    b_id: str = "",
    wanted: Values | None = None,
    draft_ids: tuple[str, ...] = (),
) -> Callable[[Gate], BlindPlan]:
    """Give the deed that starts a blind test: the order is drawn and sealed, and the log stops saying what is tested.

    B is a setup, or A with ``wanted`` on it, which becomes a setup of its own. Every pair of runs has both.
    """
    from workbench.evidence.blind import draw_order, plan_digest

    if not 1 <= pairs <= MOST_PAIRS:
        raise InputError("Pairs", pairs, f"1 to {MOST_PAIRS}")

    def deed(gate: Gate) -> BlindPlan:
        parts = read_parts(gate, session.bike_id)
        a = read_values(gate, a_id)
        b_setup = b_id or _changed(gate, parts, session.rider_id, a_id, {**a, **(wanted or {})})
        changes = _checked(parts, a, read_values(gate, b_setup))
        started = replace(
            session,
            id=new_id(),
            started_at=gate.now,
            start_setup_id=a_id,
            planned_runs=2 * pairs,
            is_blind=True,
            person_id=gate.person_id,
        )
        order = "".join(str(letter) for letter in draw_order(LETTERS, seed=seed, blocks=pairs))
        labels = labels_text(a_id, b_setup)
        digest = plan_digest(order, seed=seed, labels=(labels,), fixed_at=gate.now)
        plan = BlindPlan(new_id(), started.id, labels, order, seed, digest, gate.now)
        gate.put(started, plan)
        for change in changes:
            log_line(gate, session.bike_id, change.item, change.subject_id, None, CONCEALED)
        for draft_id in draft_ids:
            gate.remove_draft(draft_id)
        return plan

    return deed


def _checked(parts: BikeParts, a: Values, b: Values) -> tuple[Change, ...]:
    refused = unfit(parts, a, b)
    if refused:
        raise InputError("B", "this setup", "one that differs from A in one thing", refused)
    return tested(a, b)


def _changed(gate: Gate, parts: BikeParts, rider_id: str, a_id: str, wanted: Values) -> str:
    """Give the setup that sets just this: one there is, else a new one."""
    setups = find_setups(gate, parts.bike.id, rider_id)
    values = values_of(gate, setups)
    for setup in reversed(setups):
        if not changes_between(values[setup.id], wanted):
            return setup.id
    _checked(parts, values[a_id], wanted)
    return write_setup(gate, parts, rider_id, wanted, "change", parent_id=a_id).id


def keep_blind_run(
    session_id: str, run: Run, *, ratings: tuple[tuple[str, int, str], ...] = (), draft_id: str | None = None
) -> Callable[[Gate], Run]:
    """Give the deed that keeps a run of a blind test on the setup the order has for its place."""

    def deed(gate: Gate) -> Run:
        plan = _plan(gate, session_id)
        place = len(valid(gate.find(Run, session_id=session_id)))
        letter = letter_at(plan, place)
        if not letter or not is_concealed(plan):
            raise InputError("Run", place + 1, f"1 to {len(plan.order)}", "Every run of this test has been kept.")
        told = replace(run, session_id=session_id, setup_id=setups_of(plan)[letter], is_blind=True)
        return keep_run(told, ratings=ratings, draft_id=draft_id)(gate)

    return deed


def reveal(
    session_id: str, *, guesses: Mapping[int, int], was_set: bool = False, draft_ids: tuple[str, ...] = ()
) -> Callable[[Gate], None]:
    """Give the deed that ends a blind test and says what was ridden. It is not undone: what was seen was seen.

    ``guesses`` has for every pair, from 0, the run guessed to have had B: 0 its first, 1 its second. ``was_set`` says
    that the setup of the run not ridden any more had been put on already.
    """

    def deed(gate: Gate) -> None:
        records = blind_records(session_id)(gate)
        if not is_concealed(records.plan):
            raise InputError("Blind test", "revealed", "one not revealed yet")
        pairs = pairs_of(records.runs)
        for place, pair in enumerate(pairs):
            if guesses.get(place) not in (0, 1):
                raise InputError("Guess", f"none for pair {place + 1}", "one for every pair, before the reveal")
            for which, run in enumerate(pair):
                gate.put(replace(run, guess="B" if which == guesses[place] else "A"))
        gate.put(replace(records.plan, revealed_at=gate.now), replace(records.session, ended_at=gate.now))
        _log_again(gate, records, was_set=was_set)
        for draft_id in draft_ids:
            gate.remove_draft(draft_id)

    return deed


def _log_again(gate: Gate, records: BlindRecords, *, was_set: bool) -> None:
    """Let the log say again where what was tested stands: as last put on, or as before the test."""
    last = records.place if was_set and not records.is_ridden else records.place - 1
    letter = letter_at(records.plan, last) if last >= 0 else ""
    for change in records.changes:
        if letter:
            _log_set(gate, records, change, records.values[letter][change.item, change.subject_id])
        elif (line := _before(gate, records, change)) is not None:
            key = (records.session.bike_id, change.item, change.subject_id)
            log_line(gate, *key, line.value, line.how, range_id=line.range_id, temperature_c=line.temperature_c)


def _log_set(gate: Gate, records: BlindRecords, change: Change, value: float | None) -> None:
    count = records.parts.range_of(change.subject_id) if change.item == Item.ADJUSTER else None
    log_line(
        gate,
        records.session.bike_id,
        change.item,
        change.subject_id,
        value,
        "set_to",
        range_id=count.id if count else None,
        temperature_c=records.session.temperature_c if change.item in PRESSURE_ITEMS else None,
    )


def _before(gate: Gate, records: BlindRecords, change: Change) -> OnBike | None:
    """Give the line that held before the test."""
    lines = gate.find(
        OnBike,
        bike_id=records.session.bike_id,
        item=change.item,
        subject_id=change.subject_id,
        order_by=("-sequence",),
    )
    return next((line for line in lines if line.how != CONCEALED), None)

"""Adjusters: keep what was found, count the range, pass one over; log the springs and tyres as found."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.actions.parts import read_parts
from workbench.actions.put_back import adjuster_log, put_back
from workbench.library.gate import Gate, Reader
from workbench.model.adjuster import DEPENDS, PUSH_TESTS, Adjuster, RangeCount, adjuster_words
from workbench.model.bike import Skip, Station
from workbench.model.counting import check_steps, other_place, settled_range, skip_key
from workbench.model.errors import InputError
from workbench.model.facts import check_field, clean_text
from workbench.model.item_facts import ITEM_FIELDS
from workbench.model.job import sag_left
from workbench.model.parts import BikeParts
from workbench.model.put_back import line_before_measuring
from workbench.model.sag import SagMeasurement
from workbench.model.setting import PRESSURE_ITEMS, Item, OnBike
from workbench.model.steps import Step


@dataclass(frozen=True, slots=True)
class AdjusterRecords:
    """A bike with the whole log of its adjusters, those passed over (id -> reason), and what is to put back."""

    parts: BikeParts
    log: tuple[OnBike, ...] = ()
    skipped: dict[str, str] | None = None
    put_back: tuple[Step, ...] = ()
    has_sag_due: bool = False

    def latest(self, adjuster_id: str) -> OnBike | None:
        """Give the log line that holds now for an adjuster."""
        return self.parts.line(Item.ADJUSTER, adjuster_id)


def adjuster_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], AdjusterRecords]:
    """Give the query for all that the adjusters' sheet shows."""

    def query(reader: Reader) -> AdjusterRecords:
        parts = read_parts(reader, bike_id)
        reasons = {skip.station: skip.reason for skip in reader.find(Skip, bike_id=bike_id)}
        return AdjusterRecords(
            parts=parts,
            log=adjuster_log(reader, bike_id),
            skipped={one.id: reasons[skip_key(one.id)] for one in parts.adjusters if skip_key(one.id) in reasons},
            put_back=put_back(bike_id, rider_id)(reader),
            has_sag_due=Station.SAG not in reasons
            and bool(sag_left(parts, reader.find(SagMeasurement, bike_id=bike_id))),
        )

    return query


def keep_as_found(
    bike_id: str, adjuster_id: str, as_found: int | None, *, closes: bool = True
) -> Callable[[Gate], None]:
    """Give the deed that logs where an adjuster was found (None: not known) and that it stands closed now.

    It is done before anything is opened, so that the way back is on record whatever happens next.
    """
    found = None if as_found is None else float(check_steps(as_found))

    def deed(gate: Gate) -> None:
        log_line(gate, bike_id, Item.ADJUSTER, adjuster_id, found, "unknown" if found is None else "counted")
        if closes:
            log_line(gate, bike_id, Item.ADJUSTER, adjuster_id, 0.0, "closed")

    return deed


def close_to_count(bike_id: str, adjuster_id: str) -> Callable[[Gate], None]:
    """Give the deed that logs an adjuster closed for a new count; where it belongs is on record already."""

    def deed(gate: Gate) -> None:
        log_line(gate, bike_id, Item.ADJUSTER, adjuster_id, 0.0, "closed")

    return deed


def keep_range(
    bike_id: str, adjuster_id: str, counted_out: int, *, draft_id: str | None = None, push_felt: str | None = None
) -> Callable[[Gate], RangeCount]:
    """Give the deed that keeps a counted range and logs the adjuster as left open for sag.

    Where another adjuster stood meanwhile goes into the record, and what a push test showed.
    """

    def deed(gate: Gate) -> RangeCount:
        parts = read_parts(gate, bike_id)
        adjuster = gate.need(Adjuster, adjuster_id)
        generation = parts.generation(adjuster.unit_id)
        before = line_before_measuring(adjuster_log(gate, bike_id), adjuster_id)
        as_found = round(before.value) if before is not None and before.value is not None else None
        steps, note = settled_range(adjuster, as_found, counted_out)
        count = RangeCount(
            id=new_id(),
            adjuster_id=adjuster_id,
            generation_id=generation.id if generation else None,
            steps=steps,
            as_found=as_found,
            counted_at=gate.now,
            person_id=gate.person_id,
            push_felt=push_felt,
            note=" ".join(part for part in (note, _counted_with(parts, adjuster)) if part),
        )
        gate.put(count)
        log_line(gate, bike_id, Item.ADJUSTER, adjuster_id, float(steps), "opened", range_id=count.id)
        _take_up(gate, bike_id, adjuster_id)
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return count

    return deed


def _counted_with(parts: BikeParts, adjuster: Adjuster) -> str:
    other = parts.adjuster(adjuster.depends_on) if adjuster.depends_on else None
    if other is None or adjuster.depends_how == "drags":
        return ""
    return f"Counted with {adjuster_words(other)} {other_place(adjuster, other)}."


def say_push(count_id: str, felt: str | None) -> Callable[[Gate], None]:
    """Give the deed that says what a push test showed: pushed down with the adjuster closed and with it open."""
    if felt is not None and felt not in PUSH_TESTS:
        raise InputError("Push test", felt, ", ".join(PUSH_TESTS.values()))

    def deed(gate: Gate) -> None:
        gate.put(replace(gate.need(RangeCount, count_id), push_felt=felt))

    return deed


def depend_on(adjuster_id: str, how: str, position: int | None) -> Callable[[Gate], None]:
    """Give the deed that says how an adjuster depends on the other one, and where that one stands meanwhile."""
    if how not in DEPENDS:
        raise InputError("How they depend", how, ", ".join(DEPENDS.values()))
    if position is not None:
        check_steps(position)

    def deed(gate: Gate) -> None:
        adjuster = gate.need(Adjuster, adjuster_id)
        gate.put(replace(adjuster, depends_how=how, depends_position=None if how == "drags" else position))

    return deed


def skip_adjuster(
    bike_id: str, adjuster_id: str, reason: str, *, draft_id: str | None = None
) -> Callable[[Gate], None]:
    """Give the deed that passes one adjuster over, with the reason."""
    words = clean_text(reason)

    def deed(gate: Gate) -> None:
        _take_up(gate, bike_id, adjuster_id)
        gate.put(Skip(new_id(), bike_id, skip_key(adjuster_id), words, gate.now, gate.person_id))
        if draft_id is not None:
            gate.remove_draft(draft_id)

    return deed


def _take_up(gate: Gate, bike_id: str, adjuster_id: str) -> None:
    for skip in gate.find(Skip, bike_id=bike_id, station=skip_key(adjuster_id)):
        gate.delete(Skip, skip.id)


def log_found(bike_id: str, item: str, subject_id: str, value: float | None) -> Callable[[Gate], None]:
    """Give the deed that logs a spring or tyre as found: pressures as attached, all else as stated."""
    checked = check_field(ITEM_FIELDS[item], value)
    how = "as_attached" if item in PRESSURE_ITEMS else "stated"

    def deed(gate: Gate) -> None:
        number = None if checked is None else float(checked)
        log_line(gate, bike_id, item, subject_id, number, "unknown" if number is None else how)

    return deed


def count_earlier(adjuster_id: str) -> Callable[[Gate], None]:
    """Give the deed that moves an adjuster one place up in the counting order of its unit."""

    def deed(gate: Gate) -> None:
        moved = gate.need(Adjuster, adjuster_id)
        unit = gate.find(Adjuster, unit_id=moved.unit_id, archived_at=None, order_by=("counting_order",))
        place = [one.id for one in unit].index(adjuster_id)
        order = [*unit[: max(place - 1, 0)], moved, *(one for one in unit[max(place - 1, 0) :] if one.id != moved.id)]
        gate.put(*(replace(one, counting_order=rank) for rank, one in enumerate(order)))

    return deed


def wait_for(adjuster_id: str, other_id: str | None) -> Callable[[Gate], None]:
    """Give the deed that says which other adjuster stands open while this one is counted."""

    def deed(gate: Gate) -> None:
        adjuster = gate.need(Adjuster, adjuster_id)
        gate.put(replace(adjuster, depends_on=other_id, depends_how=None, depends_position=None))

    return deed

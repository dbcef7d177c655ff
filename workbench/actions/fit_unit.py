"""Put another fork or shock on a bike, a first one, or take one off: one deed, and nothing measured is lost."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.actions.garage import add_unit
from workbench.library.gate import Gate
from workbench.model.bike import FRONTS, REARS, RIGID, SPRING_OF, Bike, ends_of, layout_of
from workbench.model.errors import InputError, LibraryError
from workbench.model.facts import check_field, field_of
from workbench.model.ride import Session
from workbench.model.unit import Generation, Unit

NOUNS = {"front": "fork", "rear": "shock"}


def fit_unit(
    bike_id: str,
    end: str,
    kind: str,
    *,
    travel_mm: float | None = None,
    name: str = "",
    draft_ids: tuple[str, ...] = (),
) -> Callable[[Gate], Unit | None]:
    """Give the deed that fits what is to be at an end, or takes off what is there where that is *rigid*.

    What hung there keeps its adjusters, counts, sag and runs, and is never compared with what hangs there now: the new
    unit is hardware of its own, so its ranges and its sag fall due. Entries under way about the old one are closed.
    """
    kinds = FRONTS if end == "front" else REARS
    if kind not in kinds:
        raise InputError("kind", kind, ", ".join(kinds.values()))
    length = check_field(field_of(Unit, "travel_mm"), travel_mm)
    called = check_field(field_of(Unit, "name"), name)

    def deed(gate: Gate) -> Unit | None:
        earlier = _take_off(gate, bike_id, end, kind, draft_ids)
        if kind == RIGID:
            return None
        before = gate.find(Generation, unit_id=tuple(unit.id for unit in earlier)) if earlier else ()
        number = max((one.number for one in before), default=0) + 1
        fitted = add_unit(gate, bike_id, NOUNS[end], SPRING_OF[kind], length, number=number, reason="exchange")
        named = replace(fitted, name=called)
        gate.put(named)
        return named

    return deed


def refit_unit(unit_id: str, *, draft_ids: tuple[str, ...] = ()) -> Callable[[Gate], Unit]:
    """Give the deed that hangs a unit back that was taken off, as it was: its counts, sag and setups hold again."""

    def deed(gate: Gate) -> Unit:
        unit = gate.need(Unit, unit_id)
        if unit.removed_at is None:
            raise LibraryError(f"This {unit.kind} hangs on the bike already. Nothing was changed.")
        kind = next(kind for kind, spring in SPRING_OF.items() if spring == unit.spring)
        _take_off(gate, unit.bike_id, unit.end, kind, draft_ids)
        back = replace(unit, removed_at=None)
        gate.put(back)
        return back

    return deed


def settle_ends(gate: Gate, bike_id: str) -> None:
    """Leave one unit at each end, the one fitted last, where two garages have fitted one each; the layout follows.

    The same comes out on either side, whoever brings in first. One hung back counts from when it was first fitted, for
    when it came back is on no record of its own.
    """
    bike = gate.need(Bike, bike_id)
    ends = dict(zip(("front", "rear"), ends_of(bike.layout), strict=True))
    for end in ends:
        present = gate.find(Unit, bike_id=bike_id, end=end, removed_at=None)
        since = {unit.id: _fitted_at(gate, unit) for unit in present}
        in_order = sorted(present, key=lambda unit: (since[unit.id], unit.id))
        for unit in in_order[:-1]:
            gate.put(replace(unit, removed_at=since[in_order[-1].id]))
        spring = in_order[-1].spring if in_order else ""
        ends[end] = next((kind for kind, known in SPRING_OF.items() if known == spring), RIGID)
    gate.put(replace(bike, layout=layout_of(ends["front"], ends["rear"])))


def _fitted_at(gate: Gate, unit: Unit) -> str:
    return min((one.started_at for one in gate.find(Generation, unit_id=unit.id)), default="")


def _take_off(gate: Gate, bike_id: str, end: str, kind: str, draft_ids: tuple[str, ...]) -> tuple[Unit, ...]:
    """Take off what hangs at an end, say what comes there, and give all that ever hung there."""
    bike = gate.need(Bike, bike_id)
    _refuse_in_session(gate, bike_id, end)
    earlier = gate.find(Unit, bike_id=bike_id, end=end)
    present = [unit for unit in earlier if unit.removed_at is None]
    if kind == RIGID and not present:
        raise LibraryError(f"There is no {NOUNS[end]} to take off. Nothing was changed.")
    for unit in present:
        gate.put(replace(unit, removed_at=gate.now))
    front, rear = ends_of(bike.layout)
    layout = layout_of(kind, rear) if end == "front" else layout_of(front, kind)
    wheel = None if end == "rear" and kind == RIGID else bike.rear_travel_mm
    gate.put(replace(bike, layout=layout, rear_travel_mm=wheel))
    for draft_id in draft_ids:
        gate.remove_draft(draft_id)
    return earlier


def _refuse_in_session(gate: Gate, bike_id: str, end: str) -> None:
    if gate.find(Session, bike_id=bike_id, ended_at=None, limit=1):
        raise LibraryError(
            f"A session is open on this bike. End it first: another {NOUNS[end]} is no change between two runs."
        )

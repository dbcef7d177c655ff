"""The card: read what stands on it, and note that it was handed over."""

from __future__ import annotations

from collections.abc import Callable

from workbench.actions.checkin import read_open
from workbench.actions.ids import new_id
from workbench.actions.parts import read_parts
from workbench.actions.setups import read_values
from workbench.actions.wear import read_wear
from workbench.exchange.card import CardSheet, card_sheet
from workbench.exchange.card_checkin import hand_over_cares, hand_over_sections
from workbench.library.gate import Gate, Reader
from workbench.model.adjuster import RangeCount
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.put_back import MEASURING_HOWS
from workbench.model.sag import SagMeasurement
from workbench.model.service import CardIssue
from workbench.model.setting import OnBike, Setup, SetupValue


def card_of(setup_id: str, today: str, person_id: str | None) -> Callable[[Reader], CardSheet]:
    """Give the query for the card of a setup."""

    def query(reader: Reader) -> CardSheet:
        setup = reader.need(Setup, setup_id)
        parts = read_parts(reader, setup.bike_id)
        still_open = read_open(reader, setup.bike_id)
        wear, _ = read_wear(reader, parts, today)
        return card_sheet(
            parts,
            setup,
            read_values(reader, setup_id),
            found=_as_found(reader, setup.bike_id),
            ranges=_counted_under(reader, setup_id),
            sag=_sag_that_holds(reader, parts, setup.rider_id),
            rider=reader.get(Person, setup.rider_id),
            person=reader.get(Person, person_id) if person_id else None,
            handed_over=hand_over_sections(still_open, wear),
            cares=hand_over_cares(still_open),
            today=today,
        )

    return query


def _counted_under(reader: Reader, setup_id: str) -> dict[str, int]:
    """Give the steps of the count each position of a setup was taken under, whatever was counted since."""
    taken = {one.subject_id: one.range_id for one in reader.find(SetupValue, setup_id=setup_id) if one.range_id}
    steps = {count.id: count.steps for count in reader.find(RangeCount, id=tuple(taken.values()))}
    return {adjuster_id: steps[range_id] for adjuster_id, range_id in taken.items() if range_id in steps}


def _as_found(reader: Reader, bike_id: str) -> dict[tuple[str, str], OnBike]:
    """Give the first line of every item that is not merely a knob turned open for measuring."""
    found: dict[tuple[str, str], OnBike] = {}
    for line in reader.find(OnBike, bike_id=bike_id, order_by=("sequence",)):
        if line.how not in MEASURING_HOWS:
            found.setdefault((line.item, line.subject_id), line)
    return found


def _sag_that_holds(reader: Reader, parts: BikeParts, rider_id: str) -> tuple[SagMeasurement, ...]:
    newest = {}
    for one in reader.find(
        SagMeasurement, bike_id=parts.bike.id, rider_id=rider_id, is_kept=True, order_by=("measured_at",)
    ):
        generation = parts.generation(one.unit_id)
        if one.generation_id == (generation.id if generation else None):
            newest[one.unit_id] = one
    return tuple(newest.values())


def cards_of(bike_id: str) -> Callable[[Reader], tuple[CardIssue, ...]]:
    """Give the query for the cards handed over, oldest first."""

    def query(reader: Reader) -> tuple[CardIssue, ...]:
        return reader.find(CardIssue, bike_id=bike_id, order_by=("made_at",))

    return query


def hand_over(setup_id: str) -> Callable[[Gate], CardIssue]:
    """Give the deed that notes a card as handed over."""

    def deed(gate: Gate) -> CardIssue:
        setup = gate.need(Setup, setup_id)
        issue = CardIssue(new_id(), setup.bike_id, setup.rider_id, setup.id, gate.now, gate.person_id)
        gate.put(issue)
        return issue

    return deed

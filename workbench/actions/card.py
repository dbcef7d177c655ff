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
from workbench.model.reading import short_date
from workbench.model.sag import SagMeasurement
from workbench.model.service import CardIssue, CheckIn
from workbench.model.setting import OnBike, Setup, SetupValue

READ_HOWS = frozenset({"counted", "as_attached", "stated"})  # read off the bike, not set on it


def card_of(setup_id: str, today: str, person_id: str | None) -> Callable[[Reader], CardSheet]:
    """Give the query for the card of a setup."""

    def query(reader: Reader) -> CardSheet:
        setup = reader.need(Setup, setup_id)
        parts = read_parts(reader, setup.bike_id)
        still_open = read_open(reader, setup.bike_id)
        wear, _ = read_wear(reader, parts, today)
        since, words = _visit(reader, setup.bike_id)
        issues = reader.find(CardIssue, setup_id=setup_id, order_by=("-made_at",), limit=1)
        giver = reader.get(Person, issues[0].person_id) if issues and issues[0].person_id else None
        return card_sheet(
            parts,
            setup,
            read_values(reader, setup_id),
            found=_as_found(reader, setup.bike_id, since),
            ranges=_counted_under(reader, setup_id),
            sag=_sag_that_holds(reader, parts, setup.rider_id),
            rider=reader.get(Person, setup.rider_id),
            person=reader.get(Person, person_id) if person_id else None,
            handed_over=hand_over_sections(still_open, wear),
            cares=hand_over_cares(still_open),
            note=words,
            given_by=f"{giver.name}, {short_date(issues[0].made_at)}" if giver else "",
            today=today,
        )

    return query


def _counted_under(reader: Reader, setup_id: str) -> dict[str, int]:
    """Give the steps of the count each position of a setup was taken under, whatever was counted since."""
    taken = {one.subject_id: one.range_id for one in reader.find(SetupValue, setup_id=setup_id) if one.range_id}
    steps = {count.id: count.steps for count in reader.find(RangeCount, id=tuple(taken.values()))}
    return {adjuster_id: steps[range_id] for adjuster_id, range_id in taken.items() if range_id in steps}


def _visit(reader: Reader, bike_id: str) -> tuple[str, str]:
    """Say when this visit began, and in words: at the newest check-in, or at a later card that was ridden on from."""
    looked = [(one.made_at, "checked in") for one in reader.find(CheckIn, bike_id=bike_id)]
    last = reader.find(OnBike, bike_id=bike_id, order_by=("-sequence",), limit=1)
    ridden = last[0].at if last else ""
    given = [
        (one.made_at, "handed over last") for one in reader.find(CardIssue, bike_id=bike_id) if one.made_at < ridden
    ]
    if not looked and not given:
        return "", "As found: the first record of each item."
    since, what = max(looked + given)
    return since, f"As found: what stood on the bike when it was {what}, {short_date(since)}."


def _as_found(reader: Reader, bike_id: str, since: str) -> dict[tuple[str, str], OnBike]:
    """Give what stood on the bike when the visit began; what was only turned open for measuring does not count.

    The first line of the visit is as found if it was read off the bike, or if nothing is known from before.
    """
    found: dict[tuple[str, str], OnBike] = {}
    begun: set[tuple[str, str]] = set()
    for line in reader.find(OnBike, bike_id=bike_id, order_by=("sequence",)):
        key = (line.item, line.subject_id)
        if line.how in MEASURING_HOWS or key in begun:
            continue
        if not since or line.at >= since:
            begun.add(key)
            if key in found and line.how not in READ_HOWS:
                continue
        found[key] = line
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

"""Look through what was done: names for the list, and what must stay sealed."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from workbench.library.gate import Reader
from workbench.model.adjuster import Adjuster, adjuster_words
from workbench.model.bike import Bike, Photo, Tyre
from workbench.model.person import Person
from workbench.model.ride import BlindPlan, Session
from workbench.model.setting import Setup
from workbench.model.unit import Unit

END_WORDS = {"front": "Front", "rear": "Rear"}


def names_of(ids: tuple[str, ...]) -> Callable[[Reader], Mapping[str, str]]:
    """Give the query for the names of bikes, people, units, adjusters, tyres and setups among some ids."""

    def query(reader: Reader) -> Mapping[str, str]:
        adjusters = reader.find(Adjuster, id=ids)
        units = {one.id: one for one in reader.find(Unit, id=(*ids, *(one.unit_id for one in adjusters)))}
        names = {one.id: one.name for one in reader.find(Bike, id=ids)}
        names |= {one.id: one.name for one in reader.find(Person, id=ids)}
        names |= {one.id: one.kind.capitalize() for one in units.values() if one.id in ids}
        names |= {one.id: f"no. {one.number}" for one in reader.find(Setup, id=ids)}
        names |= {one.id: f"{END_WORDS[one.end]} tyre" for one in reader.find(Tyre, id=ids)}
        names |= {one.id: f"{units[one.unit_id].kind.capitalize()} {adjuster_words(one)}" for one in adjusters}
        return names

    return query


def photos_of(ids: tuple[str, ...]) -> Callable[[Reader], tuple[Photo, ...]]:
    """Give the query for the pictures among some ids that still hang on their bike."""
    return lambda reader: reader.find(Photo, id=ids) if ids else ()


def names_of_many(people: tuple[str, ...], bikes: tuple[str, ...]) -> Callable[[Reader], Mapping[str, str]]:
    """Give the query for the names of people and bikes, which may be thousands: all are read, not each asked for."""

    def query(reader: Reader) -> Mapping[str, str]:
        wanted = {*people, *bikes}
        every = (*reader.values(Person, ("id", "name")), *reader.values(Bike, ("id", "name")))
        return {key: name for key, name in every if key in wanted}

    return query


def sealed_since(bike_id: str) -> Callable[[Reader], str]:
    """Give the query for when the bike's oldest blind test under way was drawn; empty when none is."""

    def query(reader: Reader) -> str:
        sessions = tuple(one.id for one in reader.find(Session, bike_id=bike_id))
        plans = reader.find(BlindPlan, session_id=sessions, revealed_at=None, order_by=("fixed_at",))
        return plans[0].fixed_at if plans else ""

    return query

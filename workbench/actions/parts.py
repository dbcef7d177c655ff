"""Read a bike with everything on it."""

from __future__ import annotations

from collections.abc import Callable

from workbench.library.gate import Reader
from workbench.model.adjuster import Adjuster, RangeCount
from workbench.model.bike import Bike, BikeRider, Tyre
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.setting import OnBike, latest
from workbench.model.unit import Generation, Unit, Valve

_END_ORDER = {"front": 0, "rear": 1}


def bike_parts(bike_id: str) -> Callable[[Reader], BikeParts]:
    """Give the query for one bike and everything on it."""

    def query(reader: Reader) -> BikeParts:
        return read_parts(reader, bike_id)

    return query


def read_parts(reader: Reader, bike_id: str) -> BikeParts:
    """Read one bike and everything on it."""
    every = reader.find(Unit, bike_id=bike_id)
    units = sorted((unit for unit in every if unit.removed_at is None), key=lambda unit: _END_ORDER[unit.end])
    former = sorted((unit for unit in every if unit.removed_at), key=lambda unit: unit.removed_at or "", reverse=True)
    unit_ids = tuple(unit.id for unit in every)
    rank = {unit.id: place for place, unit in enumerate((*units, *former))}
    listed = sorted(
        (adjuster for adjuster in reader.find(Adjuster, unit_id=unit_ids) if adjuster.archived_at is None),
        key=lambda adjuster: (rank[adjuster.unit_id], adjuster.counting_order, adjuster.id),
    )
    adjusters = [adjuster for adjuster in listed if rank[adjuster.unit_id] < len(units)]
    links = sorted(reader.find(BikeRider, bike_id=bike_id), key=lambda link: (not link.is_main, link.id))
    people = {person.id: person for person in reader.find(Person, id=tuple(link.person_id for link in links))}
    ranges = reader.find(RangeCount, adjuster_id=tuple(adjuster.id for adjuster in adjusters))
    return BikeParts(
        bike=reader.need(Bike, bike_id),
        riders=tuple(people[link.person_id] for link in links if link.person_id in people),
        units=tuple(units),
        generations=reader.find(Generation, unit_id=unit_ids),
        adjusters=tuple(adjusters),
        tyres=tuple(sorted(reader.find(Tyre, bike_id=bike_id), key=lambda tyre: _END_ORDER[tyre.end])),
        ranges=tuple(sorted(ranges, key=lambda count: (count.counted_at, count.id))),
        former=tuple(former),
        former_adjusters=tuple(listed[len(adjusters) :]),
        now=tuple(latest(reader.find(OnBike, bike_id=bike_id)).values()),
        valves=reader.find(Valve, unit_id=unit_ids, order_by=("id",)),
    )

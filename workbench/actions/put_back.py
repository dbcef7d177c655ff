"""Read what has to go back to its place after measuring; each step is then taken as any setup's step is."""

from __future__ import annotations

from collections.abc import Callable

from workbench.actions.parts import read_parts
from workbench.actions.setups import find_setups, read_values
from workbench.library.gate import Reader
from workbench.model.put_back import put_back_steps
from workbench.model.setting import Item, OnBike
from workbench.model.steps import Step


def put_back(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], tuple[Step, ...]]:
    """Give the query for the put-back list of a bike.

    A rider's newest setup says where things belong; without a rider the bike's newest one does.
    """

    def query(reader: Reader) -> tuple[Step, ...]:
        setups = find_setups(reader, bike_id, rider_id)
        return put_back_steps(
            read_parts(reader, bike_id),
            adjuster_log(reader, bike_id),
            read_values(reader, setups[-1].id) if setups else None,
        )

    return query


def adjuster_log(reader: Reader, bike_id: str) -> tuple[OnBike, ...]:
    """Read everything ever logged about the bike's adjusters, oldest first."""
    return reader.find(OnBike, bike_id=bike_id, item=Item.ADJUSTER.value, order_by=("sequence",))

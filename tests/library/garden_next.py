"""The small schema one step later: parts have a mass, which is written down for every part."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from tests.library import garden as before
from workbench.library.schema import Ref, new_metadata, record_table


@dataclass(frozen=True, slots=True)
class Part:
    id: str
    bike_id: str
    place: Literal["front", "rear", "post"]
    mass_g: float
    position: int = 0
    photo: bytes | None = None


garden_next = new_metadata()
record_table(
    garden_next,
    "bike",
    before.Bike,
    refs={"main_part_id": Ref("part"), "twin_id": Ref("bike")},
    bike="id",
)
record_table(
    garden_next,
    "part",
    Part,
    refs={"bike_id": Ref("bike", owner=True)},
    unique=[("bike_id", "place")],
    bike="bike_id",
)
record_table(garden_next, "reading", before.Reading, refs={"part_id": Ref("part", owner=True)}, bike=("part_id",))
record_table(
    garden_next,
    "ride",
    before.Ride,
    refs={"bike_id": Ref("bike"), "part_id": Ref("part")},
    indexes=["rider"],
    bike="bike_id",
)

"""A small schema for tests: cycles, owners, a self-reference, every column type; nothing of the real one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from workbench.library.schema import Ref, new_metadata, record_table


@dataclass(frozen=True, slots=True)
class Bike:
    id: str
    name: str
    main_part_id: str | None = None
    mass_kg: float | None = None
    archived: bool = False
    twin_id: str | None = None


@dataclass(frozen=True, slots=True)
class Part:
    id: str
    bike_id: str
    place: Literal["front", "rear", "post"]
    position: int = 0
    photo: bytes | None = None

    def __post_init__(self) -> None:
        if self.position < 0:
            raise ValueError("position below 0")


@dataclass(frozen=True, slots=True)
class Reading:
    id: str
    part_id: str
    sag_mm: float
    note: str = ""


@dataclass(frozen=True, slots=True)
class Ride:
    id: str
    bike_id: str
    part_id: str | None = None
    rider: str = ""


garden = new_metadata()
record_table(
    garden,
    "bike",
    Bike,
    refs={"main_part_id": Ref("part"), "twin_id": Ref("bike")},
    bike="id",
)
record_table(
    garden,
    "part",
    Part,
    refs={"bike_id": Ref(Bike, owner=True)},
    unique=[("bike_id", "place")],
    bike="bike_id",
)
record_table(garden, "reading", Reading, refs={"part_id": Ref(Part, owner=True)}, bike=("part_id",))
record_table(garden, "ride", Ride, refs={"bike_id": Ref(Bike), "part_id": Ref(Part)}, indexes=["rider"], bike="bike_id")

"""The baseline: what it begins from, and the setups there are."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from workbench.actions.parts import read_parts
from workbench.actions.setups import Values, find_setups, next_number, read_values
from workbench.library.gate import Reader
from workbench.model.baseline import Proposed, propose_baseline
from workbench.model.parts import BikeParts
from workbench.model.setting import OnBike, Setup
from workbench.model.steps import Step, steps_to


@dataclass(frozen=True, slots=True)
class BaselineRecords:
    """What the baseline sheet is made from."""

    parts: BikeParts
    proposed: tuple[Proposed, ...]
    setups: tuple[Setup, ...]  # of this rider
    number: int  # which the bike's next setup gets
    newest: Values  # what the newest setup sets; empty while there is none
    steps: tuple[Step, ...]  # from the bike as it is to the newest setup


def baseline_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], BaselineRecords]:
    """Give the query for the baseline of a bike with one rider, the main one by default."""

    def query(reader: Reader) -> BaselineRecords:
        parts = read_parts(reader, bike_id)
        rider = parts.rider(rider_id)
        setups = find_setups(reader, bike_id, rider.id if rider else None)
        newest = read_values(reader, setups[-1].id) if setups else {}
        log = reader.find(OnBike, bike_id=bike_id, order_by=("sequence",))
        return BaselineRecords(
            parts=parts,
            proposed=propose_baseline(parts, log),
            setups=setups,
            number=next_number(reader, bike_id),
            newest=newest,
            steps=steps_to(parts, newest),
        )

    return query

"""Pumps: which there are, and what two attachments of one tell about its hose."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from itertools import pairwise

from workbench.actions.ids import new_id
from workbench.actions.on_bike import log_line
from workbench.library.gate import Gate, Reader
from workbench.model.errors import NotEnoughData
from workbench.model.facts import check_field, field_of
from workbench.model.setting import Item, OnBike
from workbench.model.unit import Pump

AT_ONCE = timedelta(hours=1)  # two attachments this close tell of the hose and not of a leak


def find_pumps(reader: Reader) -> tuple[Pump, ...]:
    """Read the pumps in use, by name."""
    found = [pump for pump in reader.find(Pump) if pump.archived_at is None]
    return tuple(sorted(found, key=lambda pump: (pump.name.casefold(), pump.id)))


def add_pump(name: str) -> Callable[[Gate], Pump]:
    """Give the deed that adds a pump."""
    checked = str(check_field(field_of(Pump, "name"), name))

    def deed(gate: Gate) -> Pump:
        pump = Pump(new_id(), checked)
        gate.put(pump)
        return pump

    return deed


def note_attachments(
    bike_id: str,
    unit_id: str,
    pump_id: str,
    first_kpa: float,
    second_kpa: float,
    *,
    first_how: str = "as_pumped",
    temperature_c: float | None = None,
) -> Callable[[Gate], None]:
    """Give the deed that logs a pressure and what the same pump showed when it was attached again at once."""

    def deed(gate: Gate) -> None:
        for kpa, how in ((first_kpa, first_how), (second_kpa, "as_attached")):
            log_line(gate, bike_id, Item.PRESSURE, unit_id, kpa, how, temperature_c=temperature_c, pump_id=pump_id)

    return deed


def pressure_log(reader: Reader, bike_id: str) -> tuple[OnBike, ...]:
    """Read every line about the main pressure of a bike's units, oldest first."""
    return reader.find(OnBike, bike_id=bike_id, item=Item.PRESSURE.value, order_by=("sequence",))


def hose_shares(log: Sequence[OnBike], unit_id: str, pump_id: str) -> tuple[float, ...]:
    """Learn the hose's share from every two attachments of a pump to a unit, one right after the other."""
    from workbench.physics.hose import hose_share

    lines = [one for one in log if one.subject_id == unit_id and one.item == Item.PRESSURE]
    shares = []
    for first, second in pairwise(lines):
        same = first.pump_id == second.pump_id == pump_id and first.temperature_c == second.temperature_c
        if not same or second.how != "as_attached" or not first.value or not second.value:
            continue
        if datetime.fromisoformat(second.at) - datetime.fromisoformat(first.at) > AT_ONCE:
            continue
        try:
            shares.append(hose_share(first.value, second.value))
        except NotEnoughData:
            continue
    return tuple(shares)

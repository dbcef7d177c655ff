"""The log of what is on the bike: written whenever something is set, read whenever steps are listed."""

from __future__ import annotations

from collections.abc import Callable

from workbench.actions.ids import new_id
from workbench.library.gate import Gate, Reader
from workbench.model.setting import OnBike, latest


def now_on(reader: Reader, bike_id: str) -> dict[tuple[str, str], OnBike]:
    """Give the line that holds now for every item of the bike."""
    return latest(reader.find(OnBike, bike_id=bike_id))


def log_line(
    gate: Gate,
    bike_id: str,
    item: str,
    subject_id: str,
    value: float | None,
    how: str,
    *,
    range_id: str | None = None,
    temperature_c: float | None = None,
    pump_id: str | None = None,
) -> OnBike:
    """Write one line into the log."""
    last = gate.find(OnBike, bike_id=bike_id, order_by=("-sequence",), limit=1)
    line = OnBike(
        id=new_id(),
        bike_id=bike_id,
        at=gate.now,
        sequence=last[0].sequence + 1 if last else 1,
        item=item,
        subject_id=subject_id,
        value=None if value is None else float(value),
        how=how,
        range_id=range_id,
        temperature_c=temperature_c,
        pump_id=pump_id,
        person_id=gate.person_id,
        deed_id=gate.deed_id,
    )
    gate.put(line)
    return line


def set_item(
    bike_id: str,
    item: str,
    subject_id: str,
    value: float | None,
    how: str,
    *,
    range_id: str | None = None,
    temperature_c: float | None = None,
    pump_id: str | None = None,
) -> Callable[[Gate], OnBike]:
    """Give the deed that logs one setting as it now stands on the bike."""

    def deed(gate: Gate) -> OnBike:
        return log_line(
            gate,
            bike_id,
            item,
            subject_id,
            value,
            how,
            range_id=range_id,
            temperature_c=temperature_c,
            pump_id=pump_id,
        )

    return deed

"""Facts of a record as rows of a form: label, value, unit, choices."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from workbench.model.facts import FACTS, Field, question
from workbench.viewmodels.shown import Units

_KINDS = {"text": "text", "pressure_table": "text", "note": "note", "choice": "choice", "flag": "flag"}


@dataclass(frozen=True, slots=True)
class FactRow:
    """One fact ready to be drawn. ``kind`` is text, note, choice, flag or quantity."""

    record_id: str
    name: str
    label: str
    kind: str
    value: Any
    quantity: str = ""
    unit: str = ""
    choices: tuple[tuple[str, str], ...] = ()
    help: str = ""
    low: float | None = None
    high: float | None = None
    typed: str = ""  # text that could not be read, as it was left


def fact_row(
    field: Field, record: Any, units: Units, *, label: str = "", choices: Mapping[str, str] | None = None
) -> FactRow:
    """Make the row of one fact."""
    value = getattr(record, field.name)
    kind = _KINDS.get(field.quantity, "quantity")
    options = choices if choices is not None else field.choices
    return FactRow(
        record_id=record.id,
        name=field.name,
        label=label or field.label,
        kind=kind,
        value=value,
        quantity=field.quantity if kind == "quantity" else "",
        unit=units.unit(field.quantity) if kind == "quantity" else "",
        choices=tuple(options.items()) if options else (),
        help=(question(field, value) if kind == "quantity" else "") or field.help,
        low=field.low if kind == "quantity" else None,
        high=field.high if kind == "quantity" else None,
    )


def fact_rows(
    record: Any, units: Units, *, names: Sequence[str] = (), labels: Mapping[str, str] | None = None
) -> tuple[FactRow, ...]:
    """Make the rows of a record's facts, all of them or those named, in the order asked for."""
    fields = FACTS[type(record)]
    if names:
        by_name = {field.name: field for field in fields}
        fields = tuple(by_name[name] for name in names)
    return tuple(fact_row(field, record, units, label=(labels or {}).get(field.name, "")) for field in fields)

"""One fact changed: the deed behind every fact field."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from workbench.library.gate import Gate
from workbench.model.chamber_sizes import check_sizes
from workbench.model.facts import check_field, check_limits, field_of
from workbench.model.unit import Unit


def edit(record_type: type, record_id: str, name: str, value: Any) -> Callable[[Gate], None]:
    """Give the deed that sets one field of one record, checked against its declaration."""
    checked = check_field(field_of(record_type, name), value)

    def deed(gate: Gate) -> None:
        record: Any = gate.need(record_type, record_id)
        changed = replace(record, **{name: checked})
        check_limits(changed, name)
        if isinstance(changed, Unit):
            check_sizes(changed, name)
        gate.put(changed)

    return deed

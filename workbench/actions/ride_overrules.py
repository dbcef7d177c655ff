"""When a rider goes elsewhere than proposed: how often, and what they are after."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.library.gate import Gate, Reader
from workbench.model.ride import Overrule


def say_after(session_id: str, goal: str) -> Callable[[Gate], None]:
    """Give the deed that notes what the rider is after, with the last time they went their own way."""

    def deed(gate: Gate) -> None:
        for last in gate.find(Overrule, session_id=session_id, order_by=("-at",), limit=1):
            gate.put(replace(last, reason=goal))

    return deed


def goal_in(session_id: str) -> Callable[[Reader], str]:
    """Give the query for what the rider is after, as said last in the session; empty if nobody asked."""

    def query(reader: Reader) -> str:
        said = [one.reason for one in reader.find(Overrule, session_id=session_id, order_by=("-at",)) if one.reason]
        return said[0] if said else ""

    return query


def overrules_in(session_id: str) -> Callable[[Reader], int]:
    """Give the query for how often the rider went elsewhere than proposed."""

    def query(reader: Reader) -> int:
        return reader.count(Overrule, session_id=session_id)

    return query

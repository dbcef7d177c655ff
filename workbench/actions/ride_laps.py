"""Lap times written to the runs of a session afterwards."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from workbench.library.gate import Gate
from workbench.model.errors import InputError
from workbench.model.responses import check_lap
from workbench.model.ride import Run


def write_laps(session_id: str, laps: Mapping[str, float]) -> Callable[[Gate], int]:
    """Give the deed that writes lap times [s] to runs of a session, by run; it says to how many."""
    for lap_s in laps.values():
        check_lap(lap_s)

    def deed(gate: Gate) -> int:
        for run_id, lap_s in laps.items():
            run = gate.need(Run, run_id)
            if run.session_id != session_id:
                raise InputError("Run", run.number, "a run of the session picked")
            gate.put(replace(run, lap_s=lap_s))
        return len(laps)

    return deed

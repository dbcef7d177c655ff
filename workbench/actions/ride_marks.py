"""Putting runs right afterwards: what was found out later about several of them at once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from workbench.library.gate import Gate
from workbench.model.errors import InputError
from workbench.model.facts import check_field, field_of
from workbench.model.ride import LEVERS, Run


def mark_runs(run_ids: tuple[str, ...], *, reason: str, lever: str = "") -> Callable[[Gate], tuple[Run, ...]]:
    """Give the deed that sets runs aside for a reason; with none they count again.

    ``lever`` says where the lever stood if it was not where it belongs. Such a run stood otherwise than its setup
    says, so it is set aside as well; they stay on record, in their order, with their ratings.
    """
    if lever and lever not in LEVERS:
        raise InputError("Lever", lever, " or ".join(LEVERS))
    said = str(check_field(field_of(Run, "set_aside_reason"), reason))

    def deed(gate: Gate) -> tuple[Run, ...]:
        marked = []
        for run_id in run_ids:
            run = gate.need(Run, run_id)
            kept = replace(run, lever=lever, is_set_aside=bool(said), set_aside_reason=said)
            gate.put(kept)
            marked.append(kept)
        return tuple(marked)

    return deed

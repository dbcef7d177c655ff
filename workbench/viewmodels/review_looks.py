"""How often a session was looked at before its planned end: noted, because looking often finds something by luck."""

from __future__ import annotations

import json

from workbench.actions.desk import Desk
from workbench.actions.ride import SessionRecords
from workbench.actions.ride_evidence import counted
from workbench.model.errors import WorkbenchError
from workbench.viewmodels.review_basis import is_before_end
from workbench.viewmodels.shown import how_many


def looks_at(desk: Desk, *session_ids: str) -> tuple[int, ...]:
    """Give after how many runs some sessions were looked at, look by look."""
    kept = desk.settings(tuple(_key(one) for one in session_ids))
    return tuple(int(one) for text in kept.values() for one in json.loads(text))


def note_look(desk: Desk, sessions: tuple[SessionRecords, ...]) -> None:
    """Note a look at each session under way that has runs; the same runs looked at again are no new look.

    It is kept beside the records, so that undo leaves it alone; where nothing can be kept it is not noted.
    """
    for one in sessions:
        runs = len(counted(one))
        if not runs or not is_before_end(one):
            continue
        known = looks_at(desk, one.session.id)
        if known and known[-1] == runs:
            continue
        try:
            desk.set_setting(_key(one.session.id), json.dumps([*known, runs]))
        except WorkbenchError:
            return


def looks_words(desk: Desk, sessions: tuple[SessionRecords, ...]) -> str:
    """Say how often was looked before the end; empty if never."""
    count = len(looks_at(desk, *(one.session.id for one in sessions)))
    if not count:
        return ""
    end = "the planned end" if any(one.session.planned_runs for one in sessions) else "the end"
    return f"Looked at {how_many(count, 'time')} before {end}."


def _key(session_id: str) -> str:
    return f"looks/{session_id}"

"""What is half entered on a bike, said in a few words for the garage list."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from workbench.actions.desk import Draft
from workbench.model.adjuster import adjuster_words
from workbench.model.job import STATION_WORDS
from workbench.model.parts import BikeParts
from workbench.viewmodels.window_state import DRAFT_STATIONS

_PLAIN: Mapping[str, str] = {
    "checkin": "mid-check-in",
    "baseline": "mid-baseline",
    "session": "session half set up",
    "run": "run half entered",
    "session_notes": "notes half entered",
    "blind_plan": "blind test half planned",
    "blind_run": "mid-run, blind",
    "blind_guess": "mid-guess, blind",
}


def known_drafts(drafts: Sequence[Draft]) -> tuple[Draft, ...]:
    """Give the entries a bike can be resumed at, the last edited first."""
    return tuple(draft for draft in drafts if draft.kind in DRAFT_STATIONS)


def under_way_text(drafts: Sequence[Draft], parts: BikeParts) -> str:
    """Say where a bike was left: mid-count, fork rebound. Further entries are only counted."""
    found = known_drafts(drafts)
    if not found:
        return ""
    more = f", and {len(found) - 1} more" if len(found) > 1 else ""
    return f"{_words(found[0], parts)}{more}"


def _words(draft: Draft, parts: BikeParts) -> str:
    subject = draft.subject or ""
    adjuster = parts.adjuster(subject)
    if draft.kind == "count" and adjuster is not None:
        return f"mid-count, {parts.unit_of(adjuster).kind} {adjuster_words(adjuster)}"
    unit = next((unit for unit in parts.units if unit.id == subject), None)
    if draft.kind == "sag" and unit is not None:
        return f"mid-sag, {unit.end}"
    station = STATION_WORDS[DRAFT_STATIONS[draft.kind]].lower()
    return _PLAIN.get(draft.kind, f"{station}: entry under way")

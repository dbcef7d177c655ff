"""All that the adjusters' sheet shows, resolved from the records and what is chosen on it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.actions.adjusters import AdjusterRecords
from workbench.model.counting import SKIP_REASONS, next_to_count
from workbench.viewmodels.adjusters_count import CountDraft, CountState, begun, lower_title, resolve_count
from workbench.viewmodels.adjusters_edit import EditState, resolve_edit
from workbench.viewmodels.adjusters_list import Group, PutBackRow, put_back_rows, resolve_groups
from workbench.viewmodels.shown import Units


@dataclass(frozen=True, slots=True)
class Choices:
    """What is chosen on the sheet and stands on no record."""

    counting: str = ""  # the adjuster being counted
    editing: str = ""  # the adjuster whose facts are open
    last_kept: str = ""  # what was just kept of the adjuster counted before


@dataclass(frozen=True, slots=True)
class AdjustersState:
    """The list, and the counting of one adjuster if it is under way on the sheet."""

    bike_id: str = ""
    groups: tuple[Group, ...] = ()
    put_back: tuple[PutBackRow, ...] = ()
    progress: str = ""
    next_id: str = ""
    next_text: str = ""
    count: CountState | None = None
    edit: EditState | None = None
    skip_reasons: tuple[str, ...] = SKIP_REASONS


def resolve(
    records: AdjusterRecords,
    drafts: Mapping[str, CountDraft],
    typed: Mapping[str, str],
    choices: Choices,
    units: Units,
) -> AdjustersState:
    """Lay out the sheet; ``drafts`` are the counts under way by adjuster, ``typed`` texts that could not be read."""
    parts = records.parts
    counted, edited = parts.adjuster(choices.counting), parts.adjuster(choices.editing)
    next_id, next_text = _next(records, drafts)
    count = None
    if counted is not None:
        draft = drafts.get(counted.id) or begun(records, counted.id)
        count = resolve_count(records, counted, draft, choices.last_kept)
    return AdjustersState(
        bike_id=parts.bike.id,
        groups=resolve_groups(records, frozenset(drafts), units, typed),
        put_back=put_back_rows(records.put_back),
        progress=_progress(records),
        next_id=next_id,
        next_text=next_text,
        count=count,
        edit=resolve_edit(parts, edited, units) if edited else None,
    )


def _next(records: AdjusterRecords, drafts: Mapping[str, CountDraft]) -> tuple[str, str]:
    parts = records.parts
    under_way = next((one for one in parts.adjusters if one.id in drafts), None)
    if under_way is not None:
        return under_way.id, f"Go on with {lower_title(parts, under_way)}"
    ahead = next_to_count(parts, records.skipped or {})
    return (ahead.id, f"Count {lower_title(parts, ahead)}") if ahead else ("", "")


def _progress(records: AdjusterRecords) -> str:
    adjusters = records.parts.adjusters
    if not adjusters:
        return "No adjusters yet. Add the ones this bike has; without any there is nothing to count."
    done = sum(records.parts.range_of(one.id) is not None for one in adjusters)
    skipped = len(records.skipped or {})
    return f"{done} of {len(adjusters)} counted" + (f", {skipped} passed over" if skipped else "")

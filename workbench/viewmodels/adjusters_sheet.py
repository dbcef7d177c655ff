"""All that the adjusters' sheet shows, resolved from the records and what is chosen on it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.actions.adjusters import AdjusterRecords
from workbench.model.counting import SKIP_REASONS, next_to_count
from workbench.viewmodels.adjusters_count import CountDraft, CountState, lower_title, resolve_count
from workbench.viewmodels.adjusters_edit import EditState, resolve_edit
from workbench.viewmodels.adjusters_list import Group, resolve_groups
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import StepLine, step_lines

NOT_IN_PLACE = "These do not stand where they belong: do not ride like this."
UNTIL_SAG = "They stand open for sag. If sag has to wait, put them back now: do not ride like this."


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
    put_back: tuple[StepLine, ...] = ()
    put_back_note: str = ""
    progress: str = ""
    next_id: str = ""
    next_text: str = ""
    next_station: str = ""  # where the next thing to do is, when nothing is left here
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
    next_id, next_text, next_station = _next(records, drafts)
    count = resolve_count(records, counted, drafts.get(counted.id), choices.last_kept) if counted else None
    return AdjustersState(
        bike_id=parts.bike.id,
        groups=resolve_groups(records, frozenset(drafts), units, typed),
        put_back=step_lines(records.put_back, units),
        put_back_note=_put_back_note(records),
        progress=_progress(records),
        next_id=next_id,
        next_text=next_text,
        next_station=next_station,
        count=count,
        edit=resolve_edit(parts, edited, units, typed) if edited else None,
    )


def _next(records: AdjusterRecords, drafts: Mapping[str, CountDraft]) -> tuple[str, str, str]:
    """Give the adjuster to count next, the words for it, and the station to go to when none is left."""
    parts = records.parts
    under_way = next((one for one in parts.adjusters if one.id in drafts), None)
    if under_way is not None:
        return under_way.id, f"Go on with {lower_title(parts, under_way)}", ""
    if (ahead := next_to_count(parts, records.skipped or {})) is not None:
        return ahead.id, f"Count {lower_title(parts, ahead)}", ""
    return ("", "Measure sag", "sag") if records.has_sag_due else ("", "", "")


def _put_back_note(records: AdjusterRecords) -> str:
    if not records.put_back:
        return ""
    lines = [records.latest(step.subject_id) for step in records.put_back]
    all_open = all(line is not None and line.how == "opened" for line in lines)
    return UNTIL_SAG if records.has_sag_due and all_open else NOT_IN_PLACE


def _progress(records: AdjusterRecords) -> str:
    adjusters = records.parts.adjusters
    if not adjusters:
        return "No adjusters yet. Add the ones this bike has; without any there is nothing to count."
    done = sum(records.parts.range_of(one.id) is not None for one in adjusters)
    skipped = len(records.skipped or {})
    return f"{done} of {len(adjusters)} counted" + (f", {skipped} passed over" if skipped else "")

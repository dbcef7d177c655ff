"""All that the check-in sheet shows, resolved from records and the entry under way."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.checkin import CheckInRecords
from workbench.model.check_list import Check
from workbench.model.checkin import (
    ATTEND,
    DEPTHS,
    OVERRULE_REASONS,
    SEVERITIES,
    STOP,
    OpenItem,
    can_overrule,
    declined_sentence,
    overruled_sentence,
    stop_words,
    stopping,
)
from workbench.model.checks import AREAS, CARE, checks_for, measured_verdict, nominal_mm
from workbench.model.errors import InputError
from workbench.model.pictures import Picture
from workbench.model.wear import Wear
from workbench.viewmodels.checkin_draft import CheckInDraft, Entry, entry_problem, read_measured
from workbench.viewmodels.checkin_wear import WearRow, hours_text, state_words, wear_rows
from workbench.viewmodels.shown import Units, how_many, short_date

SEVERITY_KEYS = tuple(enumerate(SEVERITIES.items(), start=1))  # place, (code, word)
SERVICE_REASONS = ("Is due", "Rider does it", "Next visit")


@dataclass(frozen=True, slots=True)
class CheckRow:
    """One thing to look at, with what is entered of it."""

    code: str
    area: str
    title: str
    how: str
    severity: str = ""
    reasons: tuple[str, ...] = ()
    reason: str = ""
    note: str = ""
    is_declined: bool = False
    measures: str = ""
    measured: str = ""
    unit: str = ""
    said: str = ""  # what the length measured means
    carried: str = ""  # what an earlier check-in left open
    problem: str = ""
    asks: bool = False
    photo: str = ""  # the SHA-256 of its picture, a new one or the one carried forward
    is_photo_new: bool = False


@dataclass(frozen=True, slots=True)
class OpenRow:
    """One line of the hand-over list."""

    item_id: str
    code: str
    title: str
    severity: str
    word: str
    found: str
    remark: str = ""
    is_declined: bool = False
    can_overrule: bool = False
    is_grave_stop: bool = False
    photo: str = ""  # the SHA-256 of its picture


@dataclass(frozen=True, slots=True)
class CheckInState:
    """Either a check-in being written, or what is known so far."""

    is_writing: bool = False
    title: str = "Check-in"
    subtitle: str = ""
    depth: str = "quick"
    rows: tuple[CheckRow, ...] = ()
    left: int = 0
    bothers: str = ""
    last_done: str = ""
    positions: str = ""
    positions_left: bool = False
    can_go_full: bool = False
    was_checked: bool = False
    last: tuple[tuple[str, str], ...] = ()
    open_rows: tuple[OpenRow, ...] = ()
    stop: str = ""
    care: str = CARE
    wear: tuple[WearRow, ...] = ()
    hours: str = ""
    hours_value: float | None = None
    overrule_by: str = ""
    overrule_reasons: tuple[str, ...] = OVERRULE_REASONS


def resolve(
    records: CheckInRecords, draft: CheckInDraft | None, units: Units, *, overrule_by: str = ""
) -> CheckInState:
    """Lay the sheet out."""
    return _writing(records, draft, units) if draft is not None else _known(records, overrule_by)


def codes_of(records: CheckInRecords, depth: str) -> tuple[str, ...]:
    """List what is looked at, in order, the services that fall due last."""
    return tuple(one.code for one in checks_for(records.parts, depth)) + tuple(one.code for one in _due(records))


def due_codes(records: CheckInRecords) -> tuple[str, ...]:
    """List the services that fall due."""
    return tuple(one.code for one in _due(records))


def effective(draft: CheckInDraft, records: CheckInRecords) -> CheckInDraft:
    """Give the draft as it stands: a service that falls due is to be attended to unless said otherwise."""
    for code in due_codes(records):
        if not draft.entry(code).severity:
            draft = draft.with_entry(code, severity=ATTEND, reason=draft.entry(code).reason or SERVICE_REASONS[0])
    return draft


def _due(records: CheckInRecords) -> tuple[Wear, ...]:
    return tuple(one for one in records.wear if one.state == "due")


def _writing(records: CheckInRecords, draft: CheckInDraft, units: Units) -> CheckInState:
    draft = effective(draft, records)
    carried = {one.item.code: one for one in records.open_items}
    rows = [
        _row(check, draft.entry(check.code), nominal_mm(records.parts, check.code), carried.get(check.code), units)
        for check in checks_for(records.parts, draft.depth)
    ]
    rows += [_service_row(one, draft.entry(one.code), carried.get(one.code), units) for one in _due(records)]
    rows = [_with_picture(row, draft, records) for row in rows]
    left = sum(not row.severity for row in rows)
    count = len(records.parts.adjusters)
    noted = "No adjusters on this bike." if not count else f"{records.counted} of {count} adjusters noted as found."
    return CheckInState(
        is_writing=True,
        title=DEPTHS[draft.depth],
        subtitle=f"{how_many(left, 'line')} left. Keys: 1 fine, 2 advise, 3 attend, 4 do not ride, 0 the rest is fine."
        if left
        else "Everything is looked at.",
        depth=draft.depth,
        rows=tuple(rows),
        left=left,
        bothers=draft.bothers,
        last_done=draft.last_done,
        positions=noted,
        positions_left=records.counted < count,
        can_go_full=draft.depth == "quick",
        stop=stop_words(stopping(records.open_items)),
        was_checked=bool(records.checkins),
    )


def _row(check: Check, entry: Entry, nominal: float | None, carried: OpenItem | None, units: Units) -> CheckRow:
    how = check.how
    if check.measures and nominal is not None:
        how = f"{how} It should read {units.text(nominal, 'length')}."
    return CheckRow(
        code=check.code,
        area=AREAS[check.area],
        title=check.title,
        how=how,
        severity=entry.severity,
        reasons=check.reasons,
        reason=entry.reason,
        note=entry.note,
        is_declined=entry.is_declined,
        measures=check.measures,
        measured=entry.measured,
        unit=units.unit("length") if check.measures else "",
        said=_measured_words(check, entry, nominal, units),
        carried=_carried_words(carried),
        problem=entry_problem(entry, units),
        asks=entry.asks,
    )


def picture_of(draft: CheckInDraft, records: CheckInRecords, code: str) -> Picture | None:
    """Give the picture of something found: the one just taken in, else the one of the find that is still open."""
    entry = draft.entry(code)
    carried = next((one.item for one in records.open_items if one.item.code == code), None)
    if not entry.asks:
        return None
    return entry.picture or (records.photo(carried) if carried is not None else None)


def _with_picture(row: CheckRow, draft: CheckInDraft, records: CheckInRecords) -> CheckRow:
    picture = picture_of(draft, records, row.code)
    photo = picture.sha256 if picture else ""
    return replace(row, photo=photo, is_photo_new=bool(draft.entry(row.code).photo))


def _measured_words(check: Check, entry: Entry, nominal: float | None, units: Units) -> str:
    if not check.measures or not entry.measured.strip():
        return ""
    try:
        measured = read_measured(entry.measured, units)
    except InputError:
        return ""
    return "" if measured is None else measured_verdict(check.code, measured, nominal)[1]


def _service_row(wear: Wear, entry: Entry, carried: OpenItem | None, units: Units) -> CheckRow:
    return CheckRow(
        code=wear.code,
        area=AREAS["service"],
        title=wear.part.title,
        how=state_words(wear),
        severity=entry.severity,
        reasons=SERVICE_REASONS,
        reason=entry.reason,
        note=entry.note,
        is_declined=entry.is_declined,
        carried=_carried_words(carried),
        problem=entry_problem(entry, units),
        asks=entry.asks,
    )


def _carried_words(carried: OpenItem | None) -> str:
    if carried is None:
        return ""
    what = ", ".join(words for words in (carried.item.reason or "", carried.item.note) if words)
    declined = ", declined" if carried.item.is_declined else ""
    return f"Open since {short_date(carried.found_at)}: {SEVERITIES[carried.item.severity].lower()}{declined}" + (
        f" ({what})" if what else ""
    )


def _known(records: CheckInRecords, overrule_by: str) -> CheckInState:
    rows = tuple(_open_row(one, records.photo(one.item)) for one in records.open_items)
    return CheckInState(
        title="Check-in",
        subtitle="" if records.checkins else "Look the bike over before anything is opened. It takes two minutes.",
        was_checked=bool(records.checkins),
        last=_last(records),
        open_rows=rows,
        stop=_stop_sentence(records),
        wear=wear_rows(records),
        hours=hours_text(records.hours),
        hours_value=records.hours.hours if records.hours.told or records.hours.runs else None,
        overrule_by=overrule_by,
    )


def _stop_sentence(records: CheckInRecords) -> str:
    words = stop_words(stopping(records.open_items))
    return f"{words[:1].upper()}{words[1:]}. Sag and riding wait until it is mended." if words else ""


def _last(records: CheckInRecords) -> tuple[tuple[str, str], ...]:
    if not records.checkins:
        return ()
    newest = records.checkins[-1]
    by = next((one.name for one in records.people if one.id == newest.person_id), "")
    looked = sum(one.severity in SEVERITIES for one in records.items)
    told = [(f"{DEPTHS.get(newest.depth, newest.depth)}", f"{short_date(newest.made_at)}{f', {by}' if by else ''}")]
    told += [("Looked at", how_many(looked, "thing"))]
    told += [("Bothers the rider", newest.bothers)] if newest.bothers else []
    told += [("Done last", newest.last_done)] if newest.last_done else []
    return tuple(told)


def _open_row(one: OpenItem, picture: Picture | None) -> OpenRow:
    item = one.item
    what = ": ".join(words for words in (item.reason or "", item.note) if words)
    remark = ""
    if item.overruled_at is not None:
        remark = f"Overruled {short_date(item.overruled_at)}. {overruled_sentence(one)}"
    elif item.is_declined:
        remark = f"On the card: {declined_sentence(one)}"
    found = f"{what}, since {short_date(one.found_at)}" if what else f"Since {short_date(one.found_at)}"
    return OpenRow(
        item.id,
        item.code,
        one.title,
        item.severity,
        SEVERITIES[item.severity],
        found,
        remark,
        item.is_declined,
        can_overrule(item),
        is_grave_stop=item.severity == STOP and item.overruled_at is None and not can_overrule(item),
        photo=picture.sha256 if picture else "",
    )

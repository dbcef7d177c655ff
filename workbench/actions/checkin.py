"""Check-ins: what was looked at and found, what is still open, and what was agreed about it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from workbench.actions.garage_parts import add_photo
from workbench.actions.ids import new_id
from workbench.actions.parts import read_parts
from workbench.actions.wear import Ridden, due_now, read_wear
from workbench.library.gate import Gate, Reader
from workbench.model.bike import Photo
from workbench.model.checkin import OpenItem, can_overrule, is_open, open_items, stopping, title_of
from workbench.model.errors import InputError, LibraryError
from workbench.model.facts import NOTE_LIMIT, TEXT_LIMIT, clean_text
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.pictures import Picture
from workbench.model.service import CheckIn, CheckItem
from workbench.model.setting import Item
from workbench.model.wear import LATEST, Hours, Wear


@dataclass(frozen=True, slots=True)
class CheckInRecords:
    """All that the check-in sheet is made of."""

    parts: BikeParts
    checkins: tuple[CheckIn, ...]  # oldest first
    items: tuple[CheckItem, ...]  # of the newest check-in
    open_items: tuple[OpenItem, ...]
    wear: tuple[Wear, ...]
    hours: Hours
    counted: int  # adjusters whose place was noted or counted
    people: tuple[Person, ...] = ()  # those of the check-ins
    photos: tuple[Photo, ...] = ()  # those of what is still open

    def photo(self, item: CheckItem) -> Picture | None:
        """Give the picture of something found that is still open, if it has one."""
        found = next((one for one in self.photos if one.id == item.photo_id), None)
        return Picture(found.sha256, found.name) if found else None


@dataclass(frozen=True, slots=True)
class Found:
    """What is to be filed of one thing looked at."""

    code: str
    severity: str
    reason: str = ""
    note: str = ""
    is_declined: bool = False
    measured_mm: float | None = None
    picture: Picture | None = None  # its file is kept already


def checkin_records(bike_id: str, now: str = LATEST) -> Callable[[Reader], CheckInRecords]:
    """Give the query for the check-in sheet of a bike."""

    def query(reader: Reader) -> CheckInRecords:
        parts = read_parts(reader, bike_id)
        checkins = reader.find(CheckIn, bike_id=bike_id, order_by=("made_at",))
        wear, hours = read_wear(reader, parts, now)
        newest = reader.find(CheckItem, checkin_id=checkins[-1].id) if checkins else ()
        still_open = read_open(reader, bike_id)
        shown = tuple(one.item.photo_id for one in still_open if one.item.photo_id)
        by = tuple({one.person_id for one in checkins if one.person_id})
        return CheckInRecords(
            parts,
            checkins,
            newest,
            still_open,
            wear,
            hours,
            _noted(parts),
            reader.find(Person, id=by) if by else (),
            reader.find(Photo, id=shown) if shown else (),
        )

    return query


def _noted(parts: BikeParts) -> int:
    """Count the adjusters whose place is known, or was before they were opened."""
    return sum(
        parts.range_of(one.id) is not None or parts.line(Item.ADJUSTER, one.id) is not None for one in parts.adjusters
    )


def read_open(reader: Reader, bike_id: str) -> tuple[OpenItem, ...]:
    """Read what is still open on a bike."""
    checkins = reader.find(CheckIn, bike_id=bike_id, order_by=("made_at",))
    if not checkins:
        return ()
    return open_items(checkins, reader.find(CheckItem, checkin_id=tuple(one.id for one in checkins)))


def services_due(
    reader: Reader, parts: BikeParts, still_open: Sequence[OpenItem], now: str = LATEST, ridden: Ridden | None = None
) -> tuple[str, ...]:
    """List the parts whose service falls due and stands on no hand-over list yet."""
    listed = {one.item.code for one in still_open}
    return tuple(one.part.title for one in due_now(reader, parts, now, ridden) if one.code not in listed)


def file_checkin(
    bike_id: str,
    depth: str,
    found: Sequence[Found],
    *,
    bothers: str = "",
    last_done: str = "",
    note: str = "",
    draft_id: str | None = None,
) -> Callable[[Gate], CheckIn]:
    """Give the deed that files a check-in with everything looked at, and closes the draft."""

    def deed(gate: Gate) -> CheckIn:
        made = CheckIn(
            new_id(),
            bike_id,
            gate.now,
            depth,
            gate.person_id,
            _within("What bothers the rider", bothers, NOTE_LIMIT),
            _within("What was done last", last_done, NOTE_LIMIT),
            _within("Note", note, NOTE_LIMIT),
        )
        gate.put(made)
        for one in found:
            reason, words = _within("Reason", one.reason, TEXT_LIMIT), _within("Note", one.note, NOTE_LIMIT)
            gate.put(
                CheckItem(
                    new_id(),
                    made.id,
                    one.code,
                    one.severity,
                    words,
                    one.is_declined,
                    reason=reason,
                    measured_mm=one.measured_mm,
                    photo_id=_hung(gate, bike_id, one.picture),
                )
            )
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return made

    return deed


def _hung(gate: Gate, bike_id: str, picture: Picture | None) -> str | None:
    """Hang a picture on the bike, and give its key."""
    return add_photo(bike_id, picture.sha256, picture.name)(gate).id if picture else None


def picture_item(item_id: str, picture: Picture | None) -> Callable[[Gate], None]:
    """Give the deed that puts a picture to an open item, or takes it off; it stays with the bike's pictures."""

    def deed(gate: Gate) -> None:
        item = _open_item(gate, item_id)
        bike_id = gate.need(CheckIn, item.checkin_id).bike_id
        gate.put(replace(item, photo_id=_hung(gate, bike_id, picture)))

    return deed


def close_item(item_id: str, how: str = "seen to") -> Callable[[Gate], None]:
    """Give the deed that closes an open item."""

    def deed(gate: Gate) -> None:
        gate.put(replace(_open_item(gate, item_id), closed_at=gate.now, closed_how=how))

    return deed


def decline_item(item_id: str, *, is_declined: bool = True) -> Callable[[Gate], None]:
    """Give the deed that notes that the customer declines to have something attended to, or no longer does."""

    def deed(gate: Gate) -> None:
        gate.put(replace(_open_item(gate, item_id), is_declined=is_declined))

    return deed


def overrule_item(item_id: str, by: str, reason: str) -> Callable[[Gate], None]:
    """Give the deed by which a named person lets a bike be ridden nevertheless; some finds allow nobody to."""
    who, why = _within("By", by, TEXT_LIMIT), _within("Reason", reason, TEXT_LIMIT)
    if not who:
        raise InputError("by", by, "the name of the person who takes it on themselves")
    if not why:
        raise InputError("reason", reason, "a reason, as it will stand on the card")

    def deed(gate: Gate) -> None:
        item = _open_item(gate, item_id)
        if not can_overrule(item):
            raise LibraryError(f"{title_of(item.code)} can throw a rider: mend it and look again. Nobody overrules it.")
        gate.put(replace(item, overruled_by=who, overruled_at=gate.now, override_reason=why))

    return deed


def refuse_if_stopped(gate: Gate, bike_id: str) -> None:
    """Refuse what puts a rider on a bike that was found unfit to ride."""
    stops = stopping(read_open(gate, bike_id))
    if stops:
        raise LibraryError(
            f"This bike is not to be ridden: {stops[0].title.lower()}. See to it on the check-in sheet first."
        )


def _open_item(gate: Gate, item_id: str) -> CheckItem:
    item = gate.need(CheckItem, item_id)
    if not is_open(item):
        raise LibraryError(f"{title_of(item.code)} is closed already. Nothing was changed.")
    return item


def _within(name: str, text: str, limit: int) -> str:
    kept = clean_text(text)
    if len(kept) > limit:
        raise InputError(name, kept, f"up to {limit} characters")
    return kept

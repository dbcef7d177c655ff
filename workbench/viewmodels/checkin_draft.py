"""A check-in being written: kept at every entry, with text as it was typed."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, fields, replace
from typing import Any

from workbench.model.checkin import ADVISE, ATTEND, FINE, SEVERITIES, STOP
from workbench.model.errors import InputError
from workbench.model.facts import NOTE_LIMIT, TEXT_LIMIT
from workbench.model.pictures import Picture
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import TypedIn, as_meant

DRAFT = "checkin"
LONGEST_MM = 1000.0


@dataclass(frozen=True, slots=True)
class Entry:
    """What is entered of one check."""

    severity: str = ""  # empty: not looked at
    reason: str = ""
    note: str = ""
    is_declined: bool = False
    measured: str = ""  # as typed
    photo: str = ""  # the SHA-256 of its picture
    photo_name: str = ""

    @property
    def picture(self) -> Picture | None:
        """The picture taken in for it."""
        return Picture(self.photo, self.photo_name) if self.photo else None

    @property
    def asks(self) -> bool:
        """Whether something is to be said about it."""
        return self.severity in (ADVISE, ATTEND, STOP)


@dataclass(frozen=True, slots=True)
class CheckInDraft:
    """Everything entered so far."""

    depth: str = "quick"
    bothers: str = ""
    last_done: str = ""
    entries: Mapping[str, Entry] = field(default_factory=dict)
    typed_in: TypedIn = ()

    def entry(self, code: str) -> Entry:
        """Give what is entered of a check."""
        return self.entries.get(code, Entry())

    def with_entry(self, code: str, **changed: Any) -> CheckInDraft:
        """Give the draft with one check entered otherwise."""
        return replace(self, entries={**self.entries, code: replace(self.entry(code), **changed)})


def to_json(draft: CheckInDraft) -> str:
    """Write the draft down."""
    return json.dumps(asdict(draft))


def from_json(body: str, units: Units) -> CheckInDraft:
    """Read a draft; what this version does not know is left out, and lengths mean what they meant."""
    told = json.loads(body)
    kept = {one.name: told[one.name] for one in fields(CheckInDraft) if one.name in told}
    known = {one.name for one in fields(Entry)}
    then = tuple(kept.pop("typed_in", ()))
    length = then[[one.name for one in fields(Units)].index("length")] if len(then) == len(fields(Units)) else ""
    entries = {}
    for code, one in kept.pop("entries", {}).items():
        entry = Entry(**{name: value for name, value in one.items() if name in known})
        if entry.severity and entry.severity not in SEVERITIES:
            entry = replace(entry, severity="")
        entries[code] = replace(entry, measured=as_meant(entry.measured, length, units.unit("length")))
    return CheckInDraft(**kept, entries=entries)


def read_measured(text: str, units: Units) -> float | None:
    """Read a typed length; nothing typed is nothing measured."""
    if not text.strip():
        return None
    value = units.parse(text, "length")
    if not 0 <= value <= LONGEST_MM:
        raise InputError("length", text, f"0 to {units.text(LONGEST_MM, 'length')}")
    return value


def entry_problem(entry: Entry, units: Units) -> str:
    """Say what keeps one check from being filed."""
    if len(entry.note) > NOTE_LIMIT or len(entry.reason) > TEXT_LIMIT:
        return f"Up to {NOTE_LIMIT} characters. Shorten it."
    try:
        read_measured(entry.measured, units)
    except InputError as error:
        return f"Allowed is {error.allowed}."
    if entry.severity == STOP and not (entry.reason or entry.note.strip()):
        return "Pick what is wrong, or write it: whoever reads this must know why nobody rides it."
    return ""


def problem(draft: CheckInDraft, codes: tuple[str, ...], units: Units) -> tuple[str, str]:
    """Say what keeps the check-in from being filed, and at which check; two empty texts if nothing does."""
    for code in codes:
        if said := entry_problem(draft.entry(code), units):
            return said, code
    for name, text in (("bothers", draft.bothers), ("last_done", draft.last_done)):
        if len(text) > NOTE_LIMIT:
            return f"Up to {NOTE_LIMIT} characters: this has {len(text)}. Shorten it.", name
    looked = any(draft.entry(code).severity for code in codes)
    if not looked and not draft.bothers.strip() and not draft.last_done.strip():
        return "Nothing is looked at yet. Begin with the first line; 1 says it is fine.", codes[0] if codes else ""
    return "", ""


def rest_fine(draft: CheckInDraft, codes: tuple[str, ...]) -> CheckInDraft:
    """Say of everything not looked at that it is fine."""
    for code in codes:
        if not draft.entry(code).severity:
            draft = draft.with_entry(code, severity=FINE)
    return draft

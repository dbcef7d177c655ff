"""The check-in sheet: looking the bike over, what stays open, and service by hours."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from workbench.actions.checkin import (
    CheckInRecords,
    Found,
    checkin_records,
    close_item,
    decline_item,
    file_checkin,
    overrule_item,
    picture_item,
)
from workbench.actions.wear import record_service, set_interval, set_last_service, tell_hours
from workbench.model.checkin import UNSEEN
from workbench.model.checks import measured_verdict, nominal_mm
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.pictures import Picture
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.checkin_draft import DRAFT as KIND
from workbench.viewmodels.checkin_draft import (
    CheckInDraft,
    from_json,
    problem,
    read_measured,
    rest_fine,
    to_json,
)
from workbench.viewmodels.checkin_state import (
    CheckInState,
    OpenRow,
    codes_of,
    due_codes,
    effective,
    picture_of,
    resolve,
)
from workbench.viewmodels.checkin_wear import WearRow
from workbench.viewmodels.pictures import take_in
from workbench.viewmodels.typed_drafts import typed_in

__all__ = ["CheckInState", "CheckInViewModel"]

HOUR_S = 3600.0


class CheckInViewModel(ViewModel[CheckInState]):
    """The check-in sheet and its deeds."""

    station = "checkin"

    def read(self) -> CheckInState:
        """Read what is known of the bike, or the check-in being written."""
        if not self.bike_id:
            return CheckInState()
        try:
            records = self._records()
        except WorkbenchError:  # the bike went away with an undone step
            return CheckInState()
        person = self._bench.person
        return resolve(records, self._draft(), self._bench.units, overrule_by=person.name if person else "")

    def _records(self) -> CheckInRecords:
        return self._desk.ask(checkin_records(self.bike_id, self._desk.now()))

    def _draft(self) -> CheckInDraft | None:
        kept = self._desk.open_draft(KIND, bike_id=self.bike_id)
        return from_json(kept.body, self._bench.units) if kept else None

    def _keep(self, draft: CheckInDraft) -> None:
        body = to_json(replace(draft, typed_in=typed_in(self._bench.units)))
        try:
            self._desk.keep_draft(KIND, body, bike_id=self.bike_id)
        except WorkbenchError as error:
            self.refuse(error)
        self.refresh()

    # Writing a check-in

    def begin(self, depth: str) -> None:
        """Begin a check-in, or look at more within the one being written."""
        self._keep(replace(self._draft() or CheckInDraft(), depth=depth))

    def set_words(self, name: str, text: str) -> None:
        """Keep what the rider says, as typed."""
        draft = self._draft()
        if draft is not None and getattr(draft, name) != text:
            changed: dict[str, Any] = {name: text}
            self._keep(replace(draft, **changed))

    def set_entry(self, code: str, **changed: Any) -> None:
        """Keep one entry about a check."""
        draft = self._draft()
        if draft is None:
            return
        kept = draft.with_entry(code, **changed)
        if "measured" in changed:
            kept = self._proposed(kept, code)
        if kept != draft:
            self._keep(kept)

    def _proposed(self, draft: CheckInDraft, code: str) -> CheckInDraft:
        """A length that is off asks to be attended to, unless somebody already said how grave it is."""
        entry = draft.entry(code)
        try:
            measured = read_measured(entry.measured, self._bench.units)
        except InputError:
            return draft
        if measured is None or entry.severity:
            return draft
        severity, _ = measured_verdict(code, measured, nominal_mm(self._records().parts, code))
        return draft.with_entry(code, severity=severity) if severity else draft

    def add_picture(self, code: str, path: Path) -> bool:
        """Take a picture in for one check of the check-in being written."""
        if self._draft() is None:
            return False
        try:
            taken = take_in(self._desk, path)
        except WorkbenchError as error:
            self.refused.emit(Problem(str(error), code))
            return False
        self.set_entry(code, photo=taken.sha256, photo_name=taken.name)
        return True

    def leave_picture(self, code: str) -> None:
        """Take the new picture of a check off again."""
        self.set_entry(code, photo="", photo_name="")

    def picture(self, sha256: str) -> bytes | None:
        """Give the content of a picture; None if its file is missing or another one."""
        return self._desk.photo(sha256)

    def rest_is_fine(self) -> None:
        """Say of all that is not looked at yet that it is fine; what is carried forward waits for its own answer."""
        draft = self._draft()
        if draft is None:
            return
        records = self._records()
        waits = {one.item.code for one in records.open_items} | set(due_codes(records))
        self._keep(rest_fine(draft, tuple(code for code in codes_of(records, draft.depth) if code not in waits)))

    def file(self) -> bool:
        """File the check-in; what keeps it from being filed is said at its line."""
        kept = self._desk.open_draft(KIND, bike_id=self.bike_id)
        if kept is None:
            return False
        records = self._records()
        draft = effective(from_json(kept.body, self._bench.units), records)
        codes = codes_of(records, draft.depth)
        said, code = problem(draft, codes, self._bench.units)
        if said:
            self.refused.emit(Problem(said, code))
            return False
        deed = file_checkin(
            self.bike_id,
            draft.depth,
            [replace(self._found(draft, code), picture=picture_of(draft, records, code)) for code in codes],
            bothers=draft.bothers,
            last_done=draft.last_done,
            draft_id=kept.id,
        )
        return self.act("File the check-in", deed) is not None

    def _found(self, draft: CheckInDraft, code: str) -> Found:
        entry = draft.entry(code)
        return Found(
            code,
            entry.severity or UNSEEN,
            entry.reason if entry.asks else "",
            entry.note,
            entry.is_declined and entry.asks,
            read_measured(entry.measured, self._bench.units),
        )

    def discard(self) -> None:
        """Put the entries aside; the notice takes them back."""
        kept = self._desk.open_draft(KIND, bike_id=self.bike_id)
        if kept is not None:
            self.discard_draft("Check-in entries discarded", kept.id)
        self.refresh()

    # What stays open

    def close(self, item_id: str) -> None:
        """Note that something open was seen to."""
        self.act(self._label("Seen to", item_id), close_item(item_id))

    def decline(self, item_id: str) -> None:
        """Note that the customer declines to have it attended to, or takes it after all."""
        row = self._row(item_id)
        if row is not None:
            word = "Take up after all" if row.is_declined else "Declined"
            self.act(self._label(word, item_id), decline_item(item_id, is_declined=not row.is_declined))

    def picture_open(self, item_id: str, path: Path) -> bool:
        """Put a picture to something open."""
        try:
            taken = take_in(self._desk, path)
        except WorkbenchError as error:
            self.refuse(error)
            return False
        return self._picture(item_id, taken, "Picture")

    def unpicture_open(self, item_id: str) -> None:
        """Take the picture off something open; it stays with the bike's pictures."""
        self._picture(item_id, None, "No picture")

    def _picture(self, item_id: str, taken: Picture | None, word: str) -> bool:
        self.act(self._label(word, item_id), picture_item(item_id, taken))
        row = self._row(item_id)
        return row is not None and row.photo == (taken.sha256 if taken else "")

    def overrule(self, item_id: str, by: str, reason: str) -> bool:
        """Let the bike be ridden on a named person's word; what is missing is said at its field."""
        try:
            deed = overrule_item(item_id, by, reason)
        except InputError as error:
            words = {"by": "Say who takes it on themselves.", "reason": "Say why: it stands on the card."}
            self.refused.emit(Problem(words.get(error.field, str(error)), f"overrule_{error.field}"))
            return False
        self.act(self._label("Overruled", item_id), deed)
        return self._row(item_id) is not None

    def _row(self, item_id: str) -> OpenRow | None:
        return next((row for row in self.state.open_rows if row.item_id == item_id), None)

    def _label(self, word: str, item_id: str) -> str:
        row = self._row(item_id)
        return f"{word}: {row.title if row else 'item'}"[:60]

    # Service by hours

    def tell_hours(self, seconds: float | None, source: str) -> bool:
        """Note the hours ridden so far, and who says so."""
        if seconds is None:
            self.refused.emit(Problem("Type the hours ridden so far, as 120.", "hours"))
            return False
        try:
            deed = tell_hours(self.bike_id, seconds / HOUR_S, source)
        except WorkbenchError as error:
            self.refuse(error, "hours")
            return False
        return self.act(f"Hours ridden {seconds / HOUR_S:g}", deed) is not None

    def set_interval(self, key: str, name: str, value: float | None) -> None:
        """Enter an interval from the maker's manual: hours (given in seconds) or months."""
        row = self._wear(key)
        if row is None:
            return
        hours = value if name == "interval" else row.interval_s
        months = value if name == "months" else row.months
        try:
            deed = set_interval(
                self.bike_id,
                row.part,
                row.end,
                hours=None if hours is None else hours / HOUR_S,
                months=None if months is None else round(months),
            )
        except InputError as error:
            self.refused.emit(Problem(f"Allowed is {error.allowed}.", f"wear_{key}_{name}"))
            return
        self.act(f"{row.title}: interval"[:60], deed)

    def set_last(self, key: str, seconds: float | None) -> None:
        """Say at how many hours a part was serviced last."""
        row = self._wear(key)
        if row is None:
            return
        try:
            hours = None if seconds is None else seconds / HOUR_S
            deed = set_last_service(self.bike_id, row.part, row.end, hours)
        except InputError as error:
            self.refused.emit(Problem(f"Allowed is {error.allowed}.", f"wear_{key}_last"))
            return
        self.act(f"{row.title}: last service"[:60], deed)

    def serviced(self, key: str) -> None:
        """Record a service done now."""
        row = self._wear(key)
        if row is not None:
            self.act(f"Serviced: {row.title.lower()}"[:60], record_service(self.bike_id, row.part, row.end))

    def _wear(self, key: str) -> WearRow | None:
        return next((row for row in self.state.wear if row.key == key), None)

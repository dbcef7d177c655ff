"""What the coil's sheets are made from: records, drafts and what is tried, read for one end."""

from __future__ import annotations

from dataclasses import replace

from workbench.actions.coil import CoilRecords, coil_records
from workbench.actions.desk import Desk
from workbench.actions.sag import rows_of
from workbench.model.errors import WorkbenchError
from workbench.model.setting import Item
from workbench.model.unit import Unit
from workbench.viewmodels import coil_at_hand, coil_pressed, coil_table, coil_wire
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.coil_at_hand import ADDS, OnUnit, TriedPreload, read_preload, resolve_at_hand
from workbench.viewmodels.coil_pressed import resolve_pressed
from workbench.viewmodels.coil_sheets import CoilSheet, Load, load_of
from workbench.viewmodels.coil_table import TWO, resolve_table
from workbench.viewmodels.coil_typed import CoilDraft, draft_from_json
from workbench.viewmodels.coil_wire import ENTRIES, resolve_wire
from workbench.viewmodels.spring_curves import kept_sag

CURVE, AT_HAND, WIRE, PRESSED, TABLE = "curve", "at_hand", "wire", "pressed", "table"
VIEWS = (
    (CURVE, "Curve"),
    (AT_HAND, "To fit"),
    (WIRE, "By wire"),
    (PRESSED, "By pressing"),
    (TABLE, "Progressive"),
)
DRAFTS = {AT_HAND: coil_at_hand.DRAFT, WIRE: coil_wire.DRAFT, PRESSED: coil_pressed.DRAFT, TABLE: coil_table.DRAFT}
QUANTITIES = {one.name: one.quantity for one in (*ENTRIES, *TWO, *ADDS)}


class CoilEntries:
    """Reads records once and keeps them until `forget()`: typing changes none."""

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._desk, self._bench = desk, bench
        self._known: tuple[tuple[str, str | None], CoilRecords] | None = None
        self.end = "rear"
        self.tried: dict[str, TriedPreload] = {}  # by unit

    def forget(self) -> None:
        """Read records anew the next time."""
        self._known = None

    def _records(self) -> CoilRecords | None:
        if not self._bench.bike_id:
            return None
        key = (self._bench.bike_id, self._bench.rider_id)
        if self._known is None or self._known[0] != key:
            try:
                self._known = (key, self._desk.ask(coil_records(*key)))
            except WorkbenchError:
                return None  # the bike went away with an undone step
        return self._known[1]

    def about(self) -> OnUnit | None:
        """Give what the sheets are about; None where the end has no coil."""
        records = self._records()
        parts = records.spring.sag.parts if records else None
        unit = parts.unit(self.end) if parts else None
        if records is None or parts is None or unit is None or unit.spring != "coil":
            return None
        return OnUnit(
            unit=unit,
            at_hand=records.at_hand.get(unit.id, ()),
            rate_line=parts.line(Item.SPRING_RATE, unit.id),
            preload_mm=parts.value(Item.PRELOAD, unit.id),
            load=_load(records, unit),
        )

    def sheet(self, about: OnUnit, view: str) -> CoilSheet | None:
        """Lay one sheet out."""
        units = self._bench.units
        draft, key = self.draft(about.unit, view)
        tried = self.tried.get(about.unit.id, TriedPreload())
        if view == WIRE:
            sheet = resolve_wire(draft, units)
        elif view == PRESSED:
            sheet = resolve_pressed(draft, units)
        elif view == TABLE:
            preload_mm, _ = read_preload(tried, about, units)
            sheet = resolve_table(draft, about.load, preload_mm, units)
        elif view == AT_HAND:
            choice = self._desk.setting(f"coil/list/{about.unit.id}", "own" if about.at_hand else "25")
            sheet = resolve_at_hand(about, choice, tried, draft, units)
        else:
            return None
        return replace(sheet, has_draft=bool(key))

    def draft(self, unit: Unit, view: str) -> tuple[CoilDraft, str | None]:
        """Give what was typed on a sheet, and its draft's key if there is one."""
        kind = DRAFTS.get(view)
        kept = self._desk.open_draft(kind, bike_id=unit.bike_id, subject=unit.id) if kind else None
        if kept is None:
            return CoilDraft(), None
        return draft_from_json(kept.body, QUANTITIES, self._bench.units), kept.id


def _load(records: CoilRecords, unit: Unit) -> Load | None:
    sag = kept_sag(records.spring, unit)
    return load_of(unit, sag, rows_of(records.spring.sag, unit, sag.rate_n_per_mm) if sag else ())

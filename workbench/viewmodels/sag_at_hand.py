"""What the sag sheet has at hand: records, the entry that lies open, and the pump."""

from __future__ import annotations

from dataclasses import replace
from typing import ClassVar

from workbench.actions.desk import Desk, Touched
from workbench.actions.pumps import add_pump, note_attachments
from workbench.actions.sag import SagRecords
from workbench.model.errors import InputError
from workbench.model.unit import Unit
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.sag_draft import SagDraft, Stage
from workbench.viewmodels.sag_open import Opened, SagEntries
from workbench.viewmodels.sag_state import SagState, resolve

GARAGE_FIRST = "State the rider and the unit's travel in the garage first."


class SagAtHand(ViewModel[SagState]):
    """What the sag sheet reads, which entry lies open, and which pump it is read with."""

    station = "sag"
    watched: ClassVar[frozenset[str]] = frozenset(
        {"bike", "person", "bike_rider", "unit", "generation", "adjuster", "range_count", "on_bike"}
        | {
            "leverage_survey",
            "leverage_point",
            "setup",
            "setup_value",
            "sag_measurement",
            "sag_reading",
            "sag_target",
            "pump",
            "spring",
            "setting",
        }
    )

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._entries = SagEntries(desk)
        super().__init__(desk, bench)

    def hear(self, touched: Touched) -> None:
        """Forget what was read when records changed; a letter typed into an entry changes none."""
        if touched.tables:
            self._entries.forget()
        super().hear(touched)

    # Reading

    def read(self) -> SagState:
        """Read the bike on the bench and the entry under way."""
        records = self._records()
        if records is None:
            return SagState()
        drafts = {unit.id: self._entries.draft(unit) for unit in records.parts.units}
        return resolve(records, drafts, self._entries.opened(records), self._entries.put_back(), self._bench.units)

    def _records(self) -> SagRecords | None:
        return self._entries.records(self.bike_id, self._bench.rider_id)

    def _now_open(self, *, needs_draft: bool = True) -> Opened | None:
        records = self._records()
        opened = None if records is None else self._entries.opened(records)
        return None if opened is None or (needs_draft and opened.draft_id is None) else opened

    def _unit(self, end: str) -> tuple[SagRecords, Unit] | None:
        records = self._records()
        unit = records.parts.unit(end) if records else None
        if records is None or records.rider is None or unit is None or unit.travel_mm is None:
            self._say(GARAGE_FIRST)
            return None
        return records, unit

    def _say(self, text: str, field: str = "") -> None:
        self.refused.emit(Problem(text, field))

    def _change(self, opened: Opened, draft: SagDraft) -> None:
        self._entries.keep(opened.unit, draft)

    # Pumps

    def _attached_again(self, opened: Opened, draft: SagDraft) -> SagDraft:
        """Log two attachments of one pump, which tell what its hose takes; the second is what is in there now."""
        first, second = draft.pressure_kpa, draft.again_kpa
        if opened.stage != Stage.SPRING or not draft.pump_id or first is None or second is None:
            return draft
        told = {"first_how": draft.pressure_how, "temperature_c": draft.temperature_c}
        deed = note_attachments(self.bike_id, opened.unit.id, draft.pump_id, first, second, **told)  # type: ignore[arg-type]
        self.act(f"Attach the pump twice, {opened.unit.end}", deed)
        return replace(draft, pressure_kpa=second, pressure_how="as_attached", again_kpa=None)

    def add_pump(self, name: str) -> bool:
        """Add a pump and take it for this entry."""
        opened = self._now_open()
        if opened is None or not name.strip():
            return False
        try:
            deed = add_pump(name)
        except InputError as error:
            self._say(str(error), "pump")
            return False
        pump = self.act(f"Add pump {name.strip()}"[:60], deed)
        if pump is not None:
            self._change(opened, replace(opened.draft, pump_id=pump.id))
        return pump is not None

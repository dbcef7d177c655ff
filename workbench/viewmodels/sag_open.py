"""One end taken up: read its entry and all that its stages need."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.desk import Desk
from workbench.actions.put_back import put_back
from workbench.actions.sag import SagRecords, sag_records
from workbench.model.coil import fitted_rows
from workbench.model.errors import WorkbenchError
from workbench.model.parts import settable_items
from workbench.model.sag import SagMeasurement
from workbench.model.sag_rules import first_band, similar_rounds, travel_question
from workbench.model.steps import Step
from workbench.model.unit import Unit
from workbench.viewmodels.sag_advice import Advice, CoilKnown, advise
from workbench.viewmodels.sag_draft import SagDraft, Stage, first_draft, from_json, to_json
from workbench.viewmodels.sag_guide import adjusters_shown
from workbench.viewmodels.sag_problems import Subject
from workbench.viewmodels.shown import Units

DRAFT = "sag"


@dataclass(frozen=True, slots=True)
class Opened:
    """One end taken up: its unit and its entry. Without a draft's key only putting back is left."""

    records: SagRecords
    unit: Unit
    draft: SagDraft
    draft_id: str | None

    @property
    def stage(self) -> Stage:
        """The stage the entry stands at."""
        return Stage(self.draft.stage)


@dataclass(frozen=True, slots=True)
class _Known:
    """What was read for one bike and rider."""

    key: tuple[str, str | None]
    records: SagRecords
    put_back: tuple[Step, ...]


class SagEntries:
    """The sag entries of the bike on the bench, one for each end, and which end lies open.

    Records are read once and kept until `forget()`: a letter typed into an entry changes none of them.
    """

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._known: _Known | None = None

    def forget(self) -> None:
        """Read records anew the next time."""
        self._known = None

    def records(self, bike_id: str, rider_id: str | None) -> SagRecords | None:
        """Give what is known of the bike's sag; None when the bike went away with an undone step."""
        if not bike_id:
            return None
        if self._known is None or self._known.key != (bike_id, rider_id):
            try:
                records = self._desk.ask(sag_records(bike_id, rider_id))
            except WorkbenchError:
                return None
            steps = self._desk.ask(put_back(bike_id, records.rider.id)) if records.rider else ()
            self._known = _Known((bike_id, rider_id), records, steps)
        return self._known.records

    def put_back(self) -> tuple[Step, ...]:
        """Give the put-back list of the bike last read."""
        return self._known.put_back if self._known else ()

    def draft(self, unit: Unit) -> SagDraft | None:
        """Read the entry of a unit, if one is under way."""
        kept = self._desk.open_draft(DRAFT, bike_id=unit.bike_id, subject=unit.id)
        return from_json(kept.body) if kept else None

    def keep(self, unit: Unit, draft: SagDraft) -> None:
        """Write an entry down."""
        self._desk.keep_draft(DRAFT, to_json(draft), bike_id=unit.bike_id, subject=unit.id)

    def open_end(self, bike_id: str, end: str) -> None:
        """Say which end lies open; remembered over a restart."""
        self._desk.set_setting(f"sag/end/{bike_id}", end)

    def opened(self, records: SagRecords) -> Opened | None:
        """Give the end that lies open, if one does."""
        unit = records.parts.unit(self._desk.setting(f"sag/end/{records.parts.bike.id}", ""))
        if unit is None or unit.travel_mm is None or records.rider is None:
            return None
        kept = self._desk.open_draft(DRAFT, bike_id=unit.bike_id, subject=unit.id)
        if kept is None:
            return Opened(records, unit, replace(begin(records, unit), stage=int(Stage.PUT_BACK)), None)
        draft = from_json(kept.body)
        return Opened(self._of_rider(records, draft.rider_id), unit, draft, kept.id)

    def _of_rider(self, records: SagRecords, rider_id: str) -> SagRecords:
        """Give the records of the rider an entry was begun with."""
        is_other = records.rider is not None and rider_id != records.rider.id
        if not is_other or not any(rider.id == rider_id for rider in records.parts.riders):
            return records
        return self._desk.ask(sag_records(records.parts.bike.id, rider_id))


def begin(records: SagRecords, unit: Unit) -> SagDraft:
    """Begin an entry from what is known of the bike."""
    target = next((one for one in records.targets if one.unit_id == unit.id), None)
    band = first_band(records.parts.bike, unit, target)
    own = [item for item, subject_id in settable_items(records.parts) if subject_id == unit.id]
    rider_id = records.rider.id if records.rider else ""
    return first_draft(unit, rider_id, band, {item: records.parts.value(item, unit.id) for item in own})


def subject_of(opened: Opened) -> Subject:
    """Give what problems of a stage depend on."""
    shown = adjusters_shown(opened.records, opened.unit)
    return Subject(
        unit=opened.unit,
        question=travel_question(opened.unit, opened.records.parts.bike),
        valves=opened.records.parts.valves,
        unready=tuple(one.title.lower() for one in shown if not one.is_ready),
    )


def advice_of(opened: Opened, units: Units) -> Advice | None:
    """Give the advice, at the stage that shows it."""
    if opened.stage != Stage.ADVICE:
        return None
    draft, unit = opened.draft, opened.unit
    band = draft.band()
    if band is None:
        return Advice(problem="The target band is missing. Go back to the preparation and state it.")
    return advise(draft, unit, band, earlier_of(opened), units, coil_known(opened))


def coil_known(opened: Opened) -> CoilKnown:
    """Give what is known of coils: the springs at hand, and the table of the one the entry reckons with."""
    records, unit, draft = opened.records, opened.unit, opened.draft
    springs = tuple(one for one in records.springs if one.unit_id == unit.id)
    noted = {*records.table_rates.get(unit.id, ()), *((draft.table_rate,) if draft.table_rate is not None else ())}
    return CoilKnown(springs, fitted_rows(unit, springs, noted, draft.rate_n_per_mm))


def earlier_of(opened: Opened) -> tuple[SagMeasurement, ...]:
    """Give the measurements of earlier days that tell of the same load on the same hardware."""
    records, unit = opened.records, opened.unit
    generation = records.parts.generation(unit.id)
    return similar_rounds(
        [one for one in records.measurements if one.unit_id == unit.id],
        posture=opened.draft.posture,
        mass_kg=records.rider.mass_kg if records.rider else None,
        generation_id=generation.id if generation else None,
    )


def steps_of(records: SagRecords, unit: Unit, steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """Keep the steps that belong to one unit."""
    own = {adjuster.id for adjuster in records.parts.adjusters_of(unit.id)}
    return tuple(step for step in steps if step.subject_id in own)

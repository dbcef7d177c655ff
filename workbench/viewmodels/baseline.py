"""The baseline: setup no. 1, where each of its settings comes from, and the steps to set it."""

from __future__ import annotations

import json
from dataclasses import dataclass

from workbench.actions.baseline import BaselineRecords, baseline_records
from workbench.actions.desk import Draft
from workbench.actions.setups import keep_setup, take_all_steps, take_step
from workbench.model.adjuster import restore_text
from workbench.model.baseline import baseline_question
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.facts import read_whole
from workbench.model.parts import ITEM_QUANTITIES, BikeParts, settable_items
from workbench.model.setting import Setup, adjuster_of, is_on_other_hardware
from workbench.model.steps import Step
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.shown import Units, position_text, short_date
from workbench.viewmodels.step_lines import StepLine, not_restored, step_lines
from workbench.viewmodels.typed_drafts import texts_as_meant, typed_in

DRAFT = "baseline"


@dataclass(frozen=True, slots=True)
class BaselineRow:
    """One setting of the baseline being written."""

    key: str
    title: str
    text: str  # as typed, or the proposed value
    unit: str
    said: str  # what the value means, for adjusters from closed
    origin: str
    problem: str = ""
    end: str = ""  # "front" or "rear": the column it stands in


@dataclass(frozen=True, slots=True)
class BaselineState:
    """Either a baseline being written, or the newest setup with the steps left."""

    is_writing: bool = True
    title: str = "Baseline"
    subtitle: str = ""
    rows: tuple[BaselineRow, ...] = ()
    verb: str = "Keep setup no. 1"
    has_draft: bool = False
    steps: tuple[StepLine, ...] = ()
    steps_done: str = ""
    is_outdated: bool = False  # some of its clicks were counted on earlier hardware
    settings: tuple[tuple[str, str], ...] = ()  # what the newest setup sets, in words
    has_setups: bool = False


def key_of(item: str, subject_id: str) -> str:
    """Give the key of a row."""
    return f"{item}/{subject_id}"


def resolve(records: BaselineRecords, typed: dict[str, str], units: Units, *, is_writing: bool) -> BaselineState:
    """Lay the baseline out."""
    if is_writing or not records.setups:
        return BaselineState(
            is_writing=True,
            title="Baseline",
            subtitle="Where testing starts. Change what you know better; each value says where it comes from.",
            rows=tuple(
                _row(records, one.item, one.subject_id, one.value, one.origin, typed, units) for one in records.proposed
            ),
            verb=f"Keep setup no. {records.number}",
            has_draft=bool(typed),
            has_setups=bool(records.setups),
        )
    newest = records.setups[-1]
    left = len(records.steps)
    return BaselineState(
        is_writing=False,
        title=f"Setup no. {newest.number}",
        subtitle=_setup_text(newest),
        steps=step_lines(records.steps, units),
        is_outdated=bool(not_restored(records.newest)),
        steps_done=not_restored(records.newest) or ("" if left else "The bike stands as this setup says."),
        settings=setting_words(records.parts, records.newest, units),
        has_setups=True,
    )


def setting_words(
    parts: BikeParts, values: dict[tuple[str, str], float | None], units: Units
) -> tuple[tuple[str, str], ...]:
    """Say what a setup sets, in setting order."""
    words = []
    for item, subject_id in settable_items(parts):
        value = values.get((item, subject_id))
        adjuster = parts.adjuster(subject_id)
        text = position_text(adjuster, value) if adjuster else units.text(value, ITEM_QUANTITIES[item])
        gone = [key for key in values if is_on_other_hardware(key[1]) and adjuster_of(key[1]) == subject_id]
        if adjuster and value is None and gone:
            text = f"{position_text(adjuster, values[gone[0]])}, counted on earlier hardware"
        words.append((parts.subject_title(item, subject_id), text))
    return tuple(words)


def _setup_text(setup: Setup) -> str:
    origins = {"baseline": "baseline", "as_found": "as found", "change": "changed while riding", "restored": "restored"}
    name = f"“{setup.name}”, " if setup.name else ""
    return f"{name}{origins.get(setup.origin, setup.origin)}, {short_date(setup.made_at)}"


def _row(
    records: BaselineRecords,
    item: str,
    subject_id: str,
    value: float | None,
    origin: str,
    typed: dict[str, str],
    units: Units,
) -> BaselineRow:
    key, quantity = key_of(item, subject_id), ITEM_QUANTITIES[item]
    unit = "" if quantity == "count" else units.unit(quantity)
    proposed = "" if value is None else _number(value, quantity, units)
    text = typed.get(key, proposed)
    problem, read = "", value
    if key in typed:
        origin = "own choice"
        try:
            read = read_value(text, item, units)
        except InputError as error:
            problem, read = f"Allowed is {error.allowed}.", None
    problem = problem or baseline_question(records.parts, item, subject_id, read, units)
    adjuster = records.parts.adjuster(subject_id)
    said = restore_text(adjuster, round(read)) if adjuster and read is not None and not problem else ""
    title = records.parts.subject_title(item, subject_id)
    steps_unit = _steps_unit(records.parts, subject_id)
    return BaselineRow(key, title, text, steps_unit or unit, said, origin, problem, _end(records.parts, subject_id))


def _end(parts: BikeParts, subject_id: str) -> str:
    """Say at which end of the bike a setting is."""
    adjuster = parts.adjuster(subject_id)
    unit_id = parts.unit_of(adjuster).id if adjuster else subject_id
    kinds = {unit.id: unit.kind for unit in parts.units} | {tyre.id: tyre.end for tyre in parts.tyres}
    return "rear" if kinds.get(unit_id) in ("shock", "rear") else "front"


def _steps_unit(parts: BikeParts, subject_id: str) -> str:
    adjuster = parts.adjuster(subject_id)
    if adjuster is None:
        return ""
    return {"clicks": "clicks from closed", "turns": "quarter turns from closed", "positions": "position from closed"}[
        adjuster.counting
    ]


def _number(value: float, quantity: str, units: Units) -> str:
    if quantity == "count":
        return f"{value:g}"
    return units.text(value, quantity).split("\u2009")[0]


def read_value(text: str, item: str, units: Units) -> float | None:
    """Read one typed setting; an empty text means not known."""
    if not text.strip():
        return None
    quantity = ITEM_QUANTITIES[item]
    if quantity != "count":
        return units.parse(text, quantity)
    return float(read_whole("count", text, 0, 999))


class BaselineViewModel(ViewModel[BaselineState]):
    """Writes setup no. 1 and lists the steps to it."""

    station = "baseline"

    _is_writing = False

    def read(self) -> BaselineState:
        """Read what the baseline begins from."""
        if not self.bike_id:
            return BaselineState()
        records = self._records()
        draft = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        is_writing = self._is_writing or draft is not None
        return resolve(records, self._typed(draft), self._bench.units, is_writing=is_writing)

    def _typed(self, draft: Draft | None) -> dict[str, str]:
        """Give what was typed, by row, as it was meant."""
        body = json.loads(draft.body) if draft else {}
        texts: dict[str, str] = body.get("texts", {})
        quantities = {key: ITEM_QUANTITIES[key.partition("/")[0]] for key in texts}
        return texts_as_meant(texts, quantities, tuple(body.get("typed_in", ())), self._bench.units)

    def _records(self) -> BaselineRecords:
        return self._desk.ask(baseline_records(self.bike_id, self._bench.rider_id))

    def set_value(self, key: str, text: str) -> None:
        """Keep one entry as typed."""
        row = next(row for row in self.state.rows if row.key == key)
        if row.text == text:
            return
        draft = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        self._keep_draft({**self._typed(draft), key: text})

    def _keep_draft(self, texts: dict[str, str]) -> None:
        body = json.dumps({"texts": texts, "typed_in": typed_in(self._bench.units)})
        try:
            self._desk.keep_draft(DRAFT, body, bike_id=self.bike_id)
        except WorkbenchError as error:
            self.refuse(error)

    def keep(self) -> bool:
        """Keep the setup; a setting that cannot be used is said at its field."""
        bad = next((row for row in self.state.rows if row.problem), None)
        if bad is not None:
            self.refused.emit(Problem(bad.problem, bad.key))
            return False
        records = self._records()
        rider = records.parts.rider(self._bench.rider_id)
        if rider is None:
            self.refused.emit(Problem("This bike has no rider yet. Choose one on the garage sheet.", ""))
            return False
        values = self._values(records)
        draft = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        deed = keep_setup(self.bike_id, rider.id, values, "baseline", draft_id=draft.id if draft else None)
        self._is_writing = False
        return self.act(self.state.verb, deed) is not None

    def _values(self, records: BaselineRecords) -> dict[tuple[str, str], float | None]:
        typed = {row.key: row.text for row in self.state.rows}
        proposed = {key_of(one.item, one.subject_id): one for one in records.proposed}
        draft = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        edited = self._typed(draft)
        return {
            (one.item, one.subject_id): read_value(typed[key], one.item, self._bench.units)
            if key in edited
            else one.value
            for key, one in proposed.items()
        }

    def write_anew(self) -> None:
        """Begin another baseline."""
        self._is_writing = True
        self.refresh()

    def leave_writing(self) -> None:
        """Go back to the newest setup; what was typed is put aside."""
        self._is_writing = False
        draft = self._desk.open_draft(DRAFT, bike_id=self.bike_id)
        if draft is not None:
            self.discard_draft("Baseline entries discarded", draft.id)
        self.refresh()

    def take_step(self, key: str) -> None:
        """Log one step as done."""
        for step in self._steps():
            if key_of(step.item, step.subject_id) == key:
                self.act(f"Set {step.title.lower()}"[:60], take_step(self.bike_id, step))

    def take_all(self) -> None:
        """Log every step left as done."""
        steps = self._steps()
        if steps:
            self.act(f"Set {len(steps)} settings", take_all_steps(self.bike_id, steps))

    def _steps(self) -> tuple[Step, ...]:
        return self._records().steps

"""Coil springs of the end on the spring sheet: those at hand, the rate of an unmarked one, progressive ones."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import ClassVar

from workbench.actions.coil import fit_spring, keep_spring, remove_spring
from workbench.actions.desk import Desk, Gate, Touched
from workbench.actions.on_bike import set_item
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.setting import Item
from workbench.model.unit import Spring
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.coil_at_hand import ADDS, PRELOAD, RATE, TURNS, OnUnit, TriedPreload, read_preload
from workbench.viewmodels.coil_entries import AT_HAND, CURVE, DRAFTS, CoilEntries
from workbench.viewmodels.coil_sheets import CoilResult, CoilSheet
from workbench.viewmodels.coil_typed import CoilDraft, missing, read_all, with_free_line


@dataclass(frozen=True, slots=True)
class CoilState:
    """What the spring sheet shows of the coil at one end; no unit where there is none."""

    unit_id: str = ""
    view: str = CURVE
    sheet: CoilSheet | None = None


class CoilViewModel(ViewModel[CoilState]):
    """Reckons as it is typed; a result becomes a record by one deed."""

    station = "sag"
    watched: ClassVar[frozenset[str]] = frozenset(
        {"bike", "person", "bike_rider", "unit", "generation", "on_bike", "sag_measurement", "spring", "setting"}
    )

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._entries = CoilEntries(desk, bench)
        super().__init__(desk, bench)

    # Reading

    def hear(self, touched: Touched) -> None:
        """Forget what was read when records changed; typing changes none."""
        if touched.tables:
            self._entries.forget()
        super().hear(touched)

    def read(self) -> CoilState:
        """Read the coil of the chosen end."""
        about = self._entries.about()
        if about is None:
            return CoilState()
        view = self._desk.setting(f"coil/view/{about.unit.id}", CURVE)
        return CoilState(about.unit.id, view, self._entries.sheet(about, view))

    # Moving about and typing

    def pick_end(self, end: str) -> None:
        """Look at the coil of the other end."""
        if end != self._entries.end:
            self._entries.end = end
            self.refresh()

    def pick_view(self, view: str) -> None:
        """Open one of the coil's sheets; remembered over a restart."""
        about = self._entries.about()
        if about is not None:
            self._desk.set_setting(f"coil/view/{about.unit.id}", view)
            self.refresh()

    def set_text(self, name: str, text: str) -> None:
        """Keep one entry as typed; preload is only tried until it is set."""
        about = self._entries.about()
        if about is None:
            return
        if name in (PRELOAD.name, TURNS.name):
            self._entries.tried[about.unit.id] = TriedPreload(name, text)
            self.refresh()
        else:
            self._keep(about, self._entries.draft(about.unit, self.state.view)[0].with_text(name, text))

    def set_pair(self, line: int, column: int, text: str) -> None:
        """Keep one travel or force as typed."""
        about = self._entries.about()
        draft = self._entries.draft(about.unit, self.state.view)[0] if about else None
        if about is not None and draft is not None and with_free_line(draft.pairs)[line][column] != text:
            self._keep(about, draft.with_pair(line, column, text))

    def choose(self, choice: str) -> None:
        """Choose the list of springs, how the coil was measured, or how the spring is described."""
        about = self._entries.about()
        if about is None:
            return
        if self.state.view == AT_HAND:
            self._desk.set_setting(f"coil/list/{about.unit.id}", choice)
            self.refresh()
        else:
            self._keep(about, replace(self._entries.draft(about.unit, self.state.view)[0], choice=choice))

    def discard(self) -> None:
        """Put what was typed on this sheet aside; its notice takes it back."""
        about = self._entries.about()
        key = self._entries.draft(about.unit, self.state.view)[1] if about else None
        if key is not None:
            self.discard_draft("Discarded what was typed about the spring", key)

    def _keep(self, about: OnUnit, draft: CoilDraft) -> None:
        units, unit = self._bench.units, about.unit
        try:
            self._desk.keep_draft(DRAFTS[self.state.view], draft.to_json(units), bike_id=unit.bike_id, subject=unit.id)
        except WorkbenchError as error:
            self.refuse(error)

    # Deeds

    def keep_result(self) -> bool:
        """Add the spring that was found to those at hand."""
        found = self._result()
        if found is None:
            return False
        about, result, key = found
        deed = _kept(about, result, draft_id=key)
        if self.act(f"Add {result.number} {result.unit} to the springs at hand", deed) is None:
            return False
        self._desk.set_setting(f"coil/list/{about.unit.id}", "own")
        self.pick_view(AT_HAND)
        return True

    def fit_result(self) -> bool:
        """Say that the spring that was found is the one on the bike."""
        found = self._result()
        if found is None:
            return False
        about, result, key = found
        rate = self._rate_at_load(about, result) if result.rows else result.rate_n_per_mm
        stroke = result.stroke_mm if result.stroke_mm is not None or result.rows else about.unit.spring_stroke_mm
        deed = fit_spring(
            self.bike_id,
            about.unit.id,
            rate,
            stroke_mm=stroke,
            how=result.how,
            is_table=bool(result.rows),
            draft_id=key,
        )
        if result.rows:  # its table is what the curve is drawn from, so the spring joins those at hand
            deed = _one_after_the_other(_kept(about, result), deed)
        return self._do(f"Spring on the bike: {self._bench.units.text(rate, 'spring_rate')}", deed)

    def _result(self) -> tuple[OnUnit, CoilResult, str | None] | None:
        """Give what was found, or say at its field what keeps it from being taken over."""
        about = self._entries.about()
        sheet = self._entries.sheet(about, self.state.view) if about else None
        if about is None or sheet is None:
            return None
        wrong = next((one for one in sheet.fields if one.problem), None)
        line = next((place for place, text in enumerate(sheet.pair_problems) if text), None)
        if wrong is not None:
            self.refused.emit(Problem(wrong.problem, wrong.name))
        elif line is not None:
            self.refused.emit(Problem(sheet.pair_problems[line], f"line_{line + 1}"))
        elif sheet.result is None:
            empty = next((one.name for one in sheet.fields if not one.text.strip()), "")
            self.refused.emit(Problem(sheet.hint, "line_1" if sheet.pairs else empty))
        else:
            return about, sheet.result, self._entries.draft(about.unit, self.state.view)[1]
        return None

    def _rate_at_load(self, about: OnUnit, result: CoilResult) -> float:
        """Give force over compression at the rider's load; on the whole as long as no sag tells of one."""
        from workbench.physics.coil_choice import fitted_table
        from workbench.physics.spring_table import spring_table

        if about.load is None:
            return result.rate_n_per_mm
        preload_mm = about.preload_mm or 0.0
        there = fitted_table(
            about.load.load_n, spring_table(result.rows), stroke_mm=about.load.stroke_mm, preload_mm=preload_mm
        )
        return there.rate_n_per_mm

    def fit(self, key: str) -> bool:
        """Fit one spring of the list, with the preload that is tried."""
        about, sheet = self._entries.about(), self.state.sheet
        line = next((one for one in sheet.springs if one.key == key), None) if sheet else None
        if about is None or line is None:
            return False
        preload = self._preload_tried(about)
        if preload is False:
            return False
        deed = fit_spring(
            self.bike_id,
            about.unit.id,
            line.rate_n_per_mm,
            preload_mm=preload,
            stroke_mm=line.stroke_mm,
            how=line.how,
            is_table=line.is_table,
        )
        return self._do(f"Fit {self._bench.units.text(line.rate_n_per_mm, 'spring_rate')}", deed, clears=True)

    def set_preload(self) -> bool:
        """Say that the collar stands at the preload that is tried."""
        about = self._entries.about()
        preload = self._preload_tried(about) if about else None
        if about is None or preload is None or preload is False:
            return False
        deed = set_item(self.bike_id, Item.PRELOAD, about.unit.id, preload, "set_to")
        return self._do(f"Set preload {self._bench.units.text(preload, 'length')}", deed, clears=True)

    def _do(self, label: str, deed: Callable[[Gate], object], *, clears: bool = False) -> bool:
        """Do a deed that may give nothing back; afterwards the bike, and not what was tried, says the preload."""

        def noted(gate: Gate) -> bool:
            deed(gate)
            return True

        if self.act(label[:60], noted) is None:
            return False
        if clears:
            self._entries.tried.clear()
            self.refresh()
        return True

    def _preload_tried(self, about: OnUnit) -> float | bool | None:
        """Give the preload to set; None where none was typed, False after saying what is wrong with it."""
        tried = self._entries.tried.get(about.unit.id)
        if tried is None:
            return None
        preload_mm, fields = read_preload(tried, about, self._bench.units)
        wrong = next((one for one in fields if one.problem), None)
        if wrong is None:
            return preload_mm
        self.refused.emit(Problem(wrong.problem, wrong.name))
        return False

    def add(self) -> bool:
        """Add the spring typed below the list to those at hand."""
        about = self._entries.about()
        if about is None:
            return False
        draft, key = self._entries.draft(about.unit, AT_HAND)
        fields, values = read_all(ADDS, dict(draft.texts), self._bench.units)
        wrong = next((one for one in fields if one.problem), None)
        if wrong is not None or missing(ADDS, values):
            self.refused.emit(
                Problem(wrong.problem if wrong else "Type the rate, as 450.", wrong.name if wrong else "rate")
            )
            return False
        rate = values[RATE.name]
        text = self._bench.units.text(rate, "spring_rate")
        try:
            deed = keep_spring(
                about.unit.id,
                rate,
                stroke_mm=values.get("stroke_mm"),
                label=draft.text("label") or "",
                draft_id=key,
            )
        except InputError as error:
            self.refuse(error, "label")
            return False
        return self.act(f"Add {text} to the springs at hand", deed) is not None

    def remove(self, key: str) -> None:
        """Take one spring from those at hand."""
        sheet = self.state.sheet
        line = next((one for one in sheet.springs if one.key == key and one.can_remove), None) if sheet else None
        if line is not None:
            text = self._bench.units.text(line.rate_n_per_mm, "spring_rate")
            self.act(f"Take {text} from the springs at hand", remove_spring(key))


def _kept(about: OnUnit, result: CoilResult, *, draft_id: str | None = None) -> Callable[[Gate], Spring]:
    return keep_spring(
        about.unit.id,
        result.rate_n_per_mm,
        stroke_mm=result.stroke_mm,
        label=result.label,
        how=result.how,
        rows=result.rows,
        draft_id=draft_id,
    )


def _one_after_the_other(first: Callable[[Gate], object], then: Callable[[Gate], None]) -> Callable[[Gate], None]:
    def deed(gate: Gate) -> None:
        first(gate)
        then(gate)

    return deed

"""What can be done on the bike's sheet beside its facts: riders, hardware, valves, pictures, a bike like this one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from workbench.actions.desk import Gate
from workbench.actions.duplicate import duplicate_bike
from workbench.actions.edit import edit
from workbench.actions.fit_unit import fit_unit, refit_unit
from workbench.actions.garage import start_generation
from workbench.actions.garage_parts import add_photo, describe_valve, remove_photo, remove_valve
from workbench.actions.ids import new_id
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person, add_rider, main_rider, take_off_rider
from workbench.model.bike import RIGID
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.unit import GENERATION_REASONS, RENEWALS, VALVES, Generation, Unit
from workbench.model.valves import GAS
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.fact_rows import FactRow
from workbench.viewmodels.garage_fit import BACK, FitRow, drafts_of_unit, fit_label
from workbench.viewmodels.garage_rows import PhotoRow, RiderRow, UnitParts
from workbench.viewmodels.pictures import take_in


@dataclass(frozen=True, slots=True)
class Section:
    """A titled group of facts of one record."""

    key: str
    title: str
    rows: tuple[FactRow, ...]
    note: str = ""
    care: str = ""
    unit_id: str = ""  # set where new hardware can be declared
    parts: UnitParts | None = None  # valves and hardware, of a unit


@dataclass(frozen=True, slots=True)
class GarageState:
    """The bike's sheet."""

    bike_id: str = ""
    title: str = ""
    layout: str = ""
    sections: tuple[Section, ...] = ()
    riders: tuple[tuple[str, str], ...] = ()  # the main rider first
    others: tuple[tuple[str, str], ...] = ()  # people who could ride it
    reasons: tuple[tuple[str, str], ...] = tuple(RENEWALS.items())
    missing: str = ""
    rider_rows: tuple[RiderRow, ...] = ()
    photos: tuple[PhotoRow, ...] = ()
    is_template: bool = False
    fits: tuple[FitRow, ...] = ()  # what can hang at each end


class GarageDeeds(ViewModel[GarageState]):
    """The deeds of the bike's sheet that are no facts."""

    def choose_rider(self, person_id: str) -> None:
        """Let somebody ride this bike, and put their setup on the bench."""
        name = dict(self.state.others).get(person_id, "")
        if name:
            self.act(f"Add rider {name}"[:60], add_rider(self.bike_id, person_id))
        self._bench.put_bike(self.bike_id, rider_id=person_id)

    def make_main(self, person_id: str) -> None:
        """Make somebody the bike's main rider."""
        self.act(f"Main rider {self._name(person_id)}"[:60], main_rider(self.bike_id, person_id))

    def take_off(self, person_id: str) -> None:
        """Take a rider off this bike."""
        self.act(f"Take rider {self._name(person_id)} off"[:60], take_off_rider(self.bike_id, person_id))

    def add_new_rider(self, name: str) -> bool:
        """Add a person and let them ride this bike."""
        try:
            add = add_person(name, like=self._bench.person)
        except WorkbenchError as error:
            self.refused.emit(Problem(str(error), "rider"))
            return False
        bike_id = self.bike_id
        return self.act(f"Add rider {name.strip()[:40]}", lambda gate: add_rider(bike_id, add(gate).id)(gate)) is None

    def new_hardware(self, unit_id: str, reason: str) -> None:
        """Say that a unit is no longer what was measured: counts and sag fall due."""
        self.act(f"{GENERATION_REASONS[reason]}: counts and sag fall due", start_generation(unit_id, reason))

    def fit(self, end: str, kind: str, travel_mm: float | None, name: str) -> bool:
        """Hang another fork or shock on the bike, or take off what hangs there."""
        parts = self._desk.ask(bike_parts(self.bike_id))
        drafts = drafts_of_unit(self._desk.drafts(self.bike_id), parts, end)
        length = None if kind == RIGID else travel_mm
        try:
            deed: Callable[[Gate], Unit | None] = (
                refit_unit(kind.removeprefix(BACK), draft_ids=drafts)
                if kind.startswith(BACK)
                else fit_unit(self.bike_id, end, kind, travel_mm=length, name=name, draft_ids=drafts)
            )
            label = fit_label(end, kind, name)
            self._desk.do(label, deed, bike_id=self.bike_id, station=self.station)
        except InputError as error:
            field = {"Travel": "fit_travel", "Name": "fit_name"}.get(error.field, "fit_kind")
            self.refused.emit(Problem(str(error), field))
            return False
        except WorkbenchError as error:
            self.refuse(error, "fit_kind")
            return False
        self.kept.emit(label)
        return True

    def note_hardware(self, generation_id: str, text: str) -> None:
        """Keep what was done to the hardware."""
        self.act("Note on the hardware", edit(Generation, generation_id, "note", text))

    def place_valve(self, unit_id: str, purpose: str, place: str) -> None:
        """Keep where a valve is."""
        self.act(f"{VALVES[purpose].partition(':')[0]}: where its valve is", describe_valve(unit_id, purpose, place))

    def say_gas(self, unit_id: str, *, has_gas: bool) -> None:
        """Say whether there is a valve of a damper's gas charge."""
        deed = describe_valve(unit_id, GAS, "") if has_gas else remove_valve(unit_id, GAS)
        self.act("Damper gas valve noted" if has_gas else "No damper gas valve", deed)

    def add_picture(self, path: Path) -> bool:
        """Keep a picture file beside the library and hang it on the bike."""
        try:
            taken = take_in(self._desk, path)
        except WorkbenchError as error:
            self.refuse(error)
            return False
        return self.act(f"Add picture {path.name}"[:60], add_photo(self.bike_id, taken.sha256, taken.name)) is not None

    def picture(self, sha256: str) -> bytes | None:
        """Give the content of a picture; None if its file is missing or another one."""
        return self._desk.photo(sha256)

    def remove_picture(self, photo_id: str) -> None:
        """Take a picture off the bike."""
        name = next((one.name for one in self.state.photos if one.photo_id == photo_id), "")
        self.act(f"Remove picture {name}"[:60], remove_photo(photo_id))

    def duplicate(self, *, as_template: bool = False) -> None:
        """Add a bike like this one and open it; a template is kept aside instead."""
        title = self.state.title[:150]
        key = new_id()
        name = f"{title} (template)" if as_template else f"{title} (copy)"
        label = f"Keep {title[:30]} as a template" if as_template else f"Duplicate {title[:40]}"
        deed = duplicate_bike(self.bike_id, name, copy_id=key, with_riders=not as_template, as_template=as_template)
        if self.act(label, deed, bike_id=key) is not None and not as_template:
            self._bench.put_bike(key)

    def _name(self, person_id: str) -> str:
        return dict(self.state.riders).get(person_id, "")

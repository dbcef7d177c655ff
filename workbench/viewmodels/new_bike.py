"""The sheet for a new bike: a name is enough, the rest can follow."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field, replace

from workbench.actions.desk import Touched
from workbench.actions.duplicate import start_from, templates
from workbench.actions.garage import NewBike, add_bike
from workbench.actions.ids import new_id
from workbench.actions.people import people, rider_names
from workbench.model.bike import DISCIPLINES, FRONTS, REARS, Bike, Station, ends_of, layout_of
from workbench.model.errors import InputError, WorkbenchError
from workbench.model.facts import Field, check_field, field_of
from workbench.model.person import Person
from workbench.model.unit import NEGATIVES, Unit
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import TypedIn, draft_as_meant, read_kept, typed_in

DRAFT = "new_bike"
QUANTITIES = {"rider_mass": "mass", "fork_travel": "length", "shock_stroke": "length", "rear_travel": "length"}
LABELS = {
    "name": "Name of the bike",
    "front": "Front",
    "rear": "Rear",
    "discipline": "Ridden as",
    "rider": "Rider",
    "rider_mass": "Mass ready to ride",
    "fork_travel": "Fork travel",
    "shock_stroke": "Shock stroke",
    "rear_travel": "Rear wheel travel",
}
BUILT = {
    "is_ebike": "E-bike",
    "is_dual_crown": "Dual crown",
    "is_inverted": "Inverted: stanchions below",
    "damper_in_one_leg": "Damper in one leg only",
    "has_second_positive": "Second positive chamber",
}  # ticks; all but the first are of the fork
_AIR_ONLY = ("has_second_positive", "negative")
YES = "yes"


@dataclass(frozen=True, slots=True)
class NewBikeDraft:
    """What has been typed so far, kept as typed."""

    name: str = ""
    layout: str = "air_air"
    discipline: str = "trail"
    rider: str = ""
    rider_mass: str = ""
    fork_travel: str = ""
    shock_stroke: str = ""
    rear_travel: str = ""
    is_ebike: str = ""
    is_dual_crown: str = ""
    is_inverted: str = ""
    damper_in_one_leg: str = ""
    has_second_positive: str = ""
    negative: str = "self"
    template: str = ""  # the key of a bike to start from
    typed_in: TypedIn = field(default=(), compare=False)

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> NewBikeDraft:
        """Read a kept draft; fields it does not know are left at their start."""
        return read_kept(cls, text)


@dataclass(frozen=True, slots=True)
class NewBikeState:
    """The sheet for a new bike."""

    draft: NewBikeDraft
    units: Units
    fronts: tuple[tuple[str, str], ...] = tuple(FRONTS.items())
    rears: tuple[tuple[str, str], ...] = tuple(REARS.items())
    negatives: tuple[tuple[str, str], ...] = tuple(NEGATIVES.items())
    front: str = "air"
    rear: str = "air"
    disciplines: tuple[tuple[str, str], ...] = tuple(DISCIPLINES.items())
    riders: tuple[str, ...] = ()
    has_shock: bool = True
    ticks: tuple[str, ...] = tuple(BUILT)  # those that can be said of this layout
    has_air_fork: bool = True
    templates: tuple[tuple[str, str], ...] = ()
    is_kept: bool = False


def problem(draft: NewBikeDraft, units: Units) -> Problem | None:
    """Find the first field that cannot be used as it stands."""
    try:
        read_draft(draft, units, ())
    except InputError as error:
        names = {label: name for name, label in LABELS.items()}
        return Problem(str(error), names.get(error.field, ""))
    return None


def read_draft(draft: NewBikeDraft, units: Units, riders: tuple[Person, ...]) -> NewBike:
    """Turn what was typed into a new bike; InputError names the field that cannot be used."""
    name = check_field(field_of(Bike, "name"), draft.name)
    rider_name = check_field(replace(field_of(Person, "name"), label=LABELS["rider"], is_required=False), draft.rider)
    known = next((one for one in riders if one.name.casefold() == rider_name.casefold()), None)
    has_fork, has_shock = (end != "rigid" for end in ends_of(draft.layout))
    return NewBike(
        name=name,
        layout=draft.layout,
        discipline=draft.discipline,
        rider_id=known.id if known else None,
        rider_name="" if known else rider_name,
        rider_mass_kg=_quantity(draft.rider_mass, field_of(Person, "mass_kg"), "rider_mass", units),
        fork_travel_mm=_quantity(draft.fork_travel, field_of(Unit, "travel_mm"), "fork_travel", units)
        if has_fork
        else None,
        shock_stroke_mm=_quantity(draft.shock_stroke, field_of(Unit, "travel_mm"), "shock_stroke", units)
        if has_shock
        else None,
        rear_travel_mm=_quantity(draft.rear_travel, field_of(Bike, "rear_travel_mm"), "rear_travel", units)
        if has_shock
        else None,
        negative=draft.negative,
        **{name: getattr(draft, name) == YES for name in BUILT},
    )


def ticks_of(layout: str) -> tuple[str, ...]:
    """Give what can be ticked of a bike with this layout."""
    front = ends_of(layout)[0]
    if front == "rigid":
        return ("is_ebike",)
    return tuple(name for name in BUILT if front != "coil" or name not in _AIR_ONLY)


def _quantity(text: str, field: Field, name: str, units: Units) -> float | None:
    if not text.strip():
        return None
    labelled = replace(field, label=LABELS[name])
    try:
        value = units.parse(text, field.quantity)
    except InputError as error:
        raise InputError(labelled.label, text, error.allowed) from error
    return float(check_field(labelled, value))


class NewBikeViewModel(ViewModel[NewBikeState]):
    """Fills a draft at every entry; adding the bike is one deed."""

    station = "garage"

    def read(self) -> NewBikeState:
        """Read the draft and the people who ride."""
        kept = self._desk.open_draft(DRAFT, bike_id=None)
        draft = NewBikeDraft.from_json(kept.body) if kept else NewBikeDraft()
        draft = draft_as_meant(draft, QUANTITIES, self._bench.units)
        kept_ones = self._desk.ask(templates())
        if draft.template not in {bike.id for bike in kept_ones}:
            draft = replace(draft, template="")
        front, rear = ends_of(draft.layout)
        return NewBikeState(
            templates=tuple((bike.id, bike.name) for bike in kept_ones),
            draft=draft,
            front=front,
            rear=rear,
            ticks=ticks_of(draft.layout),
            has_air_fork=front in ("air", "mix"),
            riders=tuple(name for _, name in self._desk.ask(rider_names())),
            units=self._bench.units,
            has_shock=rear != "rigid",
            is_kept=kept is not None,
        )

    def hear(self, touched: Touched) -> None:
        """The sheet belongs to no bike yet: the deed that adds one, and its undoing, concern it too."""
        if touched.tables != {"setting"}:
            self.refresh()

    def set_field(self, name: str, text: str) -> None:
        """Keep one entry as typed; the two ends make the layout."""
        if name in ("front", "rear"):
            front, rear = (text, self.state.rear) if name == "front" else (self.state.front, text)
            name, text = "layout", layout_of(front, rear)
        if getattr(self.state.draft, name) == text:
            return
        draft = replace(self.state.draft, **{name: text}, typed_in=typed_in(self._bench.units))
        try:
            self._desk.keep_draft(DRAFT, draft.to_json(), bike_id=None)
        except WorkbenchError as error:
            self.refuse(error)

    def add(self) -> bool:
        """Add the bike and put it on the bench."""
        wrong = problem(self.state.draft, self.state.units)
        if wrong is not None:
            self.refused.emit(wrong)
            return False
        kept = self._desk.open_draft(DRAFT, bike_id=None)
        new = read_draft(self.state.draft, self.state.units, self._desk.ask(people()))
        bike_id = new_id()
        key, like, template = kept.id if kept else None, self._bench.person, self.state.draft.template
        deed = (
            start_from(template, new, like=like, draft_id=key, bike_id=bike_id)
            if template
            else add_bike(new, like=like, draft_id=key, bike_id=bike_id)
        )
        bike = self.act(f"Add {new.name}"[:60], deed, bike_id=bike_id)
        if bike is None:
            return False
        self._bench.put_bike(bike.id)
        self._bench.go_to(Station.GARAGE)
        return True

    def open_template(self) -> None:
        """Put the chosen template on the bench, to look at it or change it."""
        if self.state.draft.template:
            self._bench.put_bike(self.state.draft.template)
            self._bench.go_to(Station.GARAGE)

    def discard(self) -> None:
        """Throw the entries away; the notice can take them back."""
        kept = self._desk.open_draft(DRAFT, bike_id=None)
        if kept is not None:
            self.discard_draft("New bike discarded", kept.id)

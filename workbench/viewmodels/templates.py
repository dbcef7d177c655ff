"""The templates of the garage: what each is, another name for it, a bike started from it, away with it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.duplicate import delete_template, templates
from workbench.actions.parts import bike_parts
from workbench.model.bike import DISCIPLINES, LAYOUTS, Bike, Station
from workbench.model.parts import BikeParts
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.new_bike import DRAFT, NewBikeDraft
from workbench.viewmodels.shown import Units, short_date
from workbench.viewmodels.window_state import NEW_BIKE

EMPTY = "No templates yet. A bike's sheet keeps its parts as one: Keep as a template, at its foot."


@dataclass(frozen=True, slots=True)
class TemplateRow:
    """One template of the list."""

    bike_id: str
    name: str
    parts: str
    ridden: str
    since: str


@dataclass(frozen=True, slots=True)
class TemplatesState:
    """The sheet of templates, and the one picked."""

    rows: tuple[TemplateRow, ...] = ()
    picked: str = ""
    name: str = ""
    empty: str = ""


def parts_words(parts: BikeParts, units: Units) -> str:
    """Say what a bike is made of in a few words."""
    told = []
    for unit in parts.units:
        length = f" {units.text(unit.travel_mm, 'length')}" if unit.travel_mm else ""
        told.append(f"{unit.name or unit.kind}{length}")
    return f"{LAYOUTS[parts.bike.layout]}{'; ' if told else ''}{', '.join(told)}"


class TemplatesViewModel(ViewModel[TemplatesState]):
    """The sheet of templates and its deeds."""

    station = "garage"
    watched = frozenset({"bike", "unit"})
    _picked = ""

    def read(self) -> TemplatesState:
        """Read all templates by name."""
        rows = tuple(self._row(self._desk.ask(bike_parts(one.id))) for one in self._desk.ask(templates()))
        picked = next((row for row in rows if row.bike_id == self._picked), rows[0] if rows else None)
        return TemplatesState(
            rows,
            picked.bike_id if picked else "",
            picked.name if picked else "",
            "" if rows else EMPTY,
        )

    def hear(self, touched: object) -> None:
        """Any bike may be a template, whichever one lies on the bench."""
        self.refresh()

    def _row(self, parts: BikeParts) -> TemplateRow:
        one = parts.bike
        ridden = DISCIPLINES.get(one.discipline, one.discipline)
        words = parts_words(parts, self._bench.units)
        return TemplateRow(one.id, one.name, words, ridden, short_date(one.template_at or one.created_at))

    def pick(self, bike_id: str) -> None:
        """Point at one template."""
        self._picked = bike_id
        self.refresh()

    def rename(self, name: str) -> bool:
        """Give the one picked another name."""
        state = self.state
        if not state.picked or name == state.name:
            return True
        label = f"Template {state.name[:30]}: name"
        done = self.edit_fact(Bike, state.picked, "name", name, label)
        if done:
            self.kept.emit(label)
        return done

    def delete(self) -> None:
        """Delete the one picked; undo brings it back."""
        state = self.state
        if state.picked:
            self.act(f"Delete template {state.name[:40]}", delete_template(state.picked), bike_id=state.picked)

    def begin(self) -> None:
        """Start a bike from the one picked."""
        kept = self._desk.open_draft(DRAFT, bike_id=None)
        draft = NewBikeDraft.from_json(kept.body) if kept else NewBikeDraft()
        self._desk.keep_draft(DRAFT, replace(draft, template=self.state.picked).to_json(), bike_id=None)
        self._bench.go_to(NEW_BIKE)

    def open(self) -> None:
        """Put the one picked on the bench, to look at its parts or change them."""
        self._bench.put_bike(self.state.picked, station=Station.GARAGE)

"""A bike with everything on it, read together because nearly every station needs it."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.adjuster import Adjuster, RangeCount, adjuster_words
from workbench.model.bike import Bike, Tyre
from workbench.model.person import Person
from workbench.model.setting import PRESSURE_ITEMS, Item, OnBike
from workbench.model.unit import Generation, Unit, Valve
from workbench.model.warmth import with_warmth

_UNIT_WORDS = {"fork": "Fork", "shock": "Shock"}


@dataclass(frozen=True, slots=True)
class BikeParts:
    """One bike, its riders, units, adjusters, tyres, range counts and the log line that holds for each item."""

    bike: Bike
    riders: tuple[Person, ...]  # the main rider first
    units: tuple[Unit, ...]  # front first
    generations: tuple[Generation, ...]
    adjusters: tuple[Adjuster, ...]  # front first, in counting order; archived ones left out
    tyres: tuple[Tyre, ...]
    ranges: tuple[RangeCount, ...]  # oldest first
    now: tuple[OnBike, ...]  # one line per item
    former: tuple[Unit, ...] = ()  # no longer on the bike, the last taken off first
    former_adjusters: tuple[Adjuster, ...] = ()  # those of former units
    valves: tuple[Valve, ...] = ()

    def rider(self, person_id: str | None = None) -> Person | None:
        """Give one of the bike's riders, the main one unless another is named."""
        main = self.riders[0] if self.riders else None
        return next((one for one in self.riders if one.id == person_id), main)

    def unit(self, end: str) -> Unit | None:
        """Give the unit at an end, if there is one."""
        return next((unit for unit in self.units if unit.end == end), None)

    def unit_of(self, adjuster: Adjuster) -> Unit:
        """Give the unit an adjuster sits on."""
        return next(unit for unit in self.units if unit.id == adjuster.unit_id)

    def adjusters_of(self, unit_id: str) -> tuple[Adjuster, ...]:
        """Give the adjusters of one unit in counting order."""
        return tuple(adjuster for adjuster in self.adjusters if adjuster.unit_id == unit_id)

    def adjuster(self, adjuster_id: str) -> Adjuster | None:
        """Give one adjuster."""
        return next((adjuster for adjuster in self.adjusters if adjuster.id == adjuster_id), None)

    def generation(self, unit_id: str) -> Generation | None:
        """Give the unit's present hardware generation."""
        found = [generation for generation in self.generations if generation.unit_id == unit_id]
        return max(found, key=lambda generation: generation.number) if found else None

    def range_of(self, adjuster_id: str) -> RangeCount | None:
        """Give the newest count of the adjuster made on the present hardware."""
        adjuster = self.adjuster(adjuster_id)
        if adjuster is None:
            return None
        generation = self.generation(adjuster.unit_id)
        present = generation.id if generation else None
        found = [count for count in self.ranges if count.adjuster_id == adjuster_id and count.generation_id == present]
        return found[-1] if found else None

    def line(self, item: str, subject_id: str) -> OnBike | None:
        """Give the log line that holds now for an item."""
        return next((line for line in self.now if line.item == item and line.subject_id == subject_id), None)

    def value(self, item: str, subject_id: str) -> float | None:
        """Give what an item stands at now; None if not known. A pressure knows the temperature it was set at."""
        line = self.line(item, subject_id)
        if line is None:
            return None
        return with_warmth(line.value, line.temperature_c) if item in PRESSURE_ITEMS else line.value

    def knob(self, adjuster_id: str) -> Adjuster | None:
        """Give one adjuster, also of a unit that is no longer on the bike."""
        every = (*self.adjusters, *self.former_adjusters)
        return next((adjuster for adjuster in every if adjuster.id == adjuster_id), None)

    def former_unit(self, subject_id: str) -> Unit | None:
        """Give the unit no longer on the bike that an item is about: itself, or the one its adjuster sat on."""
        knob = self.knob(subject_id)
        wanted = knob.unit_id if knob is not None else subject_id
        return next((unit for unit in self.former if unit.id == wanted), None)

    def subject_title(self, item: str, subject_id: str) -> str:
        """Name an item in full: which end, which part, what about it."""
        adjuster = self.adjuster(subject_id)
        if adjuster is not None:
            return f"{_UNIT_WORDS[self.unit_of(adjuster).kind]}: {adjuster_words(adjuster)}"
        unit = next((unit for unit in self.units if unit.id == subject_id), None)
        if unit is not None:
            return f"{_UNIT_WORDS[unit.kind]}: {ITEM_WORDS.get(item, item)}"
        if (gone := self.former_unit(subject_id)) is not None:
            knob = self.knob(subject_id)
            return f"Earlier {gone.kind}: {adjuster_words(knob) if knob else ITEM_WORDS.get(item, item)}"
        tyre = next((tyre for tyre in self.tyres if tyre.id == subject_id), None)
        return f"{tyre.end.capitalize()} tyre pressure" if tyre else ITEM_WORDS.get(item, item)


ITEM_WORDS: dict[str, str] = {
    Item.ADJUSTER: "adjuster",
    Item.PRESSURE: "air pressure",
    Item.SECOND_PRESSURE: "second chamber pressure",
    Item.NEGATIVE_PRESSURE: "negative chamber pressure",
    Item.SPRING_RATE: "spring rate",
    Item.PRELOAD: "preload",
    Item.SPACERS: "volume spacers",
    Item.TYRE_PRESSURE: "tyre pressure",
}

ITEM_QUANTITIES: dict[str, str] = {
    Item.ADJUSTER: "count",
    Item.PRESSURE: "pressure",
    Item.SECOND_PRESSURE: "pressure",
    Item.NEGATIVE_PRESSURE: "pressure",
    Item.SPRING_RATE: "spring_rate",
    Item.PRELOAD: "length",
    Item.SPACERS: "count",
    Item.TYRE_PRESSURE: "pressure",
}


def settable_items(parts: BikeParts) -> tuple[tuple[str, str], ...]:
    """List every item of the bike in the order it is set: fork first, spring before adjusters, tyres last.

    Within a unit: spacers, main and second pressure in the maker's order, negative chamber, spring and
    preload, then the adjusters in counting order.
    """
    items: list[tuple[str, str]] = []
    for unit in parts.units:
        if unit.spring in ("air", "air_coil"):
            items.append((Item.SPACERS, unit.id))
            chambers = [(Item.PRESSURE, unit.id)]
            if unit.has_second_positive:
                chambers.insert(0 if unit.fill_order == "second_first" else 1, (Item.SECOND_PRESSURE, unit.id))
            items.extend(chambers)
            if unit.negative == "separate":
                items.append((Item.NEGATIVE_PRESSURE, unit.id))
        if unit.spring in ("coil", "air_coil"):
            items.append((Item.SPRING_RATE, unit.id))
            items.append((Item.PRELOAD, unit.id))
        items.extend((Item.ADJUSTER, adjuster.id) for adjuster in parts.adjusters_of(unit.id))
    items.extend((Item.TYRE_PRESSURE, tyre.id) for tyre in parts.tyres)
    return tuple(items)

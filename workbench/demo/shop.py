"""Build the sample garage the way a person would: through the same deeds, one after the other."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import Any

from workbench.actions.adjusters import keep_as_found, keep_range, log_found
from workbench.actions.baseline import baseline_records
from workbench.actions.desk import Desk
from workbench.actions.edit import edit
from workbench.actions.garage import NewBike, add_bike, archive_bike
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.actions.sag import keep_sag
from workbench.actions.setups import keep_setup, steps_to_setup, take_all_steps
from workbench.demo.intake import check_in
from workbench.model.bike import Bike
from workbench.model.parts import BikeParts
from workbench.model.person import Person
from workbench.model.sag_rules import SagRound, first_band
from workbench.model.setting import Item, Setup
from workbench.model.unit import Unit
from workbench.model.units import parse

ORDER = ("archive", "garage", "count", "sag", "baseline", "card")


class DemoClock:
    """Goes on by itself a little at every look, and by leaps when told to."""

    def __init__(self, start: str) -> None:
        self._moment = datetime.fromisoformat(start)

    def __call__(self) -> str:
        self._moment += timedelta(seconds=7)
        return self._moment.isoformat(timespec="milliseconds")

    def leap(self, **ahead: float) -> None:
        """Let time pass."""
        self._moment += timedelta(**ahead)


class Shop:
    """The sample garage in the making."""

    def __init__(self, desk: Desk, scenario: dict[str, Any]) -> None:
        self._desk = desk
        self._scenario = scenario
        self._people: dict[str, Person] = {}

    def people(self) -> None:
        """Everybody, the mechanic at the bench."""
        for one in self._scenario["people"]:
            deed = add_person(
                one["name"],
                rides=one.get("rides", True),
                works_here=one.get("works_here", False),
                mass_kg=one.get("mass_kg"),
            )
            person = self._desk.do(f"Add {one['name']}", deed, station="garage")
            if one.get("is_child"):
                self._desk.do("Rider: a child", edit(Person, person.id, "is_child", True), station="garage")
            self._people[one["name"]] = person
            if person.works_here:
                self._desk.person_id = person.id

    def bike(self, told: dict[str, Any]) -> Bike:
        """One bike as far as its story goes."""
        rider = self._people[told["rider"]]
        new = NewBike(
            told["name"],
            told["layout"],
            told["discipline"],
            rider_id=rider.id,
            fork_travel_mm=told.get("fork_travel_mm"),
            shock_stroke_mm=told.get("shock_stroke_mm"),
            rear_travel_mm=told.get("rear_travel_mm"),
        )
        bike = self._desk.do(f"Add {new.name}", add_bike(new), station="garage")
        self._desk.do("Bike: tags", edit(Bike, bike.id, "tags", told["tags"]), bike_id=bike.id, station="garage")
        if "checkin" in told:
            check_in(self._desk, bike, told["checkin"])
        reached = ORDER.index(told["upto"])
        if told["upto"] == "archive":
            self._desk.do(f"Put away {bike.name}", archive_bike(bike.id), bike_id=bike.id, station="garage")
        if reached >= ORDER.index("count"):
            self._limits(bike, told)
            self._found(bike, told)
            self._count(bike, told, leaves_last=told["upto"] == "count")
        if reached >= ORDER.index("sag"):
            self._sag(bike, told, rider)
        if reached >= ORDER.index("baseline"):
            self.baseline(bike, rider)
        return bike

    def parts(self, bike_id: str) -> BikeParts:
        """Read the bike."""
        return self._desk.ask(bike_parts(bike_id))

    def _limits(self, bike: Bike, told: dict[str, Any]) -> None:
        for unit in self.parts(bike.id).units:
            about = told[unit.end]
            facts = {}
            if "limits_psi" in about:
                facts = {"minimum_kpa": _kpa(about["limits_psi"][0]), "maximum_kpa": _kpa(about["limits_psi"][1])}
            if "maker_sag" in about:
                facts |= {"maker_sag_low": about["maker_sag"][0], "maker_sag_high": about["maker_sag"][1]}
            for name, value in facts.items():
                title = "Fork" if unit.kind == "fork" else "Shock"
                label = f"{title}: {name.rsplit('_', 1)[0].replace('_', ' ')}"
                self._desk.do(label, edit(Unit, unit.id, name, value), bike_id=bike.id, station="garage")

    def _found(self, bike: Bike, told: dict[str, Any]) -> None:
        parts = self.parts(bike.id)
        for unit in parts.units:
            about = told[unit.end]
            if unit.spring == "coil":
                rate = parse(f"{about['found_lbf_in']} lbf/in", "spring_rate", default_unit="lbf/in")
                self._log(bike, Item.SPRING_RATE, unit.id, rate)
                self._log(bike, Item.PRELOAD, unit.id, about["preload_mm"])
            else:
                self._log(bike, Item.PRESSURE, unit.id, _kpa(about["found_psi"]))
                self._log(bike, Item.SPACERS, unit.id, 1.0)
        for tyre, psi in zip(parts.tyres, told["tyres_psi"], strict=True):
            self._log(bike, Item.TYRE_PRESSURE, tyre.id, _kpa(psi))

    def _log(self, bike: Bike, item: Item, subject_id: str, value: float) -> None:
        deed = log_found(bike.id, item, subject_id, value)
        self._desk.do(f"As found: {item.replace('_', ' ')}", deed, bike_id=bike.id, station="adjusters")

    def _count(self, bike: Bike, told: dict[str, Any], *, leaves_last: bool) -> None:
        parts = self.parts(bike.id)
        adjusters = parts.adjusters
        for adjuster in adjusters:
            about = told[parts.unit_of(adjuster).end]
            place = parts.adjusters_of(adjuster.unit_id).index(adjuster)
            found, steps = about["found"][place], about["range"][place]
            if leaves_last and adjuster is adjusters[-1]:
                return
            keep = keep_as_found(bike.id, adjuster.id, found)
            self._desk.do(f"Keep as found {found}", keep, bike_id=bike.id, station="adjusters")
            count = keep_range(bike.id, adjuster.id, steps)
            self._desk.do(f"Keep range {steps}", count, bike_id=bike.id, station="adjusters")

    def _sag(self, bike: Bike, told: dict[str, Any], rider: Person) -> None:
        for unit in self.parts(bike.id).units:
            about = told[unit.end]
            if "sag_mm" not in about:
                continue
            rounds = tuple(
                SagRound(
                    tuple(readings), "standing", "helper", self._desk.now(), _kpa(psi), temperature_c=20.0, spacers=1
                )
                for readings, psi in zip(about["sag_mm"], about["psi"], strict=True)
            )
            deed = keep_sag(bike.id, rider.id, unit.id, rounds, first_band(bike, unit))
            centre = sum(rounds[-1].readings_mm) / len(rounds[-1].readings_mm)
            self._desk.do(f"Keep {unit.end} sag {centre:.1f} mm", deed, bike_id=bike.id, station="sag")

    def baseline(self, bike: Bike, rider: Person) -> Setup:
        """Keep setup no. 1 as proposed and set it."""
        records = self._desk.ask(baseline_records(bike.id))
        values = {(one.item, one.subject_id): one.value for one in records.proposed}
        keep = keep_setup(bike.id, rider.id, values, "baseline")
        setup = self._desk.do("Keep setup no. 1", keep, bike_id=bike.id, station="baseline")
        steps = self._desk.ask(steps_to_setup(setup.id))
        if steps:
            label = f"Set {len(steps)} settings"
            self._desk.do(label, take_all_steps(bike.id, steps), bike_id=bike.id, station="baseline")
        return setup

    def person(self, name: str) -> Person:
        """Give somebody by name."""
        return self._people[name]


def _kpa(psi: float) -> float:
    return parse(f"{psi} psi", "pressure", default_unit="psi")

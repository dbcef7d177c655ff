"""The card that goes with the bike: a frozen sheet of lines, painted elsewhere for screen, print and PDF."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.exchange.card_lines import CardFigure, CardLine, CardSection, CardSheet
from workbench.exchange.card_strip import strip_of
from workbench.model.care import CLEARANCE, COLLAR, PITCHING, VENTING
from workbench.model.parts import ITEM_QUANTITIES, BikeParts, settable_items
from workbench.model.person import Person
from workbench.model.reading import Units, from_open_text, position_text, short_date, units_of
from workbench.model.sag import POSTURES, SagMeasurement
from workbench.model.setting import (
    HOWS,
    PRESSURE_ITEMS,
    Item,
    OnBike,
    Setup,
    adjuster_of,
    changes_between,
    is_on_other_hardware,
)
from workbench.model.units import from_unit
from workbench.physics.atmosphere import carry_pressure

__all__ = ["CardFigure", "CardLine", "CardSection", "CardSheet", "card_sheet"]

Key = tuple[str, str]

AIR_CAUTIONS = (
    "Stay within the maker's lowest and highest pressure. Every chamber has its own valve; some valves hold a damper's"
    " gas charge: do not touch them.",
    VENTING,
    "Keep to the maker's number of volume spacers, and let all air out before a spring is opened.",
)
CAUTIONS = (
    CLEARANCE,
    PITCHING,
    "After every change: three pushes, both brakes, a hundred metres of easy rolling, a gentle first run.",
    "Stop riding if anything feels or sounds wrong.",
    "The maker's manual and a qualified mechanic come before this card.",
)
NEVER_KNOWN = "not recorded"
ROOM_C = 20.0  # where no temperature was recorded with a pressure
COLDER_BY_C = 10.0
HEAVIER_BY_KG = 5.0
ABOVE_HIGHEST = "above the maker's highest"
OTHER_HARDWARE = "counted on earlier hardware: not to be set now"


def card_sheet(
    parts: BikeParts,
    setup: Setup,
    values: Mapping[Key, float | None],
    *,
    found: Mapping[Key, OnBike],
    ranges: Mapping[str, int] | None = None,
    sag: tuple[SagMeasurement, ...] = (),
    rider: Person | None = None,
    person: Person | None = None,
    handed_over: tuple[CardSection, ...] = (),
    cares: tuple[str, ...] = (),
    note: str = "",
    given_by: str = "",
    today: str,
) -> CardSheet:
    """Make the card of one setup, in the rider's units.

    Parameters
    ----------
    parts : the bike with everything on it.
    setup, values : the setup as left, and what it sets.
    found : what stood on the bike when this visit began, by item.
    ranges : steps of the count each adjuster's position was taken under, which "from open" goes by.
    sag : the measurements that hold, one an end.
    rider, person : whose card it is, and who made it.
    handed_over, cares : what check-ins left open and what falls due, and the sentences that go with it.
    note : the sentence that says what "as found" goes by.
    given_by : who handed the card over; else whoever made it signs.
    today : ISO time printed as the date.
    """
    units, ranges = units_of(rider), ranges or {}
    sections = [
        CardSection(
            "Fork" if unit.kind == "fork" else "Shock",
            tuple(
                _line(parts, item, subject, values, found, units, ranges.get(subject))
                for item, subject in settable_items(parts)
                if _belongs(parts, subject, unit.id)
            )
            + tuple(_sag_line(one, units) for one in sag if one.unit_id == unit.id),
        )
        for unit in parts.units
    ]
    tyres = tuple(_line(parts, Item.TYRE_PRESSURE, tyre.id, values, found, units) for tyre in parts.tyres)
    sections.append(CardSection("Tyres", tyres))
    other_days = _colder_lines(parts, values, units) + _heavier_lines(parts, values, sag, units)
    sections.extend(handed_over)
    sections.append(CardSection("On another day", other_days, ("If left alone", "Set instead"), is_aside=True))
    name = f" “{setup.name}”" if setup.name else ""
    return CardSheet(
        title=parts.bike.name,
        subtitle=f"Setup no. {setup.number}{name}",
        strip=strip_of(parts, values, ranges, sag, units),
        sections=tuple(section for section in sections if section.lines),
        cautions=cares + cautions_for(parts),
        cells=(
            ("Bike", parts.bike.name),
            ("Rider", _rider_text(rider, units)),
            ("Setup", f"no. {setup.number}{name}"),
            ("Date", short_date(today)),
            ("By", person.name if person else "–"),
        ),
        note=note,
        signed=(("Handed over by", given_by or (person.name if person else "")), ("Received by", "")),
    )


def cautions_for(parts: BikeParts) -> tuple[str, ...]:
    """Say what to take care of on this bike: air springs, coils, and what holds of every bike."""
    springs = {unit.spring for unit in parts.units}
    air = AIR_CAUTIONS if springs - {"coil"} else ()
    return (*air, *((COLLAR,) if "coil" in springs else ()), *CAUTIONS)


def _colder_lines(parts: BikeParts, values: Mapping[Key, float | None], units: Units) -> tuple[CardLine, ...]:
    """Say what each pressure falls to when it is ten degrees colder: what it will show, and what to set instead."""
    lines = []
    for item, subject_id in settable_items(parts):
        kpa = values.get((item, subject_id))
        if kpa is None or item not in PRESSURE_ITEMS:
            continue
        line = parts.line(item, subject_id)
        warm_c = line.temperature_c if line is not None and line.temperature_c is not None else ROOM_C
        cold_c = warm_c - COLDER_BY_C
        shows = carry_pressure(kpa, from_c=warm_c, to_c=cold_c)
        instead = carry_pressure(kpa, from_c=cold_c, to_c=warm_c)
        lines.append(
            CardLine(
                parts.subject_title(item, subject_id),
                f"shows {units.text(shows, 'pressure')}",
                f"set {units.text(instead, 'pressure')}",
                f"set here at {units.text(warm_c, 'temperature')} for {units.text(cold_c, 'temperature')} there",
            )
        )
    return tuple(lines)


def _heavier_lines(
    parts: BikeParts,
    values: Mapping[Key, float | None],
    sag: tuple[SagMeasurement, ...],
    units: Units,
) -> tuple[CardLine, ...]:
    """Say what each spring asks for under a heavier rider or pack, where the mass at its sag is known."""
    from workbench.physics.carry import carry_spring

    lines = []
    more_kg = from_unit(10.0, "mass", "lb") if units.mass == "lb" else HEAVIER_BY_KG
    for unit in parts.units:
        kpa, rate = values.get((Item.PRESSURE, unit.id)), values.get((Item.SPRING_RATE, unit.id))
        mass_kg = next((one.rider_mass_kg for one in sag if one.unit_id == unit.id), None)
        if unit.spring == "coil" and rate is not None and mass_kg is not None:
            line = parts.line(Item.SPRING_RATE, unit.id)
            is_by_table = line is not None and (line.how, line.value) == ("table", rate)  # more than one rate then
            exact = f"fit {units.text(rate * (1 + more_kg / mass_kg), 'spring_rate')}"
            fit = f"{100 * more_kg / mass_kg:.0f}\u2009% stiffer" if is_by_table else exact
            title, heavier = parts.subject_title(Item.SPRING_RATE, unit.id), f"with {units.text(more_kg, 'mass')} more"
            lines.append(CardLine(title, heavier, fit, "for the same sag at this preload; measure it"))
        if kpa is None or mass_kg is None or unit.spring == "coil":
            continue
        title, heavier = parts.subject_title(Item.PRESSURE, unit.id), f"with {units.text(more_kg, 'mass')} more"
        if unit.spring == "air_coil":
            lines.append(CardLine(title, heavier, "measure sag", "a coil beside the air carries part of the load"))
            continue
        carried = carry_spring(
            kpa,
            here_c=ROOM_C,
            there_c=ROOM_C,
            old_rider_kg=mass_kg,
            new_rider_kg=mass_kg + more_kg,
            maximum_kpa=unit.maximum_kpa,
        )
        instead = f"set {units.text(carried.set_here_kpa, 'pressure')}"
        damping = units.text(round(carried.rebound_shift, 2), "fraction")
        lines.append(
            CardLine(
                title,
                heavier,
                ABOVE_HIGHEST if carried.over_maximum else instead,
                f"measure sag; rebound {damping} more",
            )
        )
    return tuple(lines)


def _belongs(parts: BikeParts, subject_id: str, unit_id: str) -> bool:
    adjuster = parts.adjuster(subject_id)
    return subject_id == unit_id or (adjuster is not None and adjuster.unit_id == unit_id)


def _line(
    parts: BikeParts,
    item: str,
    subject_id: str,
    values: Mapping[Key, float | None],
    found: Mapping[Key, OnBike],
    units: Units,
    steps: int | None = None,
) -> CardLine:
    label = parts.subject_title(item, subject_id).partition(": ")[2] or parts.subject_title(item, subject_id)
    value, first = values.get((item, subject_id)), found.get((item, subject_id))
    adjuster = parts.adjuster(subject_id)
    if adjuster is not None:
        was = position_text(adjuster, first.value) if first else NEVER_KNOWN
        shown = adjuster.name or label.capitalize()
        gone = [key for key in values if is_on_other_hardware(key[1]) and adjuster_of(key[1]) == subject_id]
        if gone and value is None:
            return CardLine(shown, was, position_text(adjuster, values[gone[0]]), OTHER_HARDWARE)
        from_open = from_open_text(adjuster, value, steps)
        return CardLine(shown, was, position_text(adjuster, value), from_open, _is_changed(first, value))
    quantity = ITEM_QUANTITIES[item]
    was = units.text(first.value, quantity) if first and first.value is not None else NEVER_KNOWN
    left = units.text(value, quantity) if value is not None else NEVER_KNOWN
    how = _how(parts, item, subject_id, value, units)
    return CardLine(label[:1].upper() + label[1:], was, left, how, _is_changed(first, value))


def _is_changed(first: OnBike | None, value: float | None) -> bool:
    """Say whether something known was left otherwise, by more than a gauge can be read to."""
    if first is None or first.value is None or value is None:
        return False
    key = (first.item, first.subject_id)
    return bool(changes_between({key: first.value}, {key: value}))


def _how(parts: BikeParts, item: str, subject_id: str, value: float | None, units: Units) -> str:
    """Say how a pressure was read; nothing when the bike stands at another one now."""
    key, line = (item, subject_id), parts.line(item, subject_id)
    if line is None or item not in PRESSURE_ITEMS or changes_between({key: value}, {key: line.value}):
        return ""
    words = [HOWS.get(line.how, line.how)]
    if line.temperature_c is not None:
        words.append(f"at {units.text(line.temperature_c, 'temperature')}")
    return ", ".join(words)


def _sag_line(one: SagMeasurement, units: Units) -> CardLine:
    percent = f"{100 * one.sag_mm / one.travel_mm:.0f}\u2009%"
    aim = f"aim {100 * one.target_low:.0f} to {100 * one.target_high:.0f}\u2009%" + ("" if one.is_met else ", not met")
    posture = POSTURES[one.posture].partition(",")[0].lower()
    return CardLine("Static sag", "", f"{units.text(one.sag_mm, 'length')} = {percent}", f"{posture}, {aim}")


def _rider_text(rider: Person | None, units: Units) -> str:
    if rider is None:
        return "–"
    return rider.name if rider.mass_kg is None else f"{rider.name}, {units.text(rider.mass_kg, 'mass')}"

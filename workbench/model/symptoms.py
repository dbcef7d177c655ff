"""What a rider notices on a run, and what to suspect: each suspect with one test that tells it from the others.

Suspects, never a diagnosis. Order and tests are common practice, no source; some are reasoned from the physics of the
springs, where a lower rate, a fuller damper or a hindered return must show in one place and not in another.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from workbench.model.adjuster import Adjuster
from workbench.model.errors import InputError
from workbench.model.parts import BikeParts

BOTH = "both"
WHERE = {"front": "Front", "rear": "Rear", BOTH: "Both ends"}
MECHANIC = "Do not ride on. Have it checked by a qualified mechanic."


@dataclass(frozen=True, slots=True)
class Suspect:
    """Something that could be behind it, the one test that would tell, and the adjuster it points to, if one."""

    what: str
    test: str
    kind: str = ""  # of an adjuster; empty: nothing to turn
    speeds: tuple[str, ...] = ()  # preferred first; a single adjuster serves for any


@dataclass(frozen=True, slots=True)
class Symptom:
    """What is noticed, in a rider's words."""

    key: str
    words: str
    suspects: tuple[Suspect, ...]
    care: str = ""
    ends: tuple[str, ...] = field(default=("front", "rear", BOTH))


_REBOUND = ("low", "", "unknown", "high")
_SLOW = ("low", "", "unknown")
_FAST = ("high", "", "unknown")

_REBOUND_SLOW = Suspect(
    "Rebound too slow for a row of hits",
    "Open rebound 2 clicks, nothing else, and ride the same row of hits: if it stays higher, that speaks for it.",
    "rebound",
    _REBOUND,
)
_PRESSURE_LOW = Suspect(
    "Less spring than was set: pressure lost, or let out when warm",
    "Attach the same pump, cold: it should read what the last setting shows as attached.",
)
_SAG_DEEP = Suspect(
    "Too little spring for the rider's mass of today",
    "Measure sag once more in full kit: deeper than the target band says so.",
)
_TYRE = Suspect(
    "Tyre pressure, not the suspension",
    "Read both tyres with one gauge, then ride once with the tyre back at its number and no click moved.",
)

SYMPTOMS = (
    Symptom(
        "packs",
        "Sinks lower over a row of hits",
        (
            _REBOUND_SLOW,
            Suspect(
                "Spring too soft in mid-stroke",
                "Ride one single hit of that size: sinking as deep there points to the spring.",
            ),
            Suspect(
                "Sticky guides or bearings",
                "Push down slowly and let come up slowly: where it stops should differ little from where it sinks to.",
            ),
        ),
    ),
    Symptom(
        "dives",
        "Dives when braking or turning",
        (
            Suspect(
                "Too little low-speed compression",
                "Close low-speed compression 2 clicks and brake at the same mark: staying higher speaks for it.",
                "compression",
                _SLOW,
            ),
            _SAG_DEEP,
            _PRESSURE_LOW,
        ),
    ),
    Symptom(
        "kicks",
        "Kicks off lips or landings",
        (
            Suspect(
                "Rebound too fast",
                "Close rebound 2 clicks and take the same lip at the same speed: a calmer take-off speaks for it.",
                "rebound",
                (*_FAST, "low"),
            ),
            Suspect(
                "Damper without effect",
                "Push test with rebound fully closed against fully open, standing still: no difference is a fault.",
            ),
            Suspect(
                "The end of the stroke pushes back hard: more spacers or pressure than needed",
                "Look at the travel used: if the end is never reached, take one spacer out, pressure set as linked.",
            ),
        ),
    ),
    Symptom(
        "harsh_small",
        "Small bumps harsh, hands hurt",
        (
            _TYRE,
            Suspect(
                "Friction: sticks before it moves",
                "Measure sag settled from above and from below: the sag sheet says when friction is too much.",
            ),
            Suspect(
                "Too much low-speed compression",
                "Open low-speed compression 2 clicks and ride the same rough stretch seated and light on the bar.",
                "compression",
                _SLOW,
            ),
            Suspect(
                "Rebound too slow, so that it does not come back between bumps",
                "Open rebound 2 clicks on the same stretch: better over many bumps but not over one speaks for it.",
                "rebound",
                _REBOUND,
            ),
        ),
    ),
    Symptom(
        "spikes",
        "Harsh on square, fast hits",
        (
            Suspect(
                "Too much high-speed compression",
                "Open high-speed compression 2 clicks and take the one hardest hit again at the same speed.",
                "compression",
                _FAST,
            ),
            Suspect(
                "Lever left closed or half closed",
                "Look at the lever and push hard once: with the lever open it must move at once.",
            ),
            _TYRE,
        ),
    ),
    Symptom(
        "bottoms",
        "Hits the stop hard",
        (
            _PRESSURE_LOW,
            _SAG_DEEP,
            Suspect(
                "Too little support near the end, with sag right",
                "Add one spacer, pressure set as linked, so that sag stays: fewer contacts on the same hit say so.",
            ),
            Suspect(
                "Too little high-speed compression",
                "Close high-speed compression 2 clicks and take the same hit: less travel used says so.",
                "compression",
                _FAST,
            ),
        ),
    ),
    Symptom(
        "little_travel",
        "Never uses its travel",
        (
            Suspect(
                "Lever left closed, or a mode that is too firm",
                "Look at the lever, then ride one run with it open and nothing else moved.",
            ),
            Suspect("Too much spring", "Measure sag: less than the target band says so."),
            Suspect(
                "Too many spacers",
                "Sag right and the last fifth never used on a heavy hit: take one out, pressure set as linked.",
            ),
            Suspect(
                "Unit sucked down or wrongly stated: less travel there than believed",
                "Let the air out on the stand and push to the stop: measure the way and set it against the number.",
            ),
        ),
    ),
    Symptom(
        "washes",
        "Front washes out in flat turns",
        (
            _TYRE,
            Suspect(
                "Front held too high: too much front spring for the rear",
                "Measure both ends in one mounting: front under its band and rear over it says so.",
            ),
            Suspect(
                "Front rebound too fast to keep the tyre down",
                "Close front rebound 1 click, nothing else, and ride the same flat turn three times.",
                "rebound",
                _REBOUND,
            ),
            Suspect(
                "Front compression too firm to let the tyre follow",
                "Open front low-speed compression 2 clicks and ride the same turn.",
                "compression",
                _SLOW,
            ),
        ),
        ends=("front",),
    ),
    Symptom(
        "wallows",
        "Wallows, vague when pushed into",
        (
            Suspect(
                "Too little low-speed compression",
                "Close low-speed compression 2 clicks and pump the same rollers: more drive from them says so.",
                "compression",
                _SLOW,
            ),
            _SAG_DEEP,
            Suspect(
                "Rebound too fast, so that it goes on moving",
                "Push once, standing still: more than one small overshoot says so. Then close rebound 1 click.",
                "rebound",
                _REBOUND,
            ),
        ),
    ),
    Symptom(
        "fades",
        "Changes over a long descent",
        (
            Suspect(
                "Hot damper: oil thins, and the air reads more",
                "Stop and let it cool: back to how it was points to heat. Do not let air out of a hot unit.",
            ),
            Suspect(
                "Air or oil going past a seal",
                "Read the pressure cold, before and after a ride: more lost than the hose takes points to a leak.",
            ),
            Suspect("Tired hands and legs", "Ride an easy run in between: back to how it was points to the rider."),
        ),
    ),
    Symptom(
        "clunks",
        "Knocks, clunks or creaks",
        (
            Suspect(
                "Play in headset, bushings, bearings or mounting",
                "On the stand, brake held and bike still: rock it with a finger on each joint; the one that clicks.",
            ),
            Suspect("Loose axle, bolt or coil", "Check each against the maker's torque with a wrench, by hand, now."),
        ),
        care=MECHANIC,
    ),
    Symptom(
        "lost_damping",
        "Bounces suddenly, or oil seen",
        (
            Suspect(
                "Damper or seal has failed",
                "Push test, closed against open, standing still: no difference, or oil on the shaft, ends the ride.",
            ),
        ),
        care=MECHANIC,
    ),
)
_BY_KEY = {one.key: one for one in SYMPTOMS}


def symptom(key: str) -> Symptom | None:
    """Give a symptom by its key; None for one that is no longer in the list."""
    return _BY_KEY.get(key)


def check_symptom(key: str, end: str) -> None:
    """Refuse a symptom nobody asks about, or at an end it has not."""
    known = _BY_KEY.get(key)
    if known is None or end not in known.ends:
        raise InputError("Noticed", f"{key} {end}".strip(), "one of the list; front, rear or both ends")


def ends_of(one: Symptom, parts: BikeParts) -> tuple[str, ...]:
    """Give the ends of this bike at which it can be noticed."""
    there = tuple(end for end in ("front", "rear") if parts.unit(end) is not None)
    return tuple(end for end in one.ends if end in there or (end == BOTH and len(there) == 2))


def adjuster_to_try(suspect: Suspect, end: str, parts: BikeParts) -> Adjuster | None:
    """Give the counted adjuster a suspect points to; of both ends the front one, since one thing changes at a time."""
    unit = parts.unit("front" if end == BOTH else end)
    if unit is None or not suspect.kind:
        return None
    fitting = [
        one
        for one in parts.adjusters_of(unit.id)
        if one.kind == suspect.kind and one.speed in suspect.speeds and parts.range_of(one.id) is not None
    ]
    return min(fitting, key=lambda one: suspect.speeds.index(one.speed), default=None)

"""The two gates between which laps are timed: where they stand, as texts, on a recorded track. Pure."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from workbench.exchange.gpx import Gate, Lap, TrackPoint, laps_between, times_crossed
from workbench.exchange.track_gates import Plan
from workbench.model.errors import InputError
from workbench.model.responses import lap_text
from workbench.viewmodels.shown import how_often

Line = tuple[tuple[float, float], tuple[float, float]]  # on the plan, in metres
TITLES = {"start": "Start", "finish": "Finish"}
_NUMBER = re.compile(r"[-+]?\d{1,3}(?:\.\d{1,12})?")
_ENDS = "two places in degrees, as 46.00512, 7.00131; 46.00520, 7.00155"


@dataclass(frozen=True, slots=True)
class GateTexts:
    """One gate: when the track is at it, and its two ends, in which the gate is kept."""

    at: str = ""
    ends: str = ""


@dataclass(frozen=True, slots=True)
class Gates:
    """Both gates of a course; on a loop the finish is the start."""

    start: GateTexts = GateTexts()
    finish: GateTexts = GateTexts()
    is_loop: bool = False

    def of(self, name: str) -> GateTexts:
        """Give the start or the finish."""
        return self.start if name == "start" or self.is_loop else self.finish

    def with_gate(self, name: str, texts: GateTexts) -> Gates:
        """Give the gates with one of them elsewhere."""
        return replace(self, start=texts) if name == "start" else replace(self, finish=texts)

    def without_times(self) -> Gates:
        """Give the gates for another track, which is at them at other times."""
        return replace(self, start=replace(self.start, at=""), finish=replace(self.finish, at=""))

    def missing(self) -> str:
        """Say which gate is not set yet; empty when both are."""
        return next((name for name in TITLES if not self.of(name).ends), "")


@dataclass(frozen=True, slots=True)
class TrackPlan:
    """The track seen from above, in metres, with its gates."""

    lines: tuple[tuple[tuple[float, float], ...], ...] = ()
    gates: tuple[tuple[str, Line], ...] = ()  # with the words that stand at each
    said: str = ""


def read_ends(text: str) -> Gate:
    """Read a gate from its two ends as typed."""
    found = [part.strip() for part in re.split(r"[;,\s]+", text.strip()) if part.strip()]
    if len(found) != 4 or not all(_NUMBER.fullmatch(part) for part in found):
        raise InputError("Ends of the gate", text, _ENDS)
    numbers = [float(part) for part in found]
    return (numbers[0], numbers[1]), (numbers[2], numbers[3])


def ends_text(gate: Gate) -> str:
    """Write a gate down by its two ends, to a tenth of a metre."""
    return "; ".join(f"{latitude:.6f}, {longitude:.6f}" for latitude, longitude in gate)


def gate_when(plan: Plan, begun_s: float, since_s: float) -> GateTexts:
    """Give the gate across the track where it was so long after it began."""
    gate = plan.gate_at(begun_s + since_s)
    return GateTexts(lap_text(since_s), ends_text(gate))


def plan_of(plan: Plan, gates: Gates) -> TrackPlan:
    """Lay out the track with the gates that are set."""
    drawn = []
    for name in TITLES if not gates.is_loop else ("start",):
        if ends := gates.of(name).ends:
            first, second = read_ends(ends)
            words = "start and finish" if gates.is_loop else name
            drawn.append((words, (plan.spot(*first), plan.spot(*second))))
    named = " and ".join(words for words, _ in drawn)
    said = f"The track from above, with its {named}" if drawn else "The track from above, no gate on it yet"
    return TrackPlan(plan.lines, tuple(drawn), said)


def find_laps(segments: list[list[TrackPoint]], gates: Gates) -> tuple[tuple[Lap, ...], str]:
    """Find the laps, and say why there are none."""
    if missing := gates.missing():
        return (), f"Say where the {missing} is: click on the plan, or type it."
    start, finish = (read_ends(gates.of(name).ends) for name in TITLES)
    laps = laps_between(segments, start=start, finish=finish)
    if laps:
        return laps, ""
    crossed = how_often(times_crossed(segments, start))
    if gates.is_loop:
        return (), f"No lap: the start is crossed {crossed} in its direction. A loop takes two crossings or more."
    crossings = f"the start is crossed {crossed}, the finish {how_often(times_crossed(segments, finish))}"
    return (), f"No lap: {crossings}, and never the finish after the start. Move the gates, or change them round."

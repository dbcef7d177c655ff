"""Courses, sessions and runs."""

from __future__ import annotations

from dataclasses import dataclass

SURFACES = {"dry": "Dry", "damp": "Damp", "wet": "Wet", "loose": "Loose", "frozen": "Frozen"}
ENDS = ("front", "rear")
LEVERS = {
    "rear closed": "Rear lever closed",
    "rear middle": "Rear lever in the middle",
    "front closed": "Front lever closed",
    "front middle": "Front lever in the middle",
    "both closed": "Both levers closed",
}  # where a lever was left by mistake; an empty text on a run: where its setup has it


def lever_ends(lever: str) -> set[str]:
    """Give the ends a lever's position speaks of."""
    end = lever.partition(" ")[0]
    return set(ENDS) if end == "both" else {end} if end in ENDS else set()


@dataclass(frozen=True, slots=True)
class Course:
    """A stretch ridden again and again: one to three minutes, varied, comfortable."""

    id: str
    name: str
    has_heavy_hit: bool = False
    typical_s: float | None = None
    altitude_m: float | None = None
    note: str = ""
    archived_at: str | None = None


@dataclass(frozen=True, slots=True)
class Session:
    """One outing on one course with one bike and rider."""

    id: str
    bike_id: str
    rider_id: str
    course_id: str
    started_at: str
    surface: str = "dry"
    temperature_c: float | None = None
    start_setup_id: str | None = None
    verified_at: str | None = None
    not_verified_reason: str = ""
    response: str = "liking"  # the one named before riding; the rest is looked at beside it
    planned_runs: int | None = None
    is_blind: bool = False
    ended_at: str | None = None
    person_id: str | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Run:
    """One ride of the course, with what the rider said right after."""

    id: str
    session_id: str
    number: int
    setup_id: str
    ridden_at: str
    typed_at: str
    is_warmup: bool = False
    is_confounded: bool = False
    is_blind: bool = False
    is_set_aside: bool = False
    set_aside_reason: str = ""
    liking: int | None = None  # 1 to 9
    direction: int | None = None  # -2 far too closed .. +2 far too open
    direction_of: str | None = None  # the adjuster the direction speaks of
    compared: int | None = None  # -1 worse, 0 same, +1 better than the run before
    travel_front_mm: float | None = None
    travel_rear_mm: float | None = None
    bottom_outs_front: int | None = None
    bottom_outs_rear: int | None = None
    tyre_front_kpa: float | None = None  # read right after the run, where it was
    tyre_rear_kpa: float | None = None
    lap_s: float | None = None
    lever: str = ""
    guess: str = ""
    note: str = ""
    person_id: str | None = None


@dataclass(frozen=True, slots=True)
class RunRating:
    """A further attribute of a run, for one end or the bike as a whole."""

    id: str
    run_id: str
    attribute: str
    score: int
    end: str = ""


@dataclass(frozen=True, slots=True)
class RunSymptom:
    """Something the rider noticed: a suspect to test, not a diagnosis."""

    id: str
    run_id: str
    symptom: str
    end: str = ""


@dataclass(frozen=True, slots=True)
class Overrule:
    """The rider went elsewhere than proposed."""

    id: str
    session_id: str
    adjuster_id: str
    proposed: int
    chosen: int
    at: str
    reason: str = ""


@dataclass(frozen=True, slots=True)
class BlindPlan:
    """The order of a blind session, fixed before the first run."""

    id: str
    session_id: str
    labels: str
    order: str
    seed: int
    digest: str
    fixed_at: str
    revealed_at: str | None = None

"""Starting a session: what is asked, and what cannot be used."""

from __future__ import annotations

import json
from collections.abc import Callable
from dataclasses import asdict, dataclass, field, replace

from workbench.actions.ride import RideRecords
from workbench.model.errors import InputError
from workbench.model.facts import check_field, clean_text, field_of, read_whole
from workbench.model.responses import RESPONSES
from workbench.model.ride import SURFACES, Course, Session
from workbench.model.setting import Setup
from workbench.model.steps import steps_to
from workbench.viewmodels.base import Problem
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import StepLine, step_lines
from workbench.viewmodels.typed_drafts import TypedIn, read_kept

DRAFT = "session"
QUANTITIES = {"temperature": "temperature"}
VERIFY = {
    "knobs": "Every knob turned fully closed and back out to its number",
    "pressures": "Pressures and tyres set to the list, with this pump",
    "indicator": "Lever where it belongs, indicator pushed to the seal",
    "rolls": "It rolls: three pushes on each end, nothing rubs or knocks",
    "brakes": "Both brakes bite well before the bar",
    "axles": "Both axles tight, wheels straight",
}
SAFETY = ("rolls", "brakes", "axles")
NOT_VERIFIED_REASONS = (
    "Ridden before it was entered",
    "No pump at hand",
    "Set by the rider alone, not seen",
    "No time",
)
STILL_LOOK = "Reason or not: look at rolling, brakes and axles before anybody rides."


@dataclass(frozen=True, slots=True)
class StartDraft:
    """What has been entered so far, as typed."""

    course_id: str = ""
    new_course: str = ""
    has_heavy_hit: bool = False
    surface: str = "dry"
    temperature: str = ""
    planned: str = "10"
    response: str = "liking"
    setup_id: str = ""  # the one picked to ride; empty: what is on the bike, else the newest
    checked: tuple[str, ...] = ()  # ticked one by one
    verified: bool = False  # all of it
    verified_at: str = ""  # when it was ticked
    not_verified: str = ""
    typed_in: TypedIn = field(default=(), compare=False)

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> StartDraft:
        """Read a kept draft."""
        draft = read_kept(cls, text)
        checked = tuple(VERIFY) if draft.verified else tuple(key for key in VERIFY if key in draft.checked)
        return replace(draft, checked=checked)


@dataclass(frozen=True, slots=True)
class StartState:
    """The sheet that starts a session."""

    draft: StartDraft
    courses: tuple[tuple[str, str], ...] = ()
    surfaces: tuple[tuple[str, str], ...] = tuple(SURFACES.items())
    responses: tuple[tuple[str, str], ...] = tuple(RESPONSES.items())
    temperature_unit: str = "degC"
    setup_text: str = ""
    steps: tuple[StepLine, ...] = ()
    verify: tuple[tuple[str, str], ...] = tuple(VERIFY.items())
    care: str = ""
    setups: tuple[tuple[str, str], ...] = ()  # to ride, the named ones first
    setup_id: str = ""
    setup_name: str = ""
    last_session: str = ""
    has_draft: bool = False


def setup_to_ride(records: RideRecords, setup_id: str = "") -> Setup:
    """Give the setup a session starts on: the one picked, else the one on the bike, else the newest."""
    picked = next((one for one in records.setups if one.id == setup_id), None)
    return picked or records.current or records.setups[-1]


def resolve_start(
    records: RideRecords, courses: tuple[Course, ...], draft: StartDraft, units: Units, *, has_draft: bool
) -> StartState:
    """Lay the sheet out."""
    setup = setup_to_ride(records, draft.setup_id)
    steps = steps_to(records.parts, records.values[setup.id])
    return StartState(
        draft=draft,
        courses=tuple((course.id, course.name) for course in courses),
        temperature_unit=units.temperature,
        setup_text=setup_words(setup),
        care=STILL_LOOK if draft.not_verified and not set(SAFETY) <= set(draft.checked) else "",
        setups=setups_to_switch_to(records),
        setup_id=setup.id,
        setup_name=setup.name,
        steps=step_lines(steps, units),
        has_draft=has_draft,
    )


def setup_words(setup: Setup) -> str:
    """Name a setup: its number, and its name if it has one."""
    return f"Setup no. {setup.number}" + (f" “{setup.name}”" if setup.name else "")


def setups_to_switch_to(records: RideRecords) -> tuple[tuple[str, str], ...]:
    """List the setups a session can start on: the named ones by name, then the others, newest first."""
    named = sorted((one for one in records.setups if one.name), key=lambda one: (one.name.casefold(), one.number))
    others = [one for one in reversed(records.setups) if not one.name]
    on_bike = records.current.id if records.current else ""
    return tuple(
        (one.id, setup_words(one) + (", on the bike now" if one.id == on_bike else "")) for one in (*named, *others)
    )


def with_check(draft: StartDraft, key: str, done: bool, now: str) -> StartDraft:
    """Give the start with one thing ticked or not; all of them make it verified, at that moment."""
    checked = tuple(one for one in VERIFY if (done if one == key else one in draft.checked))
    verified = len(checked) == len(VERIFY)
    return replace(draft, checked=checked, verified=verified, verified_at=now if verified else "")


def problem(draft: StartDraft, units: Units, *, has_steps: bool) -> Problem | None:
    """Find what cannot be used, in the order of the sheet."""
    if not draft.course_id and not clean_text(draft.new_course):
        return Problem("Pick a course or name a new one.", "new_course")
    checks: tuple[tuple[str, Callable[[], object]], ...] = (
        ("new_course", lambda: draft.course_id or check_field(field_of(Course, "name"), draft.new_course)),
        ("temperature", lambda: read_temperature(draft, units)),
        ("planned", lambda: read_planned(draft)),
        ("not_verified", lambda: check_field(field_of(Session, "not_verified_reason"), draft.not_verified)),
    )
    for name, check in checks:
        try:
            check()
        except InputError as error:
            return Problem(str(error), name)
    if has_steps and not draft.not_verified:
        return Problem("Set the steps that are left first, or say why the start is not verified.", "not_verified")
    if draft.checked and not draft.verified and not draft.not_verified:
        missing = "; ".join(words for key, words in VERIFY.items() if key not in draft.checked)
        return Problem(f"Not ticked: {missing}. Look, tick it, or say why not.", "verified")
    if not draft.verified and not draft.not_verified:
        return Problem("Verify the start, or say why not. Runs from an unverified start are set aside.", "verified")
    return None


def read_temperature(draft: StartDraft, units: Units) -> float | None:
    """Read the air temperature."""
    if not draft.temperature.strip():
        return None
    value = units.parse(draft.temperature, "temperature")
    if not -40 <= value <= 60:
        raise InputError("Temperature", draft.temperature, "-40 to 60 degC")
    return value


def read_planned(draft: StartDraft) -> int | None:
    """Read the number of runs planned."""
    if not draft.planned.strip():
        return None
    return read_whole("Runs planned", draft.planned, 1, 60)


def session_of(
    draft: StartDraft, records: RideRecords, course_id: str, rider_id: str, units: Units, now: str
) -> Session:
    """Make the session; its key and start time are filled in by the deed."""
    return Session(
        id="",
        bike_id=records.parts.bike.id,
        rider_id=rider_id,
        course_id=course_id,
        started_at="",
        surface=draft.surface,
        temperature_c=read_temperature(draft, units),
        start_setup_id=setup_to_ride(records, draft.setup_id).id,
        verified_at=(draft.verified_at or now) if draft.verified and not draft.not_verified else None,
        not_verified_reason=clean_text(draft.not_verified),
        planned_runs=read_planned(draft),
        response=draft.response if draft.response in RESPONSES else "liking",
    )

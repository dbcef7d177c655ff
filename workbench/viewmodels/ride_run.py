"""One run as it is entered: three things first, the rest folded away."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field, replace

from workbench.model.adjuster import Adjuster, adjuster_words
from workbench.model.errors import InputError
from workbench.model.facts import check_field, field_of, read_whole
from workbench.model.item_facts import ITEM_FIELDS
from workbench.model.parts import BikeParts
from workbench.model.ride import ENDS, LEVERS, Run, lever_ends
from workbench.model.setting import Item
from workbench.model.tyres import has_lost_air
from workbench.viewmodels import ride_noticed
from workbench.viewmodels.base import Problem
from workbench.viewmodels.ride_laps import LAP_MISSING, WATCH_RUNS, read_lap
from workbench.viewmodels.ride_noticed import Noticed
from workbench.viewmodels.ride_scores import ScoreRow, Scores, in_order, resolve_scores
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import TypedIn, read_kept
from workbench.viewmodels.tyre_words import TyreDrift, drift_words

DRAFT = "run"
QUANTITIES = {
    "travel_front": "length",
    "travel_rear": "length",
    "tyre_front": "pressure",
    "tyre_rear": "pressure",
}
LABELS = {
    "travel_front": "Travel used, front",
    "travel_rear": "Travel used, rear",
    "bottom_front": "Hard contacts, front",
    "bottom_rear": "Hard contacts, rear",
    "tyre_front": "Front tyre now",
    "tyre_rear": "Rear tyre now",
    "lap": "Lap time",
    "note": "Note",
}
DIRECTION_WORDS = {
    "rebound": ("far too slow", "too slow", "just right", "too fast", "far too fast"),
    "compression": ("far too firm", "too firm", "just right", "too soft", "far too soft"),
}
SET_ASIDE_REASONS = (
    "Lever was wrong",
    "Disturbed on the way",
    "Tyre lost air",
    "Fell or stopped",
    "Start not verified",
)


def lever_choices(parts: BikeParts) -> tuple[tuple[str, str], ...]:
    """Say where a lever may have stood by mistake, for the ends this bike has."""
    there = {unit.end for unit in parts.units}
    return tuple((key, f"{words} by mistake") for key, words in LEVERS.items() if lever_ends(key) <= there)


@dataclass(frozen=True, slots=True)
class RunDraft:
    """What has been entered of a run so far, texts as typed."""

    liking: int | None = None
    direction: int | None = None
    compared: int | None = None
    is_warmup: bool | None = None  # None: as the tool proposes
    travel_front: str = ""
    travel_rear: str = ""
    bottom_front: str = ""
    bottom_rear: str = ""
    tyre_front: str = ""
    tyre_rear: str = ""
    lap: str = ""
    watch: str = ""  # when the stopwatch was started, while it runs
    note: str = ""
    lever: str = ""
    scores: Scores = ()
    noticed: Noticed = ()
    ridden_at: str = ""
    setup_id: str = ""  # what was ridden, and what the direction speaks of: as at the first entry,
    tested_id: str = ""  # also when something else is set before the run is kept
    typed_in: TypedIn = field(default=(), compare=False)

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> RunDraft:
        """Read a kept draft."""
        draft = read_kept(cls, text)
        return replace(draft, scores=in_order(draft.scores), noticed=ride_noticed.in_order(draft.noticed))


@dataclass(frozen=True, slots=True)
class RunEntry:
    """The run being entered, ready to be drawn."""

    draft: RunDraft
    number: int
    is_warmup: bool
    direction_question: str = ""
    direction_words: tuple[str, ...] = ()
    length_unit: str = "mm"
    pressure_unit: str = "psi"
    tyres: str = ""  # which of them drifted, and what that means for the run
    has_rear: bool = True
    can_compare: bool = False
    has_draft: bool = False
    response: str = "liking"  # what the session is judged by
    scores: tuple[ScoreRow, ...] = ()
    levers: tuple[tuple[str, str], ...] = ()  # where one may have been left by mistake


def resolve_entry(
    draft: RunDraft,
    parts: BikeParts,
    number: int,
    tested: Adjuster | None,
    units: Units,
    *,
    has_draft: bool,
    response: str = "liking",
    drifts: tuple[TyreDrift, ...] = (),
) -> RunEntry:
    """Lay the entry out; the first run of a session is proposed as warm-up."""
    question = ""
    words: tuple[str, ...] = ()
    if tested is not None:
        end = parts.unit_of(tested).end
        question = f"{end.capitalize()} {adjuster_words(tested)} was"
        words = DIRECTION_WORDS.get(tested.kind, DIRECTION_WORDS["compression"])
    return RunEntry(
        draft=draft,
        number=number,
        is_warmup=number == 1 if draft.is_warmup is None else draft.is_warmup,
        direction_question=question,
        direction_words=words,
        length_unit=units.length,
        pressure_unit=units.pressure,
        tyres=_tyre_sentence(drifts, units),
        has_rear=parts.unit("rear") is not None,
        can_compare=number > 1,
        has_draft=has_draft,
        response=response,
        scores=resolve_scores(draft.scores, parts),
        levers=lever_choices(parts),
    )


def tyres_read(draft: RunDraft, units: Units) -> dict[str, float | None]:
    """Read what the tyres show now, by end; what cannot be read yet is none."""
    found: dict[str, float | None] = {}
    for end in ENDS:
        try:
            found[end] = _read_tyre(getattr(draft, f"tyre_{end}").strip(), f"tyre_{end}", units)
        except InputError:
            found[end] = None
    return found


def _tyre_sentence(drifts: tuple[TyreDrift, ...], units: Units) -> str:
    if not drifts:
        return ""
    words = ", ".join(drift_words(one, units) for one in drifts)
    lost = any(has_lost_air(one.kpa) for one in drifts)
    means = "The run is set aside: it was not ridden on its setup." if lost else "Riding warms a tyre; it is noted."
    return f"{words[:1].upper()}{words[1:]}. {means}"


def _lost_air(drifts: tuple[TyreDrift, ...]) -> str:
    """Say why the run is set aside; empty where no tyre lost air."""
    ends = [one.end for one in drifts if has_lost_air(one.kpa)]
    return f"{' and '.join(ends).capitalize()} tyre lost air" if ends else ""


def problem(draft: RunDraft, parts: BikeParts, units: Units, *, response: str = "liking") -> Problem | None:
    """Find the first entry that cannot be used. ``response`` is what the session is judged by."""
    for name in LABELS:
        try:
            _read(draft, name, parts, units)
        except InputError as error:
            return Problem(str(error), name)
    if draft.watch:
        return Problem(WATCH_RUNS, "lap")
    if draft.is_warmup is not True and response == "lap_s" and not draft.lap.strip():
        return Problem(LAP_MISSING, "lap")
    is_timed = response == "lap_s" or read_lap(draft.lap, units) is not None
    if draft.liking is None and draft.compared is None and not is_timed and draft.is_warmup is not True:
        return Problem("Rate the run first: how much was it liked, 1 to 9?", "liking")
    return None


def run_of(
    draft: RunDraft,
    entry: RunEntry,
    parts: BikeParts,
    units: Units,
    *,
    session_id: str,
    setup_id: str,
    tested: Adjuster | None,
    unverified: bool,
    drifts: tuple[TyreDrift, ...] = (),
) -> Run:
    """Make the run; number, key and times are filled in by the deed."""
    read = {name: _read(draft, name, parts, units) for name in LABELS}
    run = Run(
        id="",
        session_id=session_id,
        number=0,
        setup_id=setup_id,
        ridden_at=draft.ridden_at,
        typed_at="",
        is_warmup=entry.is_warmup,
        liking=draft.liking,
        direction=draft.direction,
        direction_of=tested.id if tested is not None and draft.direction is not None else None,
        compared=draft.compared,
        travel_front_mm=_number(read["travel_front"]),
        travel_rear_mm=_number(read["travel_rear"]),
        bottom_outs_front=_count(read["bottom_front"]),
        bottom_outs_rear=_count(read["bottom_rear"]),
        tyre_front_kpa=_number(read["tyre_front"]),
        tyre_rear_kpa=_number(read["tyre_rear"]),
        lap_s=_number(read["lap"]),
        note=str(read["note"] or ""),
    )
    if draft.lever in LEVERS:
        return replace(run, lever=draft.lever, is_set_aside=True, set_aside_reason=f"{LEVERS[draft.lever]} by mistake")
    if lost := _lost_air(drifts):
        return replace(run, is_set_aside=True, set_aside_reason=lost)
    return replace(run, is_set_aside=True, set_aside_reason="Start not verified") if unverified else run


def _read(draft: RunDraft, name: str, parts: BikeParts, units: Units) -> float | str | None:
    text = getattr(draft, name).strip()
    if not text:
        return None
    if name == "note":
        return str(check_field(field_of(Run, "note"), text))
    if name == "lap":
        return read_lap(text, units)
    if name.startswith("bottom"):
        return float(read_whole(LABELS[name], text, 0, 50))
    if name.startswith("tyre"):
        return _read_tyre(text, name, units)
    return _read_travel(text, name, parts, units)


def _read_tyre(text: str, name: str, units: Units) -> float | None:
    if not text:
        return None
    value = units.parse(text, "pressure")
    return float(check_field(replace(ITEM_FIELDS[Item.TYRE_PRESSURE], label=LABELS[name]), value))


def _read_travel(text: str, name: str, parts: BikeParts, units: Units) -> float:
    value = units.parse(text, "length")
    unit = parts.unit("front" if name == "travel_front" else "rear")
    most = unit.travel_mm if unit is not None and unit.travel_mm else 400.0
    if not 0 <= value <= most + 2:  # an indicator ring can be pushed a little beyond
        what = "fork travel" if name == "travel_front" else "shock stroke"
        raise InputError(LABELS[name], text, f"0 to {units.text(most, 'length')}, the {what}")
    return value


def _number(value: float | str | None) -> float | None:
    return value if isinstance(value, float) else None


def _count(value: float | str | None) -> int | None:
    return int(value) if isinstance(value, float) else None

"""Sessions side by side: conditions, the setup each ended on, what was rated, and what makes them hard to compare."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import median

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.ride_evidence import counted
from workbench.model.errors import NotEnoughData
from workbench.model.parts import ITEM_QUANTITIES, settable_items
from workbench.model.ride import ENDS, SURFACES
from workbench.model.setting import Item
from workbench.model.tyres import TYRE_KPA, tyre_read_kpa
from workbench.viewmodels.review_looked import attribute_title, attributes_in_order, scores_of
from workbench.viewmodels.shown import Units, position_text, short_date
from workbench.viewmodels.tyre_words import tyre_drifts

WARMER_BY_C = 8.0  # named beside a comparison from here on (common practice, no source)


@dataclass(frozen=True, slots=True)
class SideRow:
    """One line of the comparison; ``differs`` where the sessions are not alike in it."""

    title: str
    cells: tuple[str, ...]
    differs: bool = False


@dataclass(frozen=True, slots=True)
class Sides:
    """Two sessions or more, side by side."""

    heads: tuple[str, ...] = ()
    rows: tuple[SideRow, ...] = ()
    cautions: tuple[str, ...] = ()


def resolve_sides(records: RideRecords, units: Units) -> Sides:
    """Lay the sessions with runs side by side, oldest first; empty with fewer than two."""
    sessions = tuple(one for one in records.sessions if counted(one))
    if len(sessions) < 2:
        return Sides()
    rows = [
        _row("Course", [one.course.name for one in sessions]),
        _row("Ground", [SURFACES.get(one.session.surface, one.session.surface) for one in sessions]),
        _row("Air", [units.text(one.session.temperature_c, "temperature") for one in sessions]),
        _row("Runs counted", [str(len(counted(one))) for one in sessions], matters=False),
        _row("Liking, middle and range", [_liking(one) for one in sessions], matters=False),
        _row("Last setup", [f"no. {records.setup(_last_setup(one)).number}" for one in sessions]),
    ]
    rows.extend(_attribute_rows(sessions))
    rows.extend(_setting_rows(records, sessions, units))
    heads = tuple(short_date(one.session.started_at) for one in sessions)
    return Sides(heads, tuple(rows), _cautions(records, sessions))


def _row(title: str, cells: list[str], *, matters: bool = True) -> SideRow:
    return SideRow(title, tuple(cells), matters and len(set(cells)) > 1)


def _liking(session: SessionRecords) -> str:
    ratings = sorted(run.liking for run in counted(session) if run.liking is not None and not run.is_warmup)
    return f"{median(ratings):g} ({ratings[0]} to {ratings[-1]})" if ratings else "not rated"


def _attribute_rows(sessions: tuple[SessionRecords, ...]) -> list[SideRow]:
    """List the attributes rated in two sessions or more, with intervals where there are enough ratings."""
    scores = [scores_of((one,)) for one in sessions]
    keys = attributes_in_order({key for one in scores for key in one if sum(key in other for other in scores) > 1})
    return [
        _row(attribute_title(*key), [_mean_words([s for _, s in one.get(key, [])]) for one in scores], matters=False)
        for key in keys
    ]


def _mean_words(scores: list[int]) -> str:
    from workbench.evidence.interval import mean_interval

    try:
        middle, low, high = mean_interval(scores)
    except NotEnoughData:
        return ", ".join(str(score) for score in scores) or "not rated"
    return f"{middle:.1f} (nine in ten {low:.1f} to {high:.1f}; {len(scores)} runs)"


def _last_setup(session: SessionRecords) -> str:
    return counted(session)[-1].setup_id


def _setting_rows(records: RideRecords, sessions: tuple[SessionRecords, ...], units: Units) -> list[SideRow]:
    """List the settings of the last setups; those alike in all come after those that differ."""
    rows = []
    for item, subject_id in settable_items(records.parts):
        adjuster = records.parts.adjuster(subject_id)
        values = [records.values[_last_setup(one)].get((item, subject_id)) for one in sessions]
        cells = [
            position_text(adjuster, value) if adjuster else units.text(value, ITEM_QUANTITIES[item]) for value in values
        ]
        rows.append(_row(records.parts.subject_title(item, subject_id), cells))
    return sorted(rows, key=lambda row: not row.differs)


def _drift_cautions(records: RideRecords, sessions: tuple[SessionRecords, ...]) -> tuple[str, ...]:
    """Name the runs that count although a tyre read otherwise than it was set."""
    told = []
    for one in sessions:
        for run in counted(one):
            read = {end: tyre_read_kpa(run, end) for end in ENDS}
            drifts = tyre_drifts(records.parts, records.values[run.setup_id], read, one.session.temperature_c)
            ends = " and ".join(drift.end for drift in drifts)
            if ends:
                day = short_date(one.session.started_at)
                told.append(f"The {ends} tyre read more than 1 psi off on run {run.number} of {day}.")
    return tuple(told)


def _cautions(records: RideRecords, sessions: tuple[SessionRecords, ...]) -> tuple[str, ...]:
    cautions = []
    warmth = [one.session.temperature_c for one in sessions if one.session.temperature_c is not None]
    if warmth and max(warmth) - min(warmth) > WARMER_BY_C:
        cautions.append(f"The air was {max(warmth) - min(warmth):.0f} degrees apart.")
    if len({one.session.surface for one in sessions}) > 1:
        cautions.append("The ground was not the same.")
    if len({one.course.id for one in sessions}) > 1:
        cautions.append("The course was not the same.")
    for tyre in records.parts.tyres:
        values = [records.values[_last_setup(one)].get((Item.TYRE_PRESSURE.value, tyre.id)) for one in sessions]
        known = [value for value in values if value is not None]
        if known and max(known) - min(known) > TYRE_KPA:
            cautions.append(f"The {tyre.end} tyre was set differently.")
    cautions.extend(_drift_cautions(records, sessions))
    return tuple(cautions)

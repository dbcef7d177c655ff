"""The review as tables: the runs as ridden, and what each change did."""

from __future__ import annotations

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.exchange.tables import Cell, csv_text
from workbench.model.responses import ATTRIBUTES
from workbench.model.ride import ENDS
from workbench.viewmodels.review_data import Effects

RUN_HEADS = (
    "session",
    "course",
    "run",
    "setup",
    "warm_up",
    "set_aside",
    "two_changes",
    "blind",
    "guess",
    "liking",
    "direction",
    "compared",
    "travel_front_mm",
    "travel_rear_mm",
    "hard_contacts_front",
    "hard_contacts_rear",
    "tyre_front_kpa",
    "tyre_rear_kpa",
    "lap_s",
    "note",
    "judged_by",
    *(f"{name}_{end}" for end in ENDS for name in ATTRIBUTES),
)
EFFECT_HEADS = (
    "change",
    "unit",
    "difference",
    "low",
    "high",
    "chance_it_helped_in_20",
    "runs",
    "verdict",
    "other_answers",
    "cautions",
)


def runs_csv(records: RideRecords, sessions: tuple[SessionRecords, ...]) -> str:
    """Write every run of some sessions, a line each."""
    rows: list[list[Cell]] = [
        [
            session.session.started_at,
            session.course.name,
            run.number,
            records.setup(run.setup_id).number,
            int(run.is_warmup),
            run.set_aside_reason if run.is_set_aside else "",
            int(run.is_confounded),
            int(run.is_blind),
            run.guess,
            run.liking,
            run.direction,
            run.compared,
            run.travel_front_mm,
            run.travel_rear_mm,
            run.bottom_outs_front,
            run.bottom_outs_rear,
            run.tyre_front_kpa,
            run.tyre_rear_kpa,
            run.lap_s,
            run.note,
            session.session.response,
            *_scores(session, run.id),
        ]
        for session in sessions
        for run in session.runs
    ]
    return csv_text(RUN_HEADS, rows)


def _scores(session: SessionRecords, run_id: str) -> list[Cell]:
    given = {(one.attribute, one.end): one.score for one in session.ratings if one.run_id == run_id}
    return [given.get((name, end)) for end in ENDS for name in ATTRIBUTES]


def effects_csv(effects: Effects) -> str:
    """Write every change judged, a line each."""
    return csv_text(
        EFFECT_HEADS,
        [
            [
                row.change,
                effects.unit,
                round(row.effect, 2),
                round(row.low, 2),
                round(row.high, 2),
                row.chance_text.split(" ")[0],
                row.runs_text,
                row.verdict,
                row.joint_note,
                row.cautions,
            ]
            for row in effects.rows
        ],
    )

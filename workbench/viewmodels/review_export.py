"""The review as tables: the runs as ridden, and what each change did."""

from __future__ import annotations

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.exchange.tables import Cell, csv_text
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
    "lap_s",
    "note",
)
EFFECT_HEADS = ("change", "difference", "low", "high", "chance_it_helped_in_20", "runs", "verdict", "cautions")


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
            run.lap_s,
            run.note,
        ]
        for session in sessions
        for run in session.runs
    ]
    return csv_text(RUN_HEADS, rows)


def effects_csv(effects: Effects) -> str:
    """Write every change judged, a line each."""
    return csv_text(
        EFFECT_HEADS,
        [
            [
                row.change,
                round(row.effect, 2),
                round(row.low, 2),
                round(row.high, 2),
                row.chance_text.split(" ")[0],
                row.runs_text,
                row.verdict,
                row.cautions,
            ]
            for row in effects.rows
        ],
    )

"""What the ride's sheet shows: one of blocked, starting, riding, or a blind test."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.viewmodels.ride_blind import BlindState
from workbench.viewmodels.ride_blind_plan import PlanState
from workbench.viewmodels.ride_session import SessionState
from workbench.viewmodels.ride_start import StartState


@dataclass(frozen=True, slots=True)
class RideState:
    """One of: blocked, starting (with a plan when the test is to be blind), riding, riding blind."""

    blocked: str = ""
    start: StartState | None = None
    session: SessionState | None = None
    plan: PlanState | None = None
    blind: BlindState | None = None
    last_session: str = ""  # key of a session that can be opened again
    last_session_text: str = ""

"""The check-in of a sample bike, filed as a mechanic would file it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from workbench.actions.checkin import Found, file_checkin
from workbench.actions.desk import Desk
from workbench.actions.parts import bike_parts
from workbench.actions.wear import set_last_service, tell_hours
from workbench.model.bike import Bike
from workbench.model.checkin import FINE
from workbench.model.checks import checks_for


def check_in(desk: Desk, bike: Bike, told: dict[str, Any]) -> None:
    """Note the hours and the last services as told, then file what was found; the rest is fine."""
    if "hours" in told:
        ridden = tell_hours(bike.id, told["hours"])
        desk.do(f"Hours ridden {told['hours']:g}", ridden, bike_id=bike.id, station="checkin")
    for code, hours in told.get("last", {}).items():
        part, end = code.split("/")
        last = set_last_service(bike.id, part, end, hours)
        desk.do(f"Last service: {part} {end}", last, bike_id=bike.id, station="checkin")
    found = told.get("found", {})
    parts = desk.ask(bike_parts(bike.id))
    codes = [check.code for check in checks_for(parts, told["depth"])]
    codes += [code for code in found if code not in codes]
    answers = [_answer(code, found.get(code, (FINE,)), code in told.get("declined", ())) for code in codes]
    filed = file_checkin(
        bike.id, told["depth"], answers, bothers=told.get("bothers", ""), last_done=told.get("last_done", "")
    )
    desk.do("File the check-in", filed, bike_id=bike.id, station="checkin")


def _answer(code: str, said: Sequence[str], is_declined: bool) -> Found:
    severity, reason, note = (*said, "", "")[:3]
    return Found(code, severity, reason, note, is_declined)

"""Stops of the tour in the ride: what was noticed, several runs put right, a start half ticked."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.actions.ride import ride_records
from workbench.app import Workbench

Go = Callable[[Workbench], QWidget | None]


def ride_stops(riding: Callable[[Workbench, int], None]) -> tuple[tuple[str, str, bool, Go], ...]:
    """Give the stops; ``riding`` goes on with a session of so many runs."""

    def noticed(workbench: Workbench) -> None:
        riding(workbench, 3)
        page = workbench.window.page("ride")
        page.view_model.notice("packs", None)  # type: ignore[attr-defined]
        page.view_model.notice("clunks", "front")  # type: ignore[attr-defined]
        _press(page, "run_notice")

    def several(workbench: Workbench) -> None:
        riding(workbench, 5)
        page = workbench.window.page("ride")
        page.view_model.mark_runs("2", "4", "lever:front closed")  # type: ignore[attr-defined]
        _press(page, "run_marks")

    def more(workbench: Workbench) -> None:
        riding(workbench, 3)
        _press(workbench.window.page("ride"), "run_more")

    def by_lap(workbench: Workbench) -> None:
        riding(workbench, 0)
        session = workbench.desk.ask(ride_records(workbench.bench.bike_id or "")).open_session
        assert session is not None
        judged = replace(session.session, response="lap_s")
        workbench.desk.do("Judge by lap time", lambda gate: gate.put(judged), bike_id=judged.bike_id, station="ride")
        page = workbench.window.page("ride")
        page.view_model.set_run("lap", "2:61")  # type: ignore[attr-defined]
        page.view_model.keep_run()  # type: ignore[attr-defined]

    return (
        ("sample", "ride-noticed", False, noticed),
        ("sample", "ride-several", False, several),
        ("sample", "ride-more", False, more),
        ("sample", "ride-lap", False, by_lap),
    )


def _press(page: QWidget, name: str) -> None:
    button = page.findChild(QPushButton, name)
    assert isinstance(button, QPushButton)
    button.click()

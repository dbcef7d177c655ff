"""The stops of the review: the runs, what each change did, one change looked at closely, along an adjuster."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from PySide6.QtWidgets import QWidget

from workbench.app import Workbench
from workbench.model.bike import Station
from workbench.viewmodels.window import LAP_TRACK

BIKE = "Larch 150"
Go = Callable[[Workbench], QWidget | None]


def _open(workbench: Workbench, part: str = "") -> Any:
    """Open the review, scrolled to one of its parts."""
    from workbench.tour.stops import bike, further_down

    view_model = bike(workbench, BIKE, Station.REVIEW)
    if part:
        further_down(workbench, BIKE, Station.REVIEW, part)
    return view_model


def _at(workbench: Workbench, part: str = "") -> None:
    _open(workbench, part)


def _picked(workbench: Workbench, part: str) -> None:
    """With the first change picked."""
    view_model = _open(workbench)
    rows = view_model.state.effects.rows
    if rows and view_model.state.picked != rows[0].key:
        view_model.pick_change(rows[0].key)
    _open(workbench, part)


def _run(workbench: Workbench) -> None:
    """A run opened, and all of them in numbers."""
    view_model = _open(workbench)
    run_id = view_model.state.timeline.points[13].run_id
    if view_model.state.run_id != run_id:
        view_model.pick_run(run_id)
    fold = workbench.window.page(Station.REVIEW).findChild(QWidget, "review_runs_fold")
    assert isinstance(fold, QWidget)
    fold.click()  # type: ignore[attr-defined]
    _open(workbench, "review_runs_read")


def _trend(workbench: Workbench) -> None:
    """The last session without its trend."""
    view_model = _open(workbench)
    view_model.pick_session(view_model.state.sessions[1][0])
    view_model.show_trend(True)
    _open(workbench, "review_trend")


def _leave(workbench: Workbench) -> None:
    """All sessions again, with the trend left in, and everything in words."""
    view_model = _open(workbench)
    view_model.pick_session("all")
    view_model.show_trend(False)
    words = workbench.window.page(Station.REVIEW).findChild(QWidget, "review_words")
    assert isinstance(words, QWidget)
    words.click()  # type: ignore[attr-defined]
    _open(workbench, "review_words")


def attributes(workbench: Workbench) -> None:
    """A run with its attributes unfolded."""
    from workbench.tour.stops import riding

    riding(workbench, runs=3)
    view_model = workbench.window.page(Station.RIDE).view_model
    for key, score in (("grip/front", 7), ("comfort/front", 5), ("support/front", 6)):
        view_model.rate(key, score)  # type: ignore[attr-defined]
    unfold = workbench.window.page(Station.RIDE).findChild(QWidget, "run_attributes")
    assert isinstance(unfold, QWidget)
    unfold.click()  # type: ignore[attr-defined]


def _lap_track(workbench: Workbench) -> None:
    """A recorded track with both gates set, and its laps beside the runs of the last session."""
    from workbench.tour.a_track import track_text
    from workbench.tour.stops import bike

    view_model = bike(workbench, BIKE, LAP_TRACK)
    with TemporaryDirectory() as folder:
        target = Path(folder) / "quarry-loop.gpx"
        target.write_text(track_text(8), encoding="utf-8")
        workbench.window.page(LAP_TRACK).open_file(target)  # type: ignore[attr-defined]
    view_model.set_at("start", "0:06")
    view_model.set_at("finish", "1:35")


def _laps(workbench: Workbench, part: str) -> None:
    """The same, further down."""
    from workbench.tour.stops import further_down

    _lap_track(workbench)
    further_down(workbench, BIKE, LAP_TRACK, part)


REVIEW_STOPS: tuple[tuple[str, str, bool, Go], ...] = (
    ("sample", "review", False, _at),
    ("sample", "review-changes", False, partial(_at, part="review_table")),
    ("sample", "review-picked", False, partial(_picked, part="closer_title")),
    ("sample", "review-looked", False, partial(_picked, part="looked_title")),
    ("sample", "review-along", False, partial(_picked, part="response_adjuster")),
    ("sample", "review-run", False, _run),
    ("sample", "review-trend", False, _trend),
    ("sample", "review-words", False, _leave),
    ("sample", "lap-track", False, _lap_track),
    ("sample", "lap-track-laps", False, partial(_laps, part="lap_summary")),
    ("sample", "lap-track-bench", True, _lap_track),
)

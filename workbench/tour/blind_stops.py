"""The stops of a blind test: planned, set, rated, guessed, revealed."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtWidgets import QWidget

from workbench.app import Workbench
from workbench.model.bike import Station
from workbench.model.setting import Item
from workbench.ui.parts.buttons import Button

SEED = 20  # the order in the pictures; A comes first
RIDDEN = "Tarn hardtail"
LIKED = (5, 7, 5, 7, 8, 6)


def _planned(workbench: Workbench) -> Any:
    """A rebound adjuster two clicks further out, three pairs."""
    from workbench.tour.stops import bike

    view_model = bike(workbench, RIDDEN, Station.RIDE)
    view_model.seeds = lambda: SEED
    view_model.plan_blind()
    plan = view_model.state.plan
    choice = next(one for one in plan.choices if "rebound" in one.title and one.key.startswith(Item.ADJUSTER))
    view_model.set_plan("item", choice.key)
    view_model.set_plan("value", str(int(choice.now.split()[0]) + 2))
    view_model.set_plan("pairs", "3")
    view_model.set_start("verified", True)
    view_model.set_start("course_id", view_model.state.start.courses[0][0])
    return view_model


def _plan(workbench: Workbench) -> None:
    _planned(workbench)


def _begun(workbench: Workbench, *, runs: int) -> Any:
    view_model = _planned(workbench)
    view_model.begin_blind()
    for liking in LIKED[:runs]:
        _put_on(view_model)
        view_model.to_rider()
        view_model.rate_blind("liking", liking)
        view_model.keep_blind()
    return view_model


def _put_on(view_model: Any) -> None:
    view_model.show_helper()
    for line in view_model.state.blind.steps:
        view_model.tick_blind(line.key, True)


def _door(workbench: Workbench) -> None:
    _begun(workbench, runs=2)


def _helper(workbench: Workbench) -> None:
    _begun(workbench, runs=2).show_helper()


def _rider(workbench: Workbench) -> None:
    view_model = _begun(workbench, runs=2)
    _put_on(view_model)
    view_model.to_rider()
    view_model.rate_blind("liking", 6)


def _guess(workbench: Workbench) -> None:
    _begun(workbench, runs=6).guess(0, 1)


def _result(workbench: Workbench, *, runs: int) -> None:
    view_model = _begun(workbench, runs=runs)
    if runs < len(LIKED):
        view_model.stop_early()
    for pair in range(runs // 2):
        view_model.guess(pair, 1 if pair < 2 else 0)
    reveal = workbench.window.findChild(Button, "blind_reveal")
    assert isinstance(reveal, Button)
    reveal.click()


BLIND_STOPS: tuple[tuple[str, str, bool, Callable[[Workbench], QWidget | None]], ...] = (
    ("sample", "ride-blind-plan", False, _plan),
    ("sample", "ride-blind-door", False, _door),
    ("sample", "ride-blind-helper", False, _helper),
    ("sample", "ride-blind-helper-bench", True, _helper),
    ("sample", "ride-blind-rider", False, _rider),
    ("sample", "ride-blind-rider-bench", True, _rider),
    ("sample", "ride-blind-guess", False, _guess),
    ("sample", "review-blind", False, partial(_result, runs=6)),
    ("sample", "review-blind-stopped", False, partial(_result, runs=4)),
)

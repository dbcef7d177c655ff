"""The stops where data is kept safe: history, backups, in and out, and a library that cannot be opened."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from PySide6.QtWidgets import QWidget

from workbench.actions.desk import Backup
from workbench.actions.edit import edit
from workbench.app import Workbench
from workbench.model.bike import Bike
from workbench.model.errors import LibraryDamaged
from workbench.viewmodels.trouble import resolve
from workbench.viewmodels.window import BACKUPS, BUNDLE, HISTORY, SESSION_NOTES

FINISHED = "Larch 150"


def _opened(workbench: Workbench, sheet: str) -> Any:
    from workbench.tour.stops import bike

    return bike(workbench, FINISHED, sheet)


def _backups(workbench: Workbench) -> None:
    """Two backups, and the question before one of them is restored."""
    view_model = _opened(workbench, BACKUPS)
    view_model.make()
    view_model.make()
    view_model.ask_restore()


def _history(workbench: Workbench) -> None:
    """The deeds on one bike, one of them picked."""
    view_model = _opened(workbench, HISTORY)
    view_model.set_bike(workbench.bench.bike_id)
    view_model.set_text("run")
    view_model.pick(view_model.state.rows[3].key)


def _bundle(workbench: Workbench) -> None:
    """A file with the bike as it was, as it is, and as it became elsewhere."""
    view_model = _opened(workbench, BUNDLE)
    with TemporaryDirectory() as folder:
        target = Path(folder) / view_model.file_name(whole=False)
        view_model.take_along(target, whole=False)
        held = json.loads(target.read_text(encoding="utf-8"))
        held["records"]["bike"][0]["tags"] = "race"
        held["records"]["run"][-1]["note"] = "better over roots"
        skip = {"id": "s", "bike_id": workbench.bench.bike_id, "station": "sag", "reason": "No time"}
        held["records"]["skip"] = [{**skip, "at": held["made_at"]}]
        target.write_text(json.dumps(held), encoding="utf-8")
        key = workbench.bench.bike_id or ""
        workbench.desk.do("Tag it", edit(Bike, key, "tags", "shop"), bike_id=key, station="garage")
        view_model.open_file(target)


def _session_notes(workbench: Workbench) -> None:
    """A session as text, with one line that is not understood."""
    view_model = _opened(workbench, SESSION_NOTES)
    view_model.set_text(
        "course: Quarry loop\ndate: 2026-05-19\n1 warm-up, like 5\n2 fork rebound 2 out, like 6, better, lap 1:32.4\n"
        "3 shock rebound 40 out, like 7\n3 like 7, travel front 132, note arms tired, rain\n"
    )


def _trouble(workbench: Workbench) -> QWidget:
    """A damaged library, and the backups that can take its place."""
    from workbench.ui.backups.trouble import TroubleDialog

    made = [
        Backup(f"backup {day}", f"2031-05-{day}T16:30:00+00:00", "by itself", 1_204_224, 12 + day % 3)
        for day in range(14, 10, -1)
    ]
    path = "/home/mechanic/.local/share/trailbench/garage.trailbench"
    error = LibraryDamaged(f"{path} is damaged. Nothing was changed; restore a backup.")
    dialog = TroubleDialog(resolve(error, tuple(made), is_file=True), workbench.window)
    dialog.show()
    return dialog


SAFETY_STOPS: tuple[tuple[str, str, bool, Callable[[Workbench], QWidget | None]], ...] = (
    ("sample", "session-notes", False, _session_notes),
    ("sample", "history", False, _history),
    ("sample", "bundle", False, _bundle),
    ("sample", "backups", False, _backups),
    ("sample", "trouble", False, _trouble),
)

"""The backups of the library: what is there, make one, check all, save one elsewhere, restore and take that back."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from threading import Thread

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.actions.desk import Backup, Desk, Unchecked
from workbench.model.errors import WorkbenchError
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.shown import how_many, short_time

BY_ITSELF = "by itself"
LOOK_EVERY_MS = 60_000
LOOK_BACK_MS = 250
UNREAD = "it could not be read through"


@dataclass(frozen=True, slots=True)
class BackupRow:
    """One backup in the list."""

    key: str
    when: str
    why: str
    size: str
    bikes: str
    checked: str
    is_usable: bool = True


@dataclass(frozen=True, slots=True)
class BackupsState:
    """The whole sheet."""

    rows: tuple[BackupRow, ...] = ()
    picked: str = ""
    folder: str = ""
    said: str = ""  # what was last done
    question: str = ""  # asked before a restore
    can_restore: bool = False
    take_back: str = ""  # the backup made just before the last restore
    can_keep: bool = True


class BackupsViewModel(ViewModel[BackupsState]):
    """The sheet of backups. Nothing here is a step to undo; a restore has its own way back."""

    station = "garage"
    restored = Signal()

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._picked = ""
        self._said = ""
        self._is_asking = False
        self._take_back = ""
        self._checked: dict[str, Backup] = {}
        super().__init__(desk, bench)

    def read(self) -> BackupsState:
        """Look into the folder."""
        found = self._desk.backups.all()
        rows = tuple(resolve_row(one, self._checked.get(one.name)) for one in found)
        picked = next((row for row in rows if row.key == self._picked), None)
        back = next((row for row in rows if row.key == self._take_back), None)
        asking = picked if self._is_asking else None
        return BackupsState(
            rows=rows,
            picked=picked.key if picked else "",
            folder=self._desk.backups.folder,
            said=self._said,
            question=_question(asking) if asking else "",
            can_restore=picked is not None and picked.is_usable and not self._desk.read_only,
            take_back=back.when if back else "",
            can_keep=not self._desk.read_only,
        )

    def pick(self, key: str) -> None:
        """Point at one backup."""
        if key != self._picked:
            self._picked, self._is_asking = key, False
            self.refresh()

    def make(self) -> None:
        """Make a backup now."""
        try:
            made = self._desk.backups.make()
        except WorkbenchError as error:
            self.refuse(error)
            return
        self._picked = made.name
        self._tell(f"Made and checked: {how_many(made.bikes, 'bike')}, {size_text(made.size_bytes)}.")

    def check_all(self) -> None:
        """Read every page of every backup."""
        self._checked = {one.name: self._desk.backups.check(one.name) for one in self._desk.backups.all()}
        bad = sum(bool(one.trouble) for one in self._checked.values())
        count = how_many(len(self._checked), "backup")
        self._tell(f"Checked {count}: {f'{bad} damaged' if bad else 'all are sound'}.")

    def save_copy(self, target: Path) -> bool:
        """Write the picked backup to another place."""
        try:
            self._desk.backups.save_copy(self._picked, target)
        except WorkbenchError as error:
            self.refuse(error)
            return False
        self._tell(f"Written to {target}, and checked there.")
        return True

    def copy_name(self) -> str:
        """Give the name a copy elsewhere is offered under."""
        return self._picked

    def ask_restore(self) -> None:
        """Ask before the picked backup is restored."""
        self._is_asking = self.state.can_restore
        self.refresh()

    def leave_it(self) -> None:
        """Restore nothing."""
        self._is_asking = False
        self.refresh()

    def restore(self) -> None:
        """Restore the picked backup; what was there is kept and can be gone back to."""
        row = next((row for row in self.state.rows if row.key == self._picked), None)
        if row is not None:
            self._restore(row.key, f"Restored as it was on {row.when}. What was here before is kept in the list.")

    def take_back(self) -> None:
        """Go back to what was here before the last restore."""
        if self._take_back:
            self._restore(self._take_back, "The restore is taken back: all is as it was before it.")

    def _restore(self, name: str, said: str) -> None:
        self._is_asking = False
        try:
            aside = self._desk.restore_backup(name)
        except WorkbenchError as error:
            self.refuse(error)
            self.refresh()
            return
        self._take_back = "" if name == self._take_back else aside.name
        self._picked = ""
        self.restored.emit()
        self._tell(said)

    def _tell(self, text: str) -> None:
        self._said = text
        self.refresh()


def resolve_row(backup: Backup, checked: Backup | None) -> BackupRow:
    """Say what a backup is."""
    trouble = (checked or backup).trouble
    state = "whole, just now" if checked is not None else "when it was made"
    if backup.is_newer:
        state = "by a later version"
    return BackupRow(
        key=backup.name,
        when=short_time(backup.at),
        why=backup.kind,
        size=size_text(backup.size_bytes),
        bikes="–" if trouble else str(backup.bikes),
        checked="damaged" if trouble else state,
        is_usable=not trouble and not backup.is_newer,
    )


def size_text(size_bytes: int) -> str:
    """Say the size of a file."""
    if size_bytes < 1_000_000:
        return f"{max(round(size_bytes / 1000), 1)}\u2009kB"
    return f"{size_bytes / 1_000_000:.1f}\u2009MB"


def _question(row: BackupRow) -> str:
    bikes = how_many(int(row.bikes), "bike") if row.bikes.isdecimal() else "unknown content"
    return (
        f"Restore the backup of {row.when}, with {bikes}? All that was entered since is put aside first, "
        "and you can go back to it."
    )


class BackupKeeper(QObject):
    """Makes backups by itself: a while after the window is there, every half hour of work, and at the end.

    The copy of a large library is read through on a thread of its own, which touches nothing else; meanwhile work goes
    on.
    """

    failed = Signal(str)

    def __init__(self, desk: Desk, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._has_failed = False
        self._reading: _Reading | None = None
        self._timer = QTimer(self)
        self._timer.timeout.connect(self.look)

    def begin(self) -> None:
        """Look again and again from now on, the first time once the window has come to rest."""
        self._timer.start(LOOK_EVERY_MS)

    def look(self) -> None:
        """Make a backup if one is due; while one is being read through, keep it once that has ended."""
        if self._reading is None:
            self._try(self._make_if_due)
        elif not self._reading.is_alive():
            self._try(self._keep)

    def finish(self) -> None:
        """Make the last one when work ends."""
        self._timer.stop()
        if self._reading is not None:
            self._try(self._keep)
        self._try(self._make_last)

    def _make_if_due(self) -> None:
        backups = self._desk.backups
        if not backups.is_due():
            return
        if not backups.is_large:
            backups.make(BY_ITSELF)
            self._has_failed = False
            return
        self._reading = _Reading(backups.begin(BY_ITSELF))
        self._reading.start()
        self._timer.setInterval(LOOK_BACK_MS)

    def _keep(self) -> None:
        reading, self._reading = self._reading, None
        self._timer.setInterval(LOOK_EVERY_MS)
        if reading is not None:
            reading.join()
            self._desk.backups.keep(reading.begun, reading.found)
            self._has_failed = False

    def _make_last(self) -> None:
        if self._desk.backups.is_due(is_closing=True):
            self._desk.backups.make(BY_ITSELF)

    def _try(self, step: Callable[[], None]) -> None:
        try:
            step()
        except WorkbenchError as error:
            if not self._has_failed:  # once is enough: it is tried again by itself
                self._has_failed = True
                self.failed.emit(f"No backup could be made. {error}")


class _Reading(Thread):
    """Reads a copy through; what it finds is asked for once it has ended."""

    def __init__(self, begun: Unchecked) -> None:
        super().__init__(name="backup", daemon=True)
        self.begun = begun
        self.found = UNREAD

    def run(self) -> None:
        self.found = self.begun.damage()

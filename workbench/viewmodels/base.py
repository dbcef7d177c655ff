"""What every view-model does: hold one frozen state, read it again when it may have changed, send it if it did."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, ClassVar, Generic, TypeVar

from PySide6.QtCore import QObject, Signal

from workbench.actions.desk import Desk, Gate, Touched
from workbench.actions.edit import edit
from workbench.model.errors import InputError, WorkbenchError
from workbench.viewmodels.bench import Bench

S = TypeVar("S")
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Problem:
    """Something that was refused: the sentence, and the field it belongs to if there is one."""

    text: str
    field: str = ""


class ViewModel(QObject, Generic[S]):
    """One screen's state and deeds.

    A subclass names the station and the tables it watches, and gives ``read()``. While hidden it only notes that it
    is stale; when shown it reads.
    """

    state_changed = Signal(object)
    refused = Signal(object)  # a Problem
    kept = Signal(str)  # the label of a deed just done, for the notice with Undo
    discarded = Signal(str, str)  # what was discarded and its draft's key, for the notice that takes it back

    station: ClassVar[str] = ""
    watched: ClassVar[frozenset[str]] = frozenset()  # empty: every table

    def __init__(self, desk: Desk, bench: Bench) -> None:
        super().__init__()
        self._desk = desk
        self._bench = bench
        self._state: S | None = None
        self._is_shown = False
        self._is_stale = True
        self._moves_read = -1  # how often the bench had been changed when the state was read
        desk.listen(self.hear)
        bench.changed.connect(self._bench_changed)

    def read(self) -> S:
        """Read the state afresh."""
        raise NotImplementedError

    @property
    def state(self) -> S:
        """The state as last read; read now if it is stale."""
        if self._state is None or self._is_stale:
            self._state = self._read_now()
            self._is_stale = False
        return self._state

    @property
    def bike_id(self) -> str:
        """The bike on the bench; a sheet is only open when there is one."""
        return self._bench.bike_id or ""

    def show(self) -> None:
        """The screen is in sight: read if stale, and keep reading."""
        self._is_shown = True
        self.refresh()

    def hide(self) -> None:
        """The screen is out of sight: reading can wait."""
        self._is_shown = False

    def hear(self, touched: Touched) -> None:
        """Take note of a deed."""
        concerns_tables = not self.watched or bool(self.watched & touched.tables) or touched.drafts
        concerns_bike = not touched.bikes or self.bike_id in touched.bikes
        if concerns_tables and concerns_bike:
            self.refresh()

    def refresh(self) -> None:
        """Read again if in sight, else note that the state is stale; send it only if it differs."""
        if not self._is_shown:
            self._is_stale = True
            return
        before, self._is_stale = self._state, False
        self._state = self._read_now()
        if self._state != before:
            self.state_changed.emit(self._state)

    def _read_now(self) -> S:
        self._moves_read = self._bench.moves
        return self.read()

    def _bench_changed(self) -> None:
        """Read again, unless the sheet came into sight by this very change and has read what lies there now."""
        if self._is_stale or self._moves_read != self._bench.moves:
            self.refresh()

    def act(self, label: str, deed: Callable[[Gate], T], *, bike_id: str | None = None) -> T | None:
        """Do one deed. A refusal is sent as a Problem and gives None."""
        try:
            result = self._desk.do(label, deed, bike_id=bike_id or self._bench.bike_id, station=self.station)
        except WorkbenchError as error:
            self.refuse(error)
            return None
        self.kept.emit(label)
        return result

    def discard_draft(self, label: str, draft_id: str) -> None:
        """Put an entry aside; the notice can take it back."""
        self._desk.discard_draft(draft_id)
        self.discarded.emit(label, draft_id)

    def take_back_draft(self, draft_id: str) -> None:
        """Open a discarded entry again."""
        try:
            self._desk.take_back_draft(draft_id)
        except WorkbenchError as error:
            self.refuse(error)

    def refuse(self, error: WorkbenchError, field: str = "") -> None:
        """Say what was refused, at its field if it has one."""
        name = field or (error.field if isinstance(error, InputError) else "")
        self.refused.emit(Problem(str(error), name))

    def edit_fact(
        self, record_type: type, record_id: str, name: str, value: Any, label: str, *, field: str = ""
    ) -> bool:
        """Change one fact; an unusable value is refused at its field (named as the fact if not given)."""
        try:
            self._desk.do(
                label,
                edit(record_type, record_id, name, value),
                bike_id=self._bench.bike_id,
                station=self.station,
            )
        except WorkbenchError as error:
            self.refuse(error, field or name)
            return False
        return True

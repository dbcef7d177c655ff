"""The desk: every deed, undo, redo and question goes over it, and whoever shows data hears what was touched."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from workbench.library import drafts, journal, photos, settings
from workbench.library.backup_files import Backup
from workbench.library.backups import Backups, Unchecked
from workbench.library.drafts import Draft
from workbench.library.gate import Gate
from workbench.library.history import Deed, History, RowChange, Search
from workbench.library.journal import Step, Touched
from workbench.library.library import Library
from workbench.library.reader import Reader
from workbench.model.facts import clean_text

__all__ = ["Backup", "Deed", "Desk", "Draft", "Gate", "Reader", "RowChange", "Search", "Step", "Touched", "Unchecked"]

T = TypeVar("T")
Listener = Callable[[Touched], None]


class Desk:
    """Where deeds are done: one call, one transaction, one undo step."""

    def __init__(self, library: Library) -> None:
        self._library = library
        self.backups = Backups(library)
        self.history = History(library)
        self._listeners: list[Listener] = []
        self._deed_under_way = False

    def do(self, label: str, deed: Callable[[Gate], T], *, bike_id: str | None = None, station: str = "") -> T:
        """Does the deed and keeps it under the label; if it fails, nothing is kept."""
        if self._deed_under_way:
            raise RuntimeError("a deed cannot be begun inside a deed")
        self._deed_under_way = True
        try:
            result, touched = journal.perform(self._library, clean_text(label), deed, bike_id=bike_id, station=station)
        finally:
            self._deed_under_way = False
        self._tell(touched)
        return result

    def ask(self, query: Callable[[Reader], T]) -> T:
        """The answer to a question about records. Inside a deed, its gate answers."""
        if self._deed_under_way:
            raise RuntimeError("inside a deed, ask its gate")
        with self._library.reader() as reader:
            return query(reader)

    def undo(self) -> Step | None:
        """Takes the last deed back and gives it; None if there is none."""
        return self._told(journal.undo(self._library))

    def redo(self) -> Step | None:
        """Does the last undone deed again and gives it; None if there is none."""
        return self._told(journal.redo(self._library))

    def undo_after(self, number: int) -> tuple[Step, ...]:
        """Takes back every deed after one of the history, the last first: all of them, or none."""
        steps, touched = journal.undo_after(self._library, number)
        self._tell(touched)
        return steps

    def undo_step(self) -> Step | None:
        """The deed that undo would take back."""
        return journal.undo_step(self._library)

    def redo_step(self) -> Step | None:
        """The deed that redo would do again."""
        return journal.redo_step(self._library)

    def undo_label(self) -> str | None:
        """What the menu says undo takes back."""
        step = self.undo_step()
        return step.label if step else None

    def redo_label(self) -> str | None:
        """What the menu says redo does again."""
        step = self.redo_step()
        return step.label if step else None

    def keep_draft(self, kind: str, body: str, *, bike_id: str | None, subject: str | None = None) -> Draft:
        """Saves what has been entered so far in the open draft of this kind, bike and subject, or begins one."""
        draft, is_news = drafts.keep(self._library, kind, body, bike_id=bike_id, subject=subject)
        return self._drafted(draft) if is_news else draft

    def open_draft(self, kind: str, *, bike_id: str | None, subject: str | None = None) -> Draft | None:
        """The open draft of this kind, bike and subject."""
        with self._library.reading() as connection:
            return drafts.open_draft(connection, kind, bike_id, subject)

    def drafts(self, bike_id: str | None = None) -> tuple[Draft, ...]:
        """All open drafts, of one bike if it is given, the last edited first."""
        with self._library.reading() as connection:
            return drafts.open_drafts(connection, bike_id)

    def discard_draft(self, draft_id: str) -> Draft:
        """Puts a draft aside."""
        return self._drafted(drafts.discard(self._library, draft_id))

    def take_back_draft(self, draft_id: str) -> Draft:
        """Opens a discarded draft again."""
        return self._drafted(drafts.take_back(self._library, draft_id))

    def setting(self, key: str, default: str) -> str:
        """What is set for the key."""
        with self._library.reading() as connection:
            found = settings.value(connection, key)
        return default if found is None else found

    def settings(self, keys: tuple[str, ...]) -> dict[str, str]:
        """What is set for some keys, those with nothing left out."""
        with self._library.reading() as connection:
            return settings.values(connection, keys)

    def set_setting(self, key: str, value: str | None) -> None:
        """Sets the key, or forgets it when None. It is no deed, so undo leaves it alone.

        Where nothing can be kept the choice is not remembered, and that is no reason to refuse it.
        """
        if self._library.read_only:
            return
        if settings.choose(self._library, {key: value}):
            self._tell(Touched(tables=frozenset({"setting"})))

    def remember(self, chosen: Mapping[str, str | None]) -> None:
        """Sets several keys at once for the next start. Nobody hears of it: whoever asks for this tells of it."""
        if not self._library.read_only:
            settings.choose(self._library, chosen)

    @property
    def person_id(self) -> str | None:
        """Who is at the bench."""
        with self._library.reading() as connection:
            return self._library.person_id(connection)

    @person_id.setter
    def person_id(self, person_id: str | None) -> None:
        self.set_setting(settings.PERSON, person_id)

    @property
    def read_only(self) -> bool:
        """Whether this is a look at a copy, where nothing can be kept."""
        return self._library.read_only

    def restore_backup(self, name: str) -> Backup:
        """Makes the library what a backup holds, and gives the backup made just before. It is no step to undo."""
        aside = self.backups.restore(name)
        self._tell(Touched(frozenset({*self._library.shapes, "setting"}), drafts=True))
        return aside

    @property
    def schema_number(self) -> str:
        """The schema the records are kept in."""
        return self._library.schema_number

    def photo(self, name: str) -> bytes | None:
        """The content of a photo, if its file is there."""
        return photos.photo(self._library.path, name)

    def add_photo(self, content: bytes) -> str:
        """Keeps a photo beside the library and gives its name."""
        return photos.add_photo(self._library.path, content)

    @property
    def library_path(self) -> str:
        """Where the library lies, for showing."""
        return str(self._library.path)

    def now(self) -> str:
        """The present instant by the library's clock."""
        return self._library.now()

    def listen(self, listener: Listener) -> None:
        """From now on the listener hears what each deed, undo, redo or draft has touched."""
        self._listeners.append(listener)

    def _told(self, outcome: tuple[Step, Touched] | None) -> Step | None:
        if outcome is None:
            return None
        step, touched = outcome
        self._tell(touched)
        return step

    def _drafted(self, draft: Draft) -> Draft:
        bikes = frozenset({draft.bike_id}) if draft.bike_id is not None else frozenset[str]()
        self._tell(Touched(bikes=bikes, drafts=True))
        return draft

    def _tell(self, touched: Touched) -> None:
        if touched != Touched():
            for listener in tuple(self._listeners):
                listener(touched)

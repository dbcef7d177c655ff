"""In and out: bikes taken along as a file, and a file brought in after its differences were shown."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from workbench.actions import bundle as bundles
from workbench.actions.desk import Desk, RowChange, Touched
from workbench.actions.garage import bike_count, find_bike
from workbench.actions.history import names_of
from workbench.exchange.bundle import Bundle, write_bundle
from workbench.exchange.files import read_whole, write_whole
from workbench.exchange.merge import Difference, Key, Kind, default_choice, undecided
from workbench.exchange.strict_json import LARGEST_BYTES
from workbench.model.errors import WorkbenchError
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.history_words import changes_words
from workbench.viewmodels.shown import how_many, short_time

BEFORE_IMPORT = "before bringing in"
SUFFIX = ".bundle.json"
MOST_SHOWN = 40
TOLD = (
    ("bike", "bike"),
    ("person", "person"),
    ("session", "session"),
    ("run", "run"),
    ("setup", "setup"),
    ("sag_measurement", "sag measurement"),
    ("photo", "photo"),
)
PLURALS = {"person": "people"}
GROUPS = (
    (Kind.NEW, "New"),
    (Kind.THERE, "Changed in the file"),
    (Kind.HERE, "Changed here"),
    (Kind.BOTH, "Changed on both sides"),
    (Kind.REMOVED, "Removed here"),
    (Kind.SAME, "The same"),
)
ASKED = (Kind.BOTH, Kind.THERE, Kind.HERE, Kind.REMOVED)
SEALED = ("blind_plan",)
STAYED = "A blind test under way stayed behind, so that nobody reads its order: reveal it, then take it along."


@dataclass(frozen=True, slots=True)
class ChoiceRow:
    """One record of which two versions stand side by side; ``chosen`` is "here", "file" or nothing yet."""

    table: str
    row_id: str
    kind: str
    text: str
    chosen: str


@dataclass(frozen=True, slots=True)
class BundleState:
    """The whole sheet."""

    bike_name: str = ""
    bikes_text: str = ""
    said: str = ""
    file_text: str = ""  # which file lies open, and what it says of itself
    groups: tuple[tuple[str, str], ...] = ()
    choices: tuple[ChoiceRow, ...] = ()
    more: str = ""
    left_to_say: str = ""
    verb: str = ""  # empty: there is nothing to bring in
    can_keep: bool = True


class BundleViewModel(ViewModel[BundleState]):
    """The sheet. Nothing is taken from a file before its differences were shown and the verb pressed."""

    station = "garage"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._said = ""
        self._file = ""
        self._bundle: Bundle | None = None
        self._differences: tuple[Difference, ...] = ()
        self._choices: dict[Key, bool] = {}
        super().__init__(desk, bench)

    def read(self) -> BundleState:
        """Read what may be taken along, and set the open file beside what is here."""
        bike = self._desk.ask(find_bike(self.bike_id or None))
        state = BundleState(
            bike_name=bike.name if bike else "",
            bikes_text=how_many(self._desk.ask(bike_count()), "bike"),
            said=self._said,
            can_keep=not self._desk.read_only,
        )
        return self._with_file(state) if self._bundle is not None else state

    def _with_file(self, state: BundleState) -> BundleState:
        assert self._bundle is not None
        asked = [one for one in self._differences if one.kind in ASKED]
        asked.sort(key=lambda one: ASKED.index(one.kind))
        waiting = undecided(self._differences, self._choices)
        count = sum(self._is_taken(one) is True for one in self._differences)
        return replace(
            state,
            file_text=f"{self._file}: {self._bundle.title}, taken along {short_time(self._bundle.made_at)}.",
            groups=tuple((words, counted(self._differences, kind)) for kind, words in GROUPS if self._has(kind)),
            choices=tuple(self._choice(one) for one in asked[:MOST_SHOWN]),
            more=f"and {len(asked) - MOST_SHOWN} more of these" if len(asked) > MOST_SHOWN else "",
            left_to_say=f"{how_many(len(waiting), 'record')} left to choose." if waiting else "",
            verb=f"Bring in {how_many(count, 'record')}" if count and not waiting else "Bring in" if waiting else "",
        )

    def _has(self, kind: Kind) -> bool:
        return any(one.kind == kind for one in self._differences)

    def _is_taken(self, one: Difference) -> bool | None:
        return self._choices.get(one.key, default_choice(one.kind)) if one.kind != Kind.SAME else False

    def _choice(self, one: Difference) -> ChoiceRow:
        word = {True: "file", False: "here", None: ""}[self._is_taken(one)]
        return ChoiceRow(one.table, one.row_id, one.kind.value, self._words(one), word)

    def _words(self, one: Difference) -> str:
        noun = one.table.replace("_", " ").capitalize()
        if one.table in SEALED:
            return noun
        change = RowChange(one.table, one.row_id, one.ours, one.theirs)
        pointed = {str(value).partition("#")[0] for value in one.theirs.values() if isinstance(value, str)}
        names = self._desk.ask(names_of(tuple(sorted(pointed))))
        (line,) = changes_words((change,), names, self._bench.units)
        return line.replace(" added", "", 1) if one.ours is None else line

    def hear(self, touched: Touched) -> None:
        """What changes here changes how an open file stands to it."""
        if touched.tables - {"setting"}:
            if self._bundle is not None:
                self._compare(self._bundle)
            self.refresh()

    # Out

    def file_name(self, *, whole: bool) -> str:
        """Propose a name for the file."""
        name = "garage" if whole else self.state.bike_name
        plain = "".join(one if one.isalnum() else "-" for one in name.casefold()).strip("-") or "bike"
        return f"{plain[:60]}{SUFFIX}"

    def take_along(self, target: Path, *, whole: bool) -> bool:
        """Write the bike on the bench, or the whole garage, into a file."""
        bike_ids = None if whole else (self.bike_id,)
        title = "the whole garage" if whole else self.state.bike_name
        query = bundles.gather(bike_ids, title, schema=self._desk.schema_number, now=self._desk.now())
        try:
            bundle, names = self._desk.ask(query)
            found = {name: self._desk.photo(name) for name in names}
            photos = {name: content for name, content in found.items() if content is not None}
            write_whole(target, write_bundle(replace(bundle, photos=photos), self._desk.ask(bundles.layout())))
        except WorkbenchError as error:
            self.refuse(error)
            return False
        lost = len(found) - len(photos)
        without = f" {how_many(lost, 'photo')} could not be found and stayed behind." if lost else ""
        concealed = f" {STAYED}" if bundle.title != title else ""
        self._tell(f"Written to {target}: {how_many(bundle.count(), 'record')}.{without}{concealed}")
        return True

    # In

    def open_file(self, source: Path) -> bool:
        """Read a file and show how it differs; nothing is taken yet."""
        try:
            content = read_whole(source, most_bytes=LARGEST_BYTES)
            kinds, types = self._desk.ask(bundles.layout()), self._desk.ask(bundles.record_types())
            bundle = bundles.check(content, kinds, types, schema=self._desk.schema_number, what=source.name)
            self._compare(bundle)
        except WorkbenchError as error:
            self._bundle = None
            self._said = ""
            self.refuse(error)
            self.refresh()
            return False
        self._bundle, self._file, self._choices = bundle, source.name, {}
        same = all(one.kind == Kind.SAME for one in self._differences)
        self._tell("Nothing new: everything in this file is here already." if same else "")
        return True

    def choose(self, table: str, row_id: str, word: str) -> None:
        """Say which version of one record stays: the one here, or the one in the file."""
        self._choices[table, row_id] = word == "file"
        self.refresh()

    def choose_all(self, word: str) -> None:
        """Say it for all records that differ."""
        self._choices |= {one.key: word == "file" for one in self._differences if one.kind in ASKED}
        self.refresh()

    def close_file(self) -> None:
        """Take nothing."""
        self._bundle, self._differences, self._choices = None, (), {}
        self._tell("Nothing was taken.")

    def bring_in(self) -> bool:
        """Take what is new and chosen, as one step; a backup is made before."""
        bundle = self._bundle
        if bundle is None or not self.state.verb:
            return False
        if self.state.left_to_say:
            self.refuse(WorkbenchError(f"{self.state.left_to_say} Say for each which version stays."))
            return False
        title = f"Bring in {bundle.title}"[:60]
        try:
            self._desk.backups.make(BEFORE_IMPORT)
            for content in bundle.photos.values():
                self._desk.add_photo(content)
        except WorkbenchError as error:
            self.refuse(error)
            return False
        self._bundle = None  # its differences need no telling while it comes in
        count = self.act(title, bundles.bring_in(bundle, self._choices), bike_id=self._one_bike(bundle))
        if count is None:
            self._bundle = bundle
            self.refresh()
            return False
        self._differences, self._choices = (), {}
        self._tell(f"Brought in {how_many(count, 'record')}. Undo takes all of it back.")
        return True

    def _one_bike(self, bundle: Bundle) -> str | None:
        bikes = bundle.records.get("bike", ())
        return str(bikes[0]["id"]) if len(bikes) == 1 else None

    def _compare(self, bundle: Bundle) -> None:
        self._differences = self._desk.ask(bundles.compare_with(bundle))

    def _tell(self, text: str) -> None:
        self._said = text
        self.refresh()


def counted(differences: tuple[Difference, ...], kind: Kind) -> str:
    """Say how many records of which kind there are: 1 bike, 12 runs, 30 others."""
    counts: Mapping[str, int] = Counter(one.table for one in differences if one.kind == kind)
    told = [
        f"{counts[table]} {PLURALS.get(noun, f'{noun}s')}" if counts[table] > 1 else f"1 {noun}"
        for table, noun in TOLD
        if counts.get(table)
    ]
    rest = sum(counts.values()) - sum(counts.get(table, 0) for table, _ in TOLD)
    if rest:
        told.append(f"{how_many(rest, 'other')}" if told else how_many(rest, "record"))
    return ", ".join(told)

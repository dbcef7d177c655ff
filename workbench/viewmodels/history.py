"""The history: every deed with when, who and what, found by bike, person and words; undo back to a place."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from workbench.actions.desk import Deed, Desk, Search, Touched
from workbench.actions.history import names_of, names_of_many, photos_of, sealed_since
from workbench.model.bike import Station
from workbench.model.errors import WorkbenchError
from workbench.model.job import STATION_WORDS
from workbench.model.pictures import Picture
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.history_words import MOST, changes_words
from workbench.viewmodels.shown import how_many, short_time

PAGE = 40
ANY = ""
DEEPEST = 100
POINTING = ("_id", "_of", "depends_on")  # how fields are called that hold the key of something else
SEALED = "What it changed stays sealed until the blind test is revealed."
Choice = tuple[str, str]


@dataclass(frozen=True, slots=True)
class HistoryRow:
    """One deed of the list."""

    key: str
    when: str
    who: str
    bike: str
    what: str
    station: str
    is_in_force: bool = True


@dataclass(frozen=True, slots=True)
class HistoryState:
    """The whole sheet."""

    rows: tuple[HistoryRow, ...] = ()
    bikes: tuple[Choice, ...] = ()
    people: tuple[Choice, ...] = ()
    bike: str = ANY
    person: str = ANY
    text: str = ""
    picked: str = ""
    picked_text: str = ""
    changed: tuple[str, ...] = ()
    pictures: tuple[Picture, ...] = ()  # those the picked deed speaks of
    can_go_newer: bool = False
    can_go_older: bool = False
    undo_text: str = ""  # what the key says that undoes all later deeds; empty: not possible
    why_not: str = ""
    question: str = ""
    empty: str = ""


class HistoryViewModel(ViewModel[HistoryState]):
    """The list of deeds. It reads a page at a time, however long the journal is."""

    station = "garage"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._search = Search()
        self._tops: list[int | None] = [None]  # below which number each page opened so far begins
        self._picked = ""
        self._is_asking = False
        self._known: tuple[tuple[str, ...], tuple[str, ...], Mapping[str, str]] | None = None
        super().__init__(desk, bench)

    def read(self) -> HistoryState:
        """Read one page."""
        found = self._desk.history.page(self._search, below=self._tops[-1], most=PAGE + 1)
        page = found[:PAGE]
        if self._known is None:
            people, bikes = self._desk.history.who_and_what()
            self._known = people, bikes, self._desk.ask(names_of_many(people, bikes))
        people, bikes, names = self._known
        picked = next((one for one in page if one.id == self._picked), None)
        undo_text, why_not = self._undo_words(picked)
        return HistoryState(
            rows=tuple(_row(one, names) for one in page),
            bikes=_choices(bikes, names, "Every bike"),
            people=_choices(people, names, "Everybody"),
            bike=self._search.bike_id or ANY,
            person=self._search.person_id or ANY,
            text=self._search.text,
            picked=picked.id if picked else "",
            picked_text=picked.label if picked else "",
            changed=self._changed(picked) if picked else (),
            pictures=self._pictures(picked) if picked else (),
            can_go_newer=len(self._tops) > 1,
            can_go_older=len(found) > PAGE,
            undo_text=undo_text,
            why_not=why_not,
            question=f"{undo_text}? Redo brings them back." if self._is_asking and undo_text else "",
            empty="" if page else self._empty_words(),
        )

    def _empty_words(self) -> str:
        return "Nothing has been done yet." if self._search == Search() else "Nothing like this was done."

    def _undo_words(self, picked: Deed | None) -> tuple[str, str]:
        """Say what undoing back to the picked deed takes back, or why that cannot be."""
        if picked is None:
            return "", ""
        if not picked.is_done:
            return "", "This step was undone."
        later = self._desk.history.later_than(picked.number)
        if later == 0:
            return "", "This is the last step: nothing was done after it."
        if later > DEEPEST:
            return "", f"{later} steps were done since; undo reaches back {DEEPEST}. A backup reaches further."
        if not self._desk.undo_label():
            return "", "Steps from before an update can be read, not undone."
        return f"Undo the {how_many(later, 'step')} done after this", ""

    def _changed(self, picked: Deed) -> tuple[str, ...]:
        changes = self._desk.history.changes(picked.id)
        if picked.bike_id is not None:
            since = self._desk.ask(sealed_since(picked.bike_id))
            if since and picked.at >= since:
                return (SEALED,)
        pointed = {
            str(value).partition("#")[0]
            for change in changes
            for image in (change.before, change.after)
            if image is not None
            for name, value in image.items()
            if value is not None and name.endswith(POINTING)
        }
        names = self._desk.ask(names_of(tuple(sorted(pointed))))
        return changes_words(changes, names, self._bench.units)

    def _pictures(self, picked: Deed) -> tuple[Picture, ...]:
        """Give the pictures a deed hung up, took off, or put to something found."""
        images = [change.after or change.before or {} for change in self._desk.history.changes(picked.id)]
        shown = {str(one["sha256"]): Picture(str(one["sha256"]), str(one["name"])) for one in images if "sha256" in one}
        pointed = tuple(str(one["photo_id"]) for one in images if one.get("photo_id"))
        for photo in self._desk.ask(photos_of(pointed)):
            shown.setdefault(photo.sha256, Picture(photo.sha256, photo.name))
        return tuple(shown.values())[:MOST]

    def picture(self, sha256: str) -> bytes | None:
        """Give the content of a picture; None if its file is missing or another one."""
        return self._desk.photo(sha256)

    def hear(self, touched: Touched) -> None:
        """Any deed is one more, whatever bike it is on; a letter typed into an entry and a setting are none."""
        if touched.tables - {"setting"}:
            self._known = None
            self.refresh()

    # What is asked for

    def set_bike(self, bike_id: str) -> None:
        """Show the deeds of one bike, or of all."""
        self._look_for(Search(bike_id or None, self._search.person_id, self._search.text))

    def set_person(self, person_id: str) -> None:
        """Show the deeds of one person, or of everybody."""
        self._look_for(Search(self._search.bike_id, person_id or None, self._search.text))

    def set_text(self, text: str) -> None:
        """Show the deeds whose labels hold all these words."""
        self._look_for(Search(self._search.bike_id, self._search.person_id, text))

    def older(self) -> None:
        """Turn to the page before."""
        rows = self._desk.history.page(self._search, below=self._tops[-1], most=PAGE)
        if len(rows) == PAGE:
            self._turn([*self._tops, rows[-1].number])

    def newer(self) -> None:
        """Turn back to the page after."""
        if len(self._tops) > 1:
            self._turn(self._tops[:-1])

    def pick(self, key: str) -> None:
        """Point at one deed."""
        if key != self._picked:
            self._picked, self._is_asking = key, False
            self.refresh()

    def ask_undo(self) -> None:
        """Ask before undoing back to the picked deed."""
        self._is_asking = bool(self.state.undo_text)
        self.refresh()

    def leave_it(self) -> None:
        """Undo nothing."""
        self._is_asking = False
        self.refresh()

    def undo_to_here(self) -> bool:
        """Undo every deed after the picked one: all of them, or none."""
        self._is_asking = False
        picked = next((one for one in self._page() if one.id == self._picked), None)
        if picked is None:
            return False
        try:
            self._desk.undo_after(picked.number)
        except WorkbenchError as error:
            self.refuse(error)
            self.refresh()
            return False
        self.refresh()
        return True

    def _page(self) -> tuple[Deed, ...]:
        return self._desk.history.page(self._search, below=self._tops[-1], most=PAGE)

    def _look_for(self, search: Search) -> None:
        if search != self._search:
            self._search = search
            self._turn([None])

    def _turn(self, tops: list[int | None]) -> None:
        self._tops, self._picked, self._is_asking = tops, "", False
        self.refresh()


def _row(deed: Deed, known: Mapping[str, str]) -> HistoryRow:
    station = STATION_WORDS[Station(deed.station)] if deed.station in set(Station) else ""
    return HistoryRow(
        key=deed.id,
        when=short_time(deed.at),
        who=known.get(deed.person_id or "", "–"),
        bike=known.get(deed.bike_id or "", "–"),
        what=deed.label if deed.is_done else f"{deed.label} (undone)",
        station=station,
        is_in_force=deed.is_done,
    )


def _choices(ids: tuple[str, ...], known: Mapping[str, str], everything: str) -> tuple[Choice, ...]:
    listed = sorted(((one, known[one]) for one in ids if one in known), key=lambda pair: (pair[1].casefold(), pair[0]))
    return ((ANY, everything), *listed)

"""The bikes of the garage list: read once, and after that only those a deed has touched."""

from __future__ import annotations

from workbench.actions.desk import Desk, Touched
from workbench.actions.garage import GarageRow, garage_rows, in_order
from workbench.viewmodels.window_state import Findable, ListRow, all_tags, findable, resolve_rows

SHOWN_FROM = frozenset({"bike", "bike_rider", "person"})  # the tables a row is made of


class GarageList:
    """The rows of the list. It hears every deed before the window does, so it never shows what was."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk
        self._rows: tuple[GarageRow, ...] | None = None
        self._archived = False
        self._touched: set[str] = set()
        self._findable: tuple[tuple[GarageRow, ...], tuple[Findable, ...]] = ((), ())
        self._found: tuple[tuple[GarageRow, ...], tuple[str, str], tuple[ListRow, ...]] | None = None
        self._tags: tuple[tuple[GarageRow, ...], tuple[str, ...]] | None = None
        desk.listen(self.hear)

    def hear(self, touched: Touched) -> None:
        """Note which rows no longer hold. Whoever is renamed may ride any bike."""
        if touched.tables.isdisjoint(SHOWN_FROM):
            return
        if "person" in touched.tables or not touched.bikes:
            self.forget()
        else:
            self._touched |= touched.bikes

    def forget(self) -> None:
        """Read everything anew at the next asking."""
        self._rows = None
        self._touched.clear()

    def rows(self, *, archived: bool) -> tuple[GarageRow, ...]:
        """Give all bikes by name, the ones put away or the others."""
        if self._rows is None or archived != self._archived:
            self._rows, self._archived = self._desk.ask(garage_rows(archived=archived)), archived
        elif self._touched:
            fresh = self._desk.ask(garage_rows(archived=archived, among=self._touched))
            self._rows = in_order((*(row for row in self._rows if row.bike.id not in self._touched), *fresh))
        self._touched.clear()
        return self._rows

    def tags(self, *, archived: bool) -> tuple[str, ...]:
        """Give every tag of the bikes listed."""
        rows = self.rows(archived=archived)
        if self._tags is None or self._tags[0] is not rows:
            self._tags = rows, all_tags(self._bikes(rows))
        return self._tags[1]

    def found(self, search: str, *, archived: bool, tag: str = "") -> tuple[ListRow, ...]:
        """Give the rows with the tag in which every searched word occurs, as the list shows them."""
        rows = self.rows(archived=archived)
        if self._found is None or self._found[0] is not rows or self._found[1] != (search, tag):
            self._found = rows, (search, tag), resolve_rows(self._bikes(rows), search, tag)
        return self._found[2]

    def _bikes(self, rows: tuple[GarageRow, ...]) -> tuple[Findable, ...]:
        """Lay the rows out for finding; a row that is still the same one is not laid out again."""
        before, bikes = self._findable
        if before is not rows:
            known = {id(row): bike for row, bike in zip(before, bikes, strict=True)}
            bikes = tuple([known.get(id(row)) or findable(row) for row in rows])
            self._findable = rows, bikes
        return bikes

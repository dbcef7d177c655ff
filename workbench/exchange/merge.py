"""What of a bundle is new here, what is the same, and which of two versions is the older one."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from workbench.exchange.bundle import Bundle, Layout, Row, TableKind, mark_of
from workbench.model.facts import without_controls

Key = tuple[str, str]  # table and id, as in the bundle


class Kind(StrEnum):
    """How a record of a bundle stands to what is here."""

    NEW = "new"
    SAME = "same"
    HERE = "changed here"  # the bundle has an earlier version of it
    THERE = "changed there"  # here is an earlier version of it
    BOTH = "changed on both sides"
    REMOVED = "removed here"


@dataclass(frozen=True, slots=True)
class Difference:
    """One record of a bundle beside its fellow here; ``theirs`` carries the id it has here."""

    table: str
    row_id: str
    kind: Kind
    ours: Row | None
    theirs: Row

    @property
    def key(self) -> Key:
        """Its name in the bundle."""
        return self.table, self.row_id


@dataclass(frozen=True, slots=True)
class Here:
    """What is here of the records of a bundle.

    ``rows`` by id; ``fellows`` are records of another id with the same unique fields, by the id in the bundle; ``seen``
    are marks of every version each record ever had here, by id.
    """

    rows: Mapping[str, Mapping[str, Row]]
    fellows: Mapping[str, Mapping[str, Row]] = field(default_factory=dict)
    seen: Mapping[str, Mapping[str, frozenset[str]]] = field(default_factory=dict)


def compare(bundle: Bundle, here: Here, layout: Layout) -> tuple[Difference, ...]:
    """Set every record of a bundle beside what is here."""
    return tuple(
        _compare_row(bundle, here, layout[table], row)
        for table, rows in sorted(bundle.records.items())
        for row in sorted(rows, key=lambda row: str(row["id"]))
    )


def _compare_row(bundle: Bundle, here: Here, table: TableKind, theirs: Row) -> Difference:
    row_id = theirs["id"]
    ours = here.rows.get(table.name, {}).get(row_id) or here.fellows.get(table.name, {}).get(row_id)
    seen = here.seen.get(table.name, {}).get(row_id, frozenset())
    if ours is None:
        return Difference(table.name, row_id, Kind.REMOVED if seen else Kind.NEW, None, tidy(theirs))
    theirs = {**theirs, "id": ours["id"]}
    if table.number:  # which number it has been given is each garage's own affair
        theirs = {**theirs, table.number: ours[table.number]}
    if ours == theirs or ours == (theirs := tidy(theirs)):
        return Difference(table.name, row_id, Kind.SAME, ours, theirs)
    was_here = mark_of(theirs, table) in seen
    was_there = mark_of(ours, table) in bundle.earlier.get(table.name, {}).get(row_id, ())
    kind = Kind.BOTH if was_here == was_there else Kind.HERE if was_here else Kind.THERE
    return Difference(table.name, row_id, kind, ours, theirs)


def tidy(row: Row) -> Row:
    """The record as it may be taken: without characters that could make a name lie about itself."""
    return {name: without_controls(value) if isinstance(value, str) else value for name, value in row.items()}


def default_choice(kind: Kind) -> bool | None:
    """Whether a record is taken if nobody says otherwise; None: somebody has to say."""
    return {Kind.NEW: True, Kind.THERE: True, Kind.BOTH: None}.get(kind, False)


def undecided(differences: tuple[Difference, ...], choices: Mapping[Key, bool]) -> tuple[Difference, ...]:
    """The records about which somebody has yet to say which version stays."""
    return tuple(one for one in differences if default_choice(one.kind) is None and one.key not in choices)


def taken(
    differences: tuple[Difference, ...],
    choices: Mapping[Key, bool],
    layout: Layout,
    is_here: Callable[[str, str], bool],
) -> tuple[Difference, ...]:
    """The records to take in. What belongs to something left out, and not here either, is left out with it."""
    chosen = {one.key: one for one in differences if choices.get(one.key, default_choice(one.kind))}
    while True:
        orphans = [key for key, one in chosen.items() if _lacks(one, chosen, layout, is_here)]
        if not orphans:
            return tuple(chosen.values())
        for key in orphans:
            del chosen[key]


def _lacks(
    one: Difference, chosen: Mapping[Key, Difference], layout: Layout, is_here: Callable[[str, str], bool]
) -> bool:
    pointed = [(target, one.theirs[name]) for name, target in layout[one.table].refs.items()]
    return any(key is not None and (target, key) not in chosen and not is_here(target, key) for target, key in pointed)

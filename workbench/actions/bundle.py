"""Take bikes along and bring them in: rows of the library to a bundle, and a bundle to records, by one deed."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from workbench.actions.fit_unit import settle_ends
from workbench.exchange.bundle import REQUIRED, Bundle, FieldKind, Layout, Row, TableKind, mark_of, read_bundle
from workbench.exchange.merge import Difference, Here, Key, Kind, compare, taken, undecided
from workbench.library import bundle_rows
from workbench.library.concealed import concealed_ids, seals
from workbench.library.gate import Gate, Reader
from workbench.library.images import Shape
from workbench.model.errors import ExchangeError, InputError
from workbench.model.outside import check_record

NUMBERS = {"setup": ("number", "bike_id"), "on_bike": ("sequence", "bike_id"), "run": ("number", "session_id")}


def layout_of(reader: Reader) -> Layout:
    """Describe the kinds of records there are."""
    return {name: _table_kind(name, shape) for name, shape in bundle_rows.shapes_in(reader).items()}


def layout() -> Callable[[Reader], Layout]:
    """Give the query for the kinds of records there are."""
    return layout_of


def gather(
    bike_ids: tuple[str, ...] | None, title: str, *, schema: str, now: str
) -> Callable[[Reader], tuple[Bundle, tuple[str, ...]]]:
    """Give the query for a bundle of some bikes, or of everything; with it the names of the photos it speaks of.

    Blind tests not revealed yet are left out, and the title says so.
    """

    def query(reader: Reader) -> tuple[Bundle, tuple[str, ...]]:
        kinds = layout_of(reader)
        rows = bundle_rows.all_rows(reader) if bike_ids is None else bundle_rows.rows_of_bikes(reader, bike_ids)
        rows, seals = _without_concealed(rows, kinds)
        records = {table: tuple(_plain(row, kinds[table]) for row in found.values()) for table, found in rows.items()}
        bundle = Bundle(
            schema=schema,
            made_at=now,
            title=title + _left_out_words(seals),
            records={table: found for table, found in records.items() if found},
            earlier=_earlier(reader, kinds, records),
        )
        return bundle, tuple(sorted({str(row["sha256"]) for row in records.get("photo", ())}))

    return query


def _without_concealed(
    rows: Mapping[str, Mapping[str, Row]], kinds: Layout
) -> tuple[dict[str, dict[str, Row]], list[dict[str, Any]]]:
    """Leave out what must not be seen before a reveal; give the rest, and the seals of what was left out."""
    listed = [(table, row) for table, found in rows.items() for row in found.values()]
    hidden = concealed_ids(listed, {name: kind.refs for name, kind in kinds.items()})
    told = {
        table: {key: row for key, row in found.items() if key not in hidden.get(table, ())}
        for table, found in rows.items()
    }
    return told, seals(listed, hidden) if hidden else []


def _left_out_words(seals_told: list[dict[str, Any]]) -> str:
    if not seals_told:
        return ""
    prints = " and ".join(str(seal["digest"])[:16] for seal in seals_told)
    noun = "a blind test that is" if len(seals_told) == 1 else f"{len(seals_told)} blind tests that are"
    return f", without {noun} under way (fingerprint {prints})"


def check(content: bytes, kinds: Layout, types: Mapping[str, type], *, schema: str, what: str) -> Bundle:
    """Read a bundle, and refuse it if it holds what nobody could have entered."""
    bundle = read_bundle(content, kinds, schema=schema, what=what)
    for table, rows in bundle.records.items():
        for row in rows:
            try:
                check_record(types[table](**row))
            except InputError as error:
                noun = table.replace("_", " ")
                raise ExchangeError(f"{what} cannot be taken. In a {noun} of it: {error}") from error
    return bundle


def record_types() -> Callable[[Reader], Mapping[str, type]]:
    """Give the query for the type of record of each table."""
    return lambda reader: {name: shape.spec.record_type for name, shape in bundle_rows.shapes_in(reader).items()}


def compare_with(bundle: Bundle) -> Callable[[Reader], tuple[Difference, ...]]:
    """Give the query that sets a bundle beside what is here; one that points at what is nowhere is refused."""

    def query(reader: Reader) -> tuple[Difference, ...]:
        kinds = layout_of(reader)
        here = _here(reader, bundle, kinds)
        _refuse_loose_ends(reader, bundle, kinds)
        return compare(bundle, here, kinds)

    return query


def bring_in(bundle: Bundle, choices: Mapping[Key, bool]) -> Callable[[Gate], int]:
    """Give the deed that takes in what is new and chosen, and says how many records that were."""

    def deed(gate: Gate) -> int:
        kinds = layout_of(gate)
        differences = compare_with(bundle)(gate)
        if undecided(differences, choices):
            raise ExchangeError("Some records were changed on both sides. Say for each which version stays.")
        present = _pointed_at(gate, differences, kinds)
        wanted = taken(differences, choices, kinds, lambda table, row_id: row_id in present.get(table, {}))
        wanted = tuple(one for one in wanted if one.kind != Kind.SAME)
        shapes = bundle_rows.shapes_in(gate)
        for table, rows in _numbered(gate, wanted).items():
            gate.put(*(shapes[table].spec.record_type(**row) for row in rows))
        owner = {"bike": "id", "unit": "bike_id"}  # either may be chosen without the other, and they have to agree
        for bike_id in sorted({str(one.theirs[owner[one.table]]) for one in wanted if one.table in owner}):
            settle_ends(gate, bike_id)
        return len(wanted)

    return deed


def _table_kind(name: str, shape: Shape) -> TableKind:
    defaults = {one.name: _default(one) for one in dataclasses.fields(shape.spec.record_type)}
    number = NUMBERS.get(name, ("", ""))
    return TableKind(
        name,
        tuple(FieldKind(one.name, one.kind, one.nullable, one.words, defaults[one.name]) for one in shape.spec.fields),
        bundle_rows.refs_of(shape),
        tuple(group for group in bundle_rows.unique_of(shape) if number[0] not in group or not number[0]),
        number[0] if number[0] in shape.names else "",
    )


def _default(one: dataclasses.Field[Any]) -> Any:
    return REQUIRED if one.default is dataclasses.MISSING else one.default


def _plain(image: Row, table: TableKind) -> Row:
    """A stored row with true and false where they are meant."""
    flags = {one.name for one in table.fields if one.kind is bool}
    return {name: bool(value) if name in flags and value is not None else value for name, value in image.items()}


def _earlier(
    reader: Reader, kinds: Layout, records: Mapping[str, tuple[Row, ...]]
) -> dict[str, dict[str, tuple[str, ...]]]:
    present = {table: {row["id"]: mark_of(row, kinds[table]) for row in rows} for table, rows in records.items()}
    found: dict[str, dict[str, set[str]]] = {}
    for table, image in bundle_rows.versions_of(reader, lambda table, row_id: row_id in present.get(table, {})):
        mark = mark_of(_plain(image, kinds[table]), kinds[table])
        if mark != present[table][image["id"]]:
            found.setdefault(table, {}).setdefault(image["id"], set()).add(mark)
    return {table: {key: tuple(sorted(marks)) for key, marks in rows.items()} for table, rows in found.items()}


def _here(reader: Reader, bundle: Bundle, kinds: Layout) -> Here:
    rows: dict[str, dict[str, Row]] = {}
    fellows: dict[str, dict[str, Row]] = {}
    for table, theirs in bundle.records.items():
        kind = kinds[table]
        rows[table] = _all_plain(bundle_rows.rows_with(reader, table, [row["id"] for row in theirs]), kind)
        strangers = [row for row in theirs if row["id"] not in rows[table]]
        for group in kind.unique:
            fellows.setdefault(table, {}).update(
                _all_plain(bundle_rows.fellows_of(reader, table, group, strangers), kind)
            )
    # Whatever is here as it is there needs no past; the past of the rest says which version is older.
    asked = {
        (table, row["id"])
        for table, theirs in bundle.records.items()
        for row in theirs
        if rows[table].get(row["id"]) != row
    }
    own = {fellow["id"]: row_id for found in fellows.values() for row_id, fellow in found.items()}
    seen: dict[str, dict[str, set[str]]] = {}
    if asked:
        for table, image in bundle_rows.versions_of(reader, lambda table, key: (table, own.get(key, key)) in asked):
            key = own.get(str(image["id"]), str(image["id"]))
            mark = mark_of(_plain(image, kinds[table]), kinds[table])
            seen.setdefault(table, {}).setdefault(key, set()).add(mark)
    frozen = {table: {key: frozenset(marks) for key, marks in found.items()} for table, found in seen.items()}
    return Here(rows, fellows, frozen)


def _all_plain(images: Mapping[str, Row], table: TableKind) -> dict[str, Row]:
    return {key: _plain(image, table) for key, image in images.items()}


def _refuse_loose_ends(reader: Reader, bundle: Bundle, kinds: Layout) -> None:
    inside = {table: {row["id"] for row in rows} for table, rows in bundle.records.items()}
    for table, rows in bundle.records.items():
        for name, target in kinds[table].refs.items():
            outside = {row[name] for row in rows if row[name] is not None} - inside.get(target, set())
            if outside and len(bundle_rows.rows_with(reader, target, sorted(outside))) < len(outside):
                owner, missing = table.replace("_", " "), target.replace("_", " ")
                raise ExchangeError(
                    f"The file is not whole: a {owner} in it points at a {missing} that is neither in it nor here. "
                    "Nothing was taken from it."
                )


def _pointed_at(reader: Reader, differences: Iterable[Difference], kinds: Layout) -> dict[str, dict[str, Row]]:
    """The rows here that rows of a bundle point at."""
    wanted: dict[str, set[str]] = {}
    for one in differences:
        for name, target in kinds[one.table].refs.items():
            if one.theirs[name] is not None:
                wanted.setdefault(target, set()).add(one.theirs[name])
    return {target: bundle_rows.rows_with(reader, target, sorted(ids)) for target, ids in wanted.items()}


def _numbered(gate: Gate, wanted: Iterable[Difference]) -> dict[str, list[Row]]:
    """The rows to write by table; a new one whose number is given already gets the next that is free.

    The log of what is on a bike is more than numbers: its last line holds. So lines from elsewhere that are older than
    the last one here go before the first one, and only later ones behind it.
    """
    rows: dict[str, list[Row]] = {}
    for one in wanted:
        rows.setdefault(one.table, []).append(one.theirs)
    for table, (field, owner) in NUMBERS.items():
        if table in rows:
            rows[table] = _renumber(gate, table, field, owner, rows[table])
    return rows


def _renumber(gate: Gate, table: str, field: str, owner: str, rows: list[Row]) -> list[Row]:
    kind = bundle_rows.shapes_in(gate)[table].spec.record_type
    given: dict[str, dict[int, Any]] = {}
    for owner_id in {row[owner] for row in rows}:
        there: tuple[Any, ...] = gate.find(kind, **{owner: owner_id})
        given[owner_id] = {getattr(one, field): one for one in there}
    done = []
    for row in sorted(rows, key=lambda row: (row[owner], row[field])):
        held = given[row[owner]]
        fellow = held.get(row[field])
        if fellow is not None and fellow.id != row["id"]:
            is_older = table == "on_bike" and row["at"] <= held[max(held)].at
            row = {**row, field: min(held) - 1 if is_older else max(held) + 1}
        held[row[field]] = kind(**row)
        done.append(row)
    return done

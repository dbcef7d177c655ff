"""Which bikes a deed concerns: each table says by a path of references where its bike is found."""

from __future__ import annotations

from collections.abc import Mapping

from workbench.library.gate import Note, RowKey
from workbench.library.images import Image, Shape
from workbench.library.reader import Reader
from workbench.library.schema import target_name


def bikes_of(reader: Reader, shapes: Mapping[str, Shape], rows: Mapping[RowKey, Note]) -> frozenset[str]:
    """The bikes all touched rows belong to, before as well as after."""
    search = _Search(reader, shapes, rows)
    for (table, _), note in rows.items():
        for image in (note.before, note.after):
            if image is not None:
                search.follow(shapes[table], image, shapes[table].spec.bike)
    return frozenset(search.bikes)


class _Search:
    """Follows references, also to rows that exist only before or only after the deed."""

    def __init__(self, reader: Reader, shapes: Mapping[str, Shape], rows: Mapping[RowKey, Note]) -> None:
        self._reader = reader
        self._shapes = shapes
        self._rows = rows
        self._looked_up: dict[RowKey, list[Image]] = {}
        self._seen: set[tuple[RowKey, tuple[str, ...]]] = set()
        self.bikes: set[str] = set()

    def follow(self, shape: Shape, image: Image, path: tuple[str, ...]) -> None:
        """Adds the bikes this image leads to along the path."""
        value = image[path[0]] if path else None
        if value is None:
            return
        ref = shape.spec.refs.get(path[0])
        target = self._shapes.get(target_name(shape.table.metadata, ref)) if ref else None
        onward = path[1:] or (target.spec.bike if target else ())
        if target is None or not onward or onward == ("id",):
            self.bikes.add(value)
            return
        key = (target.table.name, value)
        if (key, onward) not in self._seen:
            self._seen.add((key, onward))
            for further in self._images(target, key):
                self.follow(target, further, onward)

    def _images(self, shape: Shape, key: RowKey) -> list[Image]:
        if key in self._rows:
            note = self._rows[key]
            return [image for image in (note.before, note.after) if image is not None]
        if key not in self._looked_up:
            self._looked_up[key] = list(self._reader.images(shape, [key[1]]).values())
        return self._looked_up[key]

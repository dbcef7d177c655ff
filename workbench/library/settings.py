"""Small choices outside the journal: who is at the bench, the theme, the last bike."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from sqlalchemy import Connection, bindparam, delete, insert, select, update

from workbench.library.images import LONGEST_TEXT, storable_text
from workbench.library.own_tables import setting

if TYPE_CHECKING:
    from workbench.library.library import Library
    from workbench.library.pen import Pen

VALUE = select(setting.c.value).where(setting.c.key == bindparam("key"))
VALUES = select(setting.c.key, setting.c.value).where(setting.c.key.in_(bindparam("keys", expanding=True)))
PERSON = "person_at_the_bench"


def value(connection: Connection, key: str) -> str | None:
    """What is set for the key."""
    return connection.execute(VALUE, {"key": key}).scalar_one_or_none()


def values(connection: Connection, keys: Sequence[str]) -> dict[str, str]:
    """What is set for some keys, those with nothing left out."""
    found = connection.execute(VALUES, {"keys": list(keys)})
    return {row.key: row.value for row in found}


def choose(library: Library, wanted: Mapping[str, str | None]) -> bool:
    """Sets the keys, or forgets those with None, in one transaction; tells whether that changed anything."""
    for key, text in wanted.items():
        if text is not None:
            storable_text(key, text, LONGEST_TEXT)
    with library.writing() as pen:
        news = {key: text for key, text in wanted.items() if value(pen.connection, key) != text}
        for key, text in news.items():
            _set(pen, key, text)
        if not news:
            pen.abandon()
    return bool(news)


def _set(pen: Pen, key: str, wanted: str | None) -> None:
    same = setting.c.key == key
    if wanted is None:
        pen.write("settings", delete(setting).where(same))
    elif value(pen.connection, key) is None:
        pen.insert("settings", insert(setting), [{"key": key, "value": wanted}])
    else:
        pen.write("settings", update(setting).where(same).values(value=wanted))

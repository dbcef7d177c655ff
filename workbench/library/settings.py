"""Small choices outside the journal: who is at the bench, the theme, the last bike."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sqlalchemy import Connection, bindparam, delete, insert, select, update

from workbench.library.images import LONGEST_TEXT, storable_text
from workbench.library.own_tables import setting

if TYPE_CHECKING:
    from workbench.library.library import Library

VALUE = select(setting.c.value).where(setting.c.key == bindparam("key"))
PERSON = "person_at_the_bench"


def value(connection: Connection, key: str) -> str | None:
    """What is set for the key."""
    return connection.execute(VALUE, {"key": key}).scalar_one_or_none()


def choose(library: Library, key: str, wanted: str | None) -> bool:
    """Sets the key, or forgets it when None; tells whether that changed anything."""
    if wanted is not None:
        storable_text(key, wanted, LONGEST_TEXT)
    same = setting.c.key == key
    with library.writing() as pen:
        known = value(pen.connection, key)
        if known == wanted:
            pen.abandon()
            return False
        if wanted is None:
            pen.write("settings", delete(setting).where(same))
        elif known is None:
            pen.insert("settings", insert(setting), [{"key": key, "value": wanted}])
        else:
            pen.write("settings", update(setting).where(same).values(value=wanted))
    return True

"""Text kept as typed means what it meant to whoever typed it, also once somebody else's units are on the sheet."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import astuple, fields, replace
from typing import Any, TypeVar

from workbench.viewmodels.shown import Units

T = TypeVar("T")
TypedIn = tuple[str, ...]  # the units of a person, in the order of the fields of `Units`


def typed_in(units: Units) -> TypedIn:
    """Give the units to note beside what is typed."""
    return astuple(units)


def as_meant(text: str, then: str, now: str) -> str:
    """Give the text with its unit if it is a bare number that was meant in another one than is read now."""
    is_bare = text.strip()[-1:].isdigit()
    return f"{text} {then}" if is_bare and then and then != now else text


def texts_as_meant(
    texts: Mapping[str, str], quantities: Mapping[str, str], noted: TypedIn, units: Units
) -> dict[str, str]:
    """Give texts by name as they were meant; those of no quantity with units stay as they are."""
    if len(noted) != len(fields(Units)):
        return dict(texts)
    then = Units(*noted)
    return {
        name: as_meant(text, then.unit(quantities[name]), units.unit(quantities[name])) if name in quantities else text
        for name, text in texts.items()
    }


def read_kept(kind: type[T], text: str) -> T:
    """Read a kept draft with a field ``typed_in``; what this version does not know is left out."""
    known = {one.name for one in fields(kind)}  # type: ignore[arg-type]
    kept = {name: value for name, value in json.loads(text).items() if name in known}
    return kind(**{**kept, "typed_in": tuple(kept.get("typed_in", ()))})


def draft_as_meant(draft: T, quantities: Mapping[str, str], units: Units) -> T:
    """Give a draft with the fields ``typed_in`` and those of ``quantities`` as it was meant."""
    kept: Any = draft
    texts = {name: getattr(kept, name) for name in quantities}
    changed: T = replace(kept, **texts_as_meant(texts, quantities, tuple(kept.typed_in), units))
    return changed

"""JSON from outside, read without trust: sizes, depths, numbers and keys are checked, trouble is told in a sentence."""

from __future__ import annotations

import json
import math
from typing import Any

from workbench.model.errors import ExchangeError

LARGEST_BYTES = 256_000_000
MOST_DIGITS = 18


def read_json(content: bytes, what: str) -> Any:
    """The value a JSON file holds; ``what`` names the file in a refusal."""
    if len(content) > LARGEST_BYTES:
        size = len(content) // 1_000_000
        raise ExchangeError(f"{what} is too large ({size} MB; up to {LARGEST_BYTES // 1_000_000} MB can be read).")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise ExchangeError(f"{what} is no text file. Choose the file that was exported.") from None
    try:
        return json.loads(
            text,
            parse_constant=_no_number,
            parse_float=_finite,
            parse_int=_whole,
            object_pairs_hook=_without_doubles,
        )
    except _Unusable as trouble:
        raise ExchangeError(f"{what} cannot be read: {trouble}. Nothing was taken from it.") from None
    except (json.JSONDecodeError, RecursionError):
        raise ExchangeError(
            f"{what} is not whole or was changed by hand: it is no JSON any more. Nothing was taken from it."
        ) from None


class _Unusable(Exception):
    """Something JSON allows and we do not."""


def _no_number(word: str) -> float:
    raise _Unusable(f"{word} is no number")


def _finite(text: str) -> float:
    number = float(text)
    if not math.isfinite(number):
        raise _Unusable(f"{text[:20]} is no finite number")
    return number


def _whole(text: str) -> int:
    if len(text.lstrip("-")) > MOST_DIGITS:
        raise _Unusable(f"a number of {len(text)} digits")
    return int(text)


def _without_doubles(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        raise _Unusable("the same name stands twice in one place")
    return found

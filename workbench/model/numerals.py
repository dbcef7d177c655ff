"""Numbers as people write them: decimal point or comma, fractions, any script's digits, never a guess.

A separator followed by exactly three digits may be a decimal mark or a grouping mark; which one depends on where the
writer went to school. Such a text is not read but asked about.
"""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

LONGEST = 60

_SPACES = re.compile(r"[\s\u00a0\u2000-\u200a\u202f\u205f\u3000]+")
_MARKS = dict.fromkeys(map(ord, "\u200b\u200e\u200f\u061c\ufeff\u2066\u2067\u2068\u2069"))
_SAME = str.maketrans(
    {
        "\u2212": "-",
        "\u2010": "-",
        "\u2011": "-",
        "\u2013": "-",
        "\u2044": "/",
        "\u060c": ",",
        "\u2019": "'",
        "\u02bc": "'",
        "\u066c": "'",  # the Arabic grouping mark groups and nothing else
    }
)
_FRACTION = re.compile(r"(?:(\d+)[ -])?(\d+) ?/ ?(\d+)")
_PLAIN = re.compile(r"\d+")
_GROUPED = re.compile(r"([1-9]\d{0,2}(?:[ ']\d{3})+)(?:[.,\u066b](\d+))?")
_ONE_MARK = re.compile(r"(\d*)([.,\u066b])(\d+)")
_TWO_MARKS = re.compile(r"([1-9]\d{0,2}(?:,\d{3})+)\.(\d+)|([1-9]\d{0,2}(?:\.\d{3})+),(\d+)")
_MANY_MARKS = re.compile(r"[1-9]\d{0,2}(?:(?:,\d{3}){2,}|(?:\.\d{3}){2,})")


class Unreadable(ValueError):
    """The text is not a number; the text of the error says what to write instead."""


def plain_text(text: str) -> str:
    """Give the text with one kind of digit, minus, space and fraction.

    Raises
    ------
    Unreadable
        If the text is too long to be a number.
    """
    if len(text) > LONGEST:
        raise Unreadable(f"Write at most {LONGEST} characters.")
    text = text.translate(_MARKS).translate(_SAME)
    text = "".join(_plain_char(char) for char in text)
    return _SPACES.sub(" ", text).strip()


def _plain_char(char: str) -> str:
    if char.isdecimal():
        return str(unicodedata.decimal(char))
    parts = unicodedata.decomposition(char)
    if parts.startswith("<fraction>"):
        return " " + "".join(chr(int(code, 16)) for code in parts.split()[1:]).replace("\u2044", "/")
    return char


def read_number(text: str) -> Fraction:
    """Give the exact number a plain text stands for.

    Raises
    ------
    Unreadable
        If the text is no number, or can be read as two numbers a thousand times apart.
    """
    sign, body = (-1, text[1:].lstrip()) if text.startswith("-") else (1, text.removeprefix("+").lstrip())
    return sign * _read_unsigned(body)


def _read_unsigned(body: str) -> Fraction:
    if _PLAIN.fullmatch(body):
        return Fraction(body)
    if found := _FRACTION.fullmatch(body):
        return _read_fraction(*found.groups())
    if found := _ONE_MARK.fullmatch(body):
        return _read_one_mark(*found.groups())
    if found := _GROUPED.fullmatch(body):
        return _joined(found[1], found[2])
    if found := _TWO_MARKS.fullmatch(body):
        return _joined(found[1] or found[3], found[2] or found[4])
    if _MANY_MARKS.fullmatch(body):
        return _joined(body, None)
    raise Unreadable("Write a number, as 82 or 5.6.")


def _read_fraction(whole: str | None, top: str, bottom: str) -> Fraction:
    if int(bottom) == 0 or (whole is not None and int(top) >= int(bottom)):
        raise Unreadable("Write a fraction as 1/2 or 1 1/8.")
    return int(whole or 0) + Fraction(int(top), int(bottom))


def _read_one_mark(whole: str, mark: str, part: str) -> Fraction:
    if mark != "\u066b" and len(part) == 3 and 1 <= len(whole) <= 3 and int(whole) != 0:
        raise Unreadable(f"This can be read in two ways. Write {whole}.{part}0 or {whole}{part}.")
    return Fraction(f"{whole or 0}.{part}")


def _joined(whole: str, part: str | None) -> Fraction:
    return Fraction(f"{re.sub(r'[^0-9]', '', whole)}.{part or 0}")

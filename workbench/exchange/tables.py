"""Tables as CSV text that a spreadsheet reads as what it says."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

Cell = str | int | float | None
_STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def csv_text(heads: Sequence[str], rows: Iterable[Sequence[Cell]]) -> str:
    """Write a table: comma, decimal point, one line a row. Numbers stay numbers.

    A text that a spreadsheet would take for a formula gets an apostrophe in front.
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([_safe(head) for head in heads])
    for row in rows:
        writer.writerow([_safe(cell) for cell in row])
    return out.getvalue()


def _safe(cell: Cell) -> Cell:
    if isinstance(cell, str) and cell.startswith(_STARTS_A_FORMULA):
        return f"'{cell}"
    return "" if cell is None else cell

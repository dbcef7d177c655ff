"""The maker's table of pressures by rider mass, as somebody copied it from the manual."""

from __future__ import annotations

import re

from workbench.model.errors import InputError
from workbench.model.units import parse

LABEL = "Maker's pressure table"
HOW = "pairs with their units, as in: 70 kg 78 psi; 80 kg 86 psi"
_PAIR = re.compile(r"^\s*([\d.,]+\s*(?:kg|lb|lbs|st))[\s:=,-]+([\d.,]+\s*(?:psi|bar|kPa))\s*$", re.IGNORECASE)


def read_table(text: str) -> tuple[tuple[float, float], ...]:
    """Read pairs of rider mass [kg] and gauge pressure [kPa], lightest first; an empty text has none."""
    pairs = []
    for piece in re.split(r"[;\n]", text):
        if not piece.strip():
            continue
        found = _PAIR.match(piece)
        if found is None:
            raise InputError(LABEL, piece.strip(), HOW)
        kg = parse(found[1], "mass", default_unit="kg")
        kpa = parse(found[2], "pressure", default_unit="psi")
        if not (5 <= kg <= 300 and 7 <= kpa <= 3500):
            raise InputError(LABEL, piece.strip(), "riders of 5 to 300 kg and pressures of 1 to 500 psi")
        pairs.append((kg, kpa))
    return tuple(sorted(pairs))

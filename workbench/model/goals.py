"""What a rider is after, and which adjusters bear on it, in the order to try them (common practice, no source)."""

from __future__ import annotations

from workbench.model.adjuster import Adjuster
from workbench.model.parts import BikeParts
from workbench.model.responses import ATTRIBUTES

_LOW, _HIGH = ("low", "", "unknown"), ("high",)
_BEARS = {
    "grip": (("rebound", _LOW), ("compression", _LOW)),
    "comfort": (("compression", _LOW), ("compression", _HIGH), ("rebound", _LOW)),
    "support": (("compression", _LOW), ("rebound", _LOW)),
    "bottom_out": (("compression", _HIGH), ("compression", _LOW)),
    "composure": (("rebound", _LOW), ("rebound", _HIGH), ("compression", _LOW)),
}
GOALS = {key: ATTRIBUTES[key] for key in _BEARS}
MOST_OFFERED = 4


def adjusters_for(goal: str, parts: BikeParts) -> tuple[Adjuster, ...]:
    """Give the counted adjusters that bear on a goal, the front one of each kind first; none for an unknown goal."""
    found: list[Adjuster] = []
    for kind, speeds in _BEARS.get(goal, ()):
        found += [
            one
            for one in parts.adjusters
            if one.kind == kind and one.speed in speeds and one not in found and parts.range_of(one.id) is not None
        ]
    return tuple(found[:MOST_OFFERED])

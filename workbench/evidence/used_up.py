"""What it could mean when the liking still rises at an end of a range: in words, never as a finding.

Common practice, no source: which way a damper must be changed for its wanted setting to come back into the range.
"""

from __future__ import annotations

from workbench.model.errors import InputError

_MEANS = {
    ("rebound", "open"): (
        "Fully open is still too slow: the spring may be soft for this damper, the oil thick in the cold, or something "
        "drags. Look at friction and temperature first; then a firmer spring, or a mechanic's lighter retune."
    ),
    ("rebound", "closed"): (
        "Fully closed is still too fast: the spring may be stiff for this damper, or the damper tired. Do the push "
        "test, closed against open; then a service, or a mechanic's firmer retune."
    ),
    ("compression", "open"): (
        "Fully open is still too firm: a lever left half closed, friction or too much spring feel the same. Look at "
        "those first; then a mechanic's lighter retune."
    ),
    ("compression", "closed"): (
        "Fully closed is still too soft: sag may be deep, or support near the end missing. Measure sag, think of a "
        "spacer; then a mechanic's firmer retune."
    ),
}


def used_up_means(kind: str, end_of_range: str) -> str:
    """What an adjuster of a kind could mean by being wanted beyond an end of its range, "open" or "closed"."""
    try:
        return _MEANS[kind, end_of_range]
    except KeyError:
        raise InputError("kind", f"{kind}, {end_of_range}", "rebound or compression, open or closed") from None

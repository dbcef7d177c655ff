"""A difference as twenty dots that can be counted: each is one chance in twenty."""

from __future__ import annotations

from collections.abc import Hashable, Sequence

import numpy as np

from workbench.evidence.changes import find_changes
from workbench.evidence.normal import mixture_quantile
from workbench.evidence.ratings import RunRecord, Scale, key_of, to_points
from workbench.evidence.session_model import learn
from workbench.model.errors import InputError

DOTS = 20


def quantile_dots(
    runs: Sequence[RunRecord],
    before: Hashable,
    after: Hashable,
    *,
    scale: Scale = (1, 9, 1),
    higher_is_better: bool = True,
    past_sd: float | None = None,
    count: int = DOTS,
) -> tuple[float, ...]:
    """Places of the dots for one change, lowest first [units of the response; ratio - 1 for times].

    Raises
    ------
    InputError
        If the two settings were not ridden one after the other.

    Notes
    -----
    Dot k of n lies at the quantile (k - 1/2) / n of what is believed about the difference.

    References
    ----------
    Kay, Kola, Hullman & Munson (2016), When (ish) is my bus?, CHI, 5092-5103.
    """
    kept = tuple(runs)
    pairs = [(change.before_key, change.after_key) for change in find_changes(kept)]
    asked = (key_of(before), key_of(after))
    sign = 1.0 if asked in pairs else -1.0
    pair = asked if asked in pairs else asked[::-1]
    if pair not in pairs:
        raise InputError("Change", f"{before} to {after}", "two settings ridden one after the other")
    points = to_points(kept, scale, higher_is_better=higher_is_better, past_sd=past_sd)
    posterior = learn(kept, points, pairs, past_sd=None if past_sd is None else points.inner(past_sd))
    at = pairs.index(pair)
    means, sds, weight = (part[at : at + 1] for part in posterior.effects())
    shares = (np.arange(count) + 0.5) / count
    places = [float(mixture_quantile(float(share), means, sds, weight)[0]) for share in shares]
    return tuple(sorted(points.shown(sign * place) for place in places))

"""The grid of what is unknown about a session as a whole, with what is believed beforehand."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.evidence.normal import Array
from workbench.evidence.ratings import TYPICAL_SD, Flags

NOISE_RATIOS = (0.5, 0.8, 1.2, 1.8, 2.7)  # of the noise expected beforehand
NOISE_SPREAD = 0.7  # log sd of that expectation
KNOWN_NOISE_SPREAD = 0.3  # the same when earlier sessions of the rider are known
NODE_WIDTH = 0.2  # log size around a node that it stands for
CHANGE_SDS = ((1.2, 0.4), (3.0, 0.6))  # size of the changes that change something
WANDER_SDS = ((0.15, 0.6), (0.7, 0.4))
PLAIN, LAGGED, PULLED = 0, 1, 2  # riders who say what they feel; who lag a change; who are pulled by their last answer
KIND_SHARES = (0.5, 0.25, 0.25)


@dataclass(frozen=True, slots=True)
class Nodes:
    """One entry a node: sizes in points, the kind of rider, and the log of the belief beforehand."""

    noise: Array
    change: Array
    wander: Array
    kind: NDArray[np.intp]
    belief: Array

    def kept(self, keep: Flags) -> Nodes:
        """The same for fewer nodes."""
        return Nodes(self.noise[keep], self.change[keep], self.wander[keep], self.kind[keep], self.belief[keep])


def grid(past_sd: float | None) -> Nodes:
    """All nodes; past_sd is this rider's scatter in earlier sessions [points]."""
    centre = TYPICAL_SD if past_sd is None else past_sd
    spread = NOISE_SPREAD if past_sd is None else KNOWN_NOISE_SPREAD
    nodes = list(itertools.product(NOISE_RATIOS, CHANGE_SDS, WANDER_SDS, enumerate(KIND_SHARES)))
    shares = np.log([node[1][1] * node[2][1] * node[3][1] for node in nodes])
    sizes = np.log([node[0] for node in nodes])
    return Nodes(
        noise=np.array([centre * node[0] for node in nodes]),
        change=np.array([node[1][0] for node in nodes]),
        wander=np.array([node[2][0] for node in nodes]),
        kind=np.array([node[3][0] for node in nodes], dtype=np.intp),
        belief=shares - 0.5 * (sizes / spread) ** 2,
    )

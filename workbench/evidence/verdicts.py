"""What is said about one change: the verdict, what lowers its worth, and the numbers behind it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from workbench.evidence.ratings import Setting

SURE = 0.95  # chance from which a change is said to have helped; below 1 - SURE it hurt
UNFELT = 0.2  # chance of a felt difference up to which none is said to be felt


class Verdict(Enum):
    """The four things that can be said about a change."""

    HELPED = "helped"
    HURT = "hurt"
    NOT_FELT = "not felt"
    CANNOT_TELL = "cannot tell"


class Caution(Enum):
    """What lowers certainty beyond the numbers."""

    NOT_BLIND = "not blind"
    NO_RETURN = "no return"
    CONFOUNDED = "confounded"
    FEW_RUNS = "few runs"
    DAY_BOUNDARY = "day boundary"
    SCALE_END = "scale end"
    CHOSEN_AFTER_SEEING = "chosen after seeing"
    OPTIMISM_POSSIBLE = "optimism possible"


@dataclass(frozen=True, slots=True)
class ChangeVerdict:
    """One change: its effect in the units of the response (positive is better), how sure, and what to make of it.

    For times the effect is a ratio minus 1: 0.01 means 1 % quicker. more_runs is 0 once settled, and None when more
    runs of these two settings are not expected to settle it. next_run_low and next_run_high hold 9 in 10 of the
    differences a single further run with the change would show.
    """

    before: Setting
    after: Setting
    runs_before: int
    runs_after: int
    effect: float
    low: float
    high: float
    chance_helped: float
    chance_felt: float
    verdict: Verdict
    more_runs: int | None
    repeat_sd: float
    next_run_low: float
    next_run_high: float
    cautions: frozenset[Caution]


def verdict_of(chance_helped: float, chance_felt: float) -> Verdict:
    """The verdict two chances add up to."""
    if chance_helped >= SURE:
        return Verdict.HELPED
    if chance_helped <= 1.0 - SURE:
        return Verdict.HURT
    return Verdict.NOT_FELT if chance_felt <= UNFELT else Verdict.CANNOT_TELL

"""What a pump's hose takes from a spring when it is attached, and what is left over that only a leak explains."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from workbench.model.errors import NotEnoughData
from workbench.physics.limits import check_number

TYPICAL_SHARE = (0.005, 0.08)  # hose to chamber volume, large fork to small can; common practice, no source
_LEARNED_SPREAD = 0.25  # of the share learned: the chamber is a little larger or smaller at another pressure
_MOST_KPA = 10_000.0


@dataclass(frozen=True, slots=True)
class Reattached:
    """What a gauge was expected to show when attached again, and what is left over."""

    expected_low_kpa: float
    expected_high_kpa: float
    missing_kpa: float  # below what hose and gauge explain; 0 if nothing is
    is_learned: bool

    @property
    def is_leak(self) -> bool:
        """Whether more is gone than hose and gauge explain."""
        return self.missing_kpa > 0


def hose_share(first_kpa: float, second_kpa: float) -> float:
    """Give the hose's volume over the chamber's, from two attachments one right after the other [1].

    Parameters
    ----------
    first_kpa, second_kpa
        What the gauge showed before taking the pump off, and when it was attached again [kPa gauge].

    Raises
    ------
    NotEnoughData
        If the second reading is not below the first: then nothing was lost, or air was added.
    InputError
        If a pressure cannot be.

    Notes
    -----
    An empty hose is at outside pressure, so in gauge pressures p2 = p1 V / (V + h), at one temperature. Own
    derivation from the ideal gas.

    Examples
    --------
    >>> round(hose_share(180.0, 180.0 * 95 / 99), 4)
    0.0421
    """
    check_number("first_kpa", first_kpa, above=0, at_most=_MOST_KPA)
    check_number("second_kpa", second_kpa, above=0, at_most=_MOST_KPA)
    if second_kpa >= first_kpa:
        raise NotEnoughData("The second reading is not below the first, so it tells nothing of the hose.")
    return first_kpa / second_kpa - 1


def as_attached(pressure_kpa: float, share: float) -> float:
    """Give what a gauge shows on attaching an empty hose to a pressure: p V / (V + h) [kPa gauge]."""
    check_number("pressure_kpa", pressure_kpa, at_least=0, at_most=_MOST_KPA)
    return pressure_kpa / (1 + check_number("share", share, at_least=0))


def reattached(before_kpa: float, read_kpa: float, *, shares: Sequence[float] = (), gauge_kpa: float) -> Reattached:
    """Set a reading on attaching again against the last one.

    Parameters
    ----------
    before_kpa
        What stood in the spring, brought to the temperature of today [kPa gauge].
    read_kpa
        What the gauge shows now [kPa gauge].
    shares
        Hose shares learned with this pump on this unit; typical ones are assumed where there is none.
    gauge_kpa
        What the gauge can be read to [kPa].
    """
    check_number("read_kpa", read_kpa, at_least=0, at_most=_MOST_KPA)
    if shares:
        middle = median(shares)
        least, most = middle * (1 - _LEARNED_SPREAD), middle * (1 + _LEARNED_SPREAD)
    else:
        least, most = TYPICAL_SHARE
    low = as_attached(before_kpa, most) - gauge_kpa
    high = as_attached(before_kpa, least) + gauge_kpa
    return Reattached(low, high, max(0.0, low - read_kpa), bool(shares))

"""Friction of a unit, from sag settled from above and from below."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.physics.limits import check_number

ATTEND_SHARE = 0.10  # of the load: common practice, no source


@dataclass(frozen=True, slots=True)
class Settled:
    """The sag without friction, and the friction that hid it."""

    sag_mm: float
    friction_n: float
    share_of_load: float
    attend: bool


def between_settled(
    *, from_above_mm: float, from_below_mm: float, rate_n_per_mm: float, load_n: float, travel_mm: float
) -> Settled:
    """Give sag and friction from two ways of settling.

    Parameters
    ----------
    from_above_mm
        Sag after coming down slowly from full extension; the smaller one [mm].
    from_below_mm
        Sag after coming up slowly from deep in the travel [mm].
    rate_n_per_mm, load_n
        Local rate of the spring at sag, and the load [N/mm, N].
    travel_mm
        Travel of the unit [mm].

    Returns
    -------
    Settled
        The centre, half the difference as a force, and whether that is worth attending to.

    Raises
    ------
    InputError
        If the readings are the wrong way round or outside the travel.

    Notes
    -----
    Dry friction holds the unit anywhere within F +- f, so the readings lie f / k on either side of the true sag.

    References
    ----------
    Coulomb friction, as in Meriam and Kraige, Engineering Mechanics: Statics, ch. 6.

    Examples
    --------
    >>> between_settled(from_above_mm=30, from_below_mm=34, rate_n_per_mm=7, load_n=300, travel_mm=160)
    Settled(sag_mm=32.0, friction_n=14.0, share_of_load=0.04666666666666667, attend=False)
    """
    check_number("from_above_mm", from_above_mm, at_least=0, at_most=travel_mm)
    hint = "Settled from below the sag is the larger one."
    check_number("from_below_mm", from_below_mm, at_least=from_above_mm, at_most=travel_mm, hint=hint)
    check_number("rate_n_per_mm", rate_n_per_mm, above=0)
    check_number("load_n", load_n, above=0)
    friction_n = (from_below_mm - from_above_mm) / 2 * rate_n_per_mm
    share = friction_n / load_n
    return Settled((from_above_mm + from_below_mm) / 2, friction_n, share, share > ATTEND_SHARE)

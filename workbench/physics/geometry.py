"""What sag does to head angle, wheelbase and bottom bracket."""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, atan2, cos, degrees, hypot, radians, sin, sqrt

from workbench.physics.limits import check_number


@dataclass(frozen=True, slots=True)
class GeometryAtSag:
    """A bike's geometry with both ends at sag; the drop is below the line through the axles."""

    head_angle_deg: float
    wheelbase_mm: float
    bb_drop_mm: float | None = None


def at_sag(
    *,
    wheelbase_mm: float,
    head_angle_deg: float,
    fork_sag_mm: float,
    rear_axle_up_mm: float,
    bb_drop_mm: float | None = None,
    rear_centre_mm: float = 440.0,
    front_radius_mm: float = 350.0,
    rear_radius_mm: float = 350.0,
) -> GeometryAtSag:
    """Give the geometry of a rigid frame on flat ground after sag.

    Parameters
    ----------
    wheelbase_mm, head_angle_deg
        At full extension, the wheelbase along the ground [mm, deg].
    fork_sag_mm
        Sag along the fork's own axis [mm].
    rear_axle_up_mm
        Rise of the rear axle against the frame, square to the ground line at full extension [mm].
    bb_drop_mm
        Bottom bracket below the line through the axles at full extension [mm]; negative when above.
    rear_centre_mm
        Distance of the bottom bracket ahead of the rear axle along that line [mm]; matters little.
    front_radius_mm, rear_radius_mm
        Radii of the wheels [mm]; only their difference matters.

    Returns
    -------
    GeometryAtSag
        Head angle [deg], wheelbase [mm] and, when given, bottom bracket drop [mm].

    Raises
    ------
    InputError
        If a length or angle cannot be.

    Notes
    -----
    Front axle F = (L - s cos t, rf + s sin t), rear axle R = (0, rr + u), d = F - R. The ground turns against the frame
    by phi = atan2(dy, dx) - asin((rf - rr) / |d|), so the new head angle is t + phi and the new wheelbase
    sqrt(|d|^2 - (rf - rr)^2). A diving fork steepens, a sagging rear slackens. Plane geometry, own derivation.

    Examples
    --------
    >>> sagged = at_sag(wheelbase_mm=1200, head_angle_deg=65, fork_sag_mm=30, rear_axle_up_mm=40)
    >>> round(sagged.head_angle_deg, 3), round(sagged.wheelbase_mm, 1)
    (64.382, 1187.4)
    """
    check_number("wheelbase_mm", wheelbase_mm, above=0)
    check_number("head_angle_deg", head_angle_deg, above=0, below=180)
    check_number("fork_sag_mm", fork_sag_mm, at_least=0, below=wheelbase_mm)
    check_number("rear_axle_up_mm", rear_axle_up_mm, at_least=0, below=wheelbase_mm)
    check_number("front_radius_mm", front_radius_mm, above=0)
    check_number("rear_radius_mm", rear_radius_mm, above=0, below=front_radius_mm + wheelbase_mm / 2)
    angle = radians(head_angle_deg)
    step = front_radius_mm - rear_radius_mm
    along = wheelbase_mm - fork_sag_mm * cos(angle)
    rise = step + fork_sag_mm * sin(angle) - rear_axle_up_mm
    apart = hypot(along, rise)
    turn = atan2(rise, along) - asin(step / apart)
    drop = None
    if bb_drop_mm is not None:
        drop = _drop_below_axles(bb_drop_mm, rear_centre_mm, wheelbase_mm, step, (along, rise, rear_axle_up_mm))
    return GeometryAtSag(head_angle_deg + degrees(turn), sqrt(apart**2 - step**2), drop)


def _drop_below_axles(
    bb_drop_mm: float, rear_centre_mm: float, wheelbase_mm: float, step_mm: float, sagged: tuple[float, float, float]
) -> float:
    """Give how far a point of the frame lies below the line through the axles once these have moved."""
    check_number("bb_drop_mm", bb_drop_mm)
    check_number("rear_centre_mm", rear_centre_mm, above=0, below=wheelbase_mm)
    along, rise, rear_up = sagged
    before = atan2(step_mm, wheelbase_mm)
    x = rear_centre_mm * cos(before) + bb_drop_mm * sin(before)
    y = rear_centre_mm * sin(before) - bb_drop_mm * cos(before) - rear_up
    after = atan2(rise, along)
    return x * sin(after) - y * cos(after)


def fork_sag_vertical_mm(fork_sag_mm: float, *, head_angle_deg: float) -> float:
    """Give how far the front of the bike comes down for a sag along the fork's axis [mm]."""
    check_number("fork_sag_mm", fork_sag_mm, at_least=0)
    check_number("head_angle_deg", head_angle_deg, above=0, below=180)
    return fork_sag_mm * sin(radians(head_angle_deg))


def trail_mm(*, wheel_radius_mm: float, head_angle_deg: float, fork_offset_mm: float) -> float:
    """Give the ground trail of a front wheel.

    Notes
    -----
    trail = (r cos t - o) / sin t.

    References
    ----------
    Meijaard, Papadopoulos, Ruina and Schwab (2007), Proc. R. Soc. A 463, 1955-1982, figure 1.
    """
    check_number("wheel_radius_mm", wheel_radius_mm, above=0)
    check_number("head_angle_deg", head_angle_deg, above=0, below=180)
    check_number("fork_offset_mm", fork_offset_mm)
    angle = radians(head_angle_deg)
    return (wheel_radius_mm * cos(angle) - fork_offset_mm) / sin(angle)

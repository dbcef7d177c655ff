"""What sag does to head angle, wheelbase and bottom bracket."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, cos, degrees, hypot, radians, sin

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
) -> GeometryAtSag:
    """Give the geometry of a rigid frame on flat ground after sag, wheels of one size.

    Parameters
    ----------
    wheelbase_mm, head_angle_deg
        At full extension [mm, deg].
    fork_sag_mm
        Sag along the fork's own axis [mm].
    rear_axle_up_mm
        Rise of the rear axle against the frame, square to the ground line at full extension [mm].
    bb_drop_mm
        Bottom bracket below the line through the axles at full extension [mm]; negative when above.
    rear_centre_mm
        Distance of the bottom bracket ahead of the rear axle along that line [mm]; matters little.

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
    Front axle F = (L - s cos t, s sin t), rear axle R = (0, u); the ground turns by phi = atan2(Fy - Ry, Fx - Rx), so
    the new head angle is t + phi and the new wheelbase |F - R|. A diving fork steepens, a sagging rear slackens. Plane
    geometry, own derivation.

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
    angle = radians(head_angle_deg)
    along = wheelbase_mm - fork_sag_mm * cos(angle)
    rise = fork_sag_mm * sin(angle) - rear_axle_up_mm
    turn = atan2(rise, along)
    drop = None
    if bb_drop_mm is not None:
        check_number("bb_drop_mm", bb_drop_mm)
        check_number("rear_centre_mm", rear_centre_mm, above=0, below=wheelbase_mm)
        drop = (rear_axle_up_mm + bb_drop_mm) * cos(turn) + rear_centre_mm * sin(turn)
    return GeometryAtSag(head_angle_deg + degrees(turn), hypot(along, rise), drop)


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

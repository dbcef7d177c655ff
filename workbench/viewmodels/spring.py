"""The spring sheet: the curve of each end, what another pressure would do, and how both ends go together."""

from __future__ import annotations

from dataclasses import dataclass, replace

from workbench.actions.desk import Desk, Touched
from workbench.actions.spring import SpringRecords, spring_records
from workbench.model.errors import WorkbenchError
from workbench.model.sag import SagMeasurement
from workbench.model.unit import Unit
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.coil import CoilViewModel
from workbench.viewmodels.shown import Units
from workbench.viewmodels.spring_curves import SpringCurve, WhatIf, curve_of, kept_sag, leverage_of
from workbench.viewmodels.spring_sizes import coil_words
from workbench.viewmodels.spring_sliders import Slider, sliders_of

ASSUMED = (
    "Typical chamber sizes are assumed: the curve is drawn in multiples of the rider's load, with its uncertainty."
)
NEGATIVE_MISSING = "For a curve in newtons the negative chamber's own pressure has to be put in with the sag."
SURE = "Nine times in ten"
TABLE_ENDS = (
    "The spring's table ends before the stroke does: beyond it nothing is known, and the spring is taken to go solid"
    " there. Measure it further, or fit one with a longer stroke."
)
TABLE_SHORT = "The rider presses it further than its table goes: no sag can be read off it."
PRESSED_TO_END = "This spring does not carry the rider before the end of the stroke: too soft."
SAG_FIRST = "A curve is drawn from a kept sag measurement. Measure sag first."


@dataclass(frozen=True, slots=True)
class SpringState:
    """The spring sheet."""

    blocked: str = ""
    ends: tuple[tuple[str, str], ...] = ()
    end: str = "front"
    title: str = ""
    curve: SpringCurve | None = None
    kept: SpringCurve | None = None  # as measured, beside what is tried
    force_label: str = ""
    travel_label: str = ""
    sliders: tuple[Slider, ...] = ()
    findings: tuple[tuple[str, str], ...] = ()
    remarks: tuple[str, ...] = ()
    is_tried: bool = False
    has_coil: bool = False  # at the end that lies open


class SpringViewModel(ViewModel[SpringState]):
    """Draws the springs; what is tried on paper changes no record."""

    station = "sag"

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._tried: dict[str, WhatIf] = {}
        self._of_bike = ""
        self.coil = CoilViewModel(desk, bench)  # the coil's own sheets, on the same page
        super().__init__(desk, bench)

    def read(self) -> SpringState:
        """Read the springs of the bike on the bench."""
        if not self.bike_id:
            return SpringState(blocked="Pick a bike first.")
        if self._of_bike != self.bike_id:
            self._of_bike, self._tried = self.bike_id, {}
        records = self._desk.ask(spring_records(self.bike_id, self._bench.rider_id))
        units = tuple(
            unit for unit in records.sag.parts.units if unit.spring == "coil" or kept_sag(records, unit) is not None
        )
        if not units:
            return SpringState(blocked=SAG_FIRST)
        unit = next((one for one in units if one.end == self._picked()), units[0])
        if kept_sag(records, unit) is None:
            return SpringState(SAG_FIRST, _ends(units), unit.end, _title(unit), has_coil=True)
        tried = self._tried.get(unit.id, WhatIf())
        try:
            return resolve(records, units, unit, tried, self._bench.units)
        except WorkbenchError as error:
            self._tried.pop(unit.id, None)
            return SpringState(str(error), _ends(units), unit.end, _title(unit), has_coil=unit.spring == "coil")

    def hear(self, touched: Touched) -> None:
        """Take note of records only: what is typed about a coil draws no other curve."""
        if touched.tables:
            super().hear(touched)

    def pick_end(self, end: str) -> None:
        """Look at the other end; other sheets ask for one the same way."""
        self._desk.set_setting(f"spring/end/{self.bike_id}", end)
        self.refresh()

    def try_value(self, name: str, value: int) -> None:
        """Try another pressure, rate or number of spacers on paper."""
        unit = self._unit()
        if unit is None:
            return
        now = self._tried.get(unit.id, WhatIf())
        if name == "spacers":
            now = replace(now, spacers=value)
        elif name == "pressure_kpa":
            now = replace(now, pressure_kpa=float(value))
        elif name == "negative_kpa":
            now = replace(now, negative_kpa=float(value))
        else:
            now = replace(now, rate_n_per_mm=float(value))
        self._tried[unit.id] = now
        self.refresh()

    def as_measured(self) -> None:
        """Forget what was tried."""
        self._tried.clear()
        self.refresh()

    def _picked(self) -> str:
        return self._desk.setting(f"spring/end/{self.bike_id}", "front")

    def _unit(self) -> Unit | None:
        parts = self._desk.ask(spring_records(self.bike_id, self._bench.rider_id)).sag.parts
        return parts.unit(self.state.end)


def resolve(records: SpringRecords, units: tuple[Unit, ...], unit: Unit, tried: WhatIf, shown: Units) -> SpringState:
    """Lay the sheet out for one end."""
    sag = kept_sag(records, unit)
    assert sag is not None
    is_tried = tried != WhatIf()
    curve = curve_of(records, unit, sag, tried)
    kept = curve_of(records, unit, sag, WhatIf()) if is_tried else None
    return SpringState(
        ends=_ends(units),
        end=unit.end,
        title=_title(unit),
        curve=curve,
        kept=kept,
        force_label="force, N" if curve.in_newton else "force, rider's load = 1",
        travel_label="travel, mm" if unit.kind == "fork" else "stroke, mm",
        sliders=sliders_of(unit, sag, tried, shown, records.sag.parts.valves),
        findings=_findings(records, unit, sag, curve, shown),
        remarks=_remarks(records, unit, sag, kept, curve),
        is_tried=is_tried,
        has_coil=unit.spring == "coil",
    )


def _title(unit: Unit) -> str:
    return f"{'Fork' if unit.kind == 'fork' else 'Shock'} spring"


def _ends(units: tuple[Unit, ...]) -> tuple[tuple[str, str], ...]:
    return tuple((unit.end, unit.end.capitalize()) for unit in units)


def _findings(
    records: SpringRecords, unit: Unit, sag: SagMeasurement, curve: SpringCurve, shown: Units
) -> tuple[tuple[str, str], ...]:
    words = [("Measured", f"{shown.text(sag.sag_mm, 'length')}, {_percent(sag.sag_mm / sag.travel_mm)}")]
    if curve.sag_mm is not None:
        words.append(("Sag here", f"{shown.text(curve.sag_mm, 'length')}, {_percent(curve.sag_mm / sag.travel_mm)}"))
    if curve.sag_low_mm is not None and curve.sag_high_mm is not None:
        low = shown.text(curve.sag_low_mm, "length").partition("\u2009")[0]
        words.append((SURE, f"{low} to {shown.text(curve.sag_high_mm, 'length')}"))
    if curve.rate_at_sag is not None and curve.in_newton:
        words.append(("Rate at sag", shown.text(curve.rate_at_sag, "spring_rate")))
    if curve.preload_force:
        words.append(("Preload force", shown.text(round(curve.preload_force), "force")))
    if curve.end_force is not None:
        end = f"{curve.end_force:.0f}\u2009N" if curve.in_newton else f"{curve.end_force:.1f} × the load"
        words.append((_end_words(unit, curve, shown), end))
        if curve.end_low is not None and curve.end_high is not None:
            words.append((SURE, f"{curve.end_low:.1f} to {curve.end_high:.1f}"))
    words += _wheel_words(records, unit, sag, curve, shown)
    return tuple(words)


def _end_words(unit: Unit, curve: SpringCurve, shown: Units) -> str:
    """Say where the last force is, and of which kind: a coil gives the same at rest and in a quick hit."""
    if curve.ends_mm is not None:
        return f"At {shown.text(curve.ends_mm, 'length')}, its table's end"
    if not curve.in_newton:  # sizes not known: the curve stops short of the end
        return f"In a hit at {shown.text(curve.travel_mm[-1], 'length')}"
    return "End force" if unit.spring == "coil" else "End force in a hit"


def _wheel_words(
    records: SpringRecords, unit: Unit, sag: SagMeasurement, curve: SpringCurve, shown: Units
) -> list[tuple[str, str]]:
    leverage = leverage_of(records, unit) if unit.kind == "shock" else None
    if leverage is None or curve.sag_mm is None or curve.sag_mm > leverage.stroke_mm:
        return []
    from workbench.physics.leverage import wheel_rate_n_per_mm

    wheel_mm = leverage.wheel(curve.sag_mm)
    words = [("Wheel sag", f"{shown.text(wheel_mm, 'length')}, {_percent(wheel_mm / leverage.travel_mm)}")]
    if curve.in_newton and curve.rate_at_sag is not None:
        rate = wheel_rate_n_per_mm(
            leverage, wheel_mm=wheel_mm, shock_rate_n_per_mm=curve.rate_at_sag, shock_force_n=curve.load
        )
        words.append(("Wheel rate at sag", shown.text(rate, "spring_rate")))
    words.append(("Leverage", f"{leverage.mean:.2f} mean, {_percent(leverage.progression)} progression"))
    return words


def _remarks(
    records: SpringRecords, unit: Unit, sag: SagMeasurement, kept: SpringCurve | None, curve: SpringCurve
) -> tuple[str, ...]:
    remarks = [ASSUMED] if not curve.in_newton else []
    coil = coil_words(unit, sag, is_known=curve.in_newton)
    if coil:
        remarks.append(coil)
    if not curve.in_newton and unit.area_mm2 and unit.negative == "separate":
        remarks.append(NEGATIVE_MISSING)
    remarks += _coil_remarks(unit, curve)
    shift = _rebound_words(kept, curve)
    if shift:
        remarks.append(shift)
    pace = _pace(records)
    if pace:
        remarks.append(pace)
    geometry = _geometry(records)
    if geometry:
        remarks.append(geometry)
    return tuple(remarks)


def _coil_remarks(unit: Unit, curve: SpringCurve) -> list[str]:
    """Say where a coil's curve ends too early: the table before the stroke, or the spring under the rider."""
    if unit.spring != "coil":
        return []
    words = [TABLE_ENDS] if curve.ends_mm is not None else []
    if curve.sag_mm is None:
        words.append(TABLE_SHORT if curve.ends_mm is not None else PRESSED_TO_END)
    return words


def _rebound_words(kept: SpringCurve | None, curve: SpringCurve) -> str:
    """Say how far the right rebound is expected to move with the spring: damping goes with the root of the rate."""
    if kept is None or kept.rate_at_sag is None or curve.rate_at_sag is None:
        return ""
    from workbench.physics.balance import rebound_shift

    shift = rebound_shift(kept.rate_at_sag, curve.rate_at_sag)
    if abs(shift) < 0.02:
        return ""
    way = "more" if shift > 0 else "less"
    return f"Expect to want about {100 * abs(shift):.0f}\u2009% {way} rebound damping with this spring: test it again."


def _pace(records: SpringRecords) -> str:
    """Compare the ride frequencies of both ends, as measured; needs a sag at each."""
    from workbench.physics.balance import front_against_rear, ride_frequency_hz

    paces: dict[str, float] = {}
    for unit in records.sag.parts.units:
        sag = kept_sag(records, unit)
        if sag is None:
            return ""
        curve = curve_of(records, unit, sag, WhatIf())
        if curve.rate_at_sag is None:
            return ""
        # At the wheel, rate over load is that of the shock divided by the leverage ratio.
        ratio = _ratio(records, unit, curve.sag_mm or sag.sag_mm)
        if ratio is None:
            return ""
        paces[unit.end] = ride_frequency_hz(curve.rate_at_sag / ratio, curve.load)
    return front_against_rear(paces["front"], paces["rear"]) if len(paces) == 2 else ""


def _ratio(records: SpringRecords, unit: Unit, sag_mm: float) -> float | None:
    if unit.kind == "fork":
        return 1.0
    leverage = leverage_of(records, unit)
    if leverage is not None and sag_mm <= leverage.stroke_mm:
        return leverage.ratio(leverage.wheel(sag_mm))
    wheel_mm = records.sag.parts.bike.rear_travel_mm
    return wheel_mm / unit.travel_mm if wheel_mm and unit.travel_mm else None


def _geometry(records: SpringRecords) -> str:
    """Say the geometry at sag, for a bike with wheelbase and head angle entered."""
    bike, parts = records.sag.parts.bike, records.sag.parts
    fork = parts.unit("front")
    front = kept_sag(records, fork) if fork else None
    if bike.wheelbase_mm is None or bike.head_angle_deg is None or front is None:
        return ""
    from workbench.physics.geometry import at_sag

    rear_up = _rear_axle_up(records)
    if rear_up is None:
        return ""
    there = at_sag(
        wheelbase_mm=bike.wheelbase_mm,
        head_angle_deg=bike.head_angle_deg,
        fork_sag_mm=front.sag_mm,
        rear_axle_up_mm=rear_up,
        bb_drop_mm=bike.bb_drop_mm,
    )
    text = f"At sag the head angle is {there.head_angle_deg:.1f} degrees (unloaded {bike.head_angle_deg:.1f})"
    return f"{text} and the wheelbase {there.wheelbase_mm:.0f} mm."


def _rear_axle_up(records: SpringRecords) -> float | None:
    shock = records.sag.parts.unit("rear")
    if shock is None:
        return 0.0
    sag = kept_sag(records, shock)
    ratio = _ratio(records, shock, sag.sag_mm) if sag else None
    return sag.sag_mm * ratio if sag and ratio else None


def _percent(share: float) -> str:
    return f"{100 * share:.0f}\u2009%"

"""The leverage survey: shock stroke against wheel travel, read at the bench, and the curve through it."""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from math import isfinite

from workbench.actions.spring import SpringRecords, delete_survey, keep_survey, spring_records
from workbench.model.errors import InputError, NotEnoughData, WorkbenchError
from workbench.model.unit import Unit
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.shown import Units, short_date

DRAFT = "leverage"
LINES = 8  # pairs offered at first; a new line appears when the last is used
STEPS = 40
STEADY = 0.03  # a change of the ratio this small is called none


@dataclass(frozen=True, slots=True)
class SurveyDraft:
    """What has been typed so far, as typed: pairs of stroke and wheel travel, and the mounting."""

    pairs: tuple[tuple[str, str], ...] = ()
    mounting: str = ""

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps({"pairs": self.pairs, "mounting": self.mounting})

    @classmethod
    def from_json(cls, text: str) -> SurveyDraft:
        """Read a kept draft."""
        known = json.loads(text)
        return cls(tuple((str(a), str(b)) for a, b in known.get("pairs", ())), str(known.get("mounting", "")))


@dataclass(frozen=True, slots=True)
class RatioCurve:
    """The ratio over wheel travel with its 90 % interval, and the points read."""

    wheel_mm: tuple[float, ...]
    ratio: tuple[float, ...]
    low: tuple[float, ...]
    high: tuple[float, ...]
    stroke_mm: tuple[float, ...] = ()  # the fit, at the same wheel travels
    points: tuple[tuple[float, float], ...] = ()  # stroke and wheel travel as read

    def __post_init__(self) -> None:
        if not all(map(isfinite, (*self.wheel_mm, *self.ratio, *self.low, *self.high))):
            raise ValueError("a ratio curve is finite")


@dataclass(frozen=True, slots=True)
class LeverageState:
    """The survey sheet."""

    blocked: str = ""
    pairs: tuple[tuple[str, str], ...] = ()
    mounting: str = ""
    unit: str = "mm"
    curve: RatioCurve | None = None
    said: str = ""
    has_draft: bool = False
    kept: tuple[tuple[str, str], ...] = ()


def read_pairs(draft: SurveyDraft, units: Units) -> list[tuple[float, float]]:
    """Read the typed pairs; half a pair or an unreadable one raises InputError naming its line."""
    pairs = []
    for number, (stroke, wheel) in enumerate(draft.pairs, start=1):
        if not stroke.strip() and not wheel.strip():
            continue
        try:
            pairs.append((units.parse(stroke, "length"), units.parse(wheel, "length")))
        except InputError as error:
            raise InputError(f"Line {number}", error.value, "a stroke and a wheel travel") from error
    return pairs


def ratio_curve(pairs: list[tuple[float, float]]) -> tuple[RatioCurve, str]:
    """Fit the curve and say it in words; raises what the fit raises."""
    from workbench.physics.leverage import survey

    fit = survey([stroke for stroke, _ in pairs], [wheel for _, wheel in pairs])
    travel = [fit.travel_mm * step / STEPS for step in range(STEPS + 1)]
    bounds = [fit.interval(min(x, fit.travel_mm)) for x in travel]
    curve = RatioCurve(
        tuple(travel),
        tuple(fit.ratio(min(x, fit.travel_mm)) for x in travel),
        tuple(low for low, _ in bounds),
        tuple(high for _, high in bounds),
        tuple(fit.stroke(min(x, fit.travel_mm)) for x in travel),
        tuple(pairs),
    )
    share = f"{100 * abs(fit.progression):.0f}\u2009%"
    steady = abs(fit.progression) < STEADY
    kind = "stays nearly the same" if steady else f"{'falls' if fit.progression > 0 else 'rises'} by {share}"
    said = (
        f"{fit.travel_mm:.0f} mm at the wheel over {fit.stroke_mm:.1f} mm of stroke: {fit.mean:.2f} on the whole."
        f" From start to end the ratio {kind}."
    )
    return curve, said


class LeverageViewModel(ViewModel[LeverageState]):
    """Takes a survey; every entry is kept as typed."""

    station = "sag"
    watched = frozenset({"leverage_survey", "leverage_point", "unit"})

    def read(self) -> LeverageState:
        """Read the survey being typed, or the newest kept one."""
        if not self.bike_id:
            return LeverageState(blocked="Pick a bike first.")
        records = self._desk.ask(spring_records(self.bike_id))
        unit = records.sag.parts.unit("rear")
        if unit is None:
            return LeverageState(blocked="This bike has no shock, so there is no leverage to survey.")
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id, subject=unit.id)
        draft = SurveyDraft.from_json(kept.body) if kept else self._newest(records, unit)
        curve, said = self._curve(draft)
        return LeverageState(
            pairs=_with_free_line(draft.pairs),
            mounting=draft.mounting,
            unit=self._bench.units.length,
            curve=curve,
            said=said,
            has_draft=kept is not None,
            kept=tuple(
                (one.id, f"{short_date(one.made_at)}, {len(records.points[one.id])} points {one.mounting}".strip())
                for one in records.surveys
                if one.unit_id == unit.id
            ),
        )

    def _curve(self, draft: SurveyDraft) -> tuple[RatioCurve | None, str]:
        try:
            return ratio_curve(read_pairs(draft, self._bench.units))
        except NotEnoughData:
            return None, "Read at least three strokes beside full extension; more make the curve surer."
        except WorkbenchError as error:
            return None, str(error)

    def _newest(self, records: SpringRecords, unit: Unit) -> SurveyDraft:
        survey = next((one for one in records.surveys if one.unit_id == unit.id), None)
        if survey is None:
            return SurveyDraft()
        shown = self._bench.units
        pairs = tuple(
            (shown.text(point.stroke_mm, "length"), shown.text(point.wheel_mm, "length"))
            for point in records.points[survey.id]
        )
        return SurveyDraft(pairs, survey.mounting)

    def set_pair(self, line: int, column: int, text: str) -> None:
        """Keep one entry as typed."""
        pairs = [list(pair) for pair in self.state.pairs]
        if pairs[line][column] == text:
            return
        pairs[line][column] = text
        self._keep(SurveyDraft(tuple((a, b) for a, b in pairs), self.state.mounting))

    def set_mounting(self, text: str) -> None:
        """Name the mounting position the survey holds for."""
        if text != self.state.mounting:
            self._keep(replace(SurveyDraft(self.state.pairs), mounting=text))

    def keep(self) -> bool:
        """Keep the survey."""
        unit = self._desk.ask(spring_records(self.bike_id)).sag.parts.unit("rear")
        if unit is None:
            return False
        draft = SurveyDraft(self.state.pairs, self.state.mounting)
        try:
            pairs = read_pairs(draft, self._bench.units)
            ratio_curve(pairs)
        except WorkbenchError as error:
            self.refused.emit(Problem(str(error), "pairs"))
            return False
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id, subject=unit.id)
        deed = keep_survey(self.bike_id, unit.id, draft.mounting.strip(), pairs, draft_id=kept.id if kept else None)
        return self.act(f"Keep leverage survey, {len(pairs)} points", deed) is not None

    def discard(self) -> None:
        """Put what was typed aside."""
        unit = self._desk.ask(spring_records(self.bike_id)).sag.parts.unit("rear")
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id, subject=unit.id) if unit else None
        if kept is not None:
            self._desk.discard_draft(kept.id)

    def delete(self, survey_id: str) -> None:
        """Take a kept survey away."""
        self.act("Delete leverage survey", delete_survey(survey_id))

    def _keep(self, draft: SurveyDraft) -> None:
        unit = self._desk.ask(spring_records(self.bike_id)).sag.parts.unit("rear")
        if unit is None:
            return
        try:
            self._desk.keep_draft(DRAFT, draft.to_json(), bike_id=self.bike_id, subject=unit.id)
        except WorkbenchError as error:
            self.refuse(error)


def _with_free_line(pairs: tuple[tuple[str, str], ...]) -> tuple[tuple[str, str], ...]:
    filled = list(pairs)
    while len(filled) < LINES or any(text.strip() for text in filled[-1]):
        filled.append(("", ""))
    return tuple(filled)

"""The leverage survey: the shock against the wheel, read at the bench, and the mounting positions side by side."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from workbench.actions.spring import (
    SpringRecords,
    delete_survey,
    keep_survey,
    move_mounting,
    spring_records,
    state_mounting,
)
from workbench.model.errors import WorkbenchError
from workbench.model.facts import clean_text
from workbench.model.unit import LeverageSurvey, Unit, mountings, survey_in_use
from workbench.viewmodels.base import Problem, ViewModel
from workbench.viewmodels.leverage_curves import UNNAMED, fit_of, pictures, problem_of, words_of
from workbench.viewmodels.leverage_draft import USUAL_SD_MM, SurveyDraft, half_words, read_other_way, read_survey
from workbench.viewmodels.leverage_mountings import Mountings, mountings_shown, name_of
from workbench.viewmodels.lines import Lines
from workbench.viewmodels.shown import Units, short_date
from workbench.viewmodels.spring_curves import fitted

DRAFT = "leverage"
LONGEST_NAME = 40  # of a mounting


@dataclass(frozen=True, slots=True)
class LeverageState:
    """The survey sheet."""

    blocked: str = ""
    pairs: tuple[tuple[str, str], ...] = ()
    mounting: str = ""
    by_length: bool = False
    extended: str = ""
    extended_hint: str = ""
    exact_to: str = ""
    exact_hint: str = ""
    heads: tuple[str, str] = ("", "")
    ratio: Lines | None = None
    travel: Lines | None = None
    said: str = ""
    is_wrong: bool = False
    wrong_line: int | None = None
    has_draft: bool = False
    can_keep: bool = False
    looked_at: str = ""  # the kept survey whose readings are shown
    looked_words: str = ""
    mountings: Mountings = field(default_factory=Mountings)


class LeverageViewModel(ViewModel[LeverageState]):
    """Takes a survey, every entry kept as typed, and says which mounting the shock is in."""

    station = "sag"
    watched = frozenset(
        {"leverage_survey", "leverage_point", "unit", "sag_measurement", "generation", "bike", "person", "bike_rider"}
    )
    _looked_at = ""  # a kept survey picked to be looked at

    def read(self) -> LeverageState:
        """Read the survey being typed, or the kept one that is looked at."""
        if not self.bike_id:
            return LeverageState(blocked="Pick a bike first.")
        records = self._records()
        unit = records.sag.parts.unit("rear")
        if unit is None:
            return LeverageState(blocked="This bike has no shock, so there is no leverage to survey.")
        draft = self._draft(unit)
        return resolve(records, unit, draft, self._looked_at, self._bench.units)

    # Entering

    def set_pair(self, line: int, column: int, text: str) -> None:
        """Keep one entry as typed."""
        pairs = [list(pair) for pair in self.state.pairs]
        if pairs[line][column] != text:
            pairs[line][column] = text
            self._keep(replace(self._now(), pairs=tuple((a, b) for a, b in pairs)))

    def set_mounting(self, text: str) -> None:
        """Name the mounting position the survey holds for."""
        if text != self.state.mounting:
            self._keep(replace(self._now(), mounting=text))

    def set_extended(self, text: str) -> None:
        """Take the length of the shock at full extension."""
        if text != self.state.extended:
            self._keep(replace(self._now(), extended=text))

    def set_exact_to(self, text: str) -> None:
        """Take how far off a wheel reading may be."""
        if text != self.state.exact_to:
            self._keep(replace(self._now(), exact_to=text))

    def read_by(self, way: str) -> None:
        """Read the shock by its stroke or eye to eye."""
        if (way == "length") != self.state.by_length:
            self._keep(read_other_way(self._now(), self._bench.units))

    def begin_new(self) -> None:
        """Begin a survey with empty lines; kept ones stay."""
        unit = self._unit()
        if unit is not None:
            self._keep(SurveyDraft(by_length=self.state.by_length, extended=self.state.extended))

    def look_at(self, survey_id: str) -> None:
        """Look at a kept survey; a survey being typed stays a draft and is shown instead."""
        self._looked_at = survey_id
        self.refresh()

    # Deeds

    def keep(self) -> bool:
        """Keep the survey."""
        unit = self._unit()
        if unit is None:
            return False
        draft, units = self._now(), self._bench.units
        try:
            readings = read_survey(draft, units, unit.travel_mm)
            if readings.half_line is not None:
                self.refused.emit(Problem(half_words(readings.half_line), f"line_{readings.half_line}"))
                return False
            fit_of(readings, units)
        except WorkbenchError as error:
            text, line = problem_of(error)
            self.refused.emit(Problem(text, f"line_{line}" if line is not None else "pairs"))
            return False
        mounting = clean_text(draft.mounting)
        if len(mounting) > LONGEST_NAME:
            text = f"The mounting's name has {len(mounting)} characters; {LONGEST_NAME} are the most. Shorten it."
            self.refused.emit(Problem(text, "mounting"))
            return False
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id, subject=unit.id)
        self._looked_at = ""
        deed = keep_survey(
            self.bike_id,
            unit.id,
            mounting,
            readings.pairs,
            reading_sd_mm=readings.sd_mm,
            eye_to_eye_mm=readings.eye_to_eye_mm,
            draft_id=kept.id if kept else None,
        )
        survey = self.act(f"Keep leverage survey, {len(readings.pairs)} points", deed)
        if survey is not None:
            self.look_at(survey.id)
        return survey is not None

    def discard(self) -> None:
        """Put what was typed aside; the notice can take it back."""
        unit = self._unit()
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id, subject=unit.id) if unit else None
        if kept is not None:
            self.discard_draft("Leverage survey discarded", kept.id)

    def delete(self, survey_id: str) -> None:
        """Take a kept survey away."""
        self.act("Delete leverage survey", delete_survey(survey_id))

    def state_mounting(self, survey_id: str) -> None:
        """Say which mounting the shock has been in."""
        unit, survey = self._unit(), self._survey(survey_id)
        if unit is not None and survey is not None:
            self.act(f"Shock is in mounting {name_of(survey)}"[:60], state_mounting(unit.id, survey.mounting))

    def move_mounting(self, survey_id: str) -> None:
        """Say that the shock was moved to another mounting: counts and sag fall due."""
        unit, survey = self._unit(), self._survey(survey_id)
        if unit is not None and survey is not None:
            label = f"Move shock to {name_of(survey)[:24]}: counts, sag fall due"
            self.act(label, move_mounting(unit.id, survey.mounting))

    # Within

    def _records(self) -> SpringRecords:
        return self._desk.ask(spring_records(self.bike_id, self._bench.rider_id))

    def _unit(self) -> Unit | None:
        return self._records().sag.parts.unit("rear")

    def _survey(self, survey_id: str) -> LeverageSurvey | None:
        return next((one for one in self._records().surveys if one.id == survey_id), None)

    def _draft(self, unit: Unit) -> SurveyDraft | None:
        kept = self._desk.open_draft(DRAFT, bike_id=self.bike_id, subject=unit.id)
        return SurveyDraft.from_json(kept.body) if kept else None

    def _now(self) -> SurveyDraft:
        state = self.state
        return SurveyDraft(state.pairs, state.mounting, state.by_length, state.extended, state.exact_to)

    def _keep(self, draft: SurveyDraft) -> None:
        unit = self._unit()
        if unit is None:
            return
        try:
            self._desk.keep_draft(DRAFT, draft.to_json(), bike_id=self.bike_id, subject=unit.id)
        except WorkbenchError as error:
            self.refuse(error)


def resolve(
    records: SpringRecords, unit: Unit, draft: SurveyDraft | None, looked_at: str, units: Units
) -> LeverageState:
    """Lay the sheet out: the survey being typed if there is one, else the one looked at or in use."""
    looked = None if draft is not None else _looked(records, unit, looked_at)
    shown = draft or (survey_as_typed(records, unit, looked, units) if looked else _fresh(unit, units))
    said, line, readings, fit = "", None, None, None
    is_wrong = False
    try:
        readings = read_survey(shown, units, unit.travel_mm)
        fit = fit_of(readings, units)
        said = words_of(fit, units)
    except WorkbenchError as error:
        said, line = problem_of(error)
        is_wrong = bool(readings is None or line is not None)
    said = " ".join(one for one in (said, half_words(readings.half_line if readings else None)) if one)
    curves = [(shown.mounting.strip() or UNNAMED, fit, True)] if fit is not None else []
    for one in mountings(records.surveys, unit):
        if one.mounting.casefold() != shown.mounting.strip().casefold():
            curves.append((name_of(one), fitted(records, one), False))
    has_picture = bool(curves) or (readings is not None and bool(readings.pairs))
    ratio, travel = pictures(curves, readings, said, line) if has_picture else (None, None)
    way = "Shock, eye to eye" if shown.by_length else "Shock stroke"
    return LeverageState(
        pairs=shown.with_free_line(),
        mounting=shown.mounting,
        by_length=shown.by_length,
        extended=shown.extended,
        extended_hint="the longest of the lines, at wheel travel 0",
        exact_to=shown.exact_to,
        exact_hint=units.text(USUAL_SD_MM, "length"),
        heads=(f"{way}, {units.length}", f"Wheel travel, {units.length}"),
        ratio=ratio if curves else None,
        travel=travel,
        said=said,
        is_wrong=is_wrong,
        wrong_line=line,
        has_draft=draft is not None,
        can_keep=draft is not None or looked is None,
        looked_at=looked.id if looked else "",
        looked_words=f"{name_of(looked)}: read {short_date(looked.made_at)}" if looked else "",
        mountings=mountings_shown(records, unit, looked.id if looked else "", units),
    )


def _looked(records: SpringRecords, unit: Unit, looked_at: str) -> LeverageSurvey | None:
    picked = next((one for one in records.surveys if one.id == looked_at and one.unit_id == unit.id), None)
    if picked is not None:
        return picked
    in_use = survey_in_use(records.surveys, unit)
    found = mountings(records.surveys, unit)
    return in_use or (found[0] if found else None)


def _fresh(unit: Unit, units: Units) -> SurveyDraft:
    return SurveyDraft(extended=units.text(unit.eye_to_eye_mm, "length") if unit.eye_to_eye_mm else "")


def survey_as_typed(records: SpringRecords, unit: Unit, survey: LeverageSurvey, units: Units) -> SurveyDraft:
    """Give a kept survey as it would have been typed."""
    pairs = tuple(
        (units.text(point.stroke_mm, "length"), units.text(point.wheel_mm, "length"))
        for point in records.points[survey.id]
    )
    exact = "" if survey.reading_sd_mm == USUAL_SD_MM else units.text(survey.reading_sd_mm, "length")
    return replace(_fresh(unit, units), pairs=pairs, mounting=survey.mounting, exact_to=exact)

"""Springs in full: what the curve of an end is drawn from, and leverage surveys."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from workbench.actions.garage import start_generation
from workbench.actions.ids import new_id
from workbench.actions.sag import SagRecords, sag_records
from workbench.library.gate import Gate, Reader
from workbench.model.unit import Generation, LeveragePoint, LeverageSurvey, Unit


@dataclass(frozen=True, slots=True)
class SpringRecords:
    """What is known of a bike's springs: sag measurements, and leverage surveys with their points, newest first."""

    sag: SagRecords
    surveys: tuple[LeverageSurvey, ...]
    points: dict[str, tuple[LeveragePoint, ...]]


def spring_records(bike_id: str, rider_id: str | None = None) -> Callable[[Reader], SpringRecords]:
    """Give the query for everything known about the springs of a bike with one rider."""

    def query(reader: Reader) -> SpringRecords:
        surveys = reader.find(LeverageSurvey, bike_id=bike_id, order_by=("-made_at",))
        points = {one.id: reader.find(LeveragePoint, survey_id=one.id, order_by=("stroke_mm",)) for one in surveys}
        return SpringRecords(sag_records(bike_id, rider_id)(reader), surveys, points)

    return query


def keep_survey(
    bike_id: str,
    unit_id: str,
    mounting: str,
    pairs: Sequence[tuple[float, float]],
    *,
    reading_sd_mm: float = 1.0,
    eye_to_eye_mm: float | None = None,
    draft_id: str | None = None,
) -> Callable[[Gate], LeverageSurvey]:
    """Give the deed that keeps a survey of shock stroke against wheel travel, and the shock's length if it was read."""

    def deed(gate: Gate) -> LeverageSurvey:
        unit = gate.need(Unit, unit_id)
        if eye_to_eye_mm is not None and unit.eye_to_eye_mm != eye_to_eye_mm:
            gate.put(replace(unit, eye_to_eye_mm=eye_to_eye_mm))
        survey = LeverageSurvey(new_id(), bike_id, unit_id, mounting, reading_sd_mm, gate.now)
        gate.put(survey, *(LeveragePoint(new_id(), survey.id, stroke, wheel) for stroke, wheel in pairs))
        if draft_id is not None:
            gate.remove_draft(draft_id)
        return survey

    return deed


def state_mounting(unit_id: str, mounting: str) -> Callable[[Gate], Unit]:
    """Give the deed that says which mounting a unit has been in all along; nothing moved, so nothing falls due."""

    def deed(gate: Gate) -> Unit:
        unit = replace(gate.need(Unit, unit_id), mounting=mounting)
        gate.put(unit)
        return unit

    return deed


def move_mounting(unit_id: str, mounting: str) -> Callable[[Gate], Generation]:
    """Give the deed that moves a unit to another mounting: new hardware, so counts and sag fall due."""

    def deed(gate: Gate) -> Generation:
        generation = start_generation(unit_id, "mount", mounting)(gate)
        state_mounting(unit_id, mounting)(gate)
        return generation

    return deed


def delete_survey(survey_id: str) -> Callable[[Gate], None]:
    """Give the deed that takes a survey away, its points with it."""

    def deed(gate: Gate) -> None:
        gate.delete(LeverageSurvey, survey_id)

    return deed

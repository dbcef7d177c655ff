"""The tables of the job, one per record type; columns follow the records' fields."""

from __future__ import annotations

from sqlalchemy import MetaData

from workbench.library.schema import NAMING, Ref, record_table
from workbench.model.adjuster import COUNTINGS, Adjuster, RangeCount
from workbench.model.bike import Bike, BikeRider, Photo, Skip, Tyre
from workbench.model.person import Person
from workbench.model.ride import BlindPlan, Course, Overrule, Run, RunRating, RunSymptom, Session
from workbench.model.sag import SagMeasurement, SagReading, SagTarget
from workbench.model.service import CardIssue, CheckIn, CheckItem, RidingHours, ServicePart
from workbench.model.setting import OnBike, Setup, SetupValue
from workbench.model.unit import Generation, LeveragePoint, LeverageSurvey, Pump, Spring, Unit, Valve

schema = MetaData(naming_convention=NAMING)

_BIKE = Ref("bike", owner=True)
_UNIT = Ref("unit", owner=True)
_PERSON = Ref("person")
_ENDS = ("front", "rear")

# People and the garage
record_table(schema, "person", Person)
record_table(schema, "bike", Bike, bike="id")
record_table(
    schema,
    "bike_rider",
    BikeRider,
    refs={"bike_id": _BIKE, "person_id": _PERSON},
    unique=(("bike_id", "person_id"),),
    bike="bike_id",
)
record_table(schema, "tyre", Tyre, refs={"bike_id": _BIKE}, checks={"end": _ENDS}, bike="bike_id")
record_table(schema, "photo", Photo, refs={"bike_id": _BIKE}, bike="bike_id")
record_table(schema, "skip", Skip, refs={"bike_id": _BIKE, "person_id": _PERSON}, bike="bike_id")

# Suspension units
record_table(
    schema, "unit", Unit, refs={"bike_id": _BIKE}, checks={"end": _ENDS, "kind": ("fork", "shock")}, bike="bike_id"
)
record_table(schema, "generation", Generation, refs={"unit_id": _UNIT}, bike=("unit_id",))
record_table(schema, "valve", Valve, refs={"unit_id": _UNIT}, bike=("unit_id",))
record_table(schema, "spring", Spring, refs={"unit_id": _UNIT}, bike=("unit_id",))
record_table(schema, "pump", Pump)
record_table(schema, "leverage_survey", LeverageSurvey, refs={"bike_id": _BIKE, "unit_id": _UNIT}, bike="bike_id")
record_table(
    schema,
    "leverage_point",
    LeveragePoint,
    refs={"survey_id": Ref("leverage_survey", owner=True)},
    bike=("survey_id",),
)

# Adjusters and what is on the bike
record_table(
    schema,
    "adjuster",
    Adjuster,
    refs={"unit_id": _UNIT, "depends_on": Ref("adjuster")},
    checks={"counting": tuple(COUNTINGS)},
    bike=("unit_id",),
)
record_table(
    schema,
    "range_count",
    RangeCount,
    refs={
        "adjuster_id": Ref("adjuster", owner=True),
        "generation_id": Ref("generation"),
        "person_id": _PERSON,
    },
    bike=("adjuster_id", "unit_id"),
)
record_table(
    schema,
    "on_bike",
    OnBike,
    refs={"bike_id": _BIKE, "range_id": Ref("range_count"), "pump_id": Ref("pump"), "person_id": _PERSON},
    unique=(("bike_id", "sequence"),),
    bike="bike_id",
)
record_table(
    schema,
    "setup",
    Setup,
    refs={"bike_id": _BIKE, "rider_id": _PERSON, "parent_id": Ref("setup"), "person_id": _PERSON},
    unique=(("bike_id", "number"),),
    bike="bike_id",
)
record_table(
    schema,
    "setup_value",
    SetupValue,
    refs={"setup_id": Ref("setup", owner=True), "range_id": Ref("range_count")},
    unique=(("setup_id", "item", "subject_id"),),
    bike=("setup_id",),
)

# Sag
record_table(
    schema,
    "sag_target",
    SagTarget,
    refs={"bike_id": _BIKE, "rider_id": _PERSON, "unit_id": _UNIT},
    unique=(("rider_id", "unit_id"),),
    bike="bike_id",
)
record_table(
    schema,
    "sag_measurement",
    SagMeasurement,
    refs={
        "bike_id": _BIKE,
        "rider_id": _PERSON,
        "unit_id": _UNIT,
        "generation_id": Ref("generation"),
        "pump_id": Ref("pump"),
        "person_id": _PERSON,
    },
    bike="bike_id",
)
record_table(
    schema,
    "sag_reading",
    SagReading,
    refs={"measurement_id": Ref("sag_measurement", owner=True)},
    bike=("measurement_id",),
)

# Riding
record_table(schema, "course", Course)
record_table(
    schema,
    "session",
    Session,
    refs={
        "bike_id": _BIKE,
        "rider_id": _PERSON,
        "course_id": Ref("course"),
        "start_setup_id": Ref("setup"),
        "person_id": _PERSON,
    },
    bike="bike_id",
)
record_table(
    schema,
    "run",
    Run,
    refs={
        "session_id": Ref("session", owner=True),
        "setup_id": Ref("setup"),
        "direction_of": Ref("adjuster"),
        "person_id": _PERSON,
    },
    unique=(("session_id", "number"),),
    bike=("session_id",),
)
record_table(schema, "run_rating", RunRating, refs={"run_id": Ref("run", owner=True)}, bike=("run_id", "session_id"))
record_table(schema, "run_symptom", RunSymptom, refs={"run_id": Ref("run", owner=True)}, bike=("run_id", "session_id"))
record_table(
    schema,
    "overrule",
    Overrule,
    refs={"session_id": Ref("session", owner=True), "adjuster_id": Ref("adjuster")},
    bike=("session_id",),
)
record_table(
    schema,
    "blind_plan",
    BlindPlan,
    refs={"session_id": Ref("session", owner=True)},
    bike=("session_id",),
    final=("revealed_at",),
)

# Check-in, service, cards
record_table(schema, "check_in", CheckIn, refs={"bike_id": _BIKE, "person_id": _PERSON}, bike="bike_id")
record_table(
    schema,
    "check_item",
    CheckItem,
    refs={"checkin_id": Ref("check_in", owner=True), "photo_id": Ref("photo")},
    bike=("checkin_id",),
)
record_table(schema, "service_part", ServicePart, refs={"bike_id": _BIKE, "unit_id": Ref("unit")}, bike="bike_id")
record_table(schema, "riding_hours", RidingHours, refs={"bike_id": _BIKE}, bike="bike_id")
record_table(
    schema,
    "card_issue",
    CardIssue,
    refs={"bike_id": _BIKE, "rider_id": _PERSON, "setup_id": Ref("setup"), "person_id": _PERSON},
    bike="bike_id",
)

"""Pumps, hoses, ways of reading and a heavier rider on the sag sheet; without a window."""

from __future__ import annotations

from tests.viewmodels.test_sag import measure, ready, records, sheet
from workbench.actions.edit import edit
from workbench.actions.job import job_records
from workbench.model.bike import Station, StationState
from workbench.model.job import job_marks
from workbench.model.person import Person
from workbench.viewmodels.sag_draft import Stage
from workbench.viewmodels.sag_pump import LEARN, NO_PUMP


def reread(view_model, pressure):
    """Go back to the spring and put in what the gauge shows on attaching."""
    view_model.go_to_stage(Stage.SPRING)
    view_model.set_field("pressure_how", "as_attached")
    view_model.set_text("pressure_kpa", pressure)
    assert view_model.next()
    view_model.go_to_stage(Stage.SPRING)
    return view_model.state.guide.hose


def test_a_pump_is_named_once_and_goes_with_the_measurement(desk):
    bike, view_model, _ = ready(desk)
    assert view_model.add_pump("Long hose")
    measure(view_model, "80 psi", "31", "32")
    view_model.keep()
    (pump,) = records(desk, bike).pumps
    assert records(desk, bike).measurements[-1].pump_id == pump.id
    assert view_model.state.guide.pumps == (("", "Pump not named"), (pump.id, "Long hose"))


def test_without_a_pump_a_leak_cannot_be_told_from_a_hose(desk):
    _, view_model, _ = ready(desk)
    assert reread(view_model, "80 psi") == NO_PUMP


def test_a_pump_attached_again_is_explained_by_its_hose_and_only_the_rest_is_a_leak(desk):
    bike, view_model, _ = ready(desk, end="rear")
    view_model.add_pump("Long hose")
    view_model.set_text("pressure_kpa", "180 psi")
    view_model.set_text("again_kpa", "173 psi")
    assert view_model.next()
    line = records(desk, bike).pressures[-1]
    assert (round(line.value / 6.894757), line.how) == (173, "as_attached")
    assert view_model.state.guide.draft.again_kpa is None
    view_model.go_to_stage(Stage.SPRING)
    said = view_model.state.guide.hose
    assert said.startswith("This hose takes 3.9"), "a reading is not set against itself"
    said = reread(view_model, "166 psi")
    assert "no sign of a leak" in said
    assert "learned from two attachments" in said
    assert "This hose takes 3.9" in said
    assert "a leak is suspected" in reread(view_model, "140 psi")


def test_a_hose_that_was_not_learned_says_how_to_learn_it(desk):
    _, view_model, _ = ready(desk)
    view_model.add_pump("Long hose")
    assert LEARN in reread(view_model, "80 psi")


def test_a_pump_without_a_usable_name_is_said_at_its_field(desk):
    _, view_model, refused = ready(desk)
    assert not view_model.add_pump("x" * 10_000)
    assert refused[-1].field == "pump"


# Ways of reading


def test_a_way_that_scatters_more_widens_what_is_expected_and_asks_for_a_third(desk):
    width = {}
    for method in ("helper", "length"):
        _, view_model, _ = ready(desk, name=f"Larch {method}")
        view_model.go_to_stage(Stage.PREPARE)
        view_model.set_field("method", method)
        assert view_model.next()
        measure(view_model, "80 psi", "40", "40.5")
        guide = view_model.state.guide
        width[method] = guide.advice.predicted_high_mm - guide.advice.predicted_low_mm
        assert ("A third makes it surer" in guide.agreement) == (method == "length")
    assert width["length"] > width["helper"]


# The rider


def test_a_rider_two_kilos_heavier_is_asked_to_measure_again(desk):
    bike, view_model, _ = ready(desk, mass_kg=84.5)
    measure(view_model, "80 psi", "31", "32")
    view_model.keep()
    rider = records(desk, bike).rider

    def weigh(mass_kg):
        desk.do("Mass", edit(Person, rider.id, "mass_kg", mass_kg), bike_id=bike.id)
        model, _ = sheet(desk, bike.id)
        return model.state.ends[0].notes

    assert "measure again" not in weigh(86.0)
    assert "2\u2009kg heavier than then: sag will be deeper, measure again" in weigh(86.5)
    assert "lighter" in weigh(80.0)
    mark = next(one for one in job_marks(desk.ask(job_records(bike.id))) if one.station == Station.SAG)
    assert mark.state in (StationState.DUE, StationState.NOW)

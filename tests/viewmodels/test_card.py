"""The card's sheet without a window."""

from __future__ import annotations

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike, a_run, a_session
from tests.viewmodels.sheets import shown
from workbench.actions.ride import change_settings, ride_records
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound
from workbench.viewmodels.card import CardState, CardViewModel


def two_setups(desk, **about):
    """A bike with setup no. 2 ridden and no. 1 on it again."""
    bike = a_counted_bike(desk, **about)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    a_run(desk, session, liking=5)
    records = desk.ask(ride_records(bike.id))
    rebound = records.parts.adjusters[1]
    for position in (9.0, 6.0):
        wanted = {("adjuster", rebound.id): position}
        desk.do("Change", change_settings(bike.id, records.parts.riders[0].id, wanted), bike_id=bike.id)
    return bike


def test_a_bike_without_a_setup_has_no_card(desk):
    assert shown(CardViewModel, desk, a_bike(desk).id)[0].state == CardState()


def test_the_setup_on_the_bike_comes_first_and_any_other_can_be_picked(desk):
    view_model, _ = shown(CardViewModel, desk, two_setups(desk).id)
    assert [words for _, words in view_model.state.setups] == ["no. 2", "no. 1"]
    assert view_model.state.card.subtitle == "Setup no. 1"
    view_model.pick(view_model.state.setups[0][0])
    assert view_model.state.card.subtitle == "Setup no. 2"


def test_a_name_is_kept_shown_and_taken_back(desk):
    view_model, heard = shown(CardViewModel, desk, two_setups(desk).id)
    view_model.name("wet <b>")
    assert view_model.state.card.subtitle == "Setup no. 1 “wet <b>”"
    view_model.name("wet <b>")
    assert heard.labels == ["Name setup wet <b>"], "the same name again is no deed"
    desk.undo()
    assert view_model.state.card.subtitle == "Setup no. 1"


def test_a_name_too_long_is_refused_and_changes_nothing(desk):
    view_model, heard = shown(CardViewModel, desk, two_setups(desk).id)
    view_model.name("x" * 10_000)
    assert "Name of the setup" in heard.problems[-1].text
    assert view_model.state.setup_name == ""


def test_handing_over_is_said_and_can_be_taken_back(desk):
    view_model, heard = shown(CardViewModel, desk, two_setups(desk).id)
    assert view_model.state.handed_over == ""
    view_model.note_handed_over()
    assert view_model.state.handed_over.startswith("Handed over 14 May 2031")
    assert heard.labels == ["Hand over the card"]
    desk.undo()
    assert view_model.state.handed_over == ""


@pytest.mark.parametrize(
    ("name", "file_name"),
    [
        ("Larch 150", "larch-150-setup-1.pdf"),
        ("../../etc", "etc-setup-1.pdf"),
        ("🚵", "bike-setup-1.pdf"),
        ("דוד", "דוד-setup-1.pdf"),
        ("a/b:c", "a-b-c-setup-1.pdf"),
    ],
)
def test_the_file_name_offered_is_one_every_system_takes(desk, name, file_name):
    view_model, _ = shown(CardViewModel, desk, two_setups(desk, name=name).id)
    assert view_model.state.file_name == file_name


def test_friction_found_while_measuring_sag_is_on_the_list_to_attend_to(desk):
    bike = two_setups(desk)
    records = desk.ask(sag_records(bike.id))
    fork = records.parts.units[0]

    def keep(readings):
        one = SagRound(readings, "standing", "helper", desk.now(), 520.0, settled=("above", "below"))
        deed = keep_sag(bike.id, records.rider.id, fork.id, (one,), Band(0.18, 0.22, "own"))
        desk.do("Keep sag", deed, bike_id=bike.id)
        card = shown(CardViewModel, desk, bike.id)[0].state.card
        return {line.label: line for section in card.sections for line in section.lines}

    assert "Friction of the fork" not in keep((30.0, 30.5))
    found = keep((22.0, 38.0))["Friction of the fork"]
    assert (found.found, found.left) == ("Attend", "to be done")
    assert found.remark.startswith("Friction about ")


def test_the_paper_is_a_choice_that_is_kept_and_nothing_unknown_is_taken(desk):
    bike = two_setups(desk)
    view_model, heard = shown(CardViewModel, desk, bike.id)
    assert view_model.state.paper == "A4"
    view_model.pick_paper("A5")
    view_model.pick_paper("Napkin")
    assert shown(CardViewModel, desk, bike.id)[0].state.paper == "A5"
    assert heard.labels == [], "a choice of paper is no deed to take back"

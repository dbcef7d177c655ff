"""The bike's own sheet on screen: facts are kept when their field is left."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtGui import QImage

from tests.fixtures import a_bike, everything
from tests.ui.driver import Driver, Key
from workbench.actions.garage_parts import more_parts
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.ui.garage.page import GaragePage
from workbench.viewmodels.garage import GarageViewModel


@pytest.fixture
def bike(desk):
    return a_bike(desk)


@pytest.fixture
def driver(qtbot, desk, bike):
    return Driver(qtbot, desk, GaragePage, GarageViewModel, bike.id)


def test_a_fact_is_kept_when_its_field_is_left_by_tab(desk, bike, driver):
    driver.type_into("facts_fork_travel_mm_entry", "6.3 in", then=Key.Key_Tab)
    assert desk.ask(bike_parts(bike.id)).unit("front").travel_mm == pytest.approx(160.02)
    assert desk.undo_label() == "Fork: travel"


def test_a_name_of_ten_thousand_characters_is_refused_at_its_field_and_nothing_is_lost(desk, driver):
    before = everything(desk)
    name = driver.find("facts_bike_name_entry")
    name.setFocus()
    name.selectAll()
    name.insert("x" * 10_000)
    name.setModified(True)
    driver.keys(Key.Key_Return)
    assert everything(desk) == before
    assert "Up to 200 characters: this has 10000." in driver.words()
    assert name.text() == "x" * 10_000


@pytest.mark.parametrize("text", ["abc", "nan", "-5", "1e9", "70 psi"])
def test_a_value_that_cannot_be_used_stays_as_typed_with_a_sentence_under_it(desk, driver, text):
    before = everything(desk)
    driver.type_into("facts_fork_travel_mm_entry", text, then=Key.Key_Tab)
    assert everything(desk) == before
    assert driver.find("facts_fork_travel_mm_entry").text() == text
    assert driver.find("facts_fork_travel_mm_said").text()


@pytest.mark.parametrize("name", ["<b>Larch</b>", "<img src=x>", "דוד", "🚵 150", "a & b"])
def test_a_name_is_shown_as_typed(qtbot, desk, name):
    bike = a_bike(desk, name=name, rider=f"{name} Jr")
    driver = Driver(qtbot, desk, GaragePage, GarageViewModel, bike.id)
    assert driver.find("facts_bike_name_entry").text() == name
    assert f"{name} Jr" in driver.words()


def test_a_rider_is_added_and_another_made_the_main_one(desk, bike, driver):
    driver.type_into("new_rider", "J. Okoye", then=Key.Key_Return)
    assert [one.name for one in desk.ask(bike_parts(bike.id)).riders] == ["M. Anders", "J. Okoye"]
    assert driver.find("new_rider").text() == ""
    driver.press("rider_bench_2")
    assert driver.bench.rider_id == desk.ask(bike_parts(bike.id)).riders[1].id
    driver.press("rider_main_2")
    assert desk.ask(bike_parts(bike.id)).riders[0].name == "J. Okoye"


def test_the_verb_leads_to_the_station_that_is_due(driver):
    assert driver.focused() == "garage_next"
    driver.keys(Key.Key_Space)
    assert driver.asked_for == ["checkin"]


def test_facts_changed_elsewhere_are_shown_at_once(desk, bike, driver):
    desk.do("Add", add_person("S. Tamm"))
    assert "S. Tamm" in [driver.find("known_rider").itemText(place) for place in range(2)]


def test_the_spring_curve_is_one_key_away_from_the_facts_of_each_end(desk, bike, driver):
    asked = []
    driver.page.station_requested.connect(asked.append)
    driver.find("spring_shock").click()
    assert asked == ["spring"]
    assert desk.setting(f"spring/end/{bike.id}", "") == "rear"


def test_valves_say_what_they_are_for_and_a_gas_charge_comes_with_its_warning(desk, bike, driver):
    driver.type_into("valve_main_fork_entry", "left leg, top", then=Key.Key_Tab)
    driver.find("valve_gas_shock_entry").click()
    assert "do not touch" in driver.words().lower()
    units = desk.ask(bike_parts(bike.id)).units
    kept = desk.ask(more_parts(bike.id)).valves
    assert {(one.unit_id, one.purpose, one.place) for one in kept} == {
        (units[0].id, "main", "left leg, top"),
        (units[1].id, "damper_gas", ""),
    }


def test_a_picture_is_shown_small_removed_and_a_missing_file_is_said(desk, bike, driver, tmp_path):
    image = QImage(640, 480, QImage.Format.Format_RGB32)
    image.fill(0x336699)
    image.save(str(tmp_path / "crown.png"))
    assert driver.model.add_picture(tmp_path / "crown.png")
    shown = driver.find("photo_1")
    assert shown.pixmap().width() == 200
    assert shown.grab().toImage().pixelColor(100, 75).name() == "#336699"
    assert not driver.model.add_picture(tmp_path / "nowhere.png")
    (tmp_path / "words.png").write_text("no picture")
    assert not driver.model.add_picture(tmp_path / "words.png")
    assert "is no picture" in driver.problems[-1]
    (photo,) = desk.ask(more_parts(bike.id)).photos
    (Path(desk.library_path).parent / "photos" / photo.sha256).unlink()
    again = Driver(driver.bot, desk, GaragePage, GarageViewModel, bike.id)
    assert "missing" in again.find("photo_missing_1").text()
    again.press("photo_remove_1")
    assert desk.ask(more_parts(bike.id)).photos == ()
    desk.undo()
    assert desk.ask(more_parts(bike.id)).photos == (photo,)


def test_hardware_is_listed_with_what_was_done_and_what_falls_due(desk, bike, driver):
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    driver.model.new_hardware(fork.id, "oil")
    said = driver.words()
    assert "No. 2" in said
    assert "Due on this hardware: count low-speed compression, low-speed rebound; measure front sag." in said


def test_a_duplicate_comes_to_the_bench_and_a_template_does_not(desk, bike, driver):
    driver.press("garage_template")
    assert driver.bench.bike_id == bike.id
    driver.press("garage_duplicate")
    assert driver.bench.bike_id != bike.id
    assert driver.find("facts_bike_name_entry").text() == "Larch 150 (copy)"


def test_a_fork_is_exchanged_by_keys_alone(desk, bike, driver):
    driver.tab_to("fit_front")
    driver.keys(Key.Key_Space)
    assert "stays on record and is not compared" in driver.words()
    assert "maker's manual and a qualified mechanic" in driver.words()
    driver.type_into("fit_form_travel_entry", "160", then=Key.Key_Tab)
    driver.type_into("fit_form_name_entry", "Tern 160", then=Key.Key_Tab)
    driver.tab_to("fit_take")
    driver.keys(Key.Key_Space)
    fork = desk.ask(bike_parts(bike.id)).unit("front")
    assert (fork.name, fork.travel_mm) == ("Tern 160", 160.0)
    assert driver.focused() == "fit_front"
    assert not driver.is_shown("fit_take")


def test_the_menu_of_a_unit_leads_to_where_another_one_is_fitted(driver):
    menu = driver.find("hardware_shock").menu()
    line = next(one for one in menu.actions() if one.text() == "Another shock, or none ...")
    line.trigger()
    assert driver.find("fit_title").text() == "Another shock, or none"
    driver.bot.waitUntil(lambda: not driver.find("fit_title").visibleRegion().isEmpty())


def test_what_was_to_be_fitted_on_one_bike_is_not_fitted_on_the_next(desk, driver):
    driver.press("fit_front")
    assert driver.is_shown("fit_take")
    driver.bench.put_bike(a_bike(desk, name="Fell 130").id)
    assert not driver.is_shown("fit_take")

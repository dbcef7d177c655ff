"""The sag page, by mouse and by keys."""

from __future__ import annotations

import subprocess
import sys

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QLabel, QLineEdit

from tests.fixtures import a_bike
from workbench.actions.garage import NewBike, add_bike
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound
from workbench.ui.parts.theme import Theme, apply_theme, current
from workbench.ui.sag.page import SagPage
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.sag import SagViewModel


@pytest.fixture(autouse=True)
def themed(qapp):
    if current() != Theme() or not qapp.styleSheet():
        apply_theme(qapp, Theme())


def open_page(qtbot, desk, bike):
    bench = Bench(desk)
    bench.put_bike(bike.id)
    page = SagPage(SagViewModel(desk, bench))
    qtbot.addWidget(page)
    page.resize(960, 560)
    page.show()
    qtbot.waitExposed(page)
    page.start()
    return page


def find(page, kind, name):
    found = page.findChild(kind, name)
    assert found is not None, name
    return found


def click(qtbot, page, name):
    QApplication.processEvents()
    button = find(page, QAbstractButton, name)
    assert button.isVisibleTo(page), name
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def focused(page):
    widget = page.window().focusWidget()
    return widget.objectName() if widget else ""


def type_into(qtbot, page, name, text):
    line = find(page, QLineEdit, f"{name}_entry")
    line.setFocus()
    qtbot.keyClicks(line, text)
    return line


def to_spring(qtbot, page):
    click(qtbot, page, "sag_front_next")
    page.guide.stages[0].as_is.box.click()
    click(qtbot, page, "sag_guide_verb")


def test_the_front_is_measured_and_kept_by_mouse_and_keys(qtbot, desk):
    bike = a_bike(desk)
    page = open_page(qtbot, desk, bike)
    to_spring(qtbot, page)
    assert focused(page) == "sag_pressure_kpa_entry"
    type_into(qtbot, page, "sag_pressure_kpa", "70")
    click(qtbot, page, "sag_guide_verb")
    assert focused(page) == "sag_reading_entry"
    for text in ("30", "30.5"):
        qtbot.keyClicks(page.window().focusWidget(), text)
        qtbot.keyClick(page.window().focusWidget(), Qt.Key.Key_Return)
    assert find(page, QLineEdit, "sag_reading_entry").text() == ""
    click(qtbot, page, "sag_guide_verb")
    verb = find(page, QAbstractButton, "sag_guide_verb")
    assert verb.words().startswith("Keep front sag 30.2")
    click(qtbot, page, "sag_guide_verb")
    (kept,) = desk.ask(sag_records(bike.id)).measurements
    assert kept.sag_mm == 30.25
    assert "Kept: 30.2" in page.guide.stages[4]._kept.text()


def test_a_problem_is_said_at_its_field_which_takes_the_focus(qtbot, desk):
    page = open_page(qtbot, desk, a_bike(desk))
    to_spring(qtbot, page)
    find(page, QAbstractButton, "sag_guide_verb").setFocus()
    qtbot.keyClick(find(page, QAbstractButton, "sag_guide_verb"), Qt.Key.Key_Space)
    assert focused(page) == "sag_pressure_kpa_entry"
    assert "advice starts from it" in page.guide.stages[1].entries["pressure_kpa"].field.problem()


def test_half_typed_text_stands_there_again_after_the_page_is_made_anew(qtbot, desk):
    bike = a_bike(desk)
    first = open_page(qtbot, desk, bike)
    to_spring(qtbot, first)
    type_into(qtbot, first, "sag_pressure_kpa", "70,5 p")
    second = open_page(qtbot, desk, bike)
    assert find(second, QLineEdit, "sag_pressure_kpa_entry").text() == "70,5 p"
    assert second.guide.stage() == 1


def test_a_typed_reading_stands_there_again_too(qtbot, desk):
    bike = a_bike(desk)
    first = open_page(qtbot, desk, bike)
    to_spring(qtbot, first)
    type_into(qtbot, first, "sag_pressure_kpa", "70")
    click(qtbot, first, "sag_guide_verb")
    type_into(qtbot, first, "sag_reading", "3")
    second = open_page(qtbot, desk, bike)
    assert find(second, QLineEdit, "sag_reading_entry").text() == "3"


def test_a_letter_typed_does_not_lose_the_caret_or_the_text(qtbot, desk):
    page = open_page(qtbot, desk, a_bike(desk))
    to_spring(qtbot, page)
    line = type_into(qtbot, page, "sag_pressure_kpa", "72 psi")
    assert line.text() == "72 psi"
    assert focused(page) == "sag_pressure_kpa_entry"
    assert page._view_model.state.guide.draft.text("pressure_kpa").text == "72 psi"


def test_the_link_asks_for_the_adjusters(qtbot, desk):
    page = open_page(qtbot, desk, a_bike(desk))
    click(qtbot, page, "sag_front_next")
    with qtbot.waitSignal(page.station_requested) as asked:
        click(qtbot, page, "sag_count_link")
    assert asked.args == ["adjusters"]


def test_one_tick_puts_one_adjuster_back(qtbot, desk):
    page = open_page(qtbot, desk, a_bike(desk))
    click(qtbot, page, "sag_front_next")
    for place in (1, 2):
        type_into(qtbot, page, f"sag_place_{place}", "6")
        click(qtbot, page, f"sag_keep_place_{place}")
    click(qtbot, page, "sag_all_open")
    click(qtbot, page, "sag_both_ends")
    assert "Put back before riding" in page.overview._put_back.text()
    click(qtbot, page, "sag_put_back_open")
    click(qtbot, page, "sag_put_back_0")
    assert len(page._view_model.state.guide.put_back) == 1


def test_hostile_words_are_shown_as_typed(qtbot, desk):
    name = "<b>x</b> \u202e" + "w" * 180
    page = open_page(qtbot, desk, a_bike(desk, rider=name[:150]))
    assert "<b>x</b>" in page.overview.subtitle.text()
    assert page.overview.subtitle.textFormat() == Qt.TextFormat.PlainText


@pytest.mark.parametrize("stage", [1, 2, 3, 4, 5])
def test_every_control_has_names_and_can_be_hit(qtbot, desk, stage):
    page = open_page(qtbot, desk, a_bike(desk))
    to_spring(qtbot, page)
    type_into(qtbot, page, "sag_pressure_kpa", "70")
    click(qtbot, page, "sag_guide_verb")
    for text in ("37", "38"):
        qtbot.keyClicks(page.window().focusWidget(), text)
        qtbot.keyClick(page.window().focusWidget(), Qt.Key.Key_Return)
    page._view_model.go_to_stage(stage)
    for control in (*page.findChildren(QAbstractButton), *page.findChildren(QLineEdit)):
        if control.isVisibleTo(page) and control.focusPolicy() != Qt.FocusPolicy.NoFocus:
            assert control.objectName(), control
            assert control.accessibleName(), control.objectName()
            assert control.height() >= 44, (control.objectName(), control.height())


def test_the_page_is_imported_without_numpy():
    code = "import sys, workbench.ui.sag.page, workbench.viewmodels.sag; print('numpy' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_by_keys_alone_from_the_first_page_to_everything_put_back(qtbot, desk):
    bike = a_bike(desk, layout="hardtail")
    page = open_page(qtbot, desk, bike)

    def press(key, text=""):
        QApplication.processEvents()
        widget = page.window().focusWidget()
        assert widget is not None
        assert widget.isVisibleTo(page), widget.objectName()
        if text:
            qtbot.keyClicks(widget, text)
        qtbot.keyClick(widget, key)

    press(Qt.Key.Key_Space)
    for place in ("1", "2"):
        assert focused(page) == f"sag_place_{place}_entry"
        press(Qt.Key.Key_Return, "6")
    assert focused(page) == "sag_all_open"
    press(Qt.Key.Key_Space)
    assert focused(page) == "sag_guide_verb"
    press(Qt.Key.Key_Space)
    assert focused(page) == "sag_pressure_kpa_entry"
    press(Qt.Key.Key_Return, "80")
    for text in ("26", "26.5"):
        assert focused(page) == "sag_reading_entry"
        press(Qt.Key.Key_Return, text)
    press(Qt.Key.Key_Return)
    assert find(page, QAbstractButton, "sag_guide_verb").words().startswith("Keep front sag")
    press(Qt.Key.Key_Space)
    for _ in range(2):
        assert focused(page) == "sag_put_back_0"
        press(Qt.Key.Key_Space)
    assert focused(page) == "sag_guide_verb"
    assert page._view_model.state.guide.put_back == ()
    press(Qt.Key.Key_Space)
    assert page._view_model.state.guide is None
    assert not page._view_model.state.ends[0].is_due


def test_preload_of_a_coil_is_typed_in_turns_and_stands_in_millimetres_beside_it(qtbot, desk):
    bike = a_bike(desk, layout="air_coil", shock_stroke_mm=57.5)
    page = open_page(qtbot, desk, bike)
    page.view_model.start("rear")
    page.view_model.set_field("as_they_stand", True)
    page.view_model.next()
    QApplication.processEvents()
    turns, length = (find(page, QLineEdit, f"sag_preload_{name}_entry") for name in ("turns", "mm"))
    turns.setFocus()
    qtbot.keyClicks(turns, "1 1/2")
    assert length.text() == "2.25 mm"
    assert turns.text() == "1 1/2"
    length.setFocus()
    length.selectAll()
    qtbot.keyClicks(length, "3")
    assert turns.text() == "2"
    qtbot.keyClick(length, Qt.Key.Key_Tab)
    assert page.view_model.state.guide.draft.preload_mm == 3.0
    turns.setFocus()
    turns.selectAll()
    qtbot.keyClick(turns, Qt.Key.Key_Delete)
    assert length.text() == ""


def test_turns_that_cannot_be_are_said_at_their_field_and_stay(qtbot, desk):
    bike = a_bike(desk, layout="air_coil", shock_stroke_mm=57.5)
    page = open_page(qtbot, desk, bike)
    page.view_model.start("rear")
    page.view_model.set_field("as_they_stand", True)
    page.view_model.next()
    QApplication.processEvents()
    turns = find(page, QLineEdit, "sag_preload_turns_entry")
    turns.setFocus()
    qtbot.keyClicks(turns, "many")
    qtbot.keyClick(turns, Qt.Key.Key_Tab)
    assert turns.text() == "many"
    assert "number in turns" in turns.accessibleDescription()
    find(page, QLineEdit, "sag_rate_n_per_mm_entry").setFocus()
    qtbot.keyClicks(find(page, QLineEdit, "sag_rate_n_per_mm_entry"), "450")
    page.view_model.next()
    assert page.view_model.state.guide.stage == 2
    assert focused(page) == "sag_preload_turns_entry"
    again = open_page(qtbot, desk, bike)
    assert find(again, QLineEdit, "sag_preload_turns_entry").text() == "many"


def test_the_spring_curve_of_an_end_is_one_key_away_once_its_sag_is_kept(qtbot, desk):
    bike = a_bike(desk)
    known = desk.ask(sag_records(bike.id))
    one = SagRound((17.0, 17.0), "standing", "helper", desk.now(), 1240.0)
    shock = known.parts.unit("rear")
    desk.do("Sag", keep_sag(bike.id, known.rider.id, shock.id, (one,), Band(0.27, 0.3, "own")), bike_id=bike.id)
    page = open_page(qtbot, desk, bike)
    asked = []
    page.station_requested.connect(asked.append)
    assert not find(page, QAbstractButton, "sag_front_spring").isVisibleTo(page)
    click(qtbot, page, "sag_rear_spring")
    assert asked == ["spring"]
    assert desk.setting(f"spring/end/{bike.id}", "") == "rear"


def test_readings_from_above_and_below_are_typed_one_after_the_other(qtbot, desk):
    bike = a_bike(desk)
    page = open_page(qtbot, desk, bike)
    view_model = page.view_model
    view_model.start("rear")
    view_model.set_field("as_they_stand", True)
    assert view_model.next()
    view_model.set_text("pressure_kpa", "180")
    assert view_model.next()
    click(qtbot, page, "sag_both_ways_entry")
    line = find(page, QLineEdit, "sag_reading_entry")
    for text in ("15", "18"):
        qtbot.keyClicks(line, text)
        qtbot.keyClick(line, Qt.Key.Key_Return)
    assert view_model.state.guide.draft.settled == ("above", "below")
    assert "Friction about" in find(page, QLabel, "sag_friction").text()


def test_without_a_rider_the_way_to_one_has_the_whole_width_of_the_sheet(qtbot, desk):
    page = open_page(qtbot, desk, desk.do("Add", add_bike(NewBike("Heron 140")), station="garage"))
    assert focused(page) == "sag_choose_rider"
    QApplication.processEvents()
    page.view_model.refresh()
    QApplication.processEvents()
    assert find(page, QLabel, "sag_blocked").width() > 800
    key = find(page, QAbstractButton, "sag_choose_rider")
    assert key.width() >= key.sizeHint().width()

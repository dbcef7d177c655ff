from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSlider

from tests.fixtures import a_bike
from workbench.actions.parts import bike_parts
from workbench.actions.sag import keep_sag, sag_records
from workbench.actions.spring import keep_survey
from workbench.model.sag_rules import Band, SagRound
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.field_base import EntryLine
from workbench.ui.plots.spring import SpringPlot
from workbench.ui.spring.carry_page import CarryPage
from workbench.ui.spring.leverage_page import LeveragePage
from workbench.ui.spring.page import SpringPage
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.carry import CarryViewModel
from workbench.viewmodels.leverage import LeverageViewModel
from workbench.viewmodels.spring import SpringViewModel


def bench_with_sag(desk):
    bike = a_bike(desk)
    records = desk.ask(sag_records(bike.id))
    one = SagRound((30.0, 30.0), "standing", "helper", desk.now(), 540.0)
    front = records.parts.unit("front")
    desk.do("Keep sag", keep_sag(bike.id, records.rider.id, front.id, (one,), Band(0.18, 0.22, "own")))
    bench = Bench(desk)
    bench.put_bike(bike.id)
    return bench


def opened(qtbot, page):
    qtbot.addWidget(page)
    page.resize(960, 600)
    page.show()
    return page


def test_moving_the_slider_by_keys_draws_another_curve_beside_the_measured_one(qtbot, desk):
    page = opened(qtbot, SpringPage(SpringViewModel(desk, bench_with_sag(desk))))
    plot = page.findChild(SpringPlot)
    measured = plot.shown()
    slider = page.findChild(QSlider, "spring_pressure_kpa")
    slider.setFocus()
    for _ in range(40):
        qtbot.keyClick(slider, Qt.Key.Key_Right)
    assert plot.shown().sag_mm < measured.sag_mm
    assert page.view_model.state.kept == measured


def test_the_carry_sheet_answers_while_the_temperature_is_typed(qtbot, desk):
    page = opened(qtbot, CarryPage(CarryViewModel(desk, bench_with_sag(desk))))
    for name, text in (("here_c", "20"), ("there_c", "0")):
        line = page.findChild(EntryLine, f"carry_{name}")
        line.clear()
        qtbot.keyClicks(line, text)
    assert page.view_model.state.rows


def test_a_survey_is_typed_line_by_line_and_kept_by_the_verb(qtbot, desk):
    page = opened(qtbot, LeveragePage(LeverageViewModel(desk, bench_with_sag(desk))))
    for place, (stroke, wheel) in enumerate(((15, 41), (30, 80), (45, 117), (60, 152)), start=1):
        qtbot.keyClicks(page.findChild(EntryLine, f"leverage_stroke_{place}"), str(stroke))
        qtbot.keyClicks(page.findChild(EntryLine, f"leverage_wheel_{place}"), str(wheel))
    page.findChild(object, "leverage_keep").click()
    assert desk.undo_label() == "Keep leverage survey, 4 points"


def test_the_shock_is_said_to_be_in_a_mounting_by_its_key(qtbot, desk):
    bench = bench_with_sag(desk)
    shock = desk.ask(bike_parts(bench.bike_id)).unit("rear")
    for mounting in ("long", "short"):
        pairs = ((20.0, 55.0), (40.0, 106.0), (60.0, 152.0))
        desk.do("Keep", keep_survey(bench.bike_id, shock.id, mounting, pairs), bike_id=bench.bike_id)
    page = opened(qtbot, LeveragePage(LeverageViewModel(desk, bench)))
    qtbot.mouseClick(page.findChild(Button, "leverage_state_2"), Qt.MouseButton.LeftButton)
    assert desk.undo_label() == "Shock is in mounting long"
    assert page.findChild(Button, "leverage_move_2").accessibleName() == "Moved to this one: short"


def test_the_line_that_cannot_be_is_outlined_and_gets_the_caret(qtbot, desk):
    page = opened(qtbot, LeveragePage(LeverageViewModel(desk, bench_with_sag(desk))))
    for place, (stroke, wheel) in enumerate(((45, 117), (15, 41), (30, 20), (60, 152)), start=1):
        qtbot.keyClicks(page.findChild(EntryLine, f"leverage_stroke_{place}"), str(stroke))
        qtbot.keyClicks(page.findChild(EntryLine, f"leverage_wheel_{place}"), str(wheel))
    odd = page.findChild(EntryLine, "leverage_wheel_3")
    assert odd.property("refused")
    assert not page.findChild(EntryLine, "leverage_wheel_2").property("refused")
    qtbot.mouseClick(page.findChild(Button, "leverage_keep"), Qt.MouseButton.LeftButton)
    assert page.focusWidget() is odd
    assert odd.text() == "20"

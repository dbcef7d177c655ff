"""The sheet and what stands on it: stages, the job line, the title block, steps, notices."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget

from workbench.ui.parts.banner import STAYS_MS, Banner
from workbench.ui.parts.big_number import BigNumber
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.choice_field import TickBox
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.job_line import STATES, JobLine, Mark
from workbench.ui.parts.labels import Words, fit_lines, lay_out
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.sheet import LOW, NARROW, Sheet
from workbench.ui.parts.stage_sheet import StageSheet
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.table import Table, TableRow
from workbench.ui.parts.theme import Theme, apply_theme, current
from workbench.ui.parts.title_block import TitleBlock

HOSTILE = "<img src=x> & <b>bold</b> שלום 🚲 " + "W" * 10_000


def heard(signal):
    got = []
    signal.connect(lambda *values: got.append(values[0] if len(values) == 1 else values))
    return got


@pytest.fixture
def shown(qtbot):
    """Shows a widget that fills a window of its own."""
    windows = []  # qtbot holds them weakly

    def show(widget, width=900, height=700):
        window = QWidget()
        layout = QVBoxLayout(window)
        layout.addWidget(widget)
        layout.addStretch()
        windows.append(window)
        qtbot.addWidget(window)
        window.resize(width, height)
        window.show()
        qtbot.waitExposed(window)
        window.activateWindow()
        QApplication.processEvents()
        return widget

    yield show
    windows.clear()


def test_a_sentence_wraps_even_where_it_has_no_spaces(shown):
    label = shown(Words("W" * 600), width=400)
    assert label.width() < 400
    assert label.height() >= lay_out(label.text(), label.font(), label.width()).boundingRect().height()


def test_a_long_name_is_cut_on_screen_and_stays_whole_as_text(shown):
    label = shown(Words(HOSTILE, "strong", elide=True), width=400)
    assert label.is_cut()
    assert label.text() == HOSTILE
    assert label.textFormat() is Qt.TextFormat.PlainText
    assert label.height() < 40


def test_words_that_do_not_fit_their_lines_end_in_an_ellipsis(qapp):
    font = current().font()
    assert fit_lines("much too slow", font, 400, 2) == ["much too slow"]
    assert fit_lines("much too slow", font, 70, 2) == ["much too", "slow"]
    lines = fit_lines(HOSTILE, font, 120, 2)
    assert len(lines) == 2
    assert lines[1].endswith("…")


@pytest.mark.parametrize("make", [Button, BigNumber, EmptyState, CareNote])
def test_no_part_is_stretched_by_what_stands_in_it(shown, make):
    part = shown(make(HOSTILE), width=500)
    assert part.window().width() == 500
    assert part.minimumSizeHint().width() <= 480


def test_an_ampersand_in_a_name_is_shown_as_it_is():
    button = Button("Nuts & bolts")
    assert button.words() == "Nuts & bolts"
    assert button.accessibleName() == "Nuts & bolts"
    assert button.text() == "Nuts && bolts"


def stages(field):
    sheet = StageSheet("Rear sag", name="sag")
    sheet.set_stages([("prepare", QWidget()), ("measure", field), ("set", QWidget())])
    return sheet


def test_a_stage_sheet_counts_its_steps_and_offers_back_from_the_second(shown):
    sheet = shown(stages(QuantityField("length", "mm", label="Sag")))
    assert (sheet.subtitle.text(), sheet.back.isVisible()) == ("Step 1 of 3: prepare", False)
    sheet.show_stage(1, verb="Keep this reading", second="Measure again")
    assert sheet.subtitle.text() == "Step 2 of 3: measure"
    assert (sheet.verb.words(), sheet.second.words(), sheet.back.isVisible()) == (
        "Keep this reading",
        "Measure again",
        True,
    )


def test_the_verb_first_commits_the_field_in_focus_and_waits_while_it_cannot_be_read(shown, qtbot):
    field = QuantityField("length", "mm", label="Sag")
    sheet = shown(stages(field))
    sheet.show_stage(1)
    pressed = heard(sheet.verb_pressed)
    field.line.setFocus()
    qtbot.waitUntil(field.line.hasFocus)
    qtbot.keyClicks(field.line, "a bit")
    sheet.verb.click()
    assert (pressed, bool(field.problem())) == ([], True)
    field.line.selectAll()
    qtbot.keyClicks(field.line, "17.5")
    sheet.verb.click()
    assert len(pressed) == 1
    assert field.value() == 17.5


def test_a_problem_is_said_and_the_focus_goes_to_its_field(shown, qtbot):
    field = QuantityField("length", "mm", label="Sag")
    sheet = shown(stages(field))
    sheet.show_stage(1)
    sheet.say_problem("Write the measurement first.", field)
    qtbot.waitUntil(field.line.hasFocus)
    assert sheet.problem.isVisible()


def test_the_margin_of_a_narrow_sheet_goes_below(shown):
    sheet = Sheet("Sag")
    margin = Words("Brakes free.")
    sheet.set_margin(margin)
    sheet.body.addWidget(Words("Measure from the seal."))
    shown(sheet, width=NARROW + 200)
    assert margin.mapTo(sheet, margin.rect().topLeft()).x() > sheet.title.x() + 200
    sheet.window().resize(NARROW - 200, 700)
    QApplication.processEvents()
    assert margin.mapTo(sheet, margin.rect().topLeft()).x() < 60


def test_every_state_of_a_station_is_a_word_too_and_can_be_opened_by_key(shown, qtbot):
    line = JobLine()
    line.set_marks([Mark(state, state.title(), state, f"why {state}") for state in STATES])
    shown(line)
    opened = heard(line.station_requested)
    names = [line.findChild(object, f"job_line_{state}").accessibleName() for state in STATES]
    assert names == [f"{number} {state.title()}: {state}" for number, state in enumerate(STATES, 1)]
    now = line.findChild(object, "job_line_now")
    now.setFocus()
    qtbot.waitUntil(now.hasFocus)
    qtbot.keyClick(now, Qt.Key.Key_Right)
    qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    qtbot.mouseClick(line.findChild(object, "job_line_blocked"), Qt.MouseButton.LeftButton)
    assert opened == ["due", "blocked"]


def test_a_narrow_job_line_takes_two_lines_and_hides_no_station(shown):
    line = JobLine()
    line.set_marks([Mark(str(n), f"Station {n}") for n in range(8)])
    shown(line, width=440)
    last = line.findChild(object, "job_line_7")
    assert line.rect().contains(last.geometry())
    assert last.y() > 0


def test_who_is_at_the_bench_can_be_changed_from_the_title_block(shown, qtbot):
    block = TitleBlock()
    block.set_cells([("Bike", HOSTILE), ("At the bench", "Okoye"), ("Date", "14 May 2031")])
    shown(block)
    asked = heard(block.person_requested)
    qtbot.mouseClick(block.person, Qt.MouseButton.LeftButton)
    block.person.setFocus()
    qtbot.keyClick(block.person, Qt.Key.Key_Space)
    assert len(asked) == 2
    assert block.person.accessibleName() == "At the bench: Okoye. Change"
    assert block.person.geometry() == block.cell_rect("At the bench")


def test_a_step_is_ticked_by_mouse_or_key_and_new_steps_keep_the_focus(shown, qtbot):
    steps = StepList()
    steps.set_steps([Step("a", "Rebound: fully closed, then open 6"), Step("b", HOSTILE)])
    shown(steps)
    ticked = heard(steps.step_ticked)
    first, second = (steps.findChild(object, f"steps_{key}") for key in "ab")
    qtbot.mouseClick(first, Qt.MouseButton.LeftButton)
    first.setFocus()
    qtbot.waitUntil(first.hasFocus)
    qtbot.keyClick(first, Qt.Key.Key_Down)
    qtbot.keyClick(second, Qt.Key.Key_Return)
    assert ticked == [("a", True), ("b", True)]
    assert steps.is_all_done()
    steps.set_steps([Step("a", "Rebound", done=False), Step("b", "Air", done=True)])
    assert second.hasFocus()
    assert not steps.is_all_done()


def test_a_notice_stays_long_enough_and_can_be_undone_or_closed_by_key(shown, qtbot):
    banner = shown(Banner())
    undone, closed = heard(banner.action_requested), heard(banner.closed)
    banner.say("Measurement 3 is removed.", "Undo")
    assert STAYS_MS >= 12_000
    assert banner.remaining_ms() > 12_000
    banner.action.setFocus()
    qtbot.keyClick(banner.action, Qt.Key.Key_Return)
    assert (len(undone), len(closed), banner.isVisible()) == (1, 1, False)
    banner.say("Kept.", stays_ms=0)
    assert (banner.remaining_ms(), banner.action.isVisible()) == (-1, False)
    qtbot.keyClick(banner.close_button, Qt.Key.Key_Escape)
    assert (len(closed), banner.isVisible()) == (2, False)


@pytest.mark.parametrize("bench", [False, True])
def test_buttons_are_targets_a_glove_can_hit(shown, qapp, bench):
    apply_theme(qapp, Theme(bench=bench))
    verb, plain = shown(Button("Keep", "verb")), shown(Button("Again"))
    assert verb.height() >= (76 if bench else 44)
    assert plain.height() >= (57 if bench else 44)
    assert current().bench is bench


def a_sheet_with_keys(qtbot, height, lines):
    sheet = Sheet("Sag", name="sheet")
    qtbot.addWidget(sheet)
    for line in range(lines):
        sheet.body.addWidget(Words(f"Line {line}"))
    key = Button("Keep this sag", "verb", name="keep")
    sheet.add_keys(key)
    sheet.resize(640, height)
    sheet.show()
    QApplication.processEvents()
    return sheet, key


def test_keys_stay_at_the_foot_under_a_line_where_more_is_there_than_fits(qtbot):
    sheet, key = a_sheet_with_keys(qtbot, height=400, lines=40)
    inside = sheet.scroll_area.widget()
    assert not inside.isAncestorOf(key)
    assert sheet._edge.isVisible()
    short, _ = a_sheet_with_keys(qtbot, height=400, lines=2)
    assert not short._edge.isVisible()


def test_on_a_low_sheet_the_keys_scroll_along_and_come_back_when_there_is_room(qtbot):
    sheet, key = a_sheet_with_keys(qtbot, height=LOW - 1, lines=40)
    assert sheet.scroll_area.widget().isAncestorOf(key)
    sheet.resize(640, LOW + 100)
    QApplication.processEvents()
    assert not sheet.scroll_area.widget().isAncestorOf(key)
    assert key.isVisible()


def test_a_button_and_a_tick_box_say_when_their_words_are_cut(qtbot):
    for made in (Button("Keep this sag as it is", "verb"), TickBox("Settle from above and from below")):
        qtbot.addWidget(made)
        made.resize(made.sizeHint())
        assert not made.is_cut()
        made.resize(40, 44)
        assert made.is_cut()


def test_a_table_with_too_little_room_narrows_every_column_instead_of_cutting_the_last(qtbot):
    table = Table(("Name", "Bikes"), ("A long name of somebody", ""), name="people", label="People")
    qtbot.addWidget(table)
    table.show_rows((TableRow("a", ("M. Anders", "Larch 150, Tarn hardtail")),))
    for width in (220, 640):
        table.resize(width, 200)
        table.show()
        QApplication.processEvents()
        columns = [table.columnWidth(column) for column in range(2)]
        assert sum(columns) <= table.viewport().width()
        assert min(columns) > 60

"""The tools for greasy hands: counting by key, rating by number."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from workbench.ui.parts.counting_tool import CountingTool, count_words
from workbench.ui.parts.rating_bar import ComparedBar, DirectionBar, RatingBar
from workbench.ui.parts.theme import BENCH_SIZES, Theme, apply_theme


@pytest.fixture
def tool(qtbot):
    tool = CountingTool("clicks", label="Rebound")
    qtbot.addWidget(tool)
    tool.show()
    return tool


def heard(signal):
    got = []
    signal.connect(lambda *values: got.append(values[0] if values else None))
    return got


def press(widget, key, text="", *, repeated=False):
    event = QKeyEvent(QEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier, text, repeated)
    QApplication.sendEvent(widget, event)


def test_space_plus_and_the_large_key_add_and_minus_and_backspace_take_away(tool, qtbot):
    counts = heard(tool.count_changed)
    qtbot.keyClick(tool, Qt.Key.Key_Space)
    qtbot.keyClick(tool, Qt.Key.Key_Plus, Qt.KeyboardModifier.KeypadModifier)
    qtbot.mouseClick(tool.more, Qt.MouseButton.LeftButton)
    qtbot.keyClick(tool, Qt.Key.Key_Minus)
    qtbot.keyClick(tool, Qt.Key.Key_Backspace)
    assert counts == [1, 2, 3, 2, 1]
    assert tool.words() == "1 click"


def test_a_key_held_down_counts_once(tool):
    press(tool, Qt.Key.Key_Space, " ")
    for _ in range(20):
        press(tool, Qt.Key.Key_Space, " ", repeated=True)
    assert tool.count() == 1


def test_digits_write_the_number_and_a_click_after_them_goes_on_from_it(tool, qtbot):
    qtbot.keyClicks(tool, "12")
    assert tool.count() == 12
    qtbot.keyClick(tool, Qt.Key.Key_Backspace)
    assert tool.count() == 1
    qtbot.keyClick(tool, Qt.Key.Key_Space)
    qtbot.keyClick(tool, Qt.Key.Key_Backspace)
    qtbot.keyClicks(tool, "7")
    assert tool.count() == 7


def test_a_count_never_goes_below_nothing(tool, qtbot):
    counts = heard(tool.count_changed)
    qtbot.keyClick(tool, Qt.Key.Key_Minus)
    assert (tool.count(), counts) == (0, [])


def test_enter_is_done(tool, qtbot):
    done = heard(tool.done)
    qtbot.keyClick(tool, Qt.Key.Key_Return)
    assert len(done) == 1


@pytest.mark.parametrize(
    ("count", "mode", "expected"),
    [
        (0, "clicks", ("0", "clicks")),
        (5, "turns", ("1\u2009¼", "turns")),
        (4, "turns", ("1", "turn")),
        (2, "turns", ("½", "turns")),
        (0, "turns", ("0", "turns")),
        (None, "positions", ("–", "")),
        (9, "positions", ("–", "")),
    ],
)
def test_a_count_reads_as_people_say_it(count, mode, expected):
    assert count_words(count, mode, ("firm", "open")) == expected


def test_a_lever_is_set_by_the_number_of_its_position_and_enter_goes_on(qtbot):
    lever = CountingTool("positions", ["firm", "middle", "open"], label="Lever")
    qtbot.addWidget(lever)
    lever.show()
    counts, done = heard(lever.count_changed), heard(lever.done)
    lever.setFocus()
    key = lever.positions.focusProxy()
    qtbot.keyClicks(key, "2")
    qtbot.keyClick(lever.positions.focusProxy(), Qt.Key.Key_Return)
    assert (counts, lever.words(), len(done)) == ([1], "middle", 1)


def test_the_keys_of_the_counting_tool_are_of_bench_size_in_any_theme(tool, qapp):
    qapp.processEvents()
    assert min(tool.more.height(), tool.less.height(), tool.finish.height()) >= BENCH_SIZES.key


def test_liking_is_rated_by_number_key_and_cleared_again(qtbot):
    bar = RatingBar("Liking")
    qtbot.addWidget(bar)
    bar.show()
    picked = heard(bar.picked)
    qtbot.keyClicks(bar, "8")
    assert bar.accessibleName() == "Liking: 8"
    qtbot.keyClick(bar, Qt.Key.Key_Delete)
    qtbot.keyClicks(bar, "0")
    assert picked == [8, None]
    assert bar.value() is None


def test_direction_speaks_the_words_passed_in(qtbot):
    bar = DirectionBar("Rebound", ("much too slow", "too slow", "right", "too fast", "much too fast"))
    qtbot.addWidget(bar)
    bar.show()
    picked = heard(bar.picked)
    qtbot.mouseClick(bar.findChild(object, "direction_1"), Qt.MouseButton.LeftButton)
    assert picked == [1]
    assert bar.accessibleName() == "Rebound: too fast"
    qtbot.mouseClick(bar.findChild(object, "direction_1"), Qt.MouseButton.LeftButton)
    assert picked == [1, None]


def test_showing_a_value_is_no_rating(qtbot):
    bar = ComparedBar("Against the last run")
    qtbot.addWidget(bar)
    picked = heard(bar.picked)
    bar.set_value(-1)
    assert (bar.value(), picked) == (-1, [])


def test_every_key_of_a_rating_is_a_bench_target_in_bench_mode(qtbot, qapp):
    bar = RatingBar("Liking")
    qtbot.addWidget(bar)
    apply_theme(qapp, Theme(bench=True))
    bar.show()
    bar.resize(760, bar.sizeHint().height())
    qapp.processEvents()
    keys = [bar.findChild(object, f"liking_{value}") for value in range(1, 10)]
    assert all(key.height() >= 76 and key.width() >= 57 for key in keys)

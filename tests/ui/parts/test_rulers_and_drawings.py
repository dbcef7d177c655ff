"""What is drawn: labels that keep apart whatever stands in them, and pictures that draw in every theme."""

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QImage

from workbench.ui.parts.drawings import KINDS, DrawingValues, DrawingView
from workbench.ui.parts.label_rows import nice_step, place_labels
from workbench.ui.parts.rulers import AdjusterRuler, AdjusterScale, Marker, SagRuler, SagScale, SagTick
from workbench.ui.parts.theme import Theme, apply_theme

SAG = SagScale(
    60.0,
    (SagTick(17.0, "1"), SagTick(17.2, "2"), SagTick(17.1, "29 %", "centre"), SagTick(19.0, "predicted", "predicted")),
    16.8,
    19.2,
    "target 28–32 % (maker)",
)


def overlaps(rects):
    return [(a, b) for i, a in enumerate(rects) for b in rects[i + 1 :] if a.intersects(b)]


def test_labels_at_one_place_go_into_rows():
    spots = place_labels([50, 50, 50], [40, 40, 40], span=100)
    assert sorted(row for _, row in spots) == [0, 1, 2]


def test_neighbours_with_room_share_a_row():
    assert [row for _, row in place_labels([20, 200], [30, 30], span=220)] == [0, 0]


def test_a_label_too_wide_is_kept_inside():
    assert place_labels([10], [500], span=100) == [(0, 0)]
    assert place_labels([], [], span=100) == []


@pytest.mark.parametrize(("span", "room", "step"), [(60, 560, 5), (18, 850, 1), (6.3, 850, 0.5), (400, 200, 100)])
def test_axis_steps_are_one_two_five_or_ten(span, room, step):
    assert nice_step(span, room) == pytest.approx(step)


@pytest.mark.parametrize("width", [240, 420, 900])
@pytest.mark.parametrize("bench", [False, True])
def test_labels_of_the_rulers_never_collide_and_stay_inside(qtbot, qapp, width, bench):
    apply_theme(qapp, Theme(bench=bench))
    markers = tuple(Marker(at, words, "now") for at, words in ((0, "W" * 200), (0, "שלום"), (1, "x"), (40, "end 🚲")))
    for ruler in (SagRuler(SAG), AdjusterRuler(AdjusterScale(40, markers))):
        qtbot.addWidget(ruler)
        ruler.resize(width, ruler.heightForWidth(width))
        rects = ruler.label_rects()
        assert overlaps(rects) == []
        assert all(rect.left() >= 0 and rect.right() <= width and rect.top() >= 0 for rect in rects)


def picture(widget):
    image = QImage(widget.size(), QImage.Format.Format_RGB32)
    widget.render(image)
    return image


@pytest.mark.parametrize("scale", [AdjusterScale(0), AdjusterScale(1), AdjusterScale(2, names=("firm", "open"))])
def test_an_adjuster_not_yet_counted_or_with_names_is_drawn(qtbot, scale):
    ruler = AdjusterRuler(scale)
    qtbot.addWidget(ruler)
    ruler.resize(400, ruler.heightForWidth(400))
    before = picture(ruler)
    ruler.set_scale(AdjusterScale(30, (Marker(4, "now", "now"),)))
    assert picture(ruler) != before


@pytest.mark.parametrize("kind", KINDS)
def test_every_drawing_says_what_it_shows_and_follows_the_theme(qtbot, qapp, kind):
    view = DrawingView(kind, DrawingValues(distance="17.5 mm"))
    qtbot.addWidget(view)
    view.resize(QSize(280, 300))
    light = picture(view)
    apply_theme(qapp, Theme(dark=True))
    assert picture(view) != light
    assert view.accessibleName().startswith("Drawing.")


def test_a_knob_that_closes_the_other_way_looks_different(qtbot):
    view = DrawingView("knob", DrawingValues(closes="clockwise"))
    qtbot.addWidget(view)
    view.resize(280, 300)
    clockwise = picture(view)
    view.show_drawing("knob", DrawingValues(closes="anticlockwise"))
    anticlockwise = picture(view)
    assert anticlockwise != clockwise
    view.show_drawing("knob", DrawingValues(closes="clockwise", opens=True))
    assert picture(view) not in (clockwise, anticlockwise), "the arrow turns, and it says opens"


def test_an_unknown_drawing_is_refused():
    with pytest.raises(ValueError, match="kind is one of"):
        DrawingView("unknown")

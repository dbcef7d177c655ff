"""The geometry of every screen of the tour: sizes to hit, nothing clipped, nothing on top of anything else."""

from __future__ import annotations

import itertools

LEAST, LEAST_AT_THE_BENCH = 44, 57  # px: for a finger, and for one in a glove
PAPERS = {"help", "help-adjusters", "care", "keys", "about", "person", "reason"}  # nothing is to be done there next
LOOKED_AT = {"adjusters", "sag", "review", "garage-search", "garage-bench", "spring", "leverage", "carry"}
LOOKED_AT |= {"history", "hint"}


def faults(tour, is_wrong):
    screens, _ = tour
    return [
        f"{name}: {one['object_name']!r} {one['text'][:40]!r} at {one['rect']}, seen {one['seen']}"
        for name, screen in screens.items()
        for one in screen["controls"]
        if is_wrong(one, screen)
    ]


def overlap(first, second):
    """How many pixels of two rectangles lie on one another."""
    across = min(first[0] + first[2], second[0] + second[2]) - max(first[0], second[0])
    down = min(first[1] + first[3], second[1] + second[3]) - max(first[1], second[1])
    return max(across, 0) * max(down, 0)


def holds(outer, inner):
    """Whether one rectangle lies wholly within another, as keys lie in the tool they belong to."""
    return overlap(outer, inner) == inner[2] * inner[3]


def test_every_target_is_high_enough_for_a_finger_or_a_glove(tour):
    def is_low(one, screen):
        least = LEAST_AT_THE_BENCH if screen["bench"] else LEAST
        return one["kind"] == "control" and one["rect"][3] < least

    assert not faults(tour, is_low)


def test_some_screens_are_looked_at_in_bench_mode(tour):
    screens, _ = tour
    assert sum(screen["bench"] for screen in screens.values()) >= 5


def test_nothing_that_stands_still_is_clipped(tour):
    assert not faults(
        tour,
        lambda one, _: not one["scrolls"] and one["seen"] != one["rect"] and not one["object_name"].endswith("_text"),
    )


def test_what_scrolls_is_clipped_only_above_and_below(tour):
    def is_cut_sideways(one, _screen):
        return one["scrolls"] and (one["seen"][0], one["seen"][2]) != (one["rect"][0], one["rect"][2])

    assert not faults(tour, is_cut_sideways)


def test_everything_seen_lies_in_the_window(tour):
    def is_outside(one, screen):
        left, top, width, height = one["seen"]
        return left < 0 or top < 0 or left + width > screen["size"][0] or top + height > screen["size"][1]

    assert not faults(tour, is_outside)


def test_no_control_lies_on_another(tour):
    screens, _ = tour
    found = []
    for name, screen in screens.items():
        controls = [one for one in screen["controls"] if one["kind"] != "words"]
        for first, second in itertools.combinations(controls, 2):
            a, b = first["seen"], second["seen"]
            if overlap(a, b) and not holds(a, b) and not holds(b, a):
                found.append(f"{name}: {first['object_name']!r} and {second['object_name']!r}")
    assert not found


def test_no_words_lie_on_a_control_they_do_not_belong_to(tour):
    screens, _ = tour
    found = []
    for name, screen in screens.items():
        words = [one for one in screen["controls"] if one["kind"] == "words" and one["text"].strip()]
        controls = [one for one in screen["controls"] if one["kind"] != "words"]
        found.extend(
            f"{name}: {said['text'][:30]!r} and {control['object_name']!r}"
            for said, control in itertools.product(words, controls)
            if overlap(said["seen"], control["seen"]) and not holds(control["seen"], said["seen"])
        )
    assert not found


def test_at_most_one_thing_a_screen_is_marked_as_the_next_step(tour):
    screens, _ = tour
    for name, screen in screens.items():
        marked = [one["object_name"] for one in screen["controls"] if one["is_next_step"]]
        assert len(marked) <= 1, f"{name}: {marked}"


def test_a_screen_that_asks_for_something_marks_what_to_do(tour):
    screens, _ = tour
    for name, screen in screens.items():
        if name not in PAPERS and not name.startswith(tuple(LOOKED_AT)):
            assert any(one["is_next_step"] for one in screen["controls"]), name


def test_the_next_step_is_in_sight_without_scrolling(tour):
    assert not faults(tour, lambda one, _: one["is_next_step"] and one["seen"] != one["rect"])

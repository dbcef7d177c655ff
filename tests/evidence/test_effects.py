"""Which change helped: what must hold whatever the numbers."""

from __future__ import annotations

import math
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.evidence.effects import (
    Caution,
    RunRecord,
    Verdict,
    joint_reading,
    judge_changes,
    noise_sd,
)
from workbench.model.errors import InputError, NotEnoughData

ROOT = Path(__file__).parents[2]
CLEAR = "AABBAABBAB", (4, 4, 7, 7, 5, 4, 7, 8, 4, 7)


def runs_of(settings, responses, **more):
    return [RunRecord(setting, response, **more) for setting, response in zip(settings, responses, strict=True)]


def numbers(row):
    return [row.effect, row.low, row.high, row.chance_helped, row.chance_felt, row.repeat_sd]


def only(runs, **more):
    (row,) = judge_changes(runs, **more)
    return row


def test_no_runs_give_no_rows():
    assert judge_changes([]) == []
    assert judge_changes([RunRecord("A", 5)]) == []
    assert judge_changes(runs_of("AAA", (5, 6, 5))) == []


def test_a_clear_repeated_change_helped():
    row = only(runs_of(*CLEAR))
    assert row.verdict is Verdict.HELPED
    assert (row.before, row.after, row.runs_before, row.runs_after) == ("A", "B", 5, 5)
    assert row.low < row.effect < row.high
    assert 2 < row.effect < 3.5
    assert row.more_runs == 0
    assert row.next_run_low < row.low
    assert row.next_run_high > row.high


def test_a_clear_change_for_the_worse_hurt():
    assert only(runs_of(CLEAR[0], [10 - r for r in CLEAR[1]])).verdict is Verdict.HURT


def test_one_run_each_settles_nothing():
    row = only(runs_of("AB", (5, 7)))
    assert row.verdict is Verdict.CANNOT_TELL
    assert {Caution.FEW_RUNS, Caution.NO_RETURN, Caution.NOT_BLIND} <= row.cautions
    assert row.more_runs is None or row.more_runs > 0


def test_many_equal_answers_show_no_felt_difference():
    row = only(runs_of("ABABABABAB", [6] * 10))
    assert row.verdict is Verdict.NOT_FELT
    assert abs(row.effect) < 0.2


@pytest.mark.parametrize("score", [1, 5, 9])
def test_all_answers_equal_never_names_a_winner(score):
    for order in ("AB", "AABB", "ABAB", "AAABBBCCC"):
        for row in judge_changes(runs_of(order, [score] * len(order))):
            assert row.verdict in (Verdict.NOT_FELT, Verdict.CANNOT_TELL)
            assert all(math.isfinite(number) for number in numbers(row))


def test_rows_come_in_the_order_ridden_one_an_unordered_pair():
    rows = judge_changes(runs_of("AABBAACCBB", (4, 4, 7, 7, 5, 4, 7, 8, 4, 7)))
    assert [(row.before, row.after) for row in rows] == [("A", "B"), ("A", "C"), ("C", "B")]


def test_names_do_not_matter():
    plain = judge_changes(runs_of("AABBCCAABB", CLEAR[1]))
    other = judge_changes(runs_of([{"A": 9, "B": "x", "C": (1, 2)}[s] for s in "AABBCCAABB"], CLEAR[1]))
    assert [numbers(row) for row in other] == [pytest.approx(numbers(row)) for row in plain]


def test_mirrored_answers_with_lower_better_read_the_same():
    plain = judge_changes(runs_of(*CLEAR))
    mirrored = judge_changes(runs_of(CLEAR[0], [10 - r for r in CLEAR[1]]), higher_is_better=False)
    assert numbers(mirrored[0]) == pytest.approx(numbers(plain[0]), abs=1e-9)
    assert mirrored[0].verdict is plain[0].verdict


def test_a_plain_number_may_be_shifted_and_change_its_unit():
    values = np.array([40.0, 41.5, 46.0, 47.2, 41.0, 40.2, 46.1, 48.3, 39.9, 47.0])
    plain = only(runs_of(CLEAR[0], values), scale=None)
    moved = only(runs_of(CLEAR[0], values * 1000 + 5e6), scale=None)
    assert moved.effect == pytest.approx(1000 * plain.effect, rel=1e-6)
    assert moved.high - moved.low == pytest.approx(1000 * (plain.high - plain.low), rel=1e-6)
    assert moved.chance_helped == pytest.approx(plain.chance_helped, abs=1e-9)
    assert plain.verdict is Verdict.HELPED


def test_a_rating_may_be_shifted_within_its_scale():
    low = only(runs_of(CLEAR[0], (3, 3, 5, 5, 4, 3, 5, 6, 3, 5)))
    high = only(runs_of(CLEAR[0], (4, 4, 6, 6, 5, 4, 6, 7, 4, 6)))
    assert high.effect == pytest.approx(low.effect, abs=0.02)
    assert high.verdict is low.verdict


def test_another_rating_scale_reads_alike():
    nine = only(runs_of(*CLEAR))
    hundred = only(runs_of(CLEAR[0], [12.5 * (r - 1) for r in CLEAR[1]]), scale=(0, 100, 12.5))
    assert hundred.effect == pytest.approx(12.5 * nine.effect)
    assert hundred.chance_felt == pytest.approx(nine.chance_felt)


def test_lap_times_are_read_as_ratios_in_any_unit():
    seconds = [121.0, 122.1, 117.0, 117.9, 121.5, 121.8, 116.8, 117.5, 121.9, 117.2]
    plain = only(runs_of(CLEAR[0], seconds), scale="log")
    minutes = only(runs_of(CLEAR[0], [s / 60 for s in seconds]), scale="log", higher_is_better=False)
    assert numbers(minutes) == pytest.approx(numbers(plain))
    assert plain.verdict is Verdict.HELPED
    assert 0.03 < plain.effect < 0.045
    assert 0.002 < plain.repeat_sd < 0.01


def test_one_spoilt_run_does_not_turn_a_clear_change():
    spoilt = list(CLEAR[1])
    spoilt[3] = 2
    row = only(runs_of(CLEAR[0], spoilt))
    assert row.chance_helped > 0.9
    assert row.effect > 1.5


def test_a_pure_trend_is_no_change():
    row = only(runs_of("AAAAABBBBB", (3, 3, 4, 4, 5, 5, 6, 6, 7, 7)))
    assert row.verdict is Verdict.CANNOT_TELL
    assert Caution.NO_RETURN in row.cautions


def test_going_back_pays():
    there = only(runs_of("AAABBB", (4, 5, 4, 6, 6, 7)))
    back = only(runs_of("AABBAB", (4, 5, 6, 6, 4, 7)))
    assert back.high - back.low < there.high - there.low
    assert Caution.NO_RETURN not in back.cautions


def test_more_runs_narrow_the_interval():
    few = only(runs_of("ABAB", (4, 6, 5, 6)))
    many = only(runs_of("ABAB" * 4, (4, 6, 5, 6) * 4))
    assert many.high - many.low < few.high - few.low


def test_warm_ups_are_no_side_of_a_change():
    warm = [RunRecord("W", 2, warmup=True), *runs_of(*CLEAR)]
    row = only(warm)
    assert (row.before, row.after, row.runs_before) == ("A", "B", 5)
    assert judge_changes([RunRecord("A", 5, warmup=True), RunRecord("B", 6)]) == []


def test_disturbed_runs_never_give_a_clean_verdict():
    settings, responses = CLEAR
    disturbed = [RunRecord(s, r, confounded=s == "B") for s, r in zip(settings, responses, strict=True)]
    row = only(disturbed)
    assert row.verdict is Verdict.CANNOT_TELL
    assert Caution.CONFOUNDED in row.cautions
    assert row.more_runs is None


def test_one_disturbed_run_is_said_and_counts_little():
    runs = runs_of(*CLEAR)
    runs[3] = replace(runs[3], response=1.0, confounded=True)
    row = only(runs)
    assert Caution.CONFOUNDED in row.cautions
    assert row.effect > 2


def test_two_adjusters_moved_at_once_cannot_be_told_apart():
    here, there = {"rebound": 8, "compression": 4}, {"rebound": 10, "compression": 6}
    row = only([RunRecord(here if s == "A" else there, r) for s, r in zip(*CLEAR, strict=True)])
    assert row.verdict is Verdict.CANNOT_TELL
    assert Caution.CONFOUNDED in row.cautions


def test_one_adjuster_moved_is_judged():
    here, there = {"rebound": 8, "compression": 4}, {"compression": 4, "rebound": 10}
    row = only([RunRecord(here if s == "A" else there, r) for s, r in zip(*CLEAR, strict=True)])
    assert row.verdict is Verdict.HELPED
    assert (row.before, row.after) == (here, there)


def test_the_order_of_adjusters_in_a_mapping_is_no_change():
    one, same = {"a": 1, "b": 2}, {"b": 2, "a": 1}
    assert judge_changes([RunRecord(one, 5), RunRecord(same, 6)]) == []


def test_days_apart_are_said():
    row = only(runs_of("AAA", (5, 5, 6), day=0) + runs_of("BBB", (7, 7, 7), day=1))
    assert Caution.DAY_BOUNDARY in row.cautions
    assert row.verdict is Verdict.CANNOT_TELL


def test_scores_at_the_end_of_the_scale_are_said_and_not_taken_as_measured():
    row = only(runs_of("ABABABAB", (8, 9, 8, 9, 9, 9, 8, 9)))
    assert Caution.SCALE_END in row.cautions
    assert row.high - row.effect > row.effect - row.low


def test_the_largest_of_several_is_named_as_picked():
    rows = judge_changes(runs_of("AABBCCDDAABBCCDD", (5, 5, 6, 6, 5, 6, 7, 7, 5, 5, 6, 7, 5, 5, 7, 8)))
    picked = [row for row in rows if Caution.CHOSEN_AFTER_SEEING in row.cautions]
    assert len(picked) == 1
    assert picked[0].effect == max(row.effect for row in rows)


def test_blind_runs_are_not_called_open():
    assert Caution.NOT_BLIND not in only(runs_of(*CLEAR, blind=True)).cautions
    assert Caution.OPTIMISM_POSSIBLE not in only(runs_of(*CLEAR, blind=True)).cautions


def test_better_or_worse_alone_is_enough():
    settings = "ABABABABAB"
    answers = (None, 1, -1, 1, -1, 1, -1, 1, -1, 1)
    row = only([RunRecord(s, None, compared=c) for s, c in zip(settings, answers, strict=True)])
    assert row.chance_helped > 0.95
    assert row.verdict is Verdict.HELPED


def test_better_or_worse_beside_a_rating_adds_a_little():
    settings, scores = "ABABAB", (5, 6, 5, 6, 6, 6)
    answers = (None, 1, -1, 1, -1, 1)
    plain = only(runs_of(settings, scores))
    more = only([RunRecord(s, r, compared=c) for s, r, c in zip(settings, scores, answers, strict=True)])
    assert plain.chance_helped < more.chance_helped < 1


def test_known_scatter_of_the_rider_sharpens():
    runs = runs_of("AABB", (5, 5, 7, 7))
    steady, wild = only(runs, past_sd=0.3), only(runs, past_sd=1.5)
    assert steady.high - steady.low < wild.high - wild.low
    assert steady.repeat_sd < wild.repeat_sd


def test_the_felt_difference_may_be_named():
    runs = runs_of("ABABABAB", (5, 6, 5, 6, 5, 6, 5, 6))
    assert only(runs, smallest_felt=0.2).chance_felt > only(runs, smallest_felt=2.0).chance_felt


def test_scatter_between_runs_comes_from_repeats():
    steady = noise_sd(runs_of("AABBAABB", (5, 5, 7, 7, 5, 5, 7, 7)))
    wild = noise_sd(runs_of("AABBAABB", (4, 7, 9, 5, 6, 3, 8, 5)))
    assert steady[1] < steady[0] < steady[2]
    assert wild[0] > 2 * steady[0]
    with pytest.raises(NotEnoughData):
        noise_sd(runs_of("AB", (5, 6)))


def test_scatter_is_found_when_there_is_much_to_go_by():
    rng = np.random.default_rng(5)
    settings = ["AB"[(i // 3) % 2] for i in range(60)]
    truth = np.where(np.array(settings) == "A", 50.0, 58.0) + rng.normal(0, 3.0, 60)
    sd, low, high = noise_sd(runs_of(settings, truth), scale=None)
    assert low < 3.0 < high
    assert sd == pytest.approx(3.0, rel=0.2)


@pytest.mark.parametrize("response", [0, 10, math.nan, math.inf, -math.inf])
def test_answers_off_the_scale_are_refused(response):
    with pytest.raises(InputError):
        judge_changes([RunRecord("A", 5), RunRecord("B", response)])


@pytest.mark.parametrize("wrong", [{"setting": ["A"]}, {"setting": {"a": []}}, {"response": "7"}, {"compared": 2}])
def test_what_is_no_run_is_refused(wrong):
    with pytest.raises(InputError):
        RunRecord(**{"setting": "A", "response": 5} | wrong)


@pytest.mark.parametrize(
    "wrong",
    [
        {"scale": "linear"},
        {"scale": (1, 9)},
        {"scale": (9, 1, 1)},
        {"scale": (1, 9, 0)},
        {"past_sd": 0},
        {"past_sd": math.nan},
        {"smallest_felt": -1},
    ],
)
def test_impossible_wishes_are_refused(wrong):
    with pytest.raises(InputError):
        judge_changes(runs_of(*CLEAR), **wrong)


def test_a_time_must_be_above_nothing():
    with pytest.raises(InputError):
        judge_changes(runs_of("AB", (100, 0)), scale="log")


def test_the_same_runs_give_the_same_rows():
    assert judge_changes(runs_of(*CLEAR)) == judge_changes(runs_of(*CLEAR))


def test_faster_but_less_liked_is_said():
    settings = CLEAR[0]
    liking = runs_of(settings, (7, 7, 4, 4, 7, 7, 4, 4, 7, 4))
    laps = runs_of(settings, (121.0, 122.1, 117.0, 117.9, 121.5, 121.8, 116.8, 117.5, 121.9, 117.2))
    (row,) = joint_reading({"liking": liking, "lap_s": laps})
    assert row.verdict is Verdict.CANNOT_TELL
    assert row.disagreement == ("lap_s",)
    assert "lap_s" in row.reason


def test_two_answers_to_the_same_runs_are_not_two_proofs():
    weak = runs_of("ABABAB", (5, 6, 5, 7, 6, 6))
    alone = only(weak).chance_helped
    (row,) = joint_reading({"liking": weak, "grip": weak})
    assert alone <= row.chance_helped < 1 - (1 - alone) ** 1.5
    assert row.disagreement == ()


def test_one_response_read_jointly_is_that_response():
    (row,) = joint_reading({"liking": runs_of(*CLEAR)})
    assert row.verdict is Verdict.HELPED
    assert row.chance_helped == pytest.approx(only(runs_of(*CLEAR)).chance_helped, abs=1e-8)


@settings(max_examples=12)
@given(st.lists(st.tuples(st.sampled_from("ABC"), st.integers(1, 9)), min_size=2, max_size=14), st.booleans())
def test_whatever_was_ridden_the_rows_make_sense(told, blind):
    runs = [RunRecord(setting, response, blind=blind, day=i // 8) for i, (setting, response) in enumerate(told)]
    for row in judge_changes(runs):
        assert all(math.isfinite(number) for number in numbers(row))
        assert row.next_run_low < row.low < row.effect < row.high < row.next_run_high
        assert 0 <= row.chance_helped <= 1
        assert 0 <= row.chance_felt <= 1 + 1e-9
        assert row.more_runs is None or row.more_runs % 2 == 0


@settings(max_examples=12)
@given(st.lists(st.tuples(st.sampled_from("ABC"), st.integers(1, 9)), min_size=2, max_size=14))
def test_mirrored_and_renamed_sessions_read_the_same(told):
    plain = judge_changes([RunRecord(setting, response) for setting, response in told])
    other = judge_changes(
        [RunRecord(ord(setting), 10 - response) for setting, response in told], higher_is_better=False
    )
    assert [row.verdict for row in other] == [row.verdict for row in plain]
    for one, two in zip(plain, other, strict=True):
        assert numbers(two) == pytest.approx(numbers(one), abs=1e-6)


def test_the_rooms_below_load_nothing_heavy():
    code = (
        "import sys; from workbench.evidence.effects import RunRecord, judge_changes; import workbench.evidence.blind;"
        "judge_changes([RunRecord('A', 5), RunRecord('B', 7)]);"
        "print([name for name in ('scipy', 'PySide6', 'sqlalchemy', 'pandas') if name in sys.modules])"
    )
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert found.stdout.strip() == "[]"

"""What the pictures of a session are drawn from: trend, dots, the setup that suits; they agree with the verdicts."""

from __future__ import annotations

import math

import pytest

from workbench.evidence.dots import quantile_dots
from workbench.evidence.effects import RunRecord, judge_changes
from workbench.evidence.suits import WORTH_A_RUN, most_suited
from workbench.evidence.trend import session_trend
from workbench.model.errors import InputError, NotEnoughData


def runs(settings, responses, **more):
    return [RunRecord(setting, response, **more) for setting, response in zip(settings, responses, strict=True)]


ABA = runs("AABBAABB", (4, 5, 7, 7, 5, 5, 7, 8))


# Trend


def test_a_steady_rise_is_found_as_trend_and_not_as_change():
    rising = runs("AABBAABBAA", (3, 3, 4, 5, 5, 6, 6, 7, 8, 8))
    trend = session_trend(rising)
    assert trend.middle[-1] - trend.middle[0] > 3
    assert list(trend.middle) == sorted(trend.middle)
    assert sum(trend.middle) == pytest.approx(0, abs=1e-9)


def test_a_session_without_a_trend_has_a_band_around_nothing():
    trend = session_trend(runs("ABABABAB", (5, 6, 5, 6, 5, 6, 5, 6)))
    assert all(low < 0 < high for low, high in zip(trend.low, trend.high, strict=True))
    assert max(map(abs, trend.middle)) < 0.3


def test_lower_is_better_turns_the_trend_over():
    falling = session_trend(runs("AABBAA", (3, 4, 4, 5, 6, 6)), higher_is_better=False)
    rising = session_trend(runs("AABBAA", (3, 4, 4, 5, 6, 6)))
    assert falling.middle == pytest.approx([-value for value in rising.middle], abs=0.05), "but for kindness"


def test_the_trend_of_times_is_in_logarithms_whatever_the_unit_of_time():
    seconds = (170, 167, 165, 163, 162, 161, 160.5, 160)
    by_second = session_trend(runs("ABABABAB", seconds), scale="log")
    by_minute = session_trend(runs("ABABABAB", [value / 60 for value in seconds]), scale="log")
    assert by_second.middle == pytest.approx(by_minute.middle, abs=1e-9)
    without = [value * math.exp(rise) for value, rise in zip(seconds, by_second.middle, strict=True)]
    assert max(without) / min(without) < max(seconds) / min(seconds)


def test_warm_ups_do_not_count_towards_the_middle_and_few_runs_give_no_trend():
    warm = [RunRecord("A", 2, warmup=True), *ABA]
    assert sum(session_trend(warm).middle[1:]) == pytest.approx(0, abs=1e-9)
    with pytest.raises(NotEnoughData, match="at least 4"):
        session_trend([RunRecord("A", 2, warmup=True), *runs("ABA", (5, 6, 5))])


# Dots


def test_the_dots_say_what_the_verdict_says():
    (row,) = judge_changes(ABA)
    dots = quantile_dots(ABA, "A", "B")
    assert len(dots) == 20
    assert list(dots) == sorted(dots)
    assert sum(dots) / 20 == pytest.approx(row.effect, abs=0.05)
    assert dots[0] < row.low < dots[1], "a twentieth lies below the interval"
    assert dots[-2] < row.high < dots[-1]
    weak = runs("ABAB", (5, 6, 5, 5))
    (unsure,) = judge_changes(weak)
    assert sum(dot > 0 for dot in quantile_dots(weak, "A", "B")) / 20 == pytest.approx(unsure.chance_helped, abs=0.05)


def test_the_dots_asked_the_other_way_round_are_mirrored():
    there, back = quantile_dots(ABA, "A", "B"), quantile_dots(ABA, "B", "A")
    assert back == pytest.approx([-dot for dot in reversed(there)], abs=1e-6)


def test_two_settings_not_ridden_one_after_the_other_have_no_dots():
    with pytest.raises(InputError, match="one after the other"):
        quantile_dots(ABA, "A", "C")


# The setup that suits


def test_a_clear_favourite_is_named_and_another_run_is_not_worth_it():
    found = most_suited(ABA)
    (row,) = judge_changes(ABA)
    assert (found.setting, found.runner_up, found.runs, found.among) == ("B", "A", 4, 2)
    assert found.gain == pytest.approx(row.effect, abs=0.15), "one model, one answer"
    assert found.chance_most > 0.95
    assert found.ride_value < WORTH_A_RUN


def test_the_highest_of_several_single_runs_is_pulled_in_and_is_the_one_to_ride_again():
    found = most_suited(runs("ABCD", (5, 6, 5, 8)))
    assert found.setting == "D"
    assert 0 < found.gain < 2.5, "less than the 3 points it looks"
    assert found.chance_most < 0.95
    assert (found.ride, found.ride_value > WORTH_A_RUN) == ("D", True)


def test_settings_rated_alike_leave_the_choice_open():
    found = most_suited(runs("ABCABC", (6, 6, 6, 6, 6, 6)))
    assert found.chance_most < 0.6
    assert found.chance_felt > 0.7, "hardly one is felt to be better"
    assert abs(found.gain) < 0.2


def test_names_and_the_level_of_the_ratings_do_not_matter():
    one, other = most_suited(ABA), most_suited(runs("XXYYXXYY", (3, 4, 6, 6, 4, 4, 6, 7)))
    assert (other.setting, other.runner_up) == ("Y", "X")
    assert other.gain == pytest.approx(one.gain, abs=0.1)
    assert other.chance_most == pytest.approx(one.chance_most, abs=0.02)


def test_the_same_runs_give_the_same_answer():
    assert most_suited(ABA) == most_suited(ABA)


def test_quicker_suits_when_times_are_judged():
    found = most_suited(runs("AABBAABB", (160, 161, 156, 157, 160, 160, 156, 156)), scale="log")
    assert found.setting == "B"
    assert 0.01 < found.gain < 0.04, "a share of the time"


def test_one_setup_alone_is_too_little():
    for few in (runs("AAA", (5, 6, 7)), [RunRecord("A", 5), RunRecord("B", 9, warmup=True)]):
        with pytest.raises(NotEnoughData, match="Only one setup"):
            most_suited(few)
    with pytest.raises(NotEnoughData, match="No setup"):
        most_suited([])


def test_settings_that_were_only_compared_are_among_those_that_may_suit():
    answers = ((("A", 5.0, None)), ("B", None, 1), ("A", None, -1), ("B", None, 1), ("A", None, -1), ("B", None, 1))
    found = most_suited([RunRecord(setting, liking, compared=compared) for setting, liking, compared in answers])
    assert (found.setting, found.runner_up, found.among) == ("B", "A", 2)
    assert found.gain_low < found.gain < found.gain_high
    assert 0.5 < found.chance_most < 1.0

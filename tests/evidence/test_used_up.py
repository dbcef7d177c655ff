"""What a range that is used up could mean."""

from __future__ import annotations

import pytest

from workbench.evidence.plan import KnobRuns, next_step
from workbench.evidence.search import Trial
from workbench.evidence.used_up import used_up_means
from workbench.model.errors import InputError


@pytest.mark.parametrize("kind", ["rebound", "compression"])
def test_each_end_of_each_kind_could_mean_something_of_its_own(kind):
    opened, closed = used_up_means(kind, "open"), used_up_means(kind, "closed")
    assert opened.startswith("Fully open is still too ")
    assert closed.startswith("Fully closed is still too ")
    assert "may be" in opened or "feel the same" in opened


def test_what_is_no_end_is_refused():
    with pytest.raises(InputError):
        used_up_means("rebound", "sideways")


def test_a_liking_that_rises_to_the_open_end_uses_the_range_up():
    trials: list[Trial] = []
    step = None
    for _ in range(8):
        knob = KnobRuns("k", "rebound", "front", "rebound", "low", 20, 10, tuple(trials))
        step = next_step((knob,))
        if step.remaining[0].exhausted or step.proposal is None:
            break
        position = step.proposal.position
        trials.append(Trial(position, min(9, 4 + round(3 * position / 20)), -2))
    assert step is not None
    assert [one.exhausted for one in step.remaining] == ["open"]
    assert "range is used up" in step.reason

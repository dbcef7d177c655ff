"""An entry written down and read back is the same entry."""

from __future__ import annotations

import json

from hypothesis import given
from hypothesis import strategies as st

from workbench.model.sag_rules import SagRound
from workbench.viewmodels.sag_draft import SagDraft, Stage, Typed, from_json, next_stage, stage_before, to_json

lengths = st.tuples() | st.lists(st.floats(0.1, 300), max_size=4).map(tuple)
maybe = st.none() | st.floats(-40, 4000)
rounds = st.builds(
    SagRound,
    readings_mm=st.lists(st.floats(0.1, 300), min_size=1, max_size=4).map(tuple),
    posture=st.sampled_from(["standing", "seated"]),
    method=st.sampled_from(["helper", "rider", "alone"]),
    measured_at=st.just("2031-05-14T09:10:00+00:00"),
    pressure_kpa=maybe,
    preload_mm=maybe,
    spacers=st.none() | st.integers(0, 9),
)
typed = st.builds(Typed, st.sampled_from(["reading", "pressure_kpa"]), st.text(max_size=20))
drafts = st.builds(
    SagDraft,
    stage=st.integers(1, 5),
    target_low=maybe,
    pressure_kpa=maybe,
    spacers=st.none() | st.integers(0, 9),
    readings_mm=lengths,
    rounds=st.lists(rounds, max_size=3).map(tuple),
    typed=st.lists(
        st.builds(Typed, st.sampled_from(["reading", "pressure_kpa"]), st.text(max_size=20)), max_size=2
    ).map(tuple),
)


@given(drafts)
def test_an_entry_survives_being_written_down(draft):
    assert from_json(to_json(draft)) == draft


def test_what_a_later_version_wrote_is_left_out():
    body = json.loads(to_json(SagDraft(readings_mm=(30.0,))))
    body["colour"] = "blue"
    assert from_json(json.dumps(body)).readings_mm == (30.0,)


def test_an_empty_entry_is_read_as_a_fresh_one():
    assert from_json("") == SagDraft()


def test_stages_go_on_one_by_one_and_stop_at_the_ends():
    draft = SagDraft()
    assert [next_stage(draft, stage) for stage in Stage] == [2, 3, 4, 5, 5]
    assert [stage_before(draft, stage) for stage in Stage] == [1, 1, 2, 3, 4]

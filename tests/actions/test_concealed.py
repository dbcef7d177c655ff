"""An export before the reveal: the fingerprint, and nothing by which the order could be told."""

from __future__ import annotations

import json

from tests.actions.test_bundle import a_blind_test, ridden
from tests.fixtures import everything
from workbench.actions.blind import reveal
from workbench.library.dump import export_json
from workbench.model.ride import BlindPlan, Run


def exported(desk):
    return export_json(desk._library)


def tells(desk, text, sealed):
    """The secrets of a test that a text tells."""
    runs = [run.id for run in everything(desk)[Run] if run.session_id == sealed.session_id]
    return [one for one in (sealed.id, f'"{sealed.order}"', str(sealed.seed), *runs) if one in text]


def test_nothing_of_a_test_under_way_is_exported_but_its_seal(desk):
    bike = ridden(desk)
    sealed = a_blind_test(desk, bike, runs=3)
    text = exported(desk)
    assert tells(desk, text, sealed) == []
    held = json.loads(text)
    assert held["concealed"]["tests"] == [
        {"session_id": sealed.session_id, "fixed_at": sealed.fixed_at, "digest": sealed.digest}
    ]
    assert "left out" in held["concealed"]["said"]
    assert held["records"]["blind_plan"] == held["records"]["run_rating"] == []
    assert len(held["records"]["run"]) == 2
    labels = [step["label"] for step in held["journal"]]
    assert labels.count("Keep") == 3, "that something was done is no secret"
    assert exported(desk) == text


def test_a_run_or_a_whole_test_undone_is_not_told_by_the_journal(desk):
    bike = ridden(desk)
    sealed = a_blind_test(desk, bike, runs=2)
    undone = [run.id for run in everything(desk)[Run] if run.session_id == sealed.session_id]
    desk.undo()
    assert [one for one in (*undone, f'"{sealed.order}"') if one in exported(desk)] == []
    desk.undo()
    desk.undo()
    assert everything(desk)[BlindPlan] == ()
    assert [one for one in (*undone, f'"{sealed.order}"', str(sealed.seed)) if one in exported(desk)] == []


def test_once_revealed_all_of_it_is_exported(desk):
    bike = ridden(desk)
    sealed = a_blind_test(desk, bike, runs=4)
    desk.do("Reveal", reveal(sealed.session_id, guesses={0: 0, 1: 1}), bike_id=bike.id)
    held = json.loads(exported(desk))
    assert held["concealed"] is None
    (plan,) = held["records"]["blind_plan"]
    assert (plan["order"], plan["seed"], plan["digest"]) == (sealed.order, sealed.seed, sealed.digest)
    assert len(held["records"]["run"]) == 6

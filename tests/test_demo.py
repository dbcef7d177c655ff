"""The sample garage: made by the program's own deeds, the same every time, and sound."""

from __future__ import annotations

import json
import uuid

import pytest

from workbench.__main__ import main
from workbench.actions.desk import Desk
from workbench.actions.garage import garage_rows
from workbench.actions.job import job_records
from workbench.actions.ride import ride_records
from workbench.demo import build, demo_library
from workbench.library.dump import check, export_json
from workbench.library.library import open_library
from workbench.library.tables import schema
from workbench.model.bike import StationState
from workbench.model.job import job_marks
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.bundle import BundleViewModel


def now():
    return "2026-05-20T10:00:00+00:00"


def is_key(text: str) -> bool:
    try:
        return str(uuid.UUID(text)) == text
    except ValueError:
        return False


@pytest.fixture(scope="module")
def sample(tmp_path_factory):
    path = tmp_path_factory.mktemp("sample") / "sample.trailbench"
    build(path)
    return path


@pytest.fixture
def library(sample, tmp_path):
    copy = tmp_path / "copy.trailbench"
    copy.write_bytes(sample.read_bytes())
    library = open_library(copy, schema, now=now)
    yield library
    library.close()


@pytest.fixture
def desk(library):
    return Desk(library)


def test_the_sample_is_sound(library):
    assert check(library) == []


def test_two_builds_differ_in_their_keys_alone(sample, library, tmp_path):
    again = tmp_path / "again.trailbench"
    build(again)
    other = open_library(again, schema, now=now)
    try:
        first, second = (json.loads(export_json(one)) for one in (library, other))
        counts = [{table: len(rows) for table, rows in one["records"].items()} for one in (first, second)]
        assert counts[0] == counts[1]
        assert summary(first) == summary(second)
    finally:
        other.close()


def summary(told):
    """Every row of every table without its keys, in an order that does not depend on them."""

    def bare(row):
        return json.dumps({k: v for k, v in row.items() if not (isinstance(v, str) and has_key(v))}, sort_keys=True)

    steps = sorted(told["journal"], key=lambda step: step["stamp"])
    labels = [(step["label"], step["at"], step["station"], len(step["rows"])) for step in steps]
    return labels, {table: sorted(map(bare, rows)) for table, rows in told["records"].items()}


def has_key(text: str) -> bool:
    return any(is_key(part) for part in text.replace("|", " ").replace(":", " ").split())


def test_there_are_bikes_in_different_states_and_one_put_away(desk):
    rows = desk.ask(garage_rows())
    marks = {row.bike.name: job_marks(desk.ask(job_records(row.bike.id))) for row in rows}
    now_at = {
        name: next((mark.station for mark in one if mark.state == StationState.NOW), "done")
        for name, one in marks.items()
    }
    assert len(rows) >= 4
    assert len(set(now_at.values())) >= 4
    assert "done" in now_at.values()
    assert len(desk.ask(garage_rows(archived=True))) == 1


def test_one_bike_was_ridden_over_three_sessions_each_ending_where_the_adjuster_began_and_is_liked(desk):
    ridden = [desk.ask(ride_records(row.bike.id)) for row in desk.ask(garage_rows())]
    (finished,) = [records for records in ridden if records.sessions]
    runs = [run for session in finished.sessions for run in session.runs]
    assert (len(finished.sessions), len(runs)) == (3, 38)
    assert len({session.session.started_at[:10] for session in finished.sessions}) == 3
    assert all(session.session.ended_at for session in finished.sessions)
    assert not any(run.is_confounded for run in runs)
    assert [run.is_warmup for run in runs] == [run.number == 1 for run in runs]
    assert all(1 <= run.liking <= 9 for run in runs)
    assert len({run.setup_id for run in runs}) > 3
    assert finished.current is not None


def test_every_deed_of_the_sample_has_a_label_and_a_station(library):
    steps = json.loads(export_json(library))["journal"]
    assert all(step["label"] and step["station"] for step in steps)
    assert all(len(step["label"]) <= 60 for step in steps)


def test_a_fresh_copy_is_given_each_time_and_one_with_a_name_is_kept(tmp_path, capsys):
    named = tmp_path / "mine.trailbench"
    first, second = demo_library(named), demo_library()
    assert first == named
    assert first != second
    assert first.read_bytes() == second.read_bytes()
    named.write_bytes(b"changed")
    assert demo_library(named).read_bytes() == b"changed"
    assert capsys.readouterr().err.count("this is done once") == 1


def test_the_sample_can_be_exported_from_the_command_line(tmp_path):
    target = tmp_path / "sample.json"
    assert main(["--demo", "--check", "--export", str(target)]) == 0
    assert len(json.loads(target.read_text(encoding="utf-8"))["records"]["run"]) == 38


def test_the_sample_garage_goes_out_as_a_file_and_comes_in_elsewhere_unharmed(desk, tmp_path):
    (tmp_path / "elsewhere").mkdir()
    other = open_library(tmp_path / "elsewhere" / "other.trailbench", schema, now=now)
    try:
        out, into = (BundleViewModel(one, Bench(one)) for one in (desk, Desk(other)))
        target = tmp_path / out.file_name(whole=True)
        assert out.take_along(target, whole=True)
        assert into.open_file(target)
        assert into.bring_in()
        assert check(other) == []
        assert json.loads(export_json(other))["records"] == json.loads(export_json(desk._library))["records"]
    finally:
        other.close()

"""Taking along and bringing in between two real libraries: nothing twice, nothing unseen, one step to undo."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.fixtures import (
    a_baseline,
    a_bike,
    a_counted_bike,
    a_run,
    a_session,
    check_there_and_back,
    everything,
    make_desk,
)
from workbench.actions import bundle as bundles
from workbench.actions.blind import begin_blind, keep_blind_run, reveal
from workbench.actions.desk import Desk
from workbench.actions.edit import edit
from workbench.actions.fit_unit import fit_unit
from workbench.actions.parts import bike_parts
from workbench.actions.people import add_person
from workbench.actions.ride import edit_run, ride_records
from workbench.exchange.bundle import write_bundle
from workbench.exchange.merge import Kind
from workbench.library.dump import check
from workbench.library.photos import add_photo, photo
from workbench.model.bike import Bike
from workbench.model.errors import ExchangeError, WorkbenchError
from workbench.model.person import Person
from workbench.model.ride import BlindPlan, Run
from workbench.model.setting import Item, OnBike, Setup, latest
from workbench.model.unit import Unit

HEAD = "0002"


@pytest.fixture
def here(tmp_path):
    with make_desk(tmp_path / "here") as desk:
        yield desk


@pytest.fixture
def there(tmp_path):
    with make_desk(tmp_path / "there") as desk:
        yield desk


def ridden(desk, **about):
    bike = a_counted_bike(desk, **about)
    a_baseline(desk, bike)
    session = a_session(desk, bike)
    for liking in (5, 6):
        a_run(desk, session, liking=liking, note=f"liked {liking}")
    return bike


def text_of(desk: Desk, *bike_ids: str) -> str:
    schema = desk._library.schema_number
    bundle, _ = desk.ask(bundles.gather(bike_ids or None, "all", schema=schema, now="2031-05-14T09:00:00+00:00"))
    return write_bundle(bundle, desk.ask(bundles.layout()))


def read(desk: Desk, text: str):
    kinds, types = desk.ask(bundles.layout()), desk.ask(bundles.record_types())
    return bundles.check(text.encode(), kinds, types, schema=desk._library.schema_number, what="The file")


def differences(desk: Desk, text: str):
    return desk.ask(bundles.compare_with(read(desk, text)))


def kinds(desk: Desk, text: str):
    return {one.kind for one in differences(desk, text)}


def bring(desk: Desk, text: str, choices=None):
    return desk.do("Bring in", bundles.bring_in(read(desk, text), choices or {}), station="garage")


def test_a_bike_comes_over_with_all_that_belongs_to_it_and_nothing_else(there, here):
    bike = ridden(there)
    a_bike(there, name="Fell 130", rider="Somebody else")
    text = text_of(there, bike.id)
    assert kinds(here, text) == {Kind.NEW}
    bring(here, text)
    assert there.ask(ride_records(bike.id)) == here.ask(ride_records(bike.id))
    assert [one.name for one in everything(here)[Person]] == ["M. Anders"]
    assert check(here._library) == []


def test_a_whole_garage_comes_over_and_gives_the_same_file_again(there, here):
    ridden(there)
    a_bike(there, name="Fell 130", layout="hardtail", rider="Bo")
    there.do("Add Cy", add_person("Cy"))
    text = text_of(there)
    check_there_and_back(here, "Bring in", bundles.bring_in(read(here, text), {}))
    assert everything(here) == everything(there)
    assert text_of(here).partition('"records"')[2].partition('"earlier"')[0] in text


def test_a_second_time_there_is_nothing_new_and_no_step(there, here):
    text = text_of(there, ridden(there).id)
    bring(here, text)
    before = here.undo_step()
    assert kinds(here, text) == {Kind.SAME}
    assert bring(here, text) == 0
    assert here.undo_step() == before


def test_one_undo_takes_all_of_it_back_and_then_it_counts_as_removed(there, here):
    text = text_of(there, ridden(there).id)
    bring(here, text)
    here.undo()
    assert not any(everything(here).values())
    assert kinds(here, text) == {Kind.REMOVED}
    assert bring(here, text) == 0
    every = {one.key: True for one in differences(here, text)}
    assert bring(here, text, every) == len(every)
    assert everything(here)[Bike] == everything(there)[Bike]


def test_the_newer_version_is_known_on_either_side(there, here):
    bike = a_bike(there)
    bring(here, text_of(there, bike.id))
    there.do("Tag", edit(Bike, bike.id, "tags", "there"))
    newer = text_of(there, bike.id)
    assert kinds(here, newer) == {Kind.SAME, Kind.THERE}
    older = text_of(here, bike.id)
    assert kinds(there, older) == {Kind.SAME, Kind.HERE}
    bring(there, older)
    assert everything(there)[Bike][0].tags == "there"
    bring(here, newer)
    assert everything(here) == everything(there)


def test_what_was_changed_on_both_sides_waits_for_a_word(there, here):
    bike = a_bike(there)
    bring(here, text_of(there, bike.id))
    here.do("Tag", edit(Bike, bike.id, "tags", "here"))
    there.do("Tag", edit(Bike, bike.id, "tags", "there"))
    text = text_of(there, bike.id)
    assert Kind.BOTH in kinds(here, text)
    before = everything(here)
    with pytest.raises(ExchangeError, match="which version stays"):
        bring(here, text)
    assert everything(here) == before
    bring(here, text, {("bike", bike.id): False})
    assert everything(here) == before
    bring(here, text, {("bike", bike.id): True})
    assert everything(here)[Bike][0].tags == "there"
    assert kinds(here, text) == {Kind.SAME}


def test_setups_and_runs_of_two_benches_keep_apart_although_their_numbers_are_the_same(there, here):
    bike = ridden(there)
    bring(here, text_of(there, bike.id))
    for desk, liking in ((there, 3), (here, 8)):
        session = desk.ask(ride_records(bike.id)).sessions[-1].session
        a_run(desk, session, liking=liking)
    text = text_of(there, bike.id)
    bring(here, text)
    runs = {run.number: run.liking for run in everything(here)[Run]}
    assert runs == {1: 5, 2: 6, 3: 8, 4: 3}
    assert kinds(here, text) == {Kind.SAME}
    assert check(here._library) == []


def test_a_fork_fitted_on_each_side_leaves_the_later_one_on_the_bike_on_both(there, here):
    bike = a_counted_bike(there)
    bring(here, text_of(there, bike.id))
    there.do("Fit", fit_unit(bike.id, "front", "air", travel_mm=160.0, name="Tern 160"), bike_id=bike.id)
    for _ in range(20):
        here.now()
    here.do("Fit", fit_unit(bike.id, "front", "coil", travel_mm=150.0, name="Marl coil"), bike_id=bike.id)
    for desk, other in ((here, there), (there, here)):
        text = text_of(other, bike.id)
        choices = {one.key: True for one in differences(desk, text) if one.kind == Kind.BOTH}
        bring(desk, text, choices)
        parts = desk.ask(bike_parts(bike.id))
        assert [unit.name for unit in parts.units if unit.end == "front"] == ["Marl coil"]
        assert parts.bike.layout == "coil_air"
        assert len(parts.former) == 2
        assert check(desk._library) == []


def test_a_bike_taken_without_its_shock_has_the_layout_of_what_hangs_on_it(there, here):
    bike = a_counted_bike(there)
    bring(here, text_of(there, bike.id))
    shock = here.ask(bike_parts(bike.id)).unit("rear")
    there.do("Off", fit_unit(bike.id, "rear", "rigid"), bike_id=bike.id)
    here.do("Note", edit(Unit, shock.id, "note", "Rebuilt in spring"), bike_id=bike.id)
    text = text_of(there, bike.id)
    bring(here, text, {("unit", shock.id): False})
    parts = here.ask(bike_parts(bike.id))
    assert (parts.unit("rear").note, parts.bike.layout) == ("Rebuilt in spring", "air_air")


def test_older_lines_of_a_log_do_not_become_what_is_on_the_bike_now(there, here):
    bike = a_counted_bike(there)
    bring(here, text_of(there, bike.id))

    def pump(kpa, at):
        def deed(gate):
            last = max(gate.find(OnBike, bike_id=bike.id), key=lambda line: line.sequence)
            pressure = next(line for line in gate.find(OnBike, bike_id=bike.id) if line.item == "pressure")
            gate.put(replace(pressure, id=f"line-{kpa:g}", value=kpa, sequence=last.sequence + 1, at=at))

        return deed

    there.do("Pump", pump(500.0, "2031-06-01T09:00:00+00:00"))
    here.do("Pump", pump(550.0, "2031-06-02T09:00:00+00:00"))
    bring(here, text_of(there, bike.id))
    bring(there, text_of(here, bike.id))
    for desk in (here, there):
        now = latest(desk.ask(lambda reader: reader.find(OnBike, bike_id=bike.id)))
        assert next(line.value for line in now.values() if line.id in ("line-500", "line-550")) == 550.0


def test_a_rider_entered_as_riding_the_bike_on_both_sides_is_no_clash(there, here):
    bike = a_bike(there)
    bring(here, text_of(there, bike.id))
    for desk in (there, here):
        cy = Person("cy", "Cy")
        desk.do("Add Cy", lambda gate, cy=cy: gate.put(cy))
        from workbench.actions.people import add_rider

        desk.do("Rides", add_rider(bike.id, "cy"))
    text = text_of(there, bike.id)
    assert Kind.NEW not in kinds(here, text)
    bring(here, text)
    assert check(here._library) == []


def test_a_file_that_points_at_what_is_nowhere_is_refused(there, here):
    held = json.loads(text_of(there, ridden(there).id))
    held["records"]["setup"] = []
    held["earlier"].pop("setup", None)
    with pytest.raises(ExchangeError, match="points at a setup that is neither in it nor here"):
        differences(here, json.dumps(held))
    with pytest.raises(ExchangeError):
        bring(here, json.dumps(held))
    assert not any(everything(here).values())


@pytest.mark.parametrize(
    ("table", "name", "value"),
    [
        ("run", "liking", 10),
        ("run", "number", 0),
        ("run", "ridden_at", "yesterday"),
        ("run", "ridden_at", ""),
        ("bike", "created_at", "31.5.2031"),
        ("bike", "layout", "unicycle"),
        ("bike", "rear_travel_mm", 1e6),
        ("bike", "name", ""),
        ("person", "pressure_unit", "atm"),
        ("person", "mass_kg", -5),
        ("unit", "spring", "water"),
        ("range_count", "steps", -1),
        ("range_count", "steps", 10**9),
        ("on_bike", "value", 1e300),
        ("on_bike", "item", "mood"),
        ("generation", "reason", "boredom"),
    ],
)
def test_what_nobody_could_have_entered_is_refused(there, here, table, name, value):
    held = json.loads(text_of(there, ridden(there).id))
    held["records"][table][0][name] = value
    with pytest.raises(ExchangeError, match=r"cannot be taken|not as it was exported"):
        read(here, json.dumps(held))


def test_photos_come_along_by_their_content(there, here):
    name = add_photo(there._library.path, b"picture")
    assert photo(there._library.path, name) == b"picture"
    assert photo(here._library.path, name) is None
    (there._library.path.parent / "photos" / name).write_bytes(b"other")
    assert photo(there._library.path, name) is None


def test_names_that_mean_mischief_come_over_as_they_are(there, here):
    names = ("<img src=x>", "=1+1", "../../x", "\u05d0\u05d5", "a & b", "'; DROP TABLE bike; --", "\U0001f6b2")
    for name in names:
        a_bike(there, name=name, rider=name)
    text = text_of(there)
    bring(here, text)
    assert sorted(one.name for one in everything(here)[Bike]) == sorted(names)
    assert kinds(here, text) == {Kind.SAME}


def test_setup_names_and_runs_edited_there_are_told_apart_from_new_ones(there, here):
    bike = ridden(there)
    bring(here, text_of(there, bike.id))
    run = everything(there)[Run][0]
    there.do("Note", edit_run(run.id, note="changed"))
    found = {one.key: one.kind for one in differences(here, text_of(there, bike.id)) if one.kind != Kind.SAME}
    assert found == {("run", run.id): Kind.THERE}
    assert Setup in everything(here)


@pytest.fixture(scope="module")
def exported(tmp_path_factory):
    """A bundle of a ridden bike, and an empty library to bring mutations of it into."""
    folder = tmp_path_factory.mktemp("fuzz")
    with make_desk(folder / "there") as desk:
        text = text_of(desk, ridden(desk).id)
    with make_desk(folder / "here") as desk:
        yield desk, text


VALUES = st.none() | st.booleans() | st.integers(-5, 10**9) | st.floats(-1e12, 1e12) | st.text(max_size=6)


@given(st.data())
@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_no_mutation_of_a_bundle_ever_fails_otherwise_or_comes_in_half(exported, data):
    desk, text = exported
    held = json.loads(text)
    for _ in range(data.draw(st.integers(1, 3))):
        table = data.draw(st.sampled_from(sorted(held["records"])))
        rows = held["records"][table]
        if not rows:
            continue
        row = data.draw(st.sampled_from(rows))
        name = data.draw(st.sampled_from(sorted(row)))
        other = data.draw(st.sampled_from([one[name] for one in rows]) | VALUES)
        if data.draw(st.integers(0, 5)) == 0:
            rows.remove(row)
        else:
            row[name] = other
    try:
        every = {one.key: True for one in differences(desk, json.dumps(held))}
        bring(desk, json.dumps(held), every)
    except WorkbenchError:
        pass
    else:
        assert check(desk._library) == []
        desk.undo()
    assert not any(everything(desk).values())


# A blind test under way


def test_a_blind_test_under_way_stays_behind_and_the_file_says_so(here, there):
    bike = ridden(here)
    sealed = a_blind_test(here, bike, runs=3)
    text = text_of(here, bike.id)
    held = json.loads(text)
    assert "blind_plan" not in held["records"]
    assert len(held["records"]["session"]) == 1
    assert len(held["records"]["run"]) == 2
    for secret in (sealed.id, sealed.session_id, str(sealed.seed), f'"{sealed.order}"'):
        assert secret not in text
    assert held["title"].endswith(f"without a blind test that is under way (fingerprint {sealed.digest[:16]})")
    take(there, text)
    assert not everything(there)[BlindPlan]
    assert kinds_of(there, text) == {Kind.SAME}, "a second time there is nothing new"
    assert text_of(here, bike.id) == text


def test_once_revealed_it_goes_along_as_new(here, there):
    bike = ridden(here)
    sealed = a_blind_test(here, bike, runs=4)
    take(there, text_of(here, bike.id))
    here.do("Reveal", reveal(sealed.session_id, guesses={0: 0, 1: 1}), bike_id=bike.id)
    later = text_of(here, bike.id)
    assert "blind test" not in json.loads(later)["title"]
    assert kinds_of(there, later) >= {Kind.NEW, Kind.SAME}
    take(there, later)
    assert everything(there)[BlindPlan] == everything(here)[BlindPlan]
    assert len(everything(there)[Run]) == len(everything(here)[Run])
    assert check(there._library) == []


def a_blind_test(desk, bike, *, runs):
    """A blind test of two pairs, ridden so far."""
    records = desk.ask(ride_records(bike.id))
    told = replace(records.sessions[-1].session, verified_at=desk.now(), ended_at=None)
    key = (Item.ADJUSTER.value, records.parts.adjusters[1].id)
    deed = begin_blind(told, records.current.id, pairs=2, seed=987_654_321, wanted={key: 10.0})
    plan = desk.do("Begin", deed, bike_id=bike.id)
    for liking in range(5, 5 + runs):
        run = Run("", "", 0, "", "", "", liking=liking)
        rated = keep_blind_run(plan.session_id, run, ratings=(("grip", 6, "front"),))
        desk.do("Keep", rated, bike_id=bike.id)
    return plan


def take(desk, text):
    return desk.do("Bring in", bundles.bring_in(read(desk, text), {}))


def kinds_of(desk, text):
    return {one.kind for one in desk.ask(bundles.compare_with(read(desk, text)))}

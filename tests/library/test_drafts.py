from __future__ import annotations

import pytest

from tests.library.garden import Bike, Part, Reading
from tests.library.help import crashed_copy, opened
from workbench.actions.desk import Desk
from workbench.library.dump import check
from workbench.model.errors import InputError, LibraryError


@pytest.fixture
def library(tmp_path):
    with opened(tmp_path / "a") as library:
        yield library


@pytest.fixture
def desk(library):
    desk = Desk(library)
    desk.do("Add bike", lambda gate: gate.put(Bike("b", "Tarn"), Part("p", "b", "rear")), bike_id="b")
    return desk


def keep_sag(desk: Desk, draft_id: str) -> None:
    """The deed that turns a draft into a record."""

    def deed(gate) -> None:
        gate.put(Reading("r", "p", 14.5))
        gate.remove_draft(draft_id)

    desk.do("Keep sag", deed, bike_id="b", station="sag")


def test_a_draft_grows_in_place(desk):
    first = desk.keep_draft("sag", "{}", bike_id="b", subject="p")
    second = desk.keep_draft("sag", '{"sag": "14,"}', bike_id="b", subject="p")
    assert second.id == first.id
    assert desk.open_draft("sag", bike_id="b", subject="p") == second
    assert desk.drafts() == desk.drafts("b") == (second,)
    assert desk.drafts("other") == ()


def test_kind_bike_and_subject_tell_drafts_apart(desk):
    keys = [("sag", "b", "p"), ("sag", "b", None), ("sag", None, None), ("count", "b", "p")]
    made = {key: desk.keep_draft(key[0], "{}", bike_id=key[1], subject=key[2]).id for key in keys}
    assert len(set(made.values())) == 4
    for kind, bike_id, subject in keys:
        assert desk.open_draft(kind, bike_id=bike_id, subject=subject).id == made[kind, bike_id, subject]


def test_a_draft_is_no_step_and_leaves_redo_alone(desk):
    desk.do("Name", lambda gate: gate.put(Bike("b", "Fell")))
    desk.undo()
    desk.keep_draft("sag", "{}", bike_id="b")
    assert (desk.undo_label(), desk.redo_label()) == ("Add bike", "Name")


def test_every_entry_survives_a_power_cut(desk, library, tmp_path):
    desk.keep_draft("sag", '{"sag": "14,5"}', bike_id="b")
    copy = crashed_copy(library, tmp_path / "crashed")
    with opened(copy) as other:
        assert Desk(other).open_draft("sag", bike_id="b").body == '{"sag": "14,5"}'


def test_the_deed_closes_its_draft_undo_opens_it_and_redo_closes_it(desk, library):
    draft = desk.keep_draft("sag", '{"sag": "14.5"}', bike_id="b")
    keep_sag(desk, draft.id)
    assert desk.drafts() == ()
    desk.undo()
    assert [d.body for d in desk.drafts()] == ['{"sag": "14.5"}']
    assert desk.ask(lambda reader: reader.count(Reading)) == 0
    desk.redo()
    assert desk.drafts() == ()
    assert check(library) == []


def test_undo_leaves_the_old_draft_closed_when_a_newer_one_was_begun(desk):
    old = desk.keep_draft("sag", "old", bike_id="b")
    keep_sag(desk, old.id)
    new = desk.keep_draft("sag", "new", bike_id="b")
    assert new.id != old.id
    desk.undo()
    assert desk.drafts() == (new,)
    desk.redo()
    assert desk.drafts() == (new,)


def test_a_draft_edited_after_undo_closes_on_redo_with_its_newer_text(desk):
    draft = desk.keep_draft("sag", "old", bike_id="b")
    keep_sag(desk, draft.id)
    desk.undo()
    desk.keep_draft("sag", "newer", bike_id="b")
    desk.redo()
    desk.undo()
    assert [d.body for d in desk.drafts()] == ["newer"]


def test_a_draft_discarded_after_undo_stays_discarded(desk):
    draft = desk.keep_draft("sag", "old", bike_id="b")
    keep_sag(desk, draft.id)
    desk.undo()
    desk.discard_draft(draft.id)
    desk.redo()
    desk.undo()
    assert desk.drafts() == ()


def test_keeping_the_same_draft_twice_is_refused_whole(desk):
    draft = desk.keep_draft("sag", "{}", bike_id="b")
    keep_sag(desk, draft.id)
    with pytest.raises(LibraryError, match="already been kept"):
        keep_sag(desk, draft.id)
    assert desk.undo_label() == "Keep sag"


def test_a_failed_deed_leaves_its_draft_open(desk):
    draft = desk.keep_draft("sag", "{}", bike_id="b")

    def deed(gate) -> None:
        gate.remove_draft(draft.id)
        gate.put(Reading("r", "p", float("nan")))

    with pytest.raises(InputError):
        desk.do("Keep sag", deed)
    assert desk.drafts() == (draft,)


def test_discard_is_no_step_and_can_be_taken_back(desk):
    draft = desk.keep_draft("sag", "text", bike_id="b")
    assert desk.discard_draft(draft.id).closed_by == "discarded"
    assert desk.drafts() == ()
    assert desk.undo_label() == "Add bike"
    assert desk.take_back_draft(draft.id) == draft
    assert desk.drafts() == (draft,)


def test_a_draft_is_not_taken_back_over_a_newer_one_nor_twice(desk):
    draft = desk.keep_draft("sag", "old", bike_id="b")
    desk.discard_draft(draft.id)
    with pytest.raises(LibraryError, match="already"):
        desk.discard_draft(draft.id)
    newer = desk.keep_draft("sag", "new", bike_id="b")
    with pytest.raises(LibraryError, match="begun since"):
        desk.take_back_draft(draft.id)
    with pytest.raises(LibraryError, match="nothing to take back"):
        desk.take_back_draft(newer.id)
    with pytest.raises(LibraryError, match="no longer"):
        desk.take_back_draft("nix")
    assert desk.drafts() == (newer,)


def test_a_draft_holds_what_was_typed_and_refuses_the_endless(desk):
    typed = "12,5 „mm“ 💥\r\n<b>" * 5_000
    assert desk.keep_draft("sag", typed, bike_id="b").body == typed
    assert desk.open_draft("sag", bike_id="b").body == typed
    with pytest.raises(InputError):
        desk.keep_draft("sag", "x" * 2_000_001, bike_id="b")

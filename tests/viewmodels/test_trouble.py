from __future__ import annotations

import pytest

from workbench.actions.desk import Backup
from workbench.model.errors import LibraryDamaged, LibraryLocked, LibraryNewer, LibraryUnreachable, NotALibrary
from workbench.viewmodels.trouble import Way, gone, resolve

SOUND = Backup("sound", "2031-05-14T09:00:00+00:00", "by itself", 40_000, 3)
TORN = Backup("torn", "2031-05-15T09:00:00+00:00", "by itself", 40_000, 0, trouble="malformed")


def ways(error, backups=(), *, is_file=True):
    return [way for way, _ in resolve(error, backups, is_file=is_file).ways]


@pytest.mark.parametrize(
    ("error", "first"),
    [
        (LibraryLocked("x"), Way.RETRY),
        (LibraryNewer("x"), Way.OTHER),
        (NotALibrary("x"), Way.OTHER),
        (LibraryUnreachable("x"), Way.RETRY),
        (LibraryDamaged("x"), Way.OTHER),
    ],
)
def test_every_refusal_has_a_way_out_and_an_end(error, first):
    found = ways(error)
    assert found[0] == first
    assert found[-1] == Way.QUIT
    assert len(found) >= 3


def test_what_may_only_be_read_can_be_looked_at_if_it_is_there():
    assert Way.LOOK in ways(LibraryUnreachable("x"))
    assert Way.LOOK not in ways(LibraryUnreachable("x"), is_file=False)
    assert Way.LOOK not in ways(LibraryLocked("x"))


def test_a_damaged_library_leads_to_its_newest_sound_backup():
    state = resolve(LibraryDamaged("It is damaged."), (TORN, SOUND), is_file=True)
    assert state.ways[0][0] == Way.RESTORE
    assert state.picked == "sound"
    assert [row.checked for row in state.backups] == ["damaged", "when it was made"]


def test_a_damaged_library_without_a_sound_backup_says_so():
    state = resolve(LibraryDamaged("It is damaged."), (TORN,), is_file=True)
    assert state.text == "It is damaged. No usable backup lies beside it."
    assert Way.RESTORE not in [way for way, _ in state.ways]


def test_backups_are_not_offered_for_what_is_not_damaged():
    for error in (LibraryNewer("x"), NotALibrary("x"), LibraryLocked("x")):
        assert resolve(error, (SOUND,), is_file=True).backups == ()


def test_a_library_that_is_gone_is_not_begun_anew_unasked():
    state = resolve(gone("garage"), (SOUND,), is_file=False)
    assert [way for way, _ in state.ways] == [Way.RESTORE, Way.BEGIN, Way.OTHER, Way.QUIT]
    assert "backups of it" in state.text

from __future__ import annotations

import re
import shutil
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
from alembic.config import Config
from alembic.script import ScriptDirectory

from tests.library import garden, garden_next
from tests.library.help import INSTANT, ROOT, opened, prints
from workbench.actions.desk import Desk
from workbench.library.dump import check
from workbench.library.library import open_library
from workbench.library.upgrade import HEAD, SHIPPED, Migrations
from workbench.model.errors import LibraryDamaged, LibraryUnreachable

STEPS = Path(__file__).parent / "steps"
FIRST = Migrations("0001", SHIPPED.folder)


def with_step(folder: Path, name: str) -> Migrations:
    """The first of the shipped steps and one of the garden's own."""
    scripts = folder / "scripts"
    shutil.copytree(SHIPPED.folder, scripts, ignore=shutil.ignore_patterns("__pycache__", "v000[2-9]_*"))
    shutil.copyfile(STEPS / name, scripts / "versions" / name)
    return Migrations("0002", scripts)


def planted(path: Path) -> None:
    """A library of schema 0001 with a bike, a part, a reading, an open draft and an undone step."""
    with opened(path, migrations=FIRST) as library:
        desk = Desk(library)
        part = garden.Part("p", "b", "rear", 7, b"\x00\xff")
        desk.do("Add bike", lambda gate: gate.put(garden.Bike("b", "Tarn"), part, garden.Reading("r", "p", 14.5)))
        desk.do("Tie", lambda gate: gate.put(garden.Bike("b", "Tarn", main_part_id="p")))
        desk.do("Rename", lambda gate: gate.put(garden.Bike("b", "Fell", main_part_id="p")))
        desk.undo()
        desk.keep_draft("sag", '{"sag": "14,"}', bike_id="b")


def open_next(path: Path, migrations: Migrations):
    return open_library(path, garden_next.garden_next, now=lambda: INSTANT, migrations=migrations)


def test_the_head_is_the_last_of_the_shipped_steps():
    config = Config()
    config.set_main_option("script_location", str(SHIPPED.folder))
    assert ScriptDirectory.from_config(config).get_heads() == [HEAD]


def test_schema_numbers_can_be_compared_as_texts():
    names = sorted(path.name for path in (SHIPPED.folder / "versions").glob("v*.py"))
    assert all(re.fullmatch(r"v\d{4}_\w+\.py", name) for name in names)
    assert names[-1][1:5] == HEAD


def test_an_older_library_is_brought_up_with_all_it_holds(tmp_path):
    path = tmp_path / "a.trailbench"
    planted(path)
    library = open_next(path, with_step(tmp_path, "v0002_part_mass.py"))
    desk = Desk(library)
    assert desk.ask(lambda r: r.need(garden_next.Part, "p")) == garden_next.Part("p", "b", "rear", 0.0, 7, b"\x00\xff")
    assert desk.ask(lambda r: r.count(garden.Reading)) == 1
    assert [draft.body for draft in desk.drafts("b")] == ['{"sag": "14,"}']
    assert library.raw.execute("PRAGMA foreign_keys").fetchone() == (1,)
    assert check(library) == []
    library.close()


def test_an_upgraded_file_has_the_same_tables_as_a_new_one(tmp_path):
    migrations = with_step(tmp_path, "v0002_part_mass.py")
    planted(tmp_path / "old")
    tables = []
    for name in ("old", "new"):
        library = open_next(tmp_path / name, migrations)
        rows = library.raw.execute("SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL ORDER BY name").fetchall()
        tables.append([(table, re.sub(r'[\s"]+', "", sql)) for table, sql in rows])
        library.close()
    assert tables[0] == tables[1]


def test_steps_before_an_upgrade_are_history_and_later_ones_can_be_undone(tmp_path):
    path = tmp_path / "a.trailbench"
    planted(path)
    migrations = with_step(tmp_path, "v0002_part_mass.py")
    library = open_next(path, migrations)
    desk = Desk(library)
    assert (desk.undo(), desk.redo()) == (None, None)
    desk.do("Rename", lambda gate: gate.put(garden.Bike("b", "Crag")))
    assert desk.undo().label == "Rename"
    assert desk.undo() is None
    assert desk.redo().label == "Rename"
    assert check(library) == []
    library.close()


def test_a_copy_of_the_old_file_is_made_before_the_upgrade(tmp_path):
    path = tmp_path / "a.trailbench"
    planted(path)
    library = open_next(path, with_step(tmp_path, "v0002_part_mass.py"))
    backup = library.backup_before_upgrade
    library.close()
    assert backup == tmp_path / "backups" / "a before update from 0001.trailbench"
    with opened(backup, migrations=FIRST) as old, old.reader() as reader:
        assert reader.need(garden.Part, "p").position == 7


@pytest.mark.parametrize("step", ["v0002_gives_up.py", "v0002_loses_rows.py"])
def test_a_step_that_fails_half_way_leaves_the_library_as_it_was(tmp_path, step):
    path = tmp_path / "a.trailbench"
    planted(path)
    with closing(sqlite3.connect(path)) as connection:
        before = list(connection.iterdump())
    with pytest.raises(LibraryDamaged, match="left as it was") as caught:
        open_next(path, with_step(tmp_path, step))
    assert "before update from 0001" in str(caught.value)
    with closing(sqlite3.connect(path)) as connection:
        assert list(connection.iterdump()) == before
    with opened(path, migrations=FIRST) as library:
        assert check(library) == []


def test_an_older_library_that_is_only_looked_at_stays_as_it_is(tmp_path):
    path = tmp_path / "a.trailbench"
    planted(path)
    migrations = with_step(tmp_path, "v0002_part_mass.py")
    before = prints(tmp_path)
    library = open_library(path, garden_next.garden_next, now=lambda: INSTANT, migrations=migrations, read_only=True)
    with library.reader() as reader:
        assert reader.need(garden_next.Part, "p").position == 7
    library.close()
    assert {name: text for name, text in prints(tmp_path).items() if "__pycache__" not in name} == before


def test_without_room_for_the_copy_there_is_no_upgrade(tmp_path):
    path = tmp_path / "a.trailbench"
    planted(path)
    migrations = with_step(tmp_path, "v0002_part_mass.py")
    (tmp_path / "backups").write_text("in the way")
    before = prints(tmp_path)
    with pytest.raises(LibraryUnreachable, match="could not be written"):
        open_next(path, migrations)
    assert prints(tmp_path) == before


def test_a_library_of_the_present_schema_is_opened_without_alembic(tmp_path):
    script = (
        "import sys; from tests.library.help import open_garden; open_garden(sys.argv[1]).close(); "
        "open_garden(sys.argv[1]).close(); "
        "print([name for name in ('alembic', 'sqlalchemy.orm', 'PySide6', 'numpy') if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(tmp_path / "a")], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"

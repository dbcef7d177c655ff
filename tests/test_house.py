"""The rules of the house: who may import whom, how long files get, what words stay out, what loads lazily."""

from __future__ import annotations

import ast
import json
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "workbench"
LONGEST_FILE_LINES = 350
STATIONS = ("garage", "checkin", "sag", "adjusters", "baseline", "ride", "review", "card")
SEAMS = (
    "model.units",
    "model.errors",
    "physics.sag",
    "physics.air",
    "physics.coil",
    "physics.leverage",
    "physics.atmosphere",
    "physics.balance",
    "physics.geometry",
    "evidence.search",
    "evidence.effects",
    "evidence.blind",
    "exchange.gpx",
    "exchange.card",
)
# Written so that no pattern matches itself.
FOREIGN_WORDS = re.compile(
    r"\b(desig[n]|decision[s]|seam[s]|stac[k]|loo[k]|u[x]|storie[s]|brie[f]|styl[e]|evidenc[e])\.md\b"
    r"|\bissu[e]s? ?#?\d+|\bsubagen[t]|\bco-founde[r]|\bCE[O]\b|\bLL[M]s?\b|\btranscrip[t]\b|\bseed documen[t]"
    r"|\bsystem promp[t]|(?<![\w.])/(wor[k]|tm[p])/|--(extra-)?index-ur[l]|find-link[s]|\bpypi\.or[g]|pythonhoste[d]",
    re.IGNORECASE,
)
SQL = re.compile(r"\s*(SELECT\s.+\sFROM|INSERT INTO|UPDATE \w+ SET|DELETE FROM|(CREATE|DROP|ALTER) TABLE|PRAGMA)\b")


def texts() -> list[Path]:
    """Every text file of the project, as a fresh checkout has it."""
    folders = (ROOT / name for name in ("workbench", "tests", "packaging", "resources", ".ci"))
    found = [path for folder in folders for path in folder.rglob("*") if path.is_file()]
    found += [*ROOT.glob("*.md"), *ROOT.glob("*.toml"), ROOT / ".gitignore"]
    return sorted(path for path in found if "__pycache__" not in path.parts and is_text(path))


def is_text(path: Path) -> bool:
    """Whether people write it: neither a picture, a font or a database, nor made by a tool."""
    return path.suffix != ".lock" and b"\0" not in path.read_bytes()


def line_count(path: Path) -> int:
    """How many lines a file has."""
    return len(path.read_text(encoding="utf-8").splitlines())


def existing_stations(room: str) -> set[str]:
    """The stations that a room has so far, as module names."""
    names = {path.stem for path in (PACKAGE / room).iterdir()}
    return {f"workbench.{room}.{station}" for station in STATIONS if station in names}


def test_the_rooms_import_downwards_only():
    program = Path(sys.executable).parent / "lint-imports"
    done = subprocess.run(
        [str(program), "--no-logo", "--no-cache"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize("room", ["ui", "viewmodels"])
def test_every_station_is_kept_apart_from_the_others(room):
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["importlinter"][
        "contracts"
    ]
    apart = {module for contract in contracts if contract["type"] == "independence" for module in contract["modules"]}
    stations = existing_stations(room)
    assert len(stations) < 2 or stations <= apart, "add the new station to the independence contract in pyproject.toml"


def test_no_file_of_the_package_grows_too_long():
    long = {str(path.relative_to(ROOT)): line_count(path) for path in PACKAGE.rglob("*.py")}
    long = {name: lines for name, lines in long.items() if lines > LONGEST_FILE_LINES}
    assert not long, f"is there a second room inside? {long}"


def test_the_project_speaks_of_itself_alone():
    found = []
    for path in texts():
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if match := FOREIGN_WORDS.search(line):
                found.append(f"{path.relative_to(ROOT)}:{number}: {match.group()}")
    assert not found, "\n".join(found)


def test_a_migration_never_meets_todays_code():
    found = []
    for path in (PACKAGE / "library" / "migrations").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [name.name for name in node.names] if isinstance(node, ast.Import) else []
            names += [f"{'.' * node.level}{node.module}"] if isinstance(node, ast.ImportFrom) else []
            found += [f"{path.relative_to(ROOT)}: {name}" for name in names if name.startswith((".", "workbench"))]
    assert not found, "\n".join(found)


def test_sql_text_stands_in_the_library_only():
    found = []
    for path in PACKAGE.rglob("*.py"):
        if path.is_relative_to(PACKAGE / "library"):
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and SQL.match(node.value):
                found.append(f"{path.relative_to(ROOT)}:{node.lineno}: {node.value!r}")
    assert not found, "\n".join(found)


@pytest.mark.parametrize("seam", [name for name in SEAMS if (PACKAGE / (name.replace(".", "/") + ".py")).exists()])
def test_a_script_that_imports_a_computation_loads_no_window_database_or_scipy(seam):
    code = f"import sys, json, workbench.{seam}; print(json.dumps(sorted(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    loaded = {name.split(".")[0] for name in json.loads(done.stdout)}
    assert not loaded & {"PySide6", "shiboken6", "pyqtgraph", "sqlalchemy", "alembic", "scipy"}

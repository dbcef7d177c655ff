"""The wheel carries all that the checkout runs with: hatchling leaves out what .gitignore names, without a word."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from workbench.resource import resource

ROOT = Path(__file__).resolve().parent.parent


def shipped(folder: Path) -> set[str]:
    """The files below a folder, as names in it."""
    return {
        path.relative_to(folder).as_posix()
        for path in folder.rglob("*")
        if path.is_file() and "__pycache__" not in path.parts
    }


@pytest.fixture(scope="module")
def wheel(tmp_path_factory) -> Path:
    """A wheel built from the checkout, without the network."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(folder), str(ROOT)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    (built,) = folder.glob("*.whl")
    return built


def test_the_wheel_holds_every_module_and_every_resource(wheel):
    inside = {name for name in zipfile.ZipFile(wheel).namelist() if name.startswith("workbench/")}
    expected = {f"workbench/{name}" for name in shipped(ROOT / "workbench")}
    resources = {name for name in shipped(ROOT / "resources") if not name.startswith("pictures/")}
    expected |= {f"workbench/resources/{name}" for name in resources}
    assert inside == expected


def test_an_installed_wheel_finds_its_resources(wheel, tmp_path):
    zipfile.ZipFile(wheel).extractall(tmp_path)
    code = "from workbench.resource import resource; print(resource('README.md'))"
    done = subprocess.run([sys.executable, "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert Path(done.stdout.strip()) == tmp_path / "workbench" / "resources" / "README.md"


def test_a_checkout_finds_its_resources():
    assert resource("README.md") == ROOT / "resources" / "README.md"


@pytest.mark.parametrize("name", ["nothing.txt", "../pyproject.toml", "/etc/passwd"])
def test_what_is_not_shipped_is_refused(name):
    with pytest.raises(FileNotFoundError, match="ships no file named"):
        resource(name)

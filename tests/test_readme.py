"""The README tells the truth: its examples run, its links lead somewhere, its keys and options are the program's."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest

from workbench.__main__ import read_arguments
from workbench.model import errors
from workbench.ui.menus import SEPARATOR
from workbench.ui.window_menus import window_menus

ROOT = Path(__file__).resolve().parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"```python\n(.*?)```", README, re.DOTALL)
MOST_BYTES = 1_500_000
ROOMS = ("workbench", "tests", "packaging", "resources")


class AnyCommand:
    """Stands for window and view-model: the menus only take hold of what they may call."""

    def __getattr__(self, name: str) -> object:
        return lambda *_: None


@pytest.mark.parametrize("number", range(len(EXAMPLES)))
def test_an_example_gives_what_it_says(number):
    test = doctest.DocTestParser().get_doctest(EXAMPLES[number], {}, f"README example {number + 1}", "README.md", 0)
    assert test.examples
    said: list[str] = []
    outcome = doctest.DocTestRunner(optionflags=doctest.IGNORE_EXCEPTION_DETAIL).run(test, out=said.append)
    assert outcome.failed == 0, "".join(said)


def test_there_are_examples_for_every_computation_scripts_may_use():
    seams = ("model.units", "physics.sag", "physics.air", "physics.coil", "physics.leverage", "physics.atmosphere")
    seams += ("physics.balance", "physics.geometry", "evidence.search", "evidence.effects", "evidence.blind")
    seams += ("exchange.gpx",)
    assert [seam for seam in seams if f"from workbench.{seam} import" not in "".join(EXAMPLES)] == []


@pytest.mark.parametrize("document", ["README.md", "DEVELOPERS.md"])
def test_what_a_document_points_at_is_there(document):
    text = (ROOT / document).read_text(encoding="utf-8")
    links = [link for link in re.findall(r"\]\(([^)#]+)\)", text) if "://" not in link]
    assert links
    assert [link for link in links if not (ROOT / link).exists()] == []


def test_every_file_the_developers_page_names_is_there():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = set(re.findall(r"`([\w./]+\.(?:py|toml|json|in|md))\b[^`]*`", text))
    present = [path.relative_to(ROOT).as_posix() for room in ROOMS for path in (ROOT / room).rglob("*")]
    present += ["pyproject.toml"]
    assert len(named) > 40
    assert sorted(name for name in named if not any(f"/{path}".endswith(f"/{name}") for path in present)) == []


def test_every_name_the_developers_page_gives_in_a_file_is_in_that_file():
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    named = re.findall(r"`([\w./]+\.py): ([\w.]+)`", text)
    assert len(named) > 5
    wrong = []
    for file, name in named:
        (path,) = [path for path in (ROOT / "workbench").rglob(Path(file).name) if f"/{path}".endswith(f"/{file}")]
        words = set(re.findall(r"\w+", path.read_text(encoding="utf-8")))
        wrong += [f"{file}: {name}" for part in name.split(".") if part not in words]
    assert not wrong


def test_the_pictures_stay_small_together():
    pictures = list((ROOT / "resources" / "pictures").glob("*.png"))
    assert pictures
    assert sum(path.stat().st_size for path in pictures) <= MOST_BYTES
    assert [path.name for path in pictures if f"resources/pictures/{path.name}" not in README] == []


def test_every_shortcut_of_the_menus_is_in_the_keyboard_map():
    keys = README.partition("## Keys")[2].partition("\n## ")[0]
    keys = re.sub(r"Ctrl\+(\d) \.\.\. Ctrl\+(\d)", _spelled_out, keys)
    menus = window_menus(AnyCommand(), AnyCommand())  # type: ignore[arg-type]
    shortcuts = {entry.keys for _, entries in menus for entry in entries if entry is not SEPARATOR and entry.keys}
    assert shortcuts == set(re.findall(r"Ctrl\+(?:Shift\+)?\w", keys))


def _spelled_out(found: re.Match[str]) -> str:
    return " ".join(f"Ctrl+{digit}" for digit in range(int(found[1]), int(found[2]) + 1))


def test_every_option_is_explained_and_every_option_explained_exists(capsys):
    with pytest.raises(SystemExit):
        read_arguments(["--help"])
    offered = set(re.findall(r"--[a-z][a-z-]*", capsys.readouterr().out)) - {"--help"}
    table = README.partition("| option |")[2].partition("Exit codes")[0]
    assert offered == set(re.findall(r"--[a-z][a-z-]*", table))


def test_every_exit_code_of_a_library_error_is_named():
    codes = {
        error.exit_code for error in vars(errors).values() if isinstance(error, type) and hasattr(error, "exit_code")
    }
    said = README.partition("Exit codes")[2].splitlines()[0]
    assert {str(code) for code in codes} <= set(re.findall(r"\d+", said))

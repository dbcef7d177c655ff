"""The help pages: one a station, in plain blocks and the words of the glossary, which knows every quantity."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import workbench
from workbench import evidence, physics
from workbench.evidence import answers, changes, design, effects, outlook, search, verdicts, words
from workbench.evidence.effects import ChangeVerdict, RunRecord
from workbench.evidence.search import Estimate, Proposal, Trial
from workbench.model.job import STATION_WORDS, STATIONS
from workbench.resource import resource
from workbench.ui.help import blocks_of, page_of
from workbench.ui.parts.drawings import KINDS
from workbench.viewmodels.window import NEW_BIKE, SHEETS

PAGES = sorted(path.stem for path in resource("help").glob("*.md") if path.stem != "glossary")
UNIT = re.compile(r"_(mm|mm2|mm3|n|n_per_mm|kpa|gpa|j|kg|s|c|m|deg|hz|sd)$")
INNER = ("gas", "shapes")  # how air springs and sag are worked out inside
OF_A_CHANGE = (RunRecord, Trial, ChangeVerdict, Proposal, Estimate)


def glossary() -> str:
    return resource("help/glossary.md").read_text(encoding="utf-8")


def code_names() -> set[str]:
    rows = [line for line in glossary().splitlines() if line.startswith("| ")]
    return {name for row in rows for name in re.findall(r"`(\w+)`", row.split("|")[2])}


def modules() -> Iterator[object]:
    for room in (physics, evidence):
        for module in pkgutil.iter_modules(room.__path__):
            if module.name in INNER:
                continue
            yield importlib.import_module(f"{room.__name__}.{module.name}")


def names_in(module: object) -> Iterator[str]:
    for name, thing in vars(module).items():
        if name.startswith("_") or getattr(thing, "__module__", None) != module.__name__:
            continue
        if inspect.isfunction(thing):
            yield from inspect.signature(thing).parameters
        elif dataclasses.is_dataclass(thing):
            yield from (field.name for field in dataclasses.fields(thing))


def test_every_station_has_a_page_of_its_own_name():
    assert [page_of(station) for station in STATIONS] == list(STATIONS)
    titles = [blocks_of(resource(f"help/{station}.md").read_text(encoding="utf-8"))[0] for station in STATIONS]
    assert [(block.kind, block.text) for block in titles] == [("title", STATION_WORDS[one]) for one in STATIONS]


def test_every_other_sheet_has_one_too_and_a_new_bike_belongs_to_the_garage():
    assert {sheet: page_of(sheet) for sheet in SHEETS} == {sheet: sheet for sheet in SHEETS} | {NEW_BIKE: "garage"}


@pytest.mark.parametrize("page", PAGES)
def test_a_page_is_made_of_one_title_headings_points_and_paragraphs(page):
    blocks = blocks_of(resource(f"help/{page}.md").read_text(encoding="utf-8"))
    assert [block.kind for block in blocks].count("title") == 1
    assert blocks[0].kind == "title"
    assert len(blocks) > 3


@pytest.mark.parametrize("page", PAGES)
def test_a_page_names_only_drawings_that_there_are(page):
    blocks = blocks_of(resource(f"help/{page}.md").read_text(encoding="utf-8"))
    assert {block.text for block in blocks if block.kind == "drawing"} <= set(KINDS)


def test_the_page_on_adjusters_gives_each_one_thing_to_try():
    blocks = blocks_of(resource("help/what_it_does.md").read_text(encoding="utf-8"))
    headings = [block.text for block in blocks if block.kind == "heading"]
    tries = [block.text for block in blocks if block.text.startswith("Try: ")]
    assert len(headings) == len(tries) > 5


@pytest.mark.parametrize("page", PAGES)
def test_a_page_holds_no_marks_that_would_be_shown_as_typed(page):
    blocks = blocks_of(resource(f"help/{page}.md").read_text(encoding="utf-8"))
    marked = [block.text for block in blocks if re.search(r"[`*#]|\]\(|</?\w+>|^[-|] ", block.text)]
    assert not marked


@pytest.mark.parametrize("page", PAGES)
def test_a_page_keeps_away_from_words_that_promise_too_much(page):
    listed = glossary().partition("## Words we keep away from\n\n")[2].strip().rstrip(".")
    avoided = [word.strip() for word in listed.split(",")]
    assert len(avoided) > 5
    text = resource(f"help/{page}.md").read_text(encoding="utf-8").casefold()
    assert [word for word in avoided if re.search(rf"\b{re.escape(word)}\b", text)] == []


def test_the_page_on_verdicts_gives_the_numbers_in_use():
    text = resource("help/verdicts.md").read_text(encoding="utf-8")
    said = (
        f"raised the liking is at least {20 * verdicts.SURE:g} in 20",
        f"large enough to be felt is at most 1 in {1 / verdicts.UNFELT:g}",
        f"probably, from {20 * words.PROBABLY:g} in 20; perhaps, from {20 * words.MAYBE:g} in 20",
        f"after the first {design.FATIGUE_START + 1} runs of a day",
        f"about one run in {1 / answers.SPOILT_SHARE:g}".replace("20", "twenty"),
        f"P(|d| > max({effects.SMALLEST_FELT}, repeat sd))",
        f"smallest even number up to {outlook.WORTH_AT_MOST}, half on each setting",
        f"is expected with a chance of {outlook.ASSURANCE}",
        f"Below {search.SETTLED_BELOW} points",
        f"(a chance above {search.USED_UP_CHANCE})",
    )
    assert [phrase for phrase in said if phrase not in text] == []
    assert (answers.SHARED_ANSWER, search.FEWEST_RUNS, effects.SEVERAL, changes.FEW) == (2.0, 3, 3, 3)  # said in words


def test_the_glossary_knows_every_quantity_the_computation_takes_or_gives():
    wanted = {name for module in modules() for name in names_in(module) if UNIT.search(name)}
    assert len(wanted) > 50
    assert sorted(wanted - code_names()) == [], "give each a row in resources/help/glossary.md"


@pytest.mark.parametrize("record", OF_A_CHANGE)
def test_the_glossary_knows_every_field_of_a_run_and_of_what_is_said_about_it(record):
    assert sorted({field.name for field in dataclasses.fields(record)} - code_names()) == []


def test_no_term_of_the_glossary_and_no_news_is_told_twice():
    terms = [line.split("|")[1].strip() for line in glossary().splitlines() if line.startswith("| ")]
    beginnings = [line[:40] for line in resource("help/whats-new.md").read_text(encoding="utf-8").splitlines() if line]
    for told in (terms, beginnings):
        assert sorted({one for one in told if told.count(one) > 1} - {"Term", "---"}) == []


def test_the_glossary_names_nothing_that_the_code_does_not_have():
    package = Path(workbench.__file__).parent
    code = "\n".join(path.read_text(encoding="utf-8") for path in package.rglob("*.py"))
    assert sorted(code_names() - set(re.findall(r"\w+", code))) == []


def test_a_unit_in_a_name_stands_in_its_row():
    units = {"mm": "mm", "kpa": "kPa", "n": "N", "n_per_mm": "N/mm", "hz": "Hz", "deg": "°", "s": "s", "j": "J"}
    units |= {"mm2": "mm²", "mm3": "mm³", "c": "°C", "m": "m", "gpa": "GPa"}
    wrong = []
    for row in (line.split("|") for line in glossary().splitlines() if line.startswith("| ")):
        for name in re.findall(r"`(\w+)`", row[2]):
            found = UNIT.search(name)
            if found and found[1] in units and units[found[1]] not in re.split(r", | ", row[4].strip()):
                wrong.append(name)
    assert not wrong

"""The card on screen and as a PDF whose text can be selected."""

from __future__ import annotations

import shutil
import subprocess
from dataclasses import replace

import pytest

from tests.fixtures import a_baseline, a_bike, a_counted_bike
from tests.ui.driver import Driver, Key
from workbench.actions.setups import setups_of
from workbench.model.adjuster import Adjuster
from workbench.ui.card.layout import PAPERS, lay_card_out
from workbench.ui.card.page import CardPage
from workbench.viewmodels.card import CardViewModel

needs_pdftotext = pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not installed")


def card(qtbot, desk, bike):
    return Driver(qtbot, desk, CardPage, CardViewModel, bike.id)


@pytest.fixture
def bike(desk):
    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    return bike


@pytest.fixture
def driver(qtbot, desk, bike):
    return card(qtbot, desk, bike)


def text_of(path):
    done = subprocess.run(["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True)
    return " ".join(done.stdout.split())


def test_a_bike_without_a_setup_is_led_to_the_baseline(qtbot, desk):
    driver = card(qtbot, desk, a_bike(desk))
    assert "this bike has none yet" in driver.words()


def test_the_card_is_handed_over_with_one_key(driver):
    assert driver.focused() == "card_hand_over"
    driver.keys(Key.Key_Space)
    assert driver.kept == ["Hand over the card"]
    assert "Handed over 14 May 2031" in driver.words()


def test_a_name_is_kept_when_its_field_is_left(desk, bike, driver):
    driver.type_into("card_name", "wet <b>", then=Key.Key_Return)
    assert [setup.name for setup in desk.ask(setups_of(bike.id))] == ["wet <b>"]
    assert "wet <b>" in driver.find("card_paper").accessibleDescription()


def test_screen_readers_hear_every_line(driver):
    said = driver.find("card_paper").accessibleDescription()
    assert said.startswith("Larch 150, Setup no. 1; Fork")
    assert "Low-speed rebound: 6 clicks from closed 11 clicks from open" in said


@needs_pdftotext
def test_the_text_of_the_pdf_can_be_selected(driver, tmp_path):
    driver.page.write_pdf(tmp_path / "card.pdf")
    said = text_of(tmp_path / "card.pdf")
    for words in ("Larch 150", "Setup no. 1", "M. Anders", "6 clicks from closed", "75.4", "qualified mechanic"):
        assert words in said
    assert f"Written to {tmp_path / 'card.pdf'}" in driver.words()
    assert sorted(path.name for path in tmp_path.glob("*pdf*")) == ["card.pdf"]


@needs_pdftotext
@pytest.mark.parametrize("name", ["<b>Larch</b>", "<img src=x onerror=1>", "Larch & Sons", "דוד", "Ærø Ñandú"])
def test_a_name_stands_in_the_pdf_as_it_was_typed(qtbot, desk, tmp_path, name):
    bike = a_counted_bike(desk, name=name)
    a_baseline(desk, bike)
    card(qtbot, desk, bike).page.write_pdf(tmp_path / "card.pdf")
    said = text_of(tmp_path / "card.pdf")
    assert name in said or name[::-1] in said, "a right-to-left name may be read out in the order drawn"


@needs_pdftotext
def test_a_character_no_font_has_leaves_the_words_around_it_whole(qtbot, desk, tmp_path):
    bike = a_counted_bike(desk, name="Larch 🚵 One-Fifty")
    a_baseline(desk, bike)
    card(qtbot, desk, bike).page.write_pdf(tmp_path / "card.pdf")
    said = text_of(tmp_path / "card.pdf")
    assert "Larch" in said
    assert "One-Fifty" in said


def test_a_place_that_cannot_be_written_is_said_and_leaves_nothing(driver, tmp_path):
    (tmp_path / "taken.pdf").mkdir()
    driver.page.write_pdf(tmp_path / "taken.pdf")
    assert driver.problems == [f"{tmp_path / 'taken.pdf'} cannot be written. Choose another folder."]
    assert list(tmp_path.glob(".*part")) == []


def test_a_folder_that_is_not_there_is_said(driver, tmp_path):
    driver.page.write_pdf(tmp_path / "gone" / "card.pdf")
    assert len(driver.problems) == 1


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_nothing_is_laid_out_beyond_the_paper_however_long_the_names(paper, driver):
    sheet = driver.model.state.card
    long = replace(
        sheet,
        title="Larch " * 33,
        subtitle=f"Setup no. 1 “{'x' * 200}”",
        sections=tuple(
            replace(section, lines=tuple(replace(line, label="y" * 200) for line in section.lines) * 6)
            for section in sheet.sections
        ),
        cells=tuple((label, "z" * 200) for label, _ in sheet.cells),
    )
    pages = lay_card_out(long, paper)
    assert len(pages) > 1
    for page in pages:
        for mark in page.words:
            assert paper.margin - 1 <= mark.box.left() <= mark.box.right() <= paper.width - paper.margin + 1, mark
            assert 0 <= mark.box.top() <= mark.box.bottom() <= paper.height, mark
    last = [mark.words for mark in pages[-1].words]
    assert f"Page {len(pages)} of {len(pages)}" in last


def test_adjusters_named_by_their_maker_keep_their_case(qtbot, desk, bike):
    adjuster = desk.ask(lambda reader: reader.find(Adjuster))[0]
    desk.do("Name", lambda gate: gate.put(replace(adjuster, name="HSC pRo")), bike_id=bike.id)
    assert "HSC pRo" in card(qtbot, desk, bike).find("card_paper").accessibleDescription()

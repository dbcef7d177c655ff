"""The card on screen and as a PDF whose text can be selected."""

from __future__ import annotations

import shutil
import subprocess
from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtPrintSupport import QPrinter, QPrintPreviewWidget
from PySide6.QtWidgets import QComboBox, QPushButton

from tests.fixtures import a_baseline, a_bike, a_counted_bike
from tests.ui.driver import Driver, Key
from workbench.actions.setups import setups_of
from workbench.exchange.card_lines import CardLine, CardSection
from workbench.model.adjuster import Adjuster
from workbench.ui.card.layout import PAPERS, lay_card_out
from workbench.ui.card.page import CardPage
from workbench.ui.card.painter import write_pdf
from workbench.ui.card.printing import CardPreview, paint_for, printer_for
from workbench.ui.parts.palette import palette_for
from workbench.viewmodels.card import CardViewModel

needs_pdftotext = pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not installed")


def card(qtbot, desk, bike):
    return Driver(qtbot, desk, CardPage, CardViewModel, bike.id)


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


needs_pdftoppm = pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="pdftoppm is not installed")


def rendered_grey(path, folder):
    """The first page of a PDF in shades of grey, at 72 dots an inch."""
    subprocess.run(["pdftoppm", "-gray", "-r", "72", "-f", "1", "-l", "1", "-png", path, folder / "page"], check=True)
    return QImage(str(next(folder.glob("page*.png")))).convertToFormat(QImage.Format.Format_Grayscale8)


def changed_rebound(sheet):
    return replace(
        sheet,
        sections=tuple(
            replace(section, lines=tuple(replace(line, is_changed="rebound" in line.label) for line in section.lines))
            for section in sheet.sections
        ),
    )


@needs_pdftoppm
@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_the_bar_of_a_change_is_dark_on_grey_paper_and_stands_nowhere_else(paper, driver, tmp_path):
    sheet = changed_rebound(driver.model.state.card)
    bars = [line for line in lay_card_out(sheet, paper)[0].lines if line.width > 2]
    assert bars
    assert not [line for page in lay_card_out(driver.model.state.card, paper) for line in page.lines if line.width > 2]
    write_pdf(sheet, tmp_path / "card.pdf", paper)
    image = rendered_grey(tmp_path / "card.pdf", tmp_path)
    assert abs(image.width() - paper.width) <= 1
    for bar in bars:
        middle = round((bar.start.y() + bar.end.y()) / 2)
        darkest = min(image.pixelColor(round(bar.start.x()) + step, middle).lightness() for step in (-1, 0, 1))
        assert darkest < 100


@pytest.mark.parametrize("token", ["ink", "mute", "care", "line"])
def test_every_colour_of_the_card_can_be_read_in_grey(token):
    grey = luminance(QColor(str(getattr(palette_for(dark=False, bench=False), token))))
    assert 1.05 / (grey + 0.05) >= (3.0 if token == "line" else 4.5)


def luminance(colour):
    """Relative luminance of WCAG 2.2, which a grey print keeps."""
    parts = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in colour.getRgbF()[:3])
    return sum(share * one for share, one in zip((0.2126, 0.7152, 0.0722), parts, strict=True))


def test_the_size_of_paper_is_kept_for_the_next_time(qtbot, desk, bike, driver):
    driver.page.findChild(QComboBox, "card_format").activated.emit(1)
    assert card(qtbot, desk, bike).model.state.paper == "A5"


def test_long_words_are_broken_and_never_cut(driver):
    words = "Hochgeschwindigkeitsdruckstufenverstellung"
    sheet = driver.model.state.card
    section = replace(sheet.sections[0], lines=(CardLine(words, words, words, words),))
    for paper in PAPERS.values():
        pages = lay_card_out(replace(sheet, sections=(section,)), paper)
        said = "".join(mark.words for page in pages for mark in page.words)
        assert said.count("…") == 0
        written = [mark.words for page in pages for mark in page.words]
        assert any(words.startswith(one) and len(one) > 8 for one in written)


def test_a_number_and_its_unit_stay_on_one_line(driver):
    section = CardSection("Fork", (CardLine("Static sag", "", "30.2\u2009mm = 20\u2009%"),))
    pages = lay_card_out(replace(driver.model.state.card, sections=(section,)), PAPERS["A5"])
    assert not [mark for page in pages for mark in page.words if mark.words.strip() in ("%", "mm")]


@needs_pdftotext
def test_the_preview_prints_what_the_card_says(driver, tmp_path):
    paper = PAPERS["A5"]
    printer = printer_for(paper)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "print.pdf"))
    assert paint_for(printer, driver.model.state.card, paper)
    assert "Received by" in text_of(tmp_path / "print.pdf")


def test_the_preview_shows_as_many_pages_as_the_card_has(driver, qtbot):
    state = driver.model.state
    dialog = CardPreview(state.card, PAPERS["A5"], driver.page)
    qtbot.addWidget(dialog)
    dialog.show()
    shown = dialog.findChild(QPrintPreviewWidget)
    qtbot.waitUntil(lambda: shown.pageCount() == len(lay_card_out(state.card, PAPERS["A5"])), timeout=5000)
    assert {button.text() for button in dialog.findChildren(QPushButton)} >= {"All pages", "Print ...", "Close"}
    qtbot.mouseClick(dialog.findChild(QPushButton, "preview_close"), Qt.MouseButton.LeftButton)
    assert not dialog.isVisible()


def test_the_card_is_written_as_text(driver, tmp_path):
    driver.page.write_text(tmp_path / "card.txt")
    said = (tmp_path / "card.txt").read_text(encoding="utf-8")
    assert said.startswith("Larch 150\nSetup no. 1\n")
    assert "6 clicks from closed" in said
    driver.page.write_text(tmp_path / "gone" / "card.txt")
    assert len(driver.problems) == 1

"""Paint a laid-out card: on the screen, into a PDF file, on a printer. Paper is always light."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QMarginsF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPagedPaintDevice, QPageLayout, QPageSize, QPainter, QPdfWriter, QPen

from workbench.exchange.card_lines import CardSheet
from workbench.ui.card.layout import A4, A5, Paper, PaperPage, TextMark, card_font, lay_card_out
from workbench.ui.parts.labels import one_line
from workbench.ui.parts.palette import palette_for

DPI = 300


def paint_page(painter: QPainter, page: PaperPage, scale: float) -> None:
    """Paint one page; ``scale`` is device pixels a point."""
    painter.save()
    painter.scale(scale, scale)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
    for line in page.lines:
        painter.setPen(QPen(_colour(line.colour), line.width))
        painter.drawLine(line.start, line.end)
    for mark in page.words:
        _paint_words(painter, mark)
    painter.restore()


def _paint_words(painter: QPainter, mark: TextMark) -> None:
    font = card_font(mark.size, bold=mark.bold)
    painter.setFont(font)
    painter.setPen(_colour(mark.colour))
    cut = QFontMetricsF(font).elidedText(one_line(mark.words), Qt.TextElideMode.ElideRight, mark.box.width() + 2)
    box = QRectF(mark.box.left(), mark.box.top(), mark.box.width() + 4, mark.box.height())
    flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignAbsolute
    painter.drawText(box, flags.value | Qt.TextFlag.TextSingleLine.value, cut)


def _colour(token: str) -> QColor:
    return QColor(str(getattr(palette_for(dark=False, bench=False), token)))


def write_pdf(sheet: CardSheet, path: Path, paper: Paper = A4) -> None:
    """Write the card as a PDF file with real text; OSError if the file cannot be written."""
    part = path.with_name(f".{path.name}.part")
    part.touch()  # says at once, and in the system's words, that a place cannot be written
    writer = QPdfWriter(str(part))
    writer.setResolution(DPI)
    writer.setTitle(f"{one_line(sheet.title)[:80]}: {sheet.subtitle}")
    writer.setCreator("Trailbench")
    if not paint_on(writer, sheet, paper):
        part.unlink(missing_ok=True)
        raise OSError(f"{path} cannot be written")
    try:
        part.replace(path)
    except OSError:
        part.unlink(missing_ok=True)
        raise


def write_whole(path: Path, words: str) -> None:
    """Write a text file whole or not at all; OSError if it cannot be written."""
    part = path.with_name(f".{path.name}.part")
    try:
        part.write_text(words, encoding="utf-8")
        part.replace(path)
    except OSError:
        part.unlink(missing_ok=True)
        raise


def put_paper(device: QPagedPaintDevice, paper: Paper) -> None:
    """Set the size of paper, upright; the card keeps margins of its own."""
    size = QPageSize(QPageSize.PageSizeId.A5 if paper is A5 else QPageSize.PageSizeId.A4)
    device.setPageLayout(QPageLayout(size, QPageLayout.Orientation.Portrait, QMarginsF(0, 0, 0, 0)))


def paint_on(device: QPagedPaintDevice, sheet: CardSheet, paper: Paper = A4) -> bool:
    """Paint every page of the card on a printer or a PDF writer; false if the device refuses."""
    put_paper(device, paper)
    painter = QPainter()
    if not painter.begin(device):
        return False
    scale = device.logicalDpiX() / 72.0
    for number, page in enumerate(lay_card_out(sheet, paper)):
        if number:
            device.newPage()
        paint_page(painter, page, scale)
    return painter.end()

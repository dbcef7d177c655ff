"""Paint a laid-out card: on the screen, into a PDF file, on a printer. Paper is always light."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QMarginsF, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPagedPaintDevice, QPageLayout, QPageSize, QPainter, QPdfWriter, QPen

from workbench.exchange.card import CardSheet
from workbench.ui.card.layout import PaperPage, TextMark, card_font, lay_card_out
from workbench.ui.parts.labels import lay_out, one_line
from workbench.ui.parts.palette import palette_for

DPI = 300


def paint_page(painter: QPainter, page: PaperPage, scale: float) -> None:
    """Paint one page; ``scale`` is device pixels a point."""
    painter.save()
    painter.scale(scale, scale)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setRenderHint(QPainter.RenderHint.TextAntialiasing)
    for line in page.lines:
        painter.setPen(QPen(_colour("line"), line.width))
        painter.drawLine(line.start, line.end)
    for mark in page.words:
        _paint_words(painter, mark)
    painter.restore()


def _paint_words(painter: QPainter, mark: TextMark) -> None:
    font = card_font(mark.size, bold=mark.bold)
    painter.setFont(font)
    painter.setPen(_colour(mark.colour))
    if mark.wraps:
        painter.save()
        painter.setClipRect(mark.box)
        lay_out(mark.words, font, mark.box.width()).draw(painter, QPointF(mark.box.left(), mark.box.top()))
        painter.restore()
        return
    cut = QFontMetricsF(font).elidedText(one_line(mark.words), Qt.TextElideMode.ElideRight, mark.box.width())
    box = QRectF(mark.box.left(), mark.box.top(), mark.box.width() + 4, mark.box.height())
    flags = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignAbsolute
    painter.drawText(box, flags.value | Qt.TextFlag.TextSingleLine.value, cut)


def _colour(token: str) -> QColor:
    return QColor(str(getattr(palette_for(dark=False, bench=False), token)))


def write_pdf(sheet: CardSheet, path: Path) -> None:
    """Write the card as a PDF file with real text; OSError if the file cannot be written."""
    part = path.with_name(f".{path.name}.part")
    part.touch()  # says at once, and in the system's words, that a place cannot be written
    writer = QPdfWriter(str(part))
    writer.setResolution(DPI)
    writer.setTitle(f"{one_line(sheet.title)[:80]}: {sheet.subtitle}")
    writer.setCreator("Trailbench")
    if not paint_on(writer, sheet):
        part.unlink(missing_ok=True)
        raise OSError(f"{path} cannot be written")
    try:
        part.replace(path)
    except OSError:
        part.unlink(missing_ok=True)
        raise


def paint_on(device: QPagedPaintDevice, sheet: CardSheet) -> bool:
    """Paint every page of the card on a printer or a PDF writer; false if the device refuses."""
    device.setPageLayout(
        QPageLayout(QPageSize(QPageSize.PageSizeId.A4), QPageLayout.Orientation.Portrait, QMarginsF(0, 0, 0, 0))
    )
    painter = QPainter()
    if not painter.begin(device):
        return False
    scale = device.logicalDpiX() / 72.0
    for number, page in enumerate(lay_card_out(sheet)):
        if number:
            device.newPage()
        paint_page(painter, page, scale)
    return painter.end()

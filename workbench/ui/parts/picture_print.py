"""A small print of a picture, or the words that it cannot be shown."""

from __future__ import annotations

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImageReader, QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.labels import Words

MISSING = "The file is missing from the photos folder. Add it again."
UNREADABLE = "It cannot be shown."


def small_print(content: bytes, size: QSize) -> QPixmap:
    """Read a picture no larger than its print needs; empty if it cannot be read."""
    buffer = QBuffer()
    buffer.setData(QByteArray(content))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAutoTransform(True)
    own = reader.size()
    if own.isValid() and (own.width() > size.width() or own.height() > size.height()):
        reader.setScaledSize(own.scaled(size, Qt.AspectRatioMode.KeepAspectRatio))
    return QPixmap.fromImage(reader.read())


class _Paper(QWidget):
    """The picture itself, at its own size."""

    def __init__(self, pixmap: QPixmap) -> None:
        super().__init__()
        self._pixmap = pixmap
        self.setFixedSize(pixmap.size())

    def pixmap(self) -> QPixmap:
        """What is painted."""
        return self._pixmap

    def paintEvent(self, event: QPaintEvent) -> None:
        QPainter(self).drawPixmap(0, 0, self._pixmap)


class PicturePrint(QWidget):
    """One picture; ``content`` None says that its file is missing. Inside: ``name`` or ``name_missing``."""

    def __init__(self, content: bytes | None, says: str, size: QSize, *, name: str, missing_name: str = "") -> None:
        super().__init__()
        pixmap = small_print(content, size) if content is not None else QPixmap()
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        if pixmap.isNull():
            trouble = Words(MISSING if content is None else UNREADABLE, "problem")
            trouble.setObjectName(missing_name or f"{name}_missing")
            rows.addWidget(trouble)
        else:
            picture = _Paper(pixmap)
            picture.setObjectName(name)
            picture.setAccessibleName(f"Picture: {says}")
            rows.addWidget(picture)
        self.setFixedWidth(size.width())

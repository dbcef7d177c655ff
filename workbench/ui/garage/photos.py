"""Pictures of the bike as small prints, added by file and taken off again."""

from __future__ import annotations

from functools import partial
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QSize, Qt
from PySide6.QtGui import QImageReader, QPixmap
from PySide6.QtWidgets import QFileDialog, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.garage_rows import PhotoRow

FILES = "Pictures (*.jpg *.jpeg *.png *.webp *.gif *.bmp)"
SIZE = QSize(200, 150)


def small_print(content: bytes) -> QPixmap:
    """Read a picture no larger than its print needs; empty if it cannot be read."""
    buffer = QBuffer()
    buffer.setData(QByteArray(content))
    buffer.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(buffer)
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and (size.width() > SIZE.width() or size.height() > SIZE.height()):
        reader.setScaledSize(size.scaled(SIZE, Qt.AspectRatioMode.KeepAspectRatio))
    return QPixmap.fromImage(reader.read())


class _Print(QWidget):
    """One picture with its name, or the words that its file is missing."""

    def __init__(self, view_model: GarageViewModel, row: PhotoRow, place: int) -> None:
        super().__init__()
        content = view_model.picture(row.sha256)
        pixmap = small_print(content) if content is not None else QPixmap()
        name = one_line(row.name)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        if pixmap.isNull():
            trouble = "cannot be shown" if content is not None else "The file is missing from the photos folder"
            said = Words(f"{trouble}. Add it again." if content is None else f"It {trouble}.", "problem")
            said.setObjectName(f"photo_missing_{place}")
            rows.addWidget(said)
        else:
            picture = Words("")
            picture.setObjectName(f"photo_{place}")
            picture.setAccessibleName(f"Picture: {name}")
            picture.setPixmap(pixmap)
            picture.setFixedHeight(SIZE.height())
            rows.addWidget(picture)
        rows.addWidget(Words(f"{name}, {row.date}", "note", elide=True))
        remove = Button("Remove", "plain", name=f"photo_remove_{place}")
        remove.setAccessibleName(f"Remove picture {name}")
        remove.clicked.connect(partial(view_model.remove_picture, row.photo_id))
        rows.addWidget(remove, 0, Qt.AlignmentFlag.AlignLeft)
        self.setFixedWidth(SIZE.width())


class PhotosView(QWidget):
    """All pictures of the bike."""

    def __init__(self, view_model: GarageViewModel) -> None:
        super().__init__()
        self.setObjectName("photos")
        self._garage = view_model
        self._shown: tuple[PhotoRow, ...] | None = None
        self._flow: Flow | None = None
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, SPACE_16)
        self._rows.setSpacing(SPACE_8)
        add = Button("Add a picture ...", "plain", name="photo_add")
        add.clicked.connect(self._ask)
        self._rows.addWidget(Rule())
        self._rows.addWidget(Words("Pictures", "strong"))
        self._rows.addWidget(add, 0, Qt.AlignmentFlag.AlignLeft)

    def show_photos(self, rows: tuple[PhotoRow, ...]) -> None:
        """Show the pictures; each file is read once."""
        if rows == self._shown:
            return
        self._shown = rows
        if self._flow is not None:
            self._flow.hide()
            self._flow.deleteLater()
        self._flow = Flow(gap=SPACE_16)
        for place, row in enumerate(rows, 1):
            self._flow.addWidget(_Print(self._garage, row, place))
        self._rows.insertWidget(2, self._flow)
        self._flow.setVisible(bool(rows))

    def _ask(self) -> None:
        path, _ = QFileDialog.getOpenFileName(self, "Add a picture", "", FILES)
        if path:
            self._garage.add_picture(Path(path))

"""Pictures of the bike as small prints, added by file and taken off again."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.picture_print import PicturePrint
from workbench.ui.parts.sheet import Rule
from workbench.ui.parts.theme import SPACE_4, SPACE_8, SPACE_16
from workbench.ui.pictures import ask_picture
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.garage_rows import PhotoRow

SIZE = QSize(200, 150)


class _Print(QWidget):
    """One picture with its name, or the words that its file is missing."""

    def __init__(self, view_model: GarageViewModel, row: PhotoRow, place: int) -> None:
        super().__init__()
        name = one_line(row.name)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_4)
        content, own = view_model.picture(row.sha256), f"photo_{place}"
        rows.addWidget(PicturePrint(content, name, SIZE, name=own, missing_name=f"photo_missing_{place}"))
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
        if path := ask_picture(self):
            self._garage.add_picture(path)

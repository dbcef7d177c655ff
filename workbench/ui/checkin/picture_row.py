"""The picture of one thing found: its small print with the key that takes it off, and the key that adds one."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.picture_print import PicturePrint
from workbench.ui.parts.theme import SPACE_16

SIZE = QSize(160, 120)


class PictureRow(QWidget):
    """Takes no room without a picture. Put its key ``add`` where there is room; ``left`` when the picture is to go."""

    left = Signal()

    def __init__(self, picture: Callable[[str], bytes | None], *, name: str, says: str) -> None:
        super().__init__()
        self._picture, self._name, self._says = picture, name, says
        self._shown = ""
        self._print: QWidget | None = None
        self.add = Button("Picture ...", "plain", name=f"{name}_add")
        self.off = Button("Take the picture off", "link", name=f"{name}_off")
        self.off.setAccessibleName(f"Take the picture off: {says}")
        self.off.clicked.connect(self.left)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(SPACE_16)
        self._row.addWidget(self.off, 0, Qt.AlignmentFlag.AlignTop)
        self._row.addStretch(1)
        self.show_picture("", can_leave=False)

    def show_picture(self, sha256: str, *, can_leave: bool) -> None:
        """Show a picture by its file, or none; each file is read once."""
        self.setVisible(bool(sha256))
        self.off.setVisible(can_leave)
        self.add.set_text("Another picture ..." if sha256 else "Picture ...")
        self.add.setAccessibleName(f"{'Another picture' if sha256 else 'Add a picture'}: {self._says}")
        if sha256 == self._shown:
            return
        self._shown = sha256
        if self._print is not None:
            self._print.hide()
            self._print.deleteLater()
        self._print = PicturePrint(self._picture(sha256), self._says, SIZE, name=self._name) if sha256 else None
        if self._print is not None:
            self._row.insertWidget(0, self._print)

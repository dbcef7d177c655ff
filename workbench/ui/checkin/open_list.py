"""The hand-over list: what was found and is still open, and what is agreed about it."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.checkin.picture_row import PictureRow
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import Segments
from workbench.ui.parts.field_base import EntryLine
from workbench.ui.parts.flow import Flow
from workbench.ui.parts.labels import Words
from workbench.ui.parts.theme import SPACE_4, SPACE_8
from workbench.viewmodels.checkin_state import OpenRow

GRAVE = "This can throw a rider: it is mended and looked at again, not overruled."


class OpenList(QWidget):
    """Lines with what can be done about each."""

    closed = Signal(str)
    declined = Signal(str)
    overrule_requested = Signal(str)
    picture_wanted = Signal(str)
    picture_left = Signal(str)

    def __init__(self, after: QWidget, picture: Callable[[str], bytes | None]) -> None:
        super().__init__()
        self._picture = picture
        self._after = after  # what Tab comes to before the list
        self._shown: tuple[OpenRow, ...] = ()
        self._list = QVBoxLayout(self)
        self._list.setContentsMargins(0, 0, 0, 0)
        self._list.setSpacing(SPACE_8)

    def show_rows(self, rows: tuple[OpenRow, ...]) -> None:
        """Show the list."""
        if rows == self._shown:
            return
        self._shown = rows
        while item := self._list.takeAt(0):
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for row in rows:
            self._list.addWidget(self._line(row))
        last = self._after
        for button in self.findChildren(Button):
            if not button.isHidden() and button.property("item_id") in {row.item_id for row in rows}:
                QWidget.setTabOrder(last, button)
                last = button
        if not rows:
            self._list.addWidget(Words("Nothing is open.", "mute", name="checkin_nothing_open"))

    def _line(self, row: OpenRow) -> QWidget:
        line = QWidget()
        line.setObjectName(f"open_{_name(row)}")
        across = QHBoxLayout(line)
        across.setContentsMargins(0, 0, 0, 0)
        words = QVBoxLayout()
        words.setSpacing(0)
        is_stop = row.severity == "stop"
        words.addWidget(Words(f"{row.word}: {row.title}", "care" if is_stop else "strong"))
        words.addWidget(Words(row.found, "mute"))
        remark = Words("", "note", name=f"open_{_name(row)}_remark")
        remark.set_words(GRAVE if row.is_grave_stop and not row.remark else row.remark)
        words.addWidget(remark)
        picture = self._picture_row(row)
        words.addWidget(picture)
        across.addLayout(words, 1)
        keys = QHBoxLayout()
        keys.setSpacing(SPACE_8)
        for word, kind, signal in self._keys(row):
            button = Button(word, "plain", name=f"open_{_name(row)}_{kind}")
            button.setAccessibleName(f"{word}: {row.title}")
            button.setProperty("item_id", row.item_id)
            button.clicked.connect(signal)
            keys.addWidget(button)
        keys.addWidget(picture.add)
        across.addLayout(keys)
        across.setAlignment(keys, Qt.AlignmentFlag.AlignTop)
        return line

    def _picture_row(self, row: OpenRow) -> PictureRow:
        picture = PictureRow(self._picture, name=f"open_{_name(row)}_picture", says=row.title)
        picture.show_picture(row.photo, can_leave=bool(row.photo))
        picture.add.setProperty("item_id", row.item_id)
        picture.add.clicked.connect(partial(self.picture_wanted.emit, row.item_id))
        picture.left.connect(partial(self.picture_left.emit, row.item_id))
        return picture

    def _keys(self, row: OpenRow) -> list[tuple[str, str, object]]:
        keys: list[tuple[str, str, object]] = [("Seen to", "close", self._close)]
        keys.append(("Takes it after all" if row.is_declined else "Declines", "decline", self._decline))
        if row.can_overrule:
            keys.append(("Overrule ...", "overrule", self._overrule))
        return keys

    def _close(self) -> None:
        self.closed.emit(str(self.sender().property("item_id")))

    def _decline(self) -> None:
        self.declined.emit(str(self.sender().property("item_id")))

    def _overrule(self) -> None:
        self.overrule_requested.emit(str(self.sender().property("item_id")))


def _name(row: OpenRow) -> str:
    return row.code.replace("/", "_")


class OverruleForm(QWidget):
    """Who lets the bike be ridden nevertheless, and why; it stands on the card."""

    overruled = Signal(str, str, str)
    left = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._item_id = ""
        self.setObjectName("overrule")
        self._title = Words("", "strong")
        self._by, self._reason = EntryLine(), EntryLine()
        for line, name, label in ((self._by, "by", "Who overrules it"), (self._reason, "reason", "Why")):
            line.setObjectName(f"overrule_{name}")
            line.setAccessibleName(label)
            line.setPlaceholderText(label)
            line.setMaxLength(200)
        self._canned = Flow(gap=SPACE_4)
        self._segments: Segments | None = None
        self._said = Words("", "problem", name="overrule_said")
        self._verb = Button("Overrule: it may be ridden", "plain", name="overrule_keep")
        self._verb.clicked.connect(self._press)
        self._back = Button("Leave it blocked", "link", name="overrule_leave")
        self._back.clicked.connect(self.left)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(SPACE_8)
        entries = QHBoxLayout()
        entries.addWidget(self._by, 1)
        entries.addWidget(self._reason, 2)
        keys = QHBoxLayout()
        keys.addWidget(self._verb)
        keys.addWidget(self._back)
        keys.addStretch(1)
        rows.addWidget(self._title)
        rows.addLayout(entries)
        rows.addWidget(self._canned)
        rows.addWidget(self._said)
        rows.addLayout(keys)

    def ask(self, row: OpenRow, by: str, reasons: tuple[str, ...]) -> None:
        """Ask about one line of the list."""
        self._item_id = row.item_id
        self._title.set_words(f"Ride it although: {row.title.lower()}")
        self._by.setText(by)
        self._reason.setText("")
        self._said.set_words("")
        if self._segments is None:
            self._segments = Segments([(one, one) for one in reasons], label="Reason", name="overrule_canned")
            self._segments.group.idClicked.connect(self._pick)
            self._canned.addWidget(self._segments)
        self._segments.choose(None)
        target = self._reason if by else self._by
        target.setFocus(Qt.FocusReason.OtherFocusReason)

    def say(self, field: str, text: str) -> None:
        """Say what is missing, and go there."""
        self._said.set_words(text)
        line = self._by if field == "overrule_by" else self._reason
        line.setFocus(Qt.FocusReason.OtherFocusReason)

    def _pick(self, index: int) -> None:
        if self._segments is not None:
            key = self._segments.keys[index]
            self._segments.choose(key)
            self._reason.setText(key)

    def _press(self) -> None:
        self.overruled.emit(self._item_id, self._by.text(), self._reason.text())

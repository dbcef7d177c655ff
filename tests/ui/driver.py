"""A page on screen over a real library, found by names and driven like a person would."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget

from workbench.viewmodels.bench import Bench

Key = Qt.Key


class Driver:
    """Mouse, keys and eyes on one page."""

    def __init__(self, qtbot, desk, page_type, model_type, bike_id=None):
        self.bot, self.desk = qtbot, desk
        self.bench = Bench(desk)
        if bike_id is not None:
            self.bench.put_bike(bike_id)
        self.model = model_type(desk, self.bench)
        self.page = page_type(self.model)
        self.problems, self.kept, self.asked_for = [], [], []
        self.page.problem_raised.connect(self.problems.append)
        self.page.kept.connect(self.kept.append)
        self.page.station_requested.connect(self.asked_for.append)
        self.page.resize(940, 560)
        qtbot.addWidget(self.page)
        self.page.show()
        self.page.activateWindow()
        self.page.start()

    def find(self, name: str, kind: type = QWidget) -> QWidget:
        """The one visible widget of this name."""
        QApplication.processEvents()
        found = [one for one in self.page.findChildren(kind, name) if one.isVisibleTo(self.page)]
        assert len(found) == 1, f"{name}: {found}"
        return found[0]

    def is_shown(self, name: str) -> bool:
        """Whether a widget of this name is in sight."""
        QApplication.processEvents()
        return any(one.isVisibleTo(self.page) for one in self.page.findChildren(QWidget, name))

    def press(self, name: str) -> None:
        """Click a button."""
        button = self.find(name)
        assert isinstance(button, QAbstractButton)
        self.bot.mouseClick(button, Qt.MouseButton.LeftButton)

    def keys(self, *keys: Qt.Key) -> None:
        """Press keys where the focus is."""
        for key in keys:
            focus = self.page.focusWidget()
            assert focus is not None
            self.bot.keyClick(focus, key)

    def tab_to(self, name: str) -> None:
        """Go on with Tab until a widget has the focus."""
        for _ in range(80):
            if self.focused() in (name, f"{name}_entry"):
                return
            self.keys(Key.Key_Tab)
        raise AssertionError(f"Tab never comes to {name}")

    def focused(self) -> str:
        """The name of what has the focus."""
        widget = self.page.focusWidget()
        return widget.objectName() if widget else ""

    def type_into(self, name: str, text: str, *, then: Qt.Key | None = None) -> None:
        """Replace the text of a line as a person does."""
        line = self.find(name, QLineEdit)
        line.setFocus()
        line.selectAll()
        if text:
            self.bot.keyClicks(line, text)
        else:
            self.bot.keyClick(line, Key.Key_Delete)
        if then is not None:
            self.bot.keyClick(line, then)

    def words(self) -> str:
        """All words in sight."""
        QApplication.processEvents()
        return "\n".join(
            one.text()
            for one in self.page.findChildren(QWidget)
            if one.isVisibleTo(self.page) and hasattr(one, "text") and isinstance(one.text(), str)
        )

"""The left side of the window: search on top, the bikes, the button to add one."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QLineEdit, QMenu, QVBoxLayout, QWidget

from workbench.ui.garage.bike_list import BikeList
from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ListBox
from workbench.ui.parts.labels import Words, one_line
from workbench.ui.parts.theme import NORMAL_SIZES, SPACE_8, SPACE_16, SPACE_24, announcer, current
from workbench.viewmodels.window import WindowState, WindowViewModel

WIDTH = 264


class GarageSide(QWidget):
    """Search and pick a bike."""

    def __init__(self, view_model: WindowViewModel, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._view_model = view_model
        self.setObjectName("garage_side")
        self._fit()
        announcer.changed.connect(self._fit)
        self._title = Words("Garage", "title", name="garage_side_title")
        self.search = QLineEdit()
        self.search.setObjectName("garage_search")
        self.search.setAccessibleName("Search bike, rider, tag")
        self.search.setPlaceholderText("Search bike, rider, tag")
        self.search.textChanged.connect(view_model.search)
        self.tags = ListBox(())
        self._shown_tags: tuple[str, ...] = ()
        self.tags.setObjectName("garage_tags")
        self.tags.setAccessibleName("Only bikes with this tag")
        self.tags.activated.connect(self._pick_tag)
        self.list = BikeList(view_model.due, view_model.due_as_read)
        self.list.setStyleSheet("QListView { border: none; background: transparent; }")
        self.list.bike_picked.connect(view_model.open_bike)
        self.list.menu_requested.connect(self._offer)
        self.search.returnPressed.connect(self.list.pick_first)
        self._nothing = Words("", "mute", name="garage_nothing")
        self._all = Button("Show all bikes", "link", name="garage_all")
        self._all.clicked.connect(self._show_all)
        self._add = Button("Add bike", "plain", name="garage_add")
        self._add.setAccessibleName("Add bike to the garage")
        self._add.clicked.connect(view_model.new_bike)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(SPACE_16, SPACE_24, SPACE_8, SPACE_16)
        rows.setSpacing(SPACE_16)
        for widget in (self._title, self.search, self.tags, self._nothing):
            rows.addWidget(widget)
        rows.addWidget(self._all, 0, Qt.AlignmentFlag.AlignLeft)
        rows.addWidget(self.list, 1)
        rows.addStretch(0)
        rows.addWidget(self._add)

    def _fit(self, _theme: object = None) -> None:
        """Larger letters need a wider list."""
        self.setFixedWidth(round(WIDTH * current().sizes.note / NORMAL_SIZES.note))

    def show_state(self, state: WindowState) -> None:
        """Show the bikes found."""
        self._title.setText("Put away" if state.shows_archive else "Garage")
        self.list.show_rows(state.rows, state.bike_id)
        self.list.setVisible(bool(state.rows))
        self.search.setVisible(not state.garage_is_empty or state.shows_archive)
        self._show_tags(state)
        words = f"No bike matches “{state.search}”." if state.search else ""
        if state.shows_archive and not state.search:
            words = "No bike is put away."
        self._all.setVisible(bool(state.search or state.tag))
        self._nothing.set_words("" if state.rows else words)

    def _offer(self, bike_id: str, place: QPoint) -> None:
        """Offer what can be done with a bike of the list; the menus offer it as well."""
        menu = QMenu(self)
        menu.setObjectName("bike_menu")
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        menu.addAction("Open", partial(self._view_model.open_bike, bike_id))
        words = "Bring back" if self._view_model.state.shows_archive else "Put away"
        menu.addAction(words, partial(self._view_model.archive, bike_id))
        menu.popup(place)

    def _show_tags(self, state: WindowState) -> None:
        self.tags.setVisible(bool(state.tags))
        if state.tags != self._shown_tags:
            self._shown_tags = state.tags
            self.tags.clear()
            self.tags.addItem("All tags", "")
            for tag in state.tags:
                self.tags.addItem(one_line(tag), tag)
        self.tags.setCurrentIndex(max(self.tags.findData(state.tag), 0))

    def _pick_tag(self, place: int) -> None:
        self._view_model.pick_tag(str(self.tags.itemData(place)))

    def _show_all(self) -> None:
        self.search.clear()
        self._view_model.pick_tag("")

    def focus_list(self) -> None:
        """Put the focus on the bikes, or on the search where there are none."""
        (self.list if self.list.isVisible() else self._add).setFocus(Qt.FocusReason.OtherFocusReason)

    def focus_search(self) -> None:
        """Put the caret into the search field."""
        self.search.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.search.selectAll()

"""The window: the garage on the left, the sheet of the bike on the bench, menus. Navigation only."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QCloseEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from workbench.ui.garage.side import GarageSide
from workbench.ui.head import Head
from workbench.ui.help import help_paper, page_of
from workbench.ui.hint_line import HintLine
from workbench.ui.menus import build_menus
from workbench.ui.page import Page
from workbench.ui.parts.banner import Banner
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.field_base import commit_focused
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.tab_order import go_on
from workbench.ui.parts.theme import SPACE_8, SPACE_16, SPACE_24
from workbench.ui.parts.title_block import TitleBlock
from workbench.ui.room import SMALLEST, Room
from workbench.ui.welcome import Welcome
from workbench.ui.window_dialogs import ask_person, ask_reason, care_paper, keys_paper, show
from workbench.ui.window_menus import window_menus
from workbench.viewmodels.base import Problem
from workbench.viewmodels.window import BACKUPS, NEW_BIKE, WITHOUT_BIKE, WindowState, WindowViewModel

PageMaker = Callable[[], Page]
LEADS_TO_BACKUPS = "restore a backup"  # said when a file is damaged: the way there stands beside it


class MainWindow(QMainWindow):
    """Everything permanent on screen, and the page that lies open."""

    look_picked = Signal(bool, bool)  # dark, bench mode
    sample_requested = Signal()
    about_requested = Signal()

    def __init__(self, view_model: WindowViewModel, pages: Mapping[str, PageMaker]) -> None:
        super().__init__()
        self.setObjectName("window")
        self.setWindowTitle("Trailbench")
        self.setMinimumSize(*SMALLEST)
        self._view_model = view_model
        self._makers = pages
        self._pages: dict[str, Page] = {}
        self._banner_deed: Callable[[], object] | None = None
        self._shown: tuple[str | None, bool] = (None, False)  # which bike, and whether a new one is being added
        self.side = GarageSide(view_model)
        self.banner = Banner()
        self.head = Head(view_model, self.banner)
        self.title_block = TitleBlock(person_label="By")
        self.title_block.setProperty("is_inset", True)
        self._stop = CareNote("", name="window_stop")
        self._hint = HintLine()
        self._welcome = Welcome(view_model)
        self._stack = QStackedWidget()
        self._stack.addWidget(self._welcome)
        self._whole = self._build()
        self.setCentralWidget(self._whole)
        self.menu = build_menus(self, window_menus(self, view_model))
        self._room = Room(
            self,
            side=self.side,
            head=self.head,
            sheet=self._sheet,
            title_block=self.title_block,
            hint=self._hint,
            state=lambda: view_model.state,
            is_bench=self.menu["bench"].isChecked,
        )
        self._listen()
        view_model.show()
        self._render(view_model.state)
        self._to_page()

    def _build(self) -> QWidget:
        self._sheet = sheet = QFrame()
        sheet.setObjectName("sheet_frame")
        sheet.setProperty("role", "card")
        paper = QVBoxLayout(sheet)
        paper.setContentsMargins(1, 1, 1, 1)  # the frame's own line
        paper.setSpacing(0)
        paper.addWidget(self._stack, 1)
        paper.addWidget(self.title_block)
        right = QVBoxLayout()
        right.setContentsMargins(SPACE_16, SPACE_8, SPACE_24, SPACE_16)
        right.setSpacing(SPACE_8)
        right.addWidget(self.head)
        right.addWidget(self._stop)
        right.addWidget(self._hint)
        right.addWidget(sheet, 1)
        right.addStretch(0)  # keeps the head at the top while the sheet makes room for the garage
        whole = QWidget()
        columns = QHBoxLayout(whole)
        columns.setContentsMargins(0, 0, 0, 0)
        columns.setSpacing(0)
        columns.addWidget(self.side)
        columns.addLayout(right, 1)
        return whole

    def _listen(self) -> None:
        self._view_model.state_changed.connect(self._render)
        self._view_model.refused.connect(self._say_problem)
        self._view_model.kept.connect(self._say_kept)
        self._view_model.undo_offered.connect(self._offer_undo)
        self._welcome.demo_requested.connect(self.sample_requested)
        self.head.garage_requested.connect(self._turn_garage)
        self.side.list.bike_picked.connect(self._bike_picked)
        self._hint.put_away.connect(self._put_hint_away)
        self.banner.action_requested.connect(self._banner_pressed)
        self.banner.close_button.clicked.connect(self._to_page)
        self.title_block.person_requested.connect(self.choose_person)

    def page(self, station: str) -> Page:
        """Give the page of a station, made on its first visit."""
        if station not in self._pages:
            page = self._makers[station]()
            page.problem_raised.connect(self.say)
            page.kept.connect(self._say_kept)
            page.discarded.connect(self._say_discarded)
            page.station_requested.connect(self._view_model.open_station)
            page.help_wanted.connect(self.show_page)
            page.garage_replaced.connect(self._start_over)
            for sheet in page.findChildren(Sheet, options=Qt.FindChildOption.FindDirectChildrenOnly):
                sheet.setProperty("role", "page")  # the window's frame is its edge
            self._pages[station] = page
            self._stack.addWidget(page)
        return self._pages[station]

    def _render(self, state: WindowState) -> None:
        self.side.show_state(state)
        self.head.show_state(state, shows_bike=state.bike_id is not None and state.station != NEW_BIKE)
        self._stop.set_text(state.stop)
        self._room.fit()
        self.title_block.set_cells(state.cells)
        self._welcome.show_state(state)
        self.menu["undo"].setText(f"&Undo {_menu_text(state.undo_text)}".rstrip())
        self.menu["undo"].setEnabled(bool(state.undo_text))
        self.menu["redo"].setText(f"&Redo {_menu_text(state.redo_text)}".rstrip())
        self.menu["redo"].setEnabled(bool(state.redo_text))
        has_bike = state.bike_id is not None
        self.menu["archive"].setText("&Bring this bike back" if state.is_archived else "&Put this bike away")
        for name, action in self.menu.items():
            if name.startswith("go_") or name == "archive":
                action.setEnabled(has_bike)
        self.menu["skip"].setText("&Take this station up again" if state.is_skipped else "&Skip this station ...")
        self.menu["skip"].setEnabled(state.can_skip)
        what = (state.bike_id, state.station == NEW_BIKE)
        if what != self._shown:
            self._shown = what
            self._room.make()
        if state.station in WITHOUT_BIKE or has_bike:
            self._open(state.station)
        else:
            self._show(self._welcome)

    def _open(self, station: str) -> None:
        self._show(self.page(station))

    def _show(self, page: Page | Welcome) -> None:
        if self._stack.currentWidget() is not page:
            self._stack.setCurrentWidget(page)
            page.start()

    def _start_over(self) -> None:
        """The library holds something else now: every page but the open one is made anew when it is next opened."""
        stay = self._stack.currentWidget()
        for station, page in list(self._pages.items()):
            if page is not stay:
                self._stack.removeWidget(page)
                page.deleteLater()
                del self._pages[station]
        self._view_model.start_over()

    # What the menus ask for

    def focus_search(self) -> None:
        """Put the caret into the search field."""
        self.side.show()
        self._room.fit()
        self.side.focus_search()

    def switch_dark(self) -> None:
        """Light or dark."""
        self._look()

    def switch_bench(self) -> None:
        """Large keys, one column."""
        self._look()

    def switch_archive(self) -> None:
        """List the bikes put away instead."""
        self._view_model.show_archive(self.menu["archived"].isChecked())

    def set_look(self, dark: bool, bench: bool) -> None:
        """Tick the look in use; in bench mode the sheet has the window to itself."""
        self.menu["dark"].setChecked(dark)
        self.menu["bench"].setChecked(bench)
        self._room.make()

    def _put_hint_away(self) -> None:
        self._view_model.put_hint_away()
        self._to_page()

    def _turn_garage(self) -> None:
        """Show the garage list beside the sheet, or put it away again."""
        self.side.setVisible(self.side.isHidden())
        self._room.fit()
        if self.side.isVisible():
            self.side.focus_list()
        else:
            self._to_page()

    def _bike_picked(self, _bike_id: str) -> None:
        """A list brought back for picking goes away again once a bike is picked."""
        if self._room.is_close():
            self._room.make()
            self._to_page()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._room.resized()

    def skip_station(self) -> None:
        """Pass the open station over, or take it up again."""
        state = self._view_model.state
        if state.is_skipped:
            self._view_model.unskip(state.station)
        elif reason := ask_reason(self):
            self._view_model.skip(state.station, reason)

    def choose_person(self) -> None:
        """Say who is at the bench."""
        state = self._view_model.state
        person_id, name = ask_person(state.people, state.person_id, self)
        if person_id:
            self._view_model.seat(person_id)
        elif name:
            self._view_model.add_bench_person(name)

    def open_sample(self) -> None:
        """Open the sample garage in a window of its own."""
        self.sample_requested.emit()

    def show_about(self) -> None:
        """Say what this is and where the data lies."""
        self.about_requested.emit()

    def show_help(self) -> None:
        """Explain the sheet that lies open."""
        self.show_page(page_of(self._view_model.state.station))

    def show_page(self, page: str, heading: str = "") -> None:
        """Show one page of the help, from one of its headings on if it is named."""
        show(help_paper(page, self, heading=heading))

    def show_hints_again(self) -> None:
        """Show the hint of every station again, until it is put away."""
        self._view_model.show_hints_again()

    def show_keys(self) -> None:
        """Show the keyboard map."""
        show(keys_paper(self.menu.values(), self))

    def show_care(self) -> None:
        """Show what to take care of."""
        show(care_paper(self))

    # Notices

    def _look(self) -> None:
        self.look_picked.emit(self.menu["dark"].isChecked(), self.menu["bench"].isChecked())

    def say(self, text: str) -> None:
        """Show a sentence in the notice; one about a damaged file with the way to the backups."""
        if LEADS_TO_BACKUPS in text.casefold() and self._view_model.state.station != BACKUPS:
            self.say_with(text, "Backups", partial(self._view_model.open_station, BACKUPS))
            return
        self._banner_deed = None
        self.banner.say(text)

    def _say_problem(self, problem: Problem) -> None:
        self.say(problem.text)

    def _say_kept(self, label: str) -> None:
        self._banner_deed = partial(self._view_model.undo_named, label)
        self.banner.say(label, "Undo")

    def _say_discarded(self, label: str, draft_id: str) -> None:
        self.say_with(label, "Take it back", partial(self._view_model.take_back_draft, draft_id))

    def say_with(self, text: str, action: str, deed: Callable[[], object]) -> None:
        """Show a notice with a deed of the caller's."""
        self._banner_deed = deed
        self.banner.say(text, action)

    def say_lasting(self, text: str) -> None:
        """Show a sentence that stays until it is closed."""
        self._banner_deed = None
        self.banner.say(text, stays_ms=0)

    def _offer_undo(self, text: str) -> None:
        self.say_with(text, "Undo it", self._undo_offered)
        self.banner.action.setFocus(Qt.FocusReason.OtherFocusReason)

    def _undo_offered(self) -> None:
        self._view_model.undo(offered=False)

    def _banner_pressed(self) -> None:
        deed, self._banner_deed = self._banner_deed, None
        if deed is not None:
            deed()
        self._to_page()

    def _to_page(self) -> None:
        """Put the focus on the next thing to do of what lies open."""
        page = self._stack.currentWidget()
        if isinstance(page, Page | Welcome):
            page.start()

    def focusNextPrevChild(self, forward: bool) -> bool:
        return go_on(self._whole, forward=forward)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Keep what is being typed; nothing is asked."""
        commit_focused()
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        super().closeEvent(event)


def _menu_text(label: str) -> str:
    shown = label.replace("&", "&&")
    return f"“{shown}”" if shown else ""

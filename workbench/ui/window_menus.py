"""What stands in the menus of the window."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Protocol

from workbench.model.job import STATION_WORDS, STATIONS
from workbench.ui.menus import SEPARATOR, Entry
from workbench.viewmodels.window import (
    BACKUPS,
    BUNDLE,
    CARRY,
    HISTORY,
    LAP_TRACK,
    LEVERAGE,
    PEOPLE,
    SESSION_NOTES,
    SPRING,
    TEMPLATES,
    WindowViewModel,
)


class Commands(Protocol):
    """What the window itself offers to its menus."""

    def focus_search(self) -> None: ...
    def switch_dark(self) -> None: ...
    def switch_bench(self) -> None: ...
    def switch_archive(self) -> None: ...
    def skip_station(self) -> None: ...
    def show_about(self) -> None: ...
    def show_help(self) -> None: ...
    def show_page(self, page: str) -> None: ...
    def show_hints_again(self) -> None: ...
    def show_keys(self) -> None: ...
    def show_care(self) -> None: ...
    def open_sample(self) -> None: ...
    def choose_person(self) -> None: ...
    def close(self) -> bool: ...


def window_menus(window: Commands, view_model: WindowViewModel) -> Sequence[tuple[str, Sequence[Entry]]]:
    """Give the menus in order."""
    stations = [
        Entry(f"go_{station}", STATION_WORDS[station], _go(view_model, station), f"Ctrl+{place}")
        for place, station in enumerate(STATIONS, start=1)
    ]
    return (
        (
            "&Bike",
            (
                Entry("new_bike", "&Add bike", view_model.new_bike, "Ctrl+N"),
                Entry("find", "&Find bike", window.focus_search, "Ctrl+F"),
                Entry("archive", "&Put this bike away", view_model.archive),
                SEPARATOR,
                Entry("sample", "Open a &sample garage", window.open_sample),
                SEPARATOR,
                Entry("quit", "&Quit", window.close, "Ctrl+Q"),
            ),
        ),
        (
            "&Edit",
            (
                Entry("undo", "&Undo", view_model.undo, "Ctrl+Z"),
                Entry("redo", "&Redo", view_model.redo, "Ctrl+Shift+Z"),
                SEPARATOR,
                Entry("person", "Who is at the &bench ...", window.choose_person, "Ctrl+P"),
            ),
        ),
        (
            "&Library",
            (
                Entry("history", "&History", _go(view_model, HISTORY), "Ctrl+Shift+H"),
                Entry("people", "&People", _go(view_model, PEOPLE), "Ctrl+Shift+P"),
                Entry("templates", "&Templates", _go(view_model, TEMPLATES), "Ctrl+Shift+T"),
                Entry("bundle", "&In and out", _go(view_model, BUNDLE), "Ctrl+E"),
                Entry("backups", "&Backups", _go(view_model, BACKUPS), "Ctrl+Shift+B"),
            ),
        ),
        (
            "&Go",
            (
                *stations,
                SEPARATOR,
                Entry("go_spring", "Sp&ring curve", _go(view_model, SPRING), "Ctrl+9"),
                Entry("go_leverage", "&Leverage survey", _go(view_model, LEVERAGE), "Ctrl+0"),
                Entry("go_carry", "&Carry it over", _go(view_model, CARRY), "Ctrl+R"),
                Entry("go_session_notes", "Session from &notes", _go(view_model, SESSION_NOTES), "Ctrl+T"),
                Entry("go_lap_track", "Lap &times from a track", _go(view_model, LAP_TRACK), "Ctrl+L"),
                SEPARATOR,
                Entry("skip", "&Skip this station ...", window.skip_station),
            ),
        ),
        (
            "&View",
            (
                Entry("dark", "&Dark", window.switch_dark, "Ctrl+D", is_switch=True),
                Entry("bench", "&Bench mode: large keys", window.switch_bench, "Ctrl+B", is_switch=True),
                Entry("archived", "Bikes put &away", window.switch_archive, is_switch=True),
            ),
        ),
        (
            "&Help",
            (
                Entry("help", "This &sheet", window.show_help, "Ctrl+H"),
                Entry("verdicts", "How &verdicts are reached", partial(window.show_page, "verdicts")),
                Entry("what_it_does", "What each adjuster &does", partial(window.show_page, "what_it_does")),
                Entry("words", "&Words", partial(window.show_page, "glossary")),
                Entry("hints", "Show the &hints again", window.show_hints_again),
                Entry("care", "&Care", window.show_care),
                Entry("keys", "&Keys", window.show_keys, "Ctrl+K"),
                Entry("whats_new", "What is &new", partial(window.show_page, "whats-new")),
                Entry("about", "&About Trailbench", window.show_about),
            ),
        ),
    )


def _go(view_model: WindowViewModel, station: str) -> Callable[[], object]:
    return partial(view_model.open_station, station)

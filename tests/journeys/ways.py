"""Two ways to work the same screens: the mouse, or the keyboard alone."""

from __future__ import annotations

from typing import Protocol

from tests.journeys.hand import Hand, find

STATIONS = ("garage", "checkin", "adjusters", "sag", "baseline", "ride", "review", "card")
MOST_TABS = 120


class Way(Protocol):
    """What a story asks for; a control goes by its object name."""

    hand: Hand

    def press(self, name: str) -> None:
        """Press a button, a key, a tick box or a row of a step list."""

    def tick(self, name: str) -> None:
        """Tick a box."""

    def fill(self, name: str, text: str) -> None:
        """Replace what stands in a field, and leave it where the story needs it kept."""

    def count(self, tool: str, steps: int) -> None:
        """Count clicks with the counting tool."""

    def enter(self, name: str, text: str, button: str) -> None:
        """Fill a field and hand the text on: with Enter, or with a button."""

    def rate(self, bar: str, place: int) -> None:
        """Choose in a row of keys by its place, from 1."""

    def choose(self, name: str, line: str) -> None:
        """Choose the line of a list that begins so."""

    def go(self, station: str) -> None:
        """Open a station."""

    def menu(self, title: str, line: str) -> None:
        """Choose a line of the menus."""


class Mouse:
    """Everything by mouse; letters and digits of an entry are still typed."""

    def __init__(self, hand: Hand) -> None:
        self.hand = hand

    def press(self, name: str) -> None:
        self.hand.click(name)

    def tick(self, name: str) -> None:
        self.hand.click(f"{name}_entry")

    def fill(self, name: str, text: str) -> None:
        self.hand.fill(name, text)

    def count(self, tool: str, steps: int) -> None:
        for _ in range(steps):
            self.hand.click(f"{tool}_more")

    def enter(self, name: str, text: str, button: str) -> None:
        self.hand.fill(name, text)
        self.hand.click(button)

    def rate(self, bar: str, place: int) -> None:
        self.hand.click(f"{bar}_{place}")

    def choose(self, name: str, line: str) -> None:
        self.hand.click(name)
        self.hand.click_line(line)

    def go(self, station: str) -> None:
        self.hand.click(f"job_line_{station}")

    def menu(self, title: str, line: str) -> None:
        self.hand.click_line(title)
        self.hand.click_line(line)


class BothHands(Mouse):
    """As somebody works who knows the keys: the mouse to get there, the keyboard to count and to enter."""

    def count(self, tool: str, steps: int) -> None:
        self.hand.wait_focus(tool)
        self.hand.keys(*["space"] * steps)

    def enter(self, name: str, text: str, button: str) -> None:
        self.hand.fill(name, text)
        self.hand.keys("Return")


class Keyboard:
    """No mouse event at all."""

    def __init__(self, hand: Hand) -> None:
        self.hand = hand
        self.tabs = 0

    def press(self, name: str) -> None:
        self._tab_to(name)
        self.hand.keys("Return")

    def tick(self, name: str) -> None:
        self._tab_to(f"{name}_entry")
        self.hand.keys("space")

    def fill(self, name: str, text: str) -> None:
        self._tab_to(name)
        self.hand.keys("ctrl+a")
        self.hand.type(text)
        self.hand.wait_text(name, text)

    def count(self, tool: str, steps: int) -> None:
        self._tab_to(tool)
        self.hand.keys(*["space"] * steps)

    def enter(self, name: str, text: str, button: str) -> None:
        self.fill(name, text)
        self.hand.keys("Return")

    def rate(self, bar: str, place: int) -> None:
        self._tab_to(bar)
        self.hand.keys(str(place))

    def choose(self, name: str, line: str) -> None:
        self._tab_to(name)
        for key in ("Home", *["Down"] * 20):
            self.hand.keys(key)
            if self.hand.text_soon(name, line):
                return
        raise AssertionError(f"no line {line} in {name}")

    def go(self, station: str) -> None:
        self.hand.keys(f"ctrl+{STATIONS.index(station) + 1}")

    def menu(self, title: str, line: str) -> None:
        self.hand.keys(f"alt+{title[0].lower()}")
        self.hand.wait(lambda sight: sight["popup"], f"the menu {title}")
        for _ in range(20):
            sight = self.hand.look()
            if sight["line"].startswith(line):
                self.hand.keys("Return")
                return
            self.hand.keys("Down")
        raise AssertionError(f"no line {line} in {title}")

    def _tab_to(self, name: str) -> None:
        """Press Tab until the control, or a part of it, has the focus."""
        self.hand.wait(lambda sight: find(sight, name), f"{name} to be there")
        visited = []
        for _ in range(MOST_TABS):
            focus = self.hand.look()["focus"]
            if focus == name or focus.rpartition("_")[0] == name:
                return
            visited.append(focus)
            self.hand.keys("Tab")
            self.tabs += 1
            self.hand.settle(focus)
        raise AssertionError(f"Tab never comes to {name}: {visited}")

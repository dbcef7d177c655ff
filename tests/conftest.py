"""What holds for every test: no real home, no left-over windows, and a real screen where one is asked for."""

from __future__ import annotations

import gc
import itertools
import os
import sys
from pathlib import Path

import pytest
from hypothesis import settings

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

settings.register_profile("gate", deadline=None, derandomize=True, database=None)
settings.load_profile("gate")

HOME_NUMBERS = itertools.count()
HOME_NAMES = {
    "HOME": "",
    "XDG_DATA_HOME": "data",
    "XDG_CONFIG_HOME": "config",
    "XDG_CACHE_HOME": "cache",
    "XDG_STATE_HOME": "state",
}


@pytest.fixture(scope="session")
def homes(tmp_path_factory):
    """The folder that holds the home of each test."""
    return tmp_path_factory.mktemp("homes")


@pytest.fixture(autouse=True)
def own_home(homes: Path, monkeypatch):
    """A home of its own for every test, so that none meets a library of the person who runs them."""
    home = homes / str(next(HOME_NUMBERS))
    home.mkdir()
    for name, folder in HOME_NAMES.items():
        monkeypatch.setenv(name, str(home / folder))
    return home


@pytest.fixture
def desk(tmp_path):
    """The desk over a real library in a folder of the test's own."""
    from tests.fixtures import make_desk

    with make_desk(tmp_path) as desk:
        yield desk


@pytest.fixture
def bike(desk):
    """A bike that is ready to ride: its adjusters counted, setup no. 1 kept and set."""
    from tests.fixtures import a_baseline, a_counted_bike

    bike = a_counted_bike(desk)
    a_baseline(desk, bike)
    return bike


@pytest.fixture(scope="session")
def tour(tmp_path_factory, qapp):
    """The whole tour, walked once: what is seen on every screen, and the card."""
    from workbench.__main__ import read_arguments
    from workbench.tour.walk import Walk

    folder = tmp_path_factory.mktemp("tour")
    screens = {}
    with pytest.MonkeyPatch.context() as patch:
        for name, inside in HOME_NAMES.items():
            patch.setenv(name, str(folder / inside))
        with Walk(read_arguments(["--tour", str(folder)])) as walk:
            for screen in walk.screens():
                assert not screen.picture.isNull()
                screens[screen.name] = screen.listing
            walk.write_card(folder / "card.pdf")
    return screens, folder / "card.pdf"


@pytest.fixture(autouse=True)
def real_screen(request):
    """A window test run without a real screen fails by name, instead of passing on a pretended one."""
    if request.node.get_closest_marker("window") and os.environ["QT_QPA_PLATFORM"] != "xcb":
        pytest.fail("window tests need a real screen: run them with  python3 packaging/start.py test -m window")


@pytest.fixture(autouse=True)
def no_window_left_over():
    """A test that leaves a top-level widget behind fails."""
    before = set(map(id, top_level_widgets()))
    yield
    left = [widget for widget in top_level_widgets() if id(widget) not in before]
    if left:
        del left
        gc.collect()
        left = [widget for widget in top_level_widgets() if id(widget) not in before]
    assert not left, f"left over after the test: {', '.join(map(repr, left))}"


def top_level_widgets() -> list:
    """All top-level widgets, after the deletions asked for are done; Qt's own tool tip lives on and is left out."""
    widgets = sys.modules.get("PySide6.QtWidgets")
    application = widgets.QApplication.instance() if widgets else None
    if not isinstance(application, widgets.QApplication if widgets else ()):
        return []
    from PySide6.QtCore import QEvent

    application.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    return [widget for widget in application.topLevelWidgets() if widget.metaObject().className() != "QTipLabel"]

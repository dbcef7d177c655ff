"""Every screen of the tour: which library, its name, bench mode or not, and how to get there."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtWidgets import QApplication, QWidget

from workbench.actions.garage import garage_rows
from workbench.actions.parts import bike_parts
from workbench.app import Workbench
from workbench.model.bike import Station
from workbench.tour import spring_stops
from workbench.tour.blind_stops import BLIND_STOPS
from workbench.tour.checkin_stops import CHECKIN_STOPS
from workbench.tour.more_stops import more_stops
from workbench.tour.review_stops import REVIEW_STOPS, attributes
from workbench.tour.ride_stops import ride_stops
from workbench.tour.safety_stops import SAFETY_STOPS
from workbench.ui.parts.sheet import Sheet
from workbench.viewmodels.window import PEOPLE

Go = Callable[[Workbench], QWidget | None]


def bike(workbench: Workbench, name: str, station: str) -> Any:
    """Put a sample bike on the bench and open a station; gives the station's view-model."""
    rows = workbench.desk.ask(garage_rows())
    workbench.bench.put_bike(next(row.bike.id for row in rows if row.bike.name == name))
    workbench.view_model.open_station(station)
    page = workbench.window.page(station)
    page.start()
    return page.view_model


def _welcome(workbench: Workbench) -> None:
    """An empty garage."""


def _new_bike(workbench: Workbench) -> None:
    workbench.view_model.new_bike()
    view_model = workbench.window.page("new_bike").view_model
    for name, text in (("name", "Heron 140"), ("rider", "M. Anders"), ("fork_travel", "140"), ("shock_stroke", "abc")):
        view_model.set_field(name, text)  # type: ignore[attr-defined]
    view_model.add()  # type: ignore[attr-defined]


def _open(workbench: Workbench, name: str, station: str) -> None:
    bike(workbench, name, station)


def further_down(workbench: Workbench, name: str, station: str, part: str) -> None:
    """A long sheet, scrolled to one of its parts."""
    bike(workbench, name, station)
    for _ in range(8):
        QApplication.processEvents()  # laid out, so that the part has its place
    sheet = workbench.window.page(station).findChild(Sheet)
    assert isinstance(sheet, Sheet)
    shown, inside = sheet.findChild(QWidget, part), sheet.scroll_area.widget()
    assert isinstance(shown, QWidget)
    assert inside is not None
    sheet.scroll_area.verticalScrollBar().setValue(shown.mapTo(inside, shown.rect().topLeft()).y() - 16)


def _people(workbench: Workbench) -> None:
    view_model = bike(workbench, "Larch 150", PEOPLE)
    view_model.pick(view_model.state.rows[0].person_id)


def _search(workbench: Workbench) -> None:
    bike(workbench, "Larch 150", Station.SAG)
    workbench.window.side.search.setText("carbon")


def _pick_bike(workbench: Workbench) -> None:
    """Bench mode with the garage list brought back."""
    bike(workbench, "Larch 150", Station.SAG)
    workbench.window.head.garage_requested.emit()


def _count_closed(workbench: Workbench) -> None:
    view_model = bike(workbench, "Cinder 170", Station.ADJUSTERS)
    view_model.count(_last_adjuster(workbench))
    for _ in range(6):
        view_model.clicked()


def _count_range(workbench: Workbench) -> None:
    _count_closed(workbench)
    view_model = bike(workbench, "Cinder 170", Station.ADJUSTERS)
    view_model.keep_as_found()
    view_model.set_count(13)


def _last_adjuster(workbench: Workbench) -> str:

    return workbench.desk.ask(bike_parts(workbench.bench.bike_id or "")).adjusters[-1].id


def _ride_start(workbench: Workbench) -> None:
    view_model = bike(workbench, "Tarn hardtail", Station.RIDE)
    view_model.set_start("verified", True)


def riding(workbench: Workbench, runs: int) -> None:
    _ride_start(workbench)
    view_model = bike(workbench, "Tarn hardtail", Station.RIDE)
    courses = view_model.state.start.courses
    view_model.set_start("course_id", courses[0][0])
    view_model.start_session()
    for number in range(runs):
        view_model.set_run("liking", (5, 6, 5, 7, 6)[number % 5])
        view_model.set_run("direction", -1)
        view_model.keep_run()
        if number % 2:
            view_model.set_proposed()
    view_model.set_run("liking", 6)


def _care(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import care_paper

    return _shown(care_paper(workbench.window))


def _keys(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import keys_paper

    return _shown(keys_paper(workbench.window.menu.values(), workbench.window))


def _help(workbench: Workbench) -> QWidget:
    from workbench.ui.help import help_paper

    return _shown(help_paper("sag", workbench.window))


def _what_it_does(workbench: Workbench) -> QWidget:
    from workbench.ui.help import help_paper

    return _shown(help_paper("what_it_does", workbench.window))


def _about(workbench: Workbench) -> QWidget:
    from workbench.app import VERSION
    from workbench.ui.messages import about_paper

    return _shown(about_paper(VERSION, "/home/mechanic/.local/share/trailbench/garage.trailbench", workbench.window))


def _person(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import person_question

    state = workbench.view_model.state
    return _shown(person_question(state.people, workbench.window))


def _card_a5(workbench: Workbench) -> None:
    bike(workbench, "Larch 150", Station.CARD).pick_paper("A5")


def _card_preview(workbench: Workbench) -> QWidget:
    from workbench.ui.card.layout import PAPERS
    from workbench.ui.card.printing import CardPreview

    view_model = bike(workbench, "Larch 150", Station.CARD)
    return _shown(CardPreview(view_model.state.card, PAPERS["A5"], workbench.window))


def _reason(workbench: Workbench) -> QWidget:
    from workbench.ui.window_dialogs import reason_question

    return _shown(reason_question(workbench.window))


def _shown(dialog: QWidget) -> QWidget:
    dialog.show()
    return dialog


# What is also worked on with gloves on, or read standing.
BENCH_STOPS: tuple[tuple[str, str, bool, Go], ...] = (
    ("sample", "adjusters-bench", True, partial(_open, name="Larch 150", station=Station.ADJUSTERS)),
    ("sample", "sag-advice-bench", True, partial(spring_stops.sag, steps=3)),
    ("sample", "spring-bench", True, spring_stops.spring),
    ("sample", "spring-coil-bench", True, partial(spring_stops.coil, view="at_hand")),
    ("sample", "leverage-bench", True, spring_stops.leverage),
    ("sample", "leverage-mountings-bench", True, spring_stops.mountings),
    ("sample", "carry-bench", True, spring_stops.carry),
    ("sample", "ride-attributes-bench", True, attributes),
    ("sample", "review-bench", True, partial(_open, name="Larch 150", station=Station.REVIEW)),
    ("sample", "checkin-bench", True, partial(_open, name="Larch 150", station=Station.CHECKIN)),
    ("sample", "card-bench", True, partial(_open, name="Larch 150", station=Station.CARD)),
)

STOPS: tuple[tuple[str, str, bool, Go], ...] = (
    ("empty", "welcome", False, _welcome),
    ("sample", "new-bike", False, _new_bike),
    ("sample", "garage", False, partial(_open, name="Larch 150", station=Station.GARAGE)),
    (
        "sample",
        "garage-parts",
        False,
        partial(further_down, name="Larch 150", station=Station.GARAGE, part="section_fork"),
    ),
    (
        "sample",
        "garage-pictures",
        False,
        partial(further_down, name="Larch 150", station=Station.GARAGE, part="photos"),
    ),
    (
        "sample",
        "garage-hardware",
        False,
        partial(further_down, name="Larch 150", station=Station.GARAGE, part="valve_gas_shock"),
    ),
    ("sample", "people", False, _people),
    ("sample", "garage-search", False, _search),
    ("sample", "garage-bench", True, _pick_bike),
    ("sample", "garage-coil", False, partial(_open, name="Cinder 170", station=Station.GARAGE)),
    ("sample", "adjusters", False, partial(_open, name="Larch 150", station=Station.ADJUSTERS)),
    ("sample", "adjusters-closed", False, _count_closed),
    ("sample", "adjusters-range", False, _count_range),
    ("sample", "adjusters-range-bench", True, _count_range),
    ("sample", "sag", False, partial(_open, name="Larch 150", station=Station.SAG)),
    ("sample", "sag-prepare", False, partial(spring_stops.sag, steps=0)),
    ("sample", "sag-pressure", False, partial(spring_stops.sag, steps=1)),
    ("sample", "sag-measure", False, partial(spring_stops.sag, steps=2)),
    ("sample", "sag-measure-bench", True, partial(spring_stops.sag, steps=2)),
    ("sample", "sag-advice", False, partial(spring_stops.sag, steps=3)),
    ("sample", "sag-friction", False, spring_stops.sag_friction),
    ("sample", "sag-advice-coil", False, spring_stops.sag_coil),
    ("sample", "sag-put-back", False, spring_stops.put_back),
    ("sample", "spring", False, spring_stops.spring),
    ("sample", "spring-coil", False, partial(spring_stops.coil, view="at_hand")),
    ("sample", "spring-pressed", False, partial(spring_stops.coil, view="pressed")),
    ("sample", "spring-progressive", False, spring_stops.progressive),
    ("sample", "leverage", False, spring_stops.leverage),
    ("sample", "leverage-mountings", False, spring_stops.mountings),
    ("sample", "carry", False, spring_stops.carry),
    ("sample", "carry-spacers", False, spring_stops.carry_spacers),
    ("sample", "baseline-write-bench", True, partial(_open, name="Fell 130", station=Station.BASELINE)),
    ("sample", "baseline-write", False, partial(_open, name="Fell 130", station=Station.BASELINE)),
    ("sample", "baseline", False, partial(_open, name="Tarn hardtail", station=Station.BASELINE)),
    ("sample", "ride-blocked", False, partial(_open, name="Wren 24", station=Station.RIDE)),
    ("sample", "ride-start", False, _ride_start),
    ("sample", "ride-start-bench", True, _ride_start),
    ("sample", "ride", False, partial(riding, runs=3)),
    ("sample", "ride-changed", False, partial(riding, runs=4)),
    ("sample", "ride-attributes", False, attributes),
    ("sample", "ride-bench", True, partial(riding, runs=3)),
    *ride_stops(riding),
    *BLIND_STOPS,
    *REVIEW_STOPS,
    *SAFETY_STOPS,
    *CHECKIN_STOPS,
    *more_stops(bike),
    *BENCH_STOPS,
    ("sample", "person", False, _person),
    ("sample", "reason", False, _reason),
    ("sample", "about", False, _about),
    ("sample", "help", False, _help),
    ("sample", "help-adjusters", False, _what_it_does),
    ("sample", "care", False, _care),
    ("sample", "keys", False, _keys),
    ("sample", "card-a5", False, _card_a5),
    ("sample", "card-preview", False, _card_preview),
    ("sample", "card", False, partial(_open, name="Larch 150", station=Station.CARD)),
)

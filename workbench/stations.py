"""Which page belongs to which station; each is imported and built on its first visit."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from workbench.actions.desk import Desk
from workbench.model.bike import Station
from workbench.ui.page import Page
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.window import (
    BACKUPS,
    BUNDLE,
    CARRY,
    HISTORY,
    LAP_TRACK,
    LEVERAGE,
    NEW_BIKE,
    PEOPLE,
    SESSION_NOTES,
    SPRING,
    TEMPLATES,
)


def page_makers(desk: Desk, bench: Bench) -> Mapping[str, Callable[[], Page]]:
    """Give the maker of every station's page."""
    return {str(station): partial(make, desk, bench) for station, make in _MAKERS.items()}


def _new_bike(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.garage.new_bike_page import NewBikePage
    from workbench.viewmodels.new_bike import NewBikeViewModel

    return NewBikePage(NewBikeViewModel(desk, bench))


def _garage(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.garage.page import GaragePage
    from workbench.viewmodels.garage import GarageViewModel

    return GaragePage(GarageViewModel(desk, bench))


def _checkin(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.checkin.page import CheckInPage
    from workbench.viewmodels.checkin import CheckInViewModel

    return CheckInPage(CheckInViewModel(desk, bench))


def _adjusters(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.adjusters.page import AdjustersPage
    from workbench.viewmodels.adjusters import AdjustersViewModel

    return AdjustersPage(AdjustersViewModel(desk, bench))


def _sag(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.sag.page import SagPage
    from workbench.viewmodels.sag import SagViewModel

    return SagPage(SagViewModel(desk, bench))


def _baseline(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.baseline.page import BaselinePage
    from workbench.viewmodels.baseline import BaselineViewModel

    return BaselinePage(BaselineViewModel(desk, bench))


def _ride(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.ride.page import RidePage
    from workbench.viewmodels.ride import RideViewModel

    return RidePage(RideViewModel(desk, bench))


def _review(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.review.page import ReviewPage
    from workbench.viewmodels.review import ReviewViewModel

    return ReviewPage(ReviewViewModel(desk, bench))


def _card(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.card.page import CardPage
    from workbench.viewmodels.card import CardViewModel

    return CardPage(CardViewModel(desk, bench))


def _spring(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.spring.page import SpringPage
    from workbench.viewmodels.spring import SpringViewModel

    return SpringPage(SpringViewModel(desk, bench))


def _leverage(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.spring.leverage_page import LeveragePage
    from workbench.viewmodels.leverage import LeverageViewModel

    return LeveragePage(LeverageViewModel(desk, bench))


def _carry(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.spring.carry_page import CarryPage
    from workbench.viewmodels.carry import CarryViewModel

    return CarryPage(CarryViewModel(desk, bench))


def _backups(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.backups.page import BackupsPage
    from workbench.viewmodels.backups import BackupsViewModel

    return BackupsPage(BackupsViewModel(desk, bench))


def _history(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.history.page import HistoryPage
    from workbench.viewmodels.history import HistoryViewModel

    return HistoryPage(HistoryViewModel(desk, bench))


def _bundle(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.bundle.page import BundlePage
    from workbench.viewmodels.bundle import BundleViewModel

    return BundlePage(BundleViewModel(desk, bench))


def _session_notes(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.session_notes.page import SessionNotesPage
    from workbench.viewmodels.session_notes import SessionNotesViewModel

    return SessionNotesPage(SessionNotesViewModel(desk, bench))


def _lap_track(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.lap_track.page import LapTrackPage
    from workbench.viewmodels.lap_track import LapTrackViewModel

    return LapTrackPage(LapTrackViewModel(desk, bench))


def _people(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.people.page import PeoplePage
    from workbench.viewmodels.people import PeopleViewModel

    return PeoplePage(PeopleViewModel(desk, bench))


def _templates(desk: Desk, bench: Bench) -> Page:
    from workbench.ui.templates.page import TemplatesPage
    from workbench.viewmodels.templates import TemplatesViewModel

    return TemplatesPage(TemplatesViewModel(desk, bench))


_MAKERS: dict[str, Callable[[Desk, Bench], Page]] = {
    NEW_BIKE: _new_bike,
    Station.GARAGE: _garage,
    Station.CHECKIN: _checkin,
    Station.ADJUSTERS: _adjusters,
    Station.SAG: _sag,
    Station.BASELINE: _baseline,
    Station.RIDE: _ride,
    Station.REVIEW: _review,
    Station.CARD: _card,
    SPRING: _spring,
    LEVERAGE: _leverage,
    CARRY: _carry,
    BACKUPS: _backups,
    HISTORY: _history,
    BUNDLE: _bundle,
    SESSION_NOTES: _session_notes,
    LAP_TRACK: _lap_track,
    PEOPLE: _people,
    TEMPLATES: _templates,
}

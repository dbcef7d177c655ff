from __future__ import annotations

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from workbench.library.rotation import DAYS, MONTHS, NEWEST, WEEKS, worn_out

START = datetime(2031, 1, 1, 9, 0, tzinfo=UTC)
MINUTES = st.lists(st.integers(0, 3 * 365 * 24 * 60), max_size=120, unique=True)


def dated(minutes: list[int]) -> dict[str, datetime]:
    return {f"{minute:08}": START + timedelta(minutes=minute) for minute in minutes}


def kept_after(backups: dict[str, datetime]) -> dict[str, datetime]:
    gone = worn_out(backups)
    return {name: moment for name, moment in backups.items() if name not in gone}


@given(MINUTES)
def test_the_newest_always_stay_and_no_more_than_fit_the_shelf(minutes):
    kept = kept_after(dated(minutes))
    newest = sorted(dated(minutes))[-NEWEST:]
    assert set(newest) <= set(kept)
    assert len(kept) <= NEWEST + DAYS + WEEKS + MONTHS


@given(MINUTES)
def test_thinning_out_twice_takes_nothing_more(minutes):
    kept = kept_after(dated(minutes))
    assert not worn_out(kept)


def test_a_year_of_hourly_work_leaves_the_last_of_each_day_week_and_month():
    shelf: dict[str, datetime] = {}
    for day in range(365):
        for hour in range(8):
            moment = START + timedelta(days=day, hours=hour)
            shelf[moment.isoformat()] = moment
            shelf = kept_after(shelf)
    moments = sorted(shelf.values())
    assert moments[-1] == START + timedelta(days=364, hours=7)
    assert len({moment.date() for moment in moments[-DAYS - NEWEST :]}) >= DAYS
    assert len({(moment.year, moment.month) for moment in moments}) == MONTHS
    last_of_june = max(moment for moment in moments if (moment.year, moment.month) == (2031, 6))
    assert last_of_june == datetime(2031, 6, 30, 16, 0, tzinfo=UTC)

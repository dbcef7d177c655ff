"""Every measurement so far against the target band, and the next one as it is expected: what a drawing needs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from workbench.model.sag import TARGET_ORIGINS, SagMeasurement
from workbench.model.sag_rules import Band, SagRound
from workbench.model.unit import Unit
from workbench.viewmodels.sag_advice import Advice, band_text, percent
from workbench.viewmodels.sag_draft import SagDraft
from workbench.viewmodels.sag_words import setting_words
from workbench.viewmodels.shown import Units, short_date

MOST_EARLIER = 4  # of earlier days; the newest tell most


@dataclass(frozen=True, slots=True)
class HistoryRow:
    """One measurement, or the one expected next; sags as fractions of the travel."""

    label: str
    words: str
    at: float
    kind: str = "round"  # earlier, round, now or predicted
    ticks: tuple[float, ...] = ()
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class History:
    """All rows and the band they aim at."""

    rows: tuple[HistoryRow, ...] = ()
    low: float = 0.0
    high: float = 0.0
    band_words: str = ""
    said: str = ""


def history_of(
    draft: SagDraft, unit: Unit, earlier: Sequence[SagMeasurement], advice: Advice | None, units: Units
) -> History:
    """Give what was measured, oldest first, and what is expected next."""
    band, travel = draft.band(), unit.travel_mm
    if band is None or not travel:
        return History()
    told = [_earlier(one, units) for one in earlier[-MOST_EARLIER:]]
    told += [_round(one, travel, units, is_now=False) for one in draft.rounds]
    if draft.readings_mm:
        told.append(_round(draft.this_round(), travel, units, is_now=True))
    if advice is not None and advice.predicted_mm is not None and advice.chosen is not None:
        told.append(_predicted(advice, advice.predicted_mm, travel))
    origin = TARGET_ORIGINS.get(band.origin, "")
    words = f"target {band_text(band)} ({origin})"
    return History(tuple(told), band.low, band.high, words, _said(told, band))


def _earlier(one: SagMeasurement, units: Units) -> HistoryRow:
    setting = setting_words(
        SagRound((), one.posture, one.method, "", one.pressure_kpa, rate_n_per_mm=one.rate_n_per_mm), units
    )
    at = one.sag_mm / one.travel_mm
    words = f"{percent(at)}, {units.text(one.sag_mm, 'length')}"
    return HistoryRow(f"{short_date(one.measured_at)[:-5]}: {setting}", words, at, "earlier")


def _round(one: SagRound, travel: float, units: Units, *, is_now: bool) -> HistoryRow:
    at = one.sag_mm / travel
    return HistoryRow(
        setting_words(one, units) or "as it is",
        f"{percent(at)}, {units.text(one.sag_mm, 'length')}",
        at,
        "now" if is_now else "round",
        tuple(reading / travel for reading in one.readings_mm),
    )


def _predicted(advice: Advice, predicted_mm: float, travel: float) -> HistoryRow:
    option = advice.options[advice.chosen or 0]
    low, high = advice.predicted_low_mm, advice.predicted_high_mm
    if low is None or high is None:
        return HistoryRow(
            f"next: {option.title}", f"{percent(predicted_mm / travel)} expected", predicted_mm / travel, "predicted"
        )
    words = f"{percent(predicted_mm / travel)}, {100 * low / travel:.0f}\u2013{percent(high / travel)}"
    return HistoryRow(
        f"next: {option.title}", words, predicted_mm / travel, "predicted", low=low / travel, high=high / travel
    )


def _said(rows: Sequence[HistoryRow], band: Band) -> str:
    told = "; ".join(f"{row.label}: {row.words}" for row in rows)
    return f"Sag against the target of {band_text(band)}. {told}"

"""Service by hours in words: what is used up of an interval, where the figures come from, what a service begins."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.checkin import CheckInRecords
from workbench.model.wear import INTERVAL_ORIGINS, Hours, Wear, hours_words
from workbench.viewmodels.shown import short_date

BEGINS = "It begins new hardware: count and sag fall due again."


@dataclass(frozen=True, slots=True)
class WearRow:
    """One part that is serviced. Times are in seconds, as every field of a time takes them."""

    key: str
    part: str
    end: str
    title: str
    state: str
    words: str
    origin: str
    interval_s: float | None
    months: float | None
    last_s: float | None
    begins: str = ""


def wear_rows(records: CheckInRecords) -> tuple[WearRow, ...]:
    """Lay out every part that is serviced on this bike."""
    return tuple(_row(one) for one in records.wear)


def _row(wear: Wear) -> WearRow:
    kept = wear.kept
    return WearRow(
        key=f"{wear.part.part}_{wear.part.end}",
        part=wear.part.part,
        end=wear.part.end,
        title=wear.part.title,
        state=wear.state,
        words=state_words(wear),
        origin=f"Interval: {INTERVAL_ORIGINS.get(kept.origin, kept.origin)}.",
        interval_s=_seconds(kept.interval_hours),
        months=None if kept.interval_months is None else float(kept.interval_months),
        last_s=_seconds(kept.last_hours),
        begins=BEGINS if wear.part.reason else "",
    )


def _seconds(hours: float | None) -> float | None:
    return None if hours is None else hours * 3600.0


def state_words(wear: Wear) -> str:
    """Say how a part stands in its interval."""
    said = []
    if wear.used_hours is not None and wear.kept.interval_hours:
        said.append(f"{wear.used_hours:.0f} of {wear.kept.interval_hours:g}\u2009h")
    if wear.used_months is not None and wear.kept.interval_months:
        said.append(f"{wear.used_months:.0f} of {wear.kept.interval_months} months")
    if wear.state == "unknown":
        return "Not known when it was serviced last. Ask, or read its service book."
    head = {"due": "Due", "soon": "Soon", "fine": "Not due"}[wear.state]
    done = f"; serviced {short_date(wear.kept.last_at)}" if wear.kept.last_at else ""
    return f"{head}: {', '.join(said)}{done}."


def hours_text(hours: Hours) -> str:
    """Say the hours ridden and where they come from."""
    where = hours_words(hours, short_date(hours.told.at) if hours.told else "")
    return f"{hours.hours:.1f}\u2009h ridden: {where}" if hours.runs else where

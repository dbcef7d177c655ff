"""What a check-in adds to the card: the hand-over list, what was declined or overruled, and what falls due."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.exchange.card import CardLine, CardSection
from workbench.model.checkin import SEVERITIES, OpenItem, declined_sentence, overruled_sentence
from workbench.model.reading import short_date
from workbench.model.wear import Wear

HAND_OVER = "To attend to"
SERVICE = "Service"


def hand_over_sections(items: Sequence[OpenItem], wear: Sequence[Wear]) -> tuple[CardSection, ...]:
    """List what is open and what is serviced when; nothing where there is nothing."""
    attend = tuple(_line(one) for one in items)
    services = tuple(_service(one) for one in wear if one.state != "unknown")
    sections = (
        CardSection(HAND_OVER, attend, ("Found", "Agreed")),
        CardSection(SERVICE, services, ("Since the last one", "Stands at")),
    )
    return tuple(section for section in sections if section.lines)


def hand_over_cares(items: Sequence[OpenItem]) -> tuple[str, ...]:
    """Say in whole sentences what can hurt: what is not to be ridden, what was overruled, what was declined."""
    cares = [f"Do not ride this bike: {one.title.lower()}{_what(one)}." for one in items if one.stops]
    cares += [overruled_sentence(one) for one in items if one.item.overruled_at is not None]
    cares += [declined_sentence(one) for one in items if one.item.is_declined]
    return tuple(cares)


def _line(one: OpenItem) -> CardLine:
    item = one.item
    agreed = "to be done"
    if item.overruled_at is not None:
        agreed = f"overruled by {item.overruled_by}"
    elif one.stops:
        agreed = "not to be ridden"
    if item.is_declined:
        agreed = "declined"
    words = ", ".join(words for words in (item.reason or "", item.note) if words)
    return CardLine(one.title, SEVERITIES[item.severity], agreed, words or f"since {short_date(one.found_at)}")


def _what(one: OpenItem) -> str:
    return f" ({one.item.reason.lower()})" if one.item.reason else ""


def _service(wear: Wear) -> CardLine:
    used = []
    if wear.used_hours is not None and wear.kept.interval_hours:
        used.append(f"{wear.used_hours:.0f} of {wear.kept.interval_hours:g}\u2009h")
    if wear.used_months is not None and wear.kept.interval_months:
        used.append(f"{wear.used_months:.0f} of {wear.kept.interval_months} mo.")
    state = {"due": "due now", "soon": "due soon", "fine": "not due"}[wear.state]
    origin = "maker's interval" if wear.kept.origin == "maker" else "common practice, no source"
    return CardLine(wear.part.title, ", ".join(used), state, origin)

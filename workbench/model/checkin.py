"""What a check-in found, what of it is still open, and what stops the bike from being ridden."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from workbench.model.checks import check_of
from workbench.model.service import CheckIn, CheckItem
from workbench.model.wear import part_title

FINE, ADVISE, ATTEND, STOP, UNSEEN = "fine", "advise", "attend", "stop", "not_looked_at"
SEVERITIES = {FINE: "Fine", ADVISE: "Advise", ATTEND: "Attend", STOP: "Do not ride"}
DEPTHS = {"quick": "Quick intake", "full": "Full inspection"}
OVERRULE_REASONS = ("Ridden so for long, known to hold", "Looked at by the maker's service", "Only pushed and rolled")
SERVICE = "service"  # begins the code of an item that speaks of a service: service/part/end


@dataclass(frozen=True, slots=True)
class OpenItem:
    """Something found that is not closed: it is carried forward from check-in to check-in."""

    item: CheckItem
    found_at: str

    @property
    def title(self) -> str:
        """What it speaks of."""
        return title_of(self.item.code)

    @property
    def stops(self) -> bool:
        """Whether the bike must not be ridden because of it."""
        return self.item.severity == STOP and self.item.overruled_at is None


def title_of(code: str) -> str:
    """Name what an item of a check-in speaks of."""
    check = check_of(code)
    if check is not None:
        return check.title
    kind, _, part = code.partition("/")
    return f"Service: {part_title(*part.split('/', 1))}" if kind == SERVICE and "/" in part else code


def open_items(checkins: Sequence[CheckIn], items: Iterable[CheckItem]) -> tuple[OpenItem, ...]:
    """List what is still open, the gravest first; a later look at the same thing takes the place of an earlier one."""
    made = {one.id: (one.made_at, place) for place, one in enumerate(checkins)}
    newest: dict[str, CheckItem] = {}
    for item in sorted((one for one in items if one.checkin_id in made), key=lambda one: made[one.checkin_id]):
        if item.severity != UNSEEN:
            newest[item.code] = item
    still = [OpenItem(one, made[one.checkin_id][0]) for one in newest.values() if is_open(one)]
    order = (STOP, ATTEND, ADVISE)
    return tuple(sorted(still, key=lambda one: (order.index(one.item.severity), one.found_at, one.item.code)))


def is_open(item: CheckItem) -> bool:
    """Tell whether an item asks for something and nobody closed it."""
    return item.severity in (ADVISE, ATTEND, STOP) and item.closed_at is None


def stopping(items: Iterable[OpenItem]) -> tuple[OpenItem, ...]:
    """Pick what stops the bike from being ridden."""
    return tuple(one for one in items if one.stops)


def can_overrule(item: CheckItem) -> bool:
    """Tell whether somebody may ride it on their own word; what can throw a rider is mended, not overruled."""
    check = check_of(item.code)
    return item.severity == STOP and item.overruled_at is None and not (check is not None and check.is_grave)


def stop_words(items: Sequence[OpenItem]) -> str:
    """Say why the bike is not to be ridden; empty where nothing stops it."""
    if not items:
        return ""
    more = f" and {len(items) - 1} more" if len(items) > 1 else ""
    return f"do not ride: {items[0].title.lower()}{more}"


def declined_sentence(item: OpenItem) -> str:
    """Say on the card what the customer declined, and what that means."""
    words = f", {item.item.reason[:1].lower()}{item.item.reason[1:]}" if item.item.reason else ""
    if item.item.code.startswith(f"{SERVICE}/"):
        return (
            f"{item.title}{words}: recommended and declined. Seals and oil wear on; damage from this may not be"
            " covered, and the bike should be seen again soon."
        )
    if item.stops:
        return f"{item.title}{words}: found unfit to ride, and the repair was declined. Do not ride it like this."
    return f"{item.title}{words}: to be attended to, and declined. Watch it, and stop riding if it gets worse."


def overruled_sentence(item: OpenItem) -> str:
    """Say on the card who takes it on themselves, and why."""
    return (
        f"{item.title}: found unfit to ride. {item.item.overruled_by} lets it be ridden nevertheless:"
        f" {item.item.override_reason}"
    )

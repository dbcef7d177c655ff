"""What measuring found that goes on the card's list of things to attend to."""

from __future__ import annotations

from dataclasses import replace

from workbench.actions.sag import SagRecords, rows_of
from workbench.exchange.card import CardLine, CardSection, CardSheet
from workbench.exchange.card_checkin import HAND_OVER
from workbench.viewmodels.sag_friction import friction_shown, round_of


def with_friction(card: CardSheet, records: SagRecords) -> CardSheet:
    """Add the friction found while measuring sag, where it is worth attending to."""
    lines = []
    for unit in records.parts.units:
        generation = records.parts.generation(unit.id)
        held = [
            one
            for one in records.measurements
            if one.unit_id == unit.id and one.is_kept and one.generation_id == (generation.id if generation else None)
        ]
        newest = max(held, key=lambda one: one.measured_at, default=None)
        if newest is None:
            continue
        rows = rows_of(records, unit, newest.rate_n_per_mm)
        shown = friction_shown(round_of(newest, records.readings), unit, rows)
        if shown.care:
            remark = f"{shown.words.removesuffix('.')}. Clicks will not mend it."
            lines.append(CardLine(f"Friction of the {unit.kind}", "Attend", "to be done", remark))
    return _added(card, tuple(lines)) if lines else card


def _added(card: CardSheet, lines: tuple[CardLine, ...]) -> CardSheet:
    titles = [section.title for section in card.sections]
    if HAND_OVER in titles:
        sections = tuple(
            replace(one, lines=one.lines + lines) if one.title == HAND_OVER else one for one in card.sections
        )
        return replace(card, sections=sections)
    place = titles.index("Tyres") + 1 if "Tyres" in titles else len(titles)
    attend = CardSection(HAND_OVER, lines, ("Found", "Agreed"))
    return replace(card, sections=(*card.sections[:place], attend, *card.sections[place:]))

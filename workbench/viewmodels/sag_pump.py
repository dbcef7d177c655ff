"""Which pump, and what its gauge says against the last reading: the hose's share, and only what is left over a leak."""

from __future__ import annotations

from workbench.actions.pumps import hose_shares
from workbench.actions.sag import SagRecords
from workbench.model.setting import GAUGE_KPA, Item
from workbench.model.unit import Unit
from workbench.model.warmth import gauge_at
from workbench.viewmodels.sag_draft import SagDraft
from workbench.viewmodels.shown import Units

LEARN = "Not learned yet what this hose takes: take the pump off, attach it again, and type what it shows."
NO_PUMP = "Name the pump, so that its hose can be told from a leak."


def pump_choices(records: SagRecords) -> tuple[tuple[str, str], ...]:
    """List the pumps, none first."""
    return (("", "Pump not named"), *((pump.id, pump.name) for pump in records.pumps))


def hose_words(records: SagRecords, unit: Unit, draft: SagDraft, units: Units) -> str:
    """Say what the reading as attached tells against the last one on record."""
    if unit.spring == "coil" or draft.pressure_how != "as_attached" or draft.pressure_kpa is None:
        return ""
    if not draft.pump_id:
        return NO_PUMP
    shares = hose_shares(records.pressures, unit.id, draft.pump_id)
    last = records.parts.line(Item.PRESSURE, unit.id)
    if last is None or last.value is None:
        return _learned_words(shares)
    if (last.value, last.how, last.pump_id) == (draft.pressure_kpa, draft.pressure_how, draft.pump_id):
        return _learned_words(shares)  # it is this very reading
    return f"{_against(last.value, last.temperature_c, draft, shares, units)} {_learned_words(shares)}"


def _against(
    before_kpa: float, before_c: float | None, draft: SagDraft, shares: tuple[float, ...], units: Units
) -> str:
    from workbench.physics.hose import reattached

    read_kpa = draft.pressure_kpa or 0.0
    if before_c is not None and draft.temperature_c is not None:
        before_kpa = gauge_at(before_kpa, before_c, draft.temperature_c)
    found = reattached(before_kpa, read_kpa, shares=shares, gauge_kpa=GAUGE_KPA)
    expected = f"{units.text(found.expected_low_kpa, 'pressure')} to {units.text(found.expected_high_kpa, 'pressure')}"
    if found.is_leak:
        return (
            f"Expected on attaching: {expected}. {units.text(found.missing_kpa, 'pressure')} less than the hose "
            "explains: a leak is suspected. Read it again cold; if it goes on, have the seals and the valve checked."
        )
    if read_kpa > found.expected_high_kpa:
        return f"Expected on attaching: {expected}. It reads more: a warm unit does, or air was added since."
    return f"Expected on attaching: {expected}. The hose explains it; no sign of a leak."


def _learned_words(shares: tuple[float, ...]) -> str:
    if not shares:
        return LEARN
    from statistics import median

    return f"This hose takes {100 * median(shares) / (1 + median(shares)):.1f}\u2009%, learned from {_times(shares)}."


def _times(shares: tuple[float, ...]) -> str:
    return "two attachments" if len(shares) == 1 else f"{len(shares)} times two attachments"

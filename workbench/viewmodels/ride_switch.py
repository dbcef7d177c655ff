"""Switching to another setup in the middle of a session: the list, what is to be set, and how many changes that is."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.actions.ride import RideRecords, SessionRecords, set_at
from workbench.actions.setups import Values
from workbench.model.setting import Setup, changes_between, free_changes, without_removed
from workbench.model.steps import steps_to, values_now
from workbench.viewmodels.ride_start import setup_words, setups_to_switch_to
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import not_restored, step_lines

ALREADY = "The bike stands so already."
REST_ALREADY = "What of it can be set on the bike stands so already."
ONE = "One change since the last run that counts."


@dataclass(frozen=True, slots=True)
class SwitchLook:
    """The setups to switch to, and the one picked."""

    setups: tuple[tuple[str, str], ...] = ()  # the named ones first, without the one on the bike
    setup_id: str = ""
    lines: tuple[str, ...] = ()  # what is to be set, in order
    counts: str = ""  # as how many changes it counts
    is_care: bool = False  # several: no verdict on any one of them
    left_out: str = ""  # what no step brings back
    can_set: bool = False


def resolve_switch(records: RideRecords, session: SessionRecords, picked: str, units: Units) -> SwitchLook:
    """Lay out the list and what the setup picked means now; the first one is picked where none was."""
    on_bike = records.current.id if records.current else ""
    setups = tuple((key, words) for key, words in setups_to_switch_to(records) if key != on_bike)
    if not setups:
        return SwitchLook()
    setup_id = picked if picked in dict(setups) else setups[0][0]
    steps = steps_to(records.parts, records.values[setup_id])
    free = _free(records, session, wanted_of(records, setup_id))
    left_out = not_restored(records.values[setup_id])
    counts = f"{free} changes at once: the runs after it are marked, and no verdict is given on any of them alone."
    return SwitchLook(
        setups=setups,
        setup_id=setup_id,
        lines=tuple(line.text for line in step_lines(steps, units)) or (REST_ALREADY if left_out else ALREADY,),
        counts=counts if free > 1 else ONE if free == 1 else "",
        is_care=free > 1,
        left_out=left_out,
        can_set=bool(steps),
    )


def wanted_of(records: RideRecords, setup_id: str) -> Values:
    """Give what is to be set for a setup: all of it that does not stand so already."""
    return {(step.item, step.subject_id): step.value for step in steps_to(records.parts, records.values[setup_id])}


def switch_label(setup: Setup) -> str:
    """Say the deed."""
    return f"Switch to {setup_words(setup).lower()}"[:60]


def _free(records: RideRecords, session: SessionRecords, wanted: Values) -> int:
    """Count the changes against the last run that counts; none where nothing is ridden yet."""
    counted = [run for run in session.runs if not run.is_set_aside]
    if not counted:
        return 0
    after = {**values_now(records.parts), **set_at(wanted, session.session.temperature_c)}
    return free_changes(changes_between(without_removed(records.values[counted[-1].setup_id], after), after))

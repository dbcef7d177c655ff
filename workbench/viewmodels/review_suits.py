"""The setup most likely to suit so far, how sure that is, and the run that would make it surer at the least cost."""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

from workbench.actions.ride import RideRecords
from workbench.model.errors import NotEnoughData
from workbench.model.setting import Setup, is_on_other_hardware
from workbench.viewmodels.review_basis import LAP, Basis, TimeOrRating, setup_numbered
from workbench.viewmodels.review_data import Suited
from workbench.viewmodels.review_effects import signed, twentieths

if TYPE_CHECKING:
    from workbench.evidence.effects import RunRecord
    from workbench.evidence.suits import Suits

NAMED_FROM = 0.5  # the chance from which one is named: likelier than all others together,
ALIKE_FROM = 0.8  # or the chance that no other would be felt as better
SETTLED_FROM = 0.95  # the same, so surely that no run is worth it
CLEAR_FROM = 0.8  # the chance from which the others need not be named beside it
TOO_EARLY = "Too early to name a setup that suits"


def resolve_suited(records: RideRecords, basis: Basis) -> Suited:
    """Name the setup, or say why none can be named and what would settle it soonest."""
    found = suits(basis.runs, basis.scale, basis.past_sd)
    if isinstance(found, str):
        return Suited(TOO_EARLY, advice=found)
    lead, second = (setup_numbered(records, one) for one in (found.setting, found.runner_up))
    ride = setup_numbered(records, found.ride)
    advice = _gone(records, (lead, second, ride)) or _advice(found, lead, second, ride)
    chance = twentieths(found.chance_most)
    if found.chance_most < NAMED_FROM and found.chance_felt < ALIKE_FROM:
        sure = (
            f"Of the {found.among} setups rated, {_name(lead)} comes out highest so far, with a chance of only {chance}"
            " in 20 that no other is higher: too little to name it."
        )
        return Suited(TOO_EARLY, sure, advice)
    title = f"Most likely to suit so far: {_name(lead)}"
    if found.chance_most < NAMED_FROM:
        title = f"No setup stands out so far: {_name(lead)} suits about as well as any"
    elif found.chance_most < CLEAR_FROM and found.chance_felt >= ALIKE_FROM:
        title += f", with {_name(second)} about as good"
    return Suited(title, _sure(found, basis, records), advice, lead.id)


@lru_cache(maxsize=8)
def suits(runs: tuple[RunRecord, ...], scale: TimeOrRating, past_sd: float | None) -> Suits | str:
    """Ask the statistics once per set of runs; a sentence where there is too little."""
    from workbench.evidence.suits import most_suited

    try:
        return most_suited(runs, scale=scale, past_sd=past_sd)
    except NotEnoughData as error:
        return str(error)


def _sure(found: Suits, basis: Basis, records: RideRecords) -> str:
    by_clock = basis.response == LAP
    rate, unit = (100.0, " %") if by_clock else (1.0, " points")
    most, felt = twentieths(found.chance_most), twentieths(found.chance_felt)
    word = "quickest" if by_clock else "one liked most"
    said = f"Chance about {most} in 20 that it is the {word} of the {found.among} ridden"
    beaten = "beats it by more than scatter" if by_clock else "would be felt as better"
    said += f", {felt} in 20 that none of them {beaten}."
    first = next(run.setting for run in basis.runs)
    if found.setting != first:
        said += (
            f" About {signed(rate * found.gain)}{unit} over {_name(setup_numbered(records, first))}"
            f" ({signed(rate * found.gain_low)} to {signed(rate * found.gain_high)}),"
            f" already made smaller for the luck of being the highest of {found.among}."
        )
    return said


def _gone(records: RideRecords, setups: tuple[Setup, ...]) -> str:
    """Say that one of some setups cannot be ridden again as it was; empty when all can."""
    for one in setups:
        if any(is_on_other_hardware(subject_id) for _, subject_id in records.values[one.id]):
            name = _name(one)
            return f"Setup {name} stood on hardware that is not on the bike now: it is not ridden again as it was."
    return ""


def _advice(found: Suits, lead: Setup, second: Setup, ride: Setup) -> str:
    from workbench.evidence.suits import WORTH_A_RUN

    if found.ride_value < WORTH_A_RUN:
        return "One more run of any of them is not expected to change the choice."
    if found.chance_most < CLEAR_FROM and found.chance_felt >= SETTLED_FROM:
        either = f"{_name(lead)} or {_name(second)}"
        return f"More runs could only part setups that are hardly told apart: take either, {either}."
    if ride == lead:
        said = f"Re-ride it: one more run on {_name(lead)} would tell most about the choice."
    else:
        said = f"One more run on {_name(ride)} would tell most about the choice."
    if found.more_runs is None:
        return f"{said} Even a dozen more runs would likely not part {_name(lead)} from {_name(second)}: take either."
    each = max(1, found.more_runs // 2)
    runs = "1 more run" if each == 1 else f"{each} more runs"
    return f"{said} About {runs} each on {_name(lead)} and {_name(second)} would likely settle it."


def _name(setup: Setup) -> str:
    return f"no. {setup.number} {setup.name}".strip()

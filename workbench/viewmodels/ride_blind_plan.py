"""Planning a blind test: what A and B are, how many pairs are asked, and the most that can show."""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass, field

from workbench.actions.ride import RideRecords
from workbench.actions.setups import Values
from workbench.model.blind import FEWEST_PAIRS, MOST_PAIRS, tested, unfit
from workbench.model.errors import InputError
from workbench.model.facts import read_whole
from workbench.model.parts import ITEM_QUANTITIES
from workbench.model.setting import Setup
from workbench.model.steps import Step, steps_to
from workbench.viewmodels.base import Problem
from workbench.viewmodels.change_words import changes_text
from workbench.viewmodels.odds import RARE, out_of
from workbench.viewmodels.ride_next import Choice, choices, read_choice
from workbench.viewmodels.shown import Units, how_many, position_text
from workbench.viewmodels.typed_drafts import TypedIn, read_kept

DRAFT = "blind_plan"
CHANGE = ""  # B is A with one thing changed
TIRING_PAIRS = 6


@dataclass(frozen=True, slots=True)
class PlanDraft:
    """What has been entered of the plan so far, texts as typed."""

    a_id: str = ""
    b_id: str = CHANGE
    item: str = ""
    value: str = ""
    pairs: str = "6"
    typed_in: TypedIn = field(default=(), compare=False)

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(asdict(self))

    @classmethod
    def from_json(cls, text: str) -> PlanDraft:
        """Read a kept draft."""
        return read_kept(cls, text)


@dataclass(frozen=True, slots=True)
class PlanState:
    """The plan, ready to be drawn."""

    draft: PlanDraft
    a_id: str
    setups: tuple[tuple[str, str], ...]  # what A can be
    others: tuple[tuple[str, str], ...]  # what B can be, first of all a change to A
    choices: tuple[Choice, ...]  # what can be changed on A
    item: str
    differs: str  # what A and B differ in; as long as that cannot be said, what A has of it
    most: str  # the most that so many pairs can show
    is_weak: bool


def quantities_of(draft: PlanDraft) -> dict[str, str]:
    """Give the quantity the typed value is read in."""
    quantity = ITEM_QUANTITIES.get(draft.item.partition("/")[0], "count")
    return {} if quantity == "count" else {"value": quantity}


def resolve_plan(records: RideRecords, draft: PlanDraft, units: Units) -> PlanState:
    """Lay the plan out."""
    a = setup_a(records, draft)
    own = [
        one for one in records.setups if one.id != a.id and not unfit(records.parts, _of(records, a), _of(records, one))
    ]
    change = (CHANGE, f"no. {a.number} with one thing changed")
    others = tuple((one.id, f"{_words(one)}: {_difference(records, a, one, units)}") for one in reversed(own))
    wrong, pairs = problem(draft, records, units), _pairs(draft)
    return PlanState(
        draft=draft,
        a_id=a.id,
        setups=tuple((one.id, _words(one)) for one in reversed(records.setups)),
        others=(change, *others),
        choices=choices(records.parts, units),
        item=chosen_item(records, draft),
        differs=_stands(records, a, draft, units) if wrong and wrong.field != "pairs" else _said(records, draft, units),
        most=most_words(pairs) if pairs else "",
        is_weak=bool(pairs) and pairs < FEWEST_PAIRS,
    )


def setup_a(records: RideRecords, draft: PlanDraft) -> Setup:
    """Give A: as chosen, else the setup on the bike, else the newest."""
    chosen = next((one for one in records.setups if one.id == draft.a_id), None)
    return chosen or records.current or records.setups[-1]


def chosen_item(records: RideRecords, draft: PlanDraft) -> str:
    """Give the item to be changed: as chosen, else the first adjuster."""
    if draft.item:
        return draft.item
    first = next((one for one in records.parts.adjusters if records.parts.range_of(one.id)), None)
    return f"adjuster/{first.id}" if first else ""


def values_b(records: RideRecords, draft: PlanDraft, units: Units) -> Values:
    """Give all that B sets; InputError says what cannot be read."""
    a = _of(records, setup_a(records, draft))
    other = records.values.get(draft.b_id)
    return other if other is not None else {**a, **wanted(records, draft, units)}


def wanted(records: RideRecords, draft: PlanDraft, units: Units) -> Values:
    """Give what B changes on A, when it is no setup of its own."""
    if draft.b_id in records.values:
        return {}
    key, value = read_choice(records.parts, chosen_item(records, draft), draft.value, units)
    return {key: value}


def read_pairs(draft: PlanDraft) -> int:
    """Read how many pairs are asked."""
    return read_whole("Pairs of runs", draft.pairs, 1, MOST_PAIRS)


def problem(draft: PlanDraft, records: RideRecords, units: Units) -> Problem | None:
    """Find what cannot be ridden, in the order of the sheet."""
    place = "b" if draft.b_id in records.values else "value"
    try:
        b = values_b(records, draft, units)
    except InputError as error:
        return Problem(str(error), "value")
    refused = unfit(records.parts, _of(records, setup_a(records, draft)), b)
    if refused:
        return Problem(refused, place)
    try:
        read_pairs(draft)
    except InputError as error:
        return Problem(str(error), "pairs")
    return None


def steps_before(records: RideRecords, draft: PlanDraft, units: Units) -> tuple[Step, ...]:
    """List what is to be set before the first run: all of A but what is under test, which the helper sets."""
    a = _of(records, setup_a(records, draft))
    try:
        open_items = {(one.item, one.subject_id) for one in tested(a, values_b(records, draft, units))}
    except InputError:
        open_items = set()
    return steps_to(records.parts, {key: value for key, value in a.items() if key not in open_items})


def most_words(pairs: int) -> str:
    """Say the most that so many pairs can show: how often chance alone gives the clearest outcome there is."""
    from workbench.evidence.blind import least_p

    least = least_p(("A", "B"), blocks=pairs)
    lead = f"{how_many(pairs, 'pair')}, {2 * pairs} runs."
    if pairs < FEWEST_PAIRS:
        return (
            f"{lead} This plan cannot reach its aim: even the clearest answers come up by chance alone in "
            f"{out_of(least)} such tests. Plan {FEWEST_PAIRS} pairs or more; 6 can settle something."
        )
    clearest = (
        f"The clearest answers possible come up by chance alone in {out_of(least)} such tests, all guesses right in "
        f"{out_of(least / 2)}"
    )
    if least > RARE:
        return f"{lead} {clearest}: a hint, which settles nothing by itself. With 6 pairs it is 1 of 32 and 1 of 64."
    tiring = " More than a dozen runs tire most riders." if pairs > TIRING_PAIRS else ""
    return f"{lead} {clearest}.{tiring}"


def _pairs(draft: PlanDraft) -> int:
    try:
        return read_pairs(draft)
    except InputError:
        return 0


def _of(records: RideRecords, setup: Setup) -> Values:
    return records.values[setup.id]


def _words(setup: Setup) -> str:
    return f"no. {setup.number} {' '.join(setup.name.split())}".strip()


def _difference(records: RideRecords, a: Setup, b: Setup, units: Units) -> str:
    return changes_text(records.parts, _of(records, a), _of(records, b), units)


def _stands(records: RideRecords, a: Setup, draft: PlanDraft, units: Units) -> str:
    """Say what A has of the item B is to change."""
    item, _, subject_id = chosen_item(records, draft).partition("/")
    if draft.b_id in records.values or not item:
        return ""
    adjuster, value = records.parts.adjuster(subject_id), _of(records, a).get((item, subject_id))
    stands = position_text(adjuster, value) if adjuster else units.text(value, ITEM_QUANTITIES[item])
    return f"{records.parts.subject_title(item, subject_id)}, A: {stands}."


def _said(records: RideRecords, draft: PlanDraft, units: Units) -> str:
    a, b = _of(records, setup_a(records, draft)), values_b(records, draft, units)
    return f"A to B: {changes_text(records.parts, a, b, units)}."

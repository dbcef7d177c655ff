"""Everything that was asked beside the one response named before riding: shown as dots to count, never judged."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.ride_evidence import counted
from workbench.model.responses import ATTRIBUTES
from workbench.model.ride import ENDS
from workbench.viewmodels.review_basis import LAP, Basis
from workbench.viewmodels.review_data import EffectRow, Looked, LookedDot, LookedRow
from workbench.viewmodels.shown import how_many

OTHERS = {"liking": "liking", LAP: "lap time", "direction": "direction", "compared": "against the run before"}
BEFORE, AFTER, ALL_RUNS = "before", "after", "all"
Scores = dict[tuple[str, str], list[tuple[str, int]]]  # (attribute, end) -> (setup, score)


def resolve_looked(records: RideRecords, basis: Basis, picked: EffectRow | None) -> Looked:
    """Lay out what was looked at; with a change picked, its two sides."""
    scores = scores_of(basis.sessions)
    others = [words for name, words in OTHERS.items() if name != basis.response and _was_asked(basis.sessions, name)]
    count = len(scores) + len(others)
    if not count:
        return Looked()
    named = "lap time" if basis.response == LAP else "liking"
    said = "None of these is a verdict: the more is looked at, the more surely something seems to differ by luck."
    if others:
        said += f" Not drawn here, but read with a change picked: {', '.join(others)}."
    rows = tuple(_row(attribute, end, scores[attribute, end], picked) for attribute, end in attributes_in_order(scores))
    return Looked(f"Looked at {how_many(count, 'thing')} beside the {named}", said, rows)


def scores_of(sessions: tuple[SessionRecords, ...]) -> Scores:
    """Gather the attributes of runs that count, warm-ups left out."""
    found: Scores = {}
    for session in sessions:
        setups = {run.id: run.setup_id for run in counted(session) if not run.is_warmup}
        order = list(setups)
        told = [rating for rating in session.ratings if rating.run_id in setups]
        for rating in sorted(told, key=lambda one: order.index(one.run_id)):
            found.setdefault((rating.attribute, rating.end), []).append((setups[rating.run_id], rating.score))
    return found


def _was_asked(sessions: tuple[SessionRecords, ...], name: str) -> bool:
    return any(getattr(run, name) is not None for one in sessions for run in counted(one) if not run.is_warmup)


def attributes_in_order(keys: Iterable[tuple[str, str]]) -> list[tuple[str, str]]:
    """Give attributes with their ends in the order of the ride's sheet."""
    ends, attributes = ("", *ENDS), tuple(ATTRIBUTES)
    return sorted(keys, key=lambda key: (attributes.index(key[0]), ends.index(key[1])))


def attribute_title(attribute: str, end: str) -> str:
    """Name an attribute at its end."""
    return f"{ATTRIBUTES[attribute]}, {end}" if end else ATTRIBUTES[attribute]


def _row(attribute: str, end: str, scores: list[tuple[str, int]], picked: EffectRow | None) -> LookedRow:
    title = attribute_title(attribute, end)
    if picked is None:
        counts = Counter(score for _, score in scores)
        every = tuple(LookedDot(score, count, ALL_RUNS) for score, count in sorted(counts.items()))
        return LookedRow(title, every, f"{title}: {_listed(scores)}")
    sides = {BEFORE: picked.before_id, AFTER: picked.after_id}
    dots: list[LookedDot] = []
    said = []
    for side, setup_id in sides.items():
        own = [one for one in scores if one[0] == setup_id]
        counts = Counter(score for _, score in own)
        dots += [LookedDot(score, count, side) for score, count in sorted(counts.items())]
        said.append(f"{side} {_listed(own)}")
    return LookedRow(title, tuple(dots), f"{title}: {'; '.join(said)}")


def _listed(scores: list[tuple[str, int]]) -> str:
    return ", ".join(str(score) for _, score in scores) or "not rated"

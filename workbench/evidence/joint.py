"""Several responses to the same change, brought to one reading."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import NormalDist

from workbench.evidence.ratings import Setting, key_of
from workbench.evidence.verdicts import SURE, ChangeVerdict, Verdict

ALIKE = 0.5  # how far two responses to the same run tell the same news: 0 not at all, 1 wholly
LEANING = 0.8  # chance from which a response counts as leaning one way


@dataclass(frozen=True, slots=True)
class JointRow:
    """One change under every response: its own verdicts, the joint chance it helped, who disagrees with the first."""

    before: Setting
    after: Setting
    by_response: tuple[tuple[str, ChangeVerdict], ...]
    chance_helped: float
    verdict: Verdict
    disagreement: tuple[str, ...]
    reason: str


def combine(judged: Mapping[str, Sequence[ChangeVerdict]]) -> tuple[JointRow, ...]:
    """One row a change of any response, in the order of the first response that has it."""
    grouped: dict[frozenset[object], list[tuple[str, ChangeVerdict]]] = {}
    for name, rows in judged.items():
        for row in rows:
            grouped.setdefault(frozenset((key_of(row.before), key_of(row.after))), []).append((name, row))
    return tuple(_row(entries) for entries in grouped.values())


def _row(entries: Sequence[tuple[str, ChangeVerdict]]) -> JointRow:
    lead_name, lead = entries[0]
    chance = _joint_chance([row.chance_helped for _, row in entries])
    against = tuple(name for name, row in entries[1:] if _opposed(lead.chance_helped, row.chance_helped))
    verdict = _joint_verdict([row for _, row in entries], chance, bool(against))
    reason = _reason(lead_name, lead, against)
    return JointRow(lead.before, lead.after, tuple(entries), chance, verdict, against, reason)


def _joint_chance(chances: Sequence[float]) -> float:
    """Chance that the change helped on the whole.

    Each chance becomes a normal score; their sum is divided by its sd when any two share half their news, so that a
    second answer about the same run adds little and never counts as an independent one.
    """
    normal = NormalDist()
    scores = [normal.inv_cdf(min(max(chance, 1e-9), 1.0 - 1e-9)) for chance in chances]
    count = len(scores)
    return normal.cdf(sum(scores) / math.sqrt(count + count * (count - 1) * ALIKE))


def _opposed(one: float, other: float) -> bool:
    return (one >= LEANING and other <= 1.0 - LEANING) or (one <= 1.0 - LEANING and other >= LEANING)


def _joint_verdict(rows: Sequence[ChangeVerdict], chance: float, opposed: bool) -> Verdict:
    settled = {row.verdict for row in rows} - {Verdict.CANNOT_TELL}
    if opposed or not settled or {Verdict.HELPED, Verdict.HURT} <= settled:
        return Verdict.CANNOT_TELL
    if chance >= SURE and Verdict.HELPED in settled:
        return Verdict.HELPED
    if chance <= 1.0 - SURE and Verdict.HURT in settled:
        return Verdict.HURT
    return Verdict.NOT_FELT if settled == {Verdict.NOT_FELT} and len(rows) == _count(rows) else Verdict.CANNOT_TELL


def _count(rows: Sequence[ChangeVerdict]) -> int:
    return sum(row.verdict is Verdict.NOT_FELT for row in rows)


def _reason(lead_name: str, lead: ChangeVerdict, against: Sequence[str]) -> str:
    if not against:
        return ""
    way = "up" if lead.chance_helped > 0.5 else "down"
    other = "worse" if way == "up" else "better"
    return f"{lead_name} went {way}, but {' and '.join(against)} got {other}."

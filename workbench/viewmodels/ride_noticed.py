"""What was noticed on a run, and what to suspect: the list to tick, and the suspects of what is ticked."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from workbench.actions.ride import SessionRecords
from workbench.model.adjuster import adjuster_words
from workbench.model.parts import BikeParts
from workbench.model.ride import Run
from workbench.model.symptoms import BOTH, SYMPTOMS, WHERE, Suspect, adjuster_to_try, ends_of, symptom

Noticed = tuple[tuple[str, str], ...]  # ("packs", "rear"), in the order of the list
NOT_A_DIAGNOSIS = "Suspects to test in this order, one at a time. Not a diagnosis."


@dataclass(frozen=True, slots=True)
class SuspectLook:
    """One suspect with its test, and the adjuster to work on if it is one."""

    what: str
    test: str
    adjuster_id: str = ""
    verb: str = ""


@dataclass(frozen=True, slots=True)
class NoticedRow:
    """One thing that can be noticed: ticked or not, where, and what to suspect then."""

    key: str
    words: str
    ends: tuple[tuple[str, str], ...] = ()
    end: str = ""  # empty: not noticed
    care: str = ""
    suspects: tuple[SuspectLook, ...] = ()


@dataclass(frozen=True, slots=True)
class NoticedLook:
    """The list to tick, and the suspects of what is ticked or was said of the run before."""

    rows: tuple[NoticedRow, ...] = ()
    told: tuple[NoticedRow, ...] = ()
    remark: str = ""


def resolve_noticed(noticed: Noticed, parts: BikeParts, session: SessionRecords) -> NoticedLook:
    """Lay the list out for the run being entered; while nothing is ticked, what the last run said stays in sight."""
    rows = _rows(noticed, parts)
    if noticed or not (last := last_noticed(session)):
        told = tuple(row for row in rows if row.end)
        return NoticedLook(rows, told, NOT_A_DIAGNOSIS if told else "")
    run, said = last
    told = tuple(row for row in _rows(said, parts) if row.end)
    return NoticedLook(rows, told, f"Noticed on run {run.number}. {NOT_A_DIAGNOSIS}")


def last_noticed(session: SessionRecords) -> tuple[Run, Noticed] | None:
    """Give what was noticed on the last run; None when nothing was."""
    if not session.runs:
        return None
    run = session.runs[-1]
    said = in_order((one.symptom, one.end) for one in session.symptoms if one.run_id == run.id)
    return (run, said) if said else None


def with_noticed(noticed: Noticed, parts: BikeParts, key: str, end: str) -> Noticed:
    """Give what was noticed with one thing ticked at an end, or with an empty end taken back."""
    found = symptom(key)
    others = tuple(one for one in noticed if one[0] != key)
    return in_order((*others, (key, end))) if found is not None and end in ends_of(found, parts) else in_order(others)


def in_order(pairs: Iterable[tuple[str, str]]) -> Noticed:
    """Give what can be meant, in the order of the list; what a kept draft has beside it is left out."""
    given = {str(key): str(end) for key, end in pairs}
    return tuple((one.key, given[one.key]) for one in SYMPTOMS if given.get(one.key) in one.ends)


def noticed_words(pairs: Iterable[tuple[str, str]]) -> str:
    """Say what was noticed, for a list of runs."""
    said = [(symptom(key), end) for key, end in in_order(pairs)]
    return "; ".join(f"{one.words.lower()} ({WHERE[end].lower()})" for one, end in said if one is not None)


def first_end(key: str, parts: BikeParts) -> str:
    """Give the end a thing is noted at until another is picked: the only one, else both."""
    found = symptom(key)
    ends = ends_of(found, parts) if found is not None else ()
    return BOTH if BOTH in ends else next(iter(ends), "")


def _rows(noticed: Noticed, parts: BikeParts) -> tuple[NoticedRow, ...]:
    given = dict(noticed)
    return tuple(
        NoticedRow(
            one.key,
            one.words,
            tuple((end, WHERE[end]) for end in ends),
            end=given.get(one.key, ""),
            care=one.care if one.key in given else "",
            suspects=_suspects(one.suspects, given[one.key], parts) if one.key in given else (),
        )
        for one in SYMPTOMS
        if (ends := ends_of(one, parts))
    )


def _suspects(suspects: tuple[Suspect, ...], end: str, parts: BikeParts) -> tuple[SuspectLook, ...]:
    return tuple(_look(one, end, parts) for one in suspects)


def _look(suspect: Suspect, end: str, parts: BikeParts) -> SuspectLook:
    adjuster = adjuster_to_try(suspect, end, parts)
    if adjuster is None:
        return SuspectLook(suspect.what, suspect.test)
    verb = f"Work on {parts.unit_of(adjuster).end} {adjuster_words(adjuster)}"
    return SuspectLook(suspect.what, suspect.test, adjuster.id, verb)

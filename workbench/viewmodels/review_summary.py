"""The review in sentences: a few at the top of the sheet, and all of it to read out or to paste into a message."""

from __future__ import annotations

from collections.abc import Sequence

from workbench.actions.ride import RideRecords, SessionRecords
from workbench.actions.ride_evidence import counted
from workbench.model.ride import SURFACES
from workbench.viewmodels.review_basis import LAP, Basis
from workbench.viewmodels.review_data import Effects, Picked, Suited
from workbench.viewmodels.review_effects import BETTER
from workbench.viewmodels.review_timeline import session_words
from workbench.viewmodels.shown import Units, how_many

MOST_VERDICTS = 4
MIXED = "These sessions were to be judged by different responses; together they are read by the liking. Pick one alone."


def short_summary(effects: Effects, basis: Basis, looks: str, along: Sequence[str] = ()) -> str:
    """Say in a few sentences how it stands; ``along`` is what is told of adjusters ridden at several positions."""
    runs = sum(len(session.runs) for session in basis.sessions)
    aside = runs - sum(len(counted(session)) for session in basis.sessions)
    lead = f"{how_many(runs, 'run')} in {how_many(len(basis.sessions), 'session')}"
    lead += f", {aside} set aside." if aside else "."
    if basis.response == LAP:
        lead += " Judged by lap time, as named before riding."
    if basis.is_mixed:
        lead += f" {MIXED}"
    lead += _end_words(basis.sessions)
    if looks:
        lead += f" {looks}"
    if not effects.rows:
        return f"{lead} {effects.said}. Two runs on each side of a change are the cheapest start."
    tail = _changes_words(effects, basis)
    return "\n".join([lead, *along, tail]) if along else f"{lead} {tail}"


def _changes_words(effects: Effects, basis: Basis) -> str:
    """Say the verdicts while they are few, else how many there are of each."""
    settled = [row for row in effects.rows if row.is_settled]
    left = len(effects.rows) - len(settled)
    told = [row.verdict for row in settled]
    if len(settled) > MOST_VERDICTS:
        words = dict(zip((1, -1, 0), (*BETTER[basis.response], "hardly different"), strict=True))
        counts = [(sum(row.way == way for row in settled), word) for way, word in words.items()]
        said = ", ".join(f"{count} as {word}" for count, word in counts if count)
        told = [f"Of {len(effects.rows)} changes the runs speak of {said}."]
    if left and len(effects.rows) == 1:
        told.append("The change cannot be told yet: see what it still needs below.")
    elif left:
        told.append(f"{left} of {len(effects.rows)} changes cannot be told yet: see what each still needs below.")
    return " ".join(told)


def read_out(
    records: RideRecords,
    basis: Basis,
    effects: Effects,
    picked: Picked,
    suited: Suited,
    along: Sequence[str],
    looks: str,
    units: Units,
) -> str:
    """Say all of it in lines, in the order ridden, for somebody who does not see the pictures."""
    rider = f" for {records.rider.name}" if records.rider is not None else ""
    judged_by = "lap time" if basis.response == LAP else "liking"
    lines = [f"{records.parts.bike.name}{rider}: what the runs say."]
    lines += [_session_line(session, units) for session in basis.sessions if session.runs]
    lines.append(
        f"Judged by the {judged_by}, one thing named before riding.{_end_words(basis.sessions)} {looks}".strip()
    )
    if basis.is_mixed:
        lines.append(MIXED)
    for row in effects.rows:
        told = f"{row.effect_text}, {row.clock_text}" if row.clock_text else row.effect_text
        lines.append(f"{row.change}. {row.verdict} Difference {told}; nine in ten {row.interval_text}.")
        if row.joint_note:
            lines.append(f"  {row.joint_note}")
        if row.cautions:
            lines.append(f"  What lowers certainty: {row.cautions}.")
    if not effects.rows:
        lines.append(f"{effects.said}. Two runs on each side of a change are the cheapest start.")
    if picked.title:
        lines.append(f"Closer, {picked.title}: {picked.dots_said}")
        lines += [f"  {line}" for line in picked.joint]
        lines.append(f"  {picked.joint_said}")
    lines += along
    lines.append(f"{suited.title}. {suited.sure} {suited.advice}".replace("  ", " ").strip())
    lines.append("This speaks of one rider's answers on this ground, and of nothing else.")
    return "\n".join(lines)


def _session_line(session: SessionRecords, units: Units) -> str:
    about = [SURFACES.get(session.session.surface, session.session.surface).lower()]
    if session.session.temperature_c is not None:
        about.append(units.text(session.session.temperature_c, "temperature"))
    if session.session.is_blind:
        about.append("blind")
    aside = len(session.runs) - len(counted(session))
    said = f" ({aside} set aside)" if aside else ""
    return f"{session_words(session)}{said}, {', '.join(about)}."


def _end_words(sessions: tuple[SessionRecords, ...]) -> str:
    """Say which end was reached: none yet, or one before what was planned."""
    if any(session.session.ended_at is None for session in sessions):
        return " The session is still open: this is how it looks so far."
    short = [one for one in sessions if (one.session.planned_runs or 0) > len(counted(one)) > 0]
    if len(sessions) == 1 and short:
        return f" Ended after {len(counted(short[0]))} of {short[0].session.planned_runs} planned runs."
    return ""

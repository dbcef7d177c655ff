"""Verdicts in plain words, from one table.

The effect is always named as what the rider reported: "rated higher", never "is better". What lowers certainty stands
beside the verdict. An open (not blind) session reads at most "probably".
"""

from __future__ import annotations

from workbench.evidence.verdicts import Caution, ChangeVerdict, Verdict

PROBABLY, MAYBE = 0.8, 0.6

CAUTION_WORDS: dict[Caution, str] = {
    Caution.CONFOUNDED: "more than one thing changed",
    Caution.NOT_BLIND: "the rider knew the setting",
    Caution.NO_RETURN: "never went back, so it could be warming up or tiring",
    Caution.FEW_RUNS: "few runs",
    Caution.DAY_BOUNDARY: "ridden on different days",
    Caution.SCALE_END: "ratings at the end of the scale",
    Caution.CHOSEN_AFTER_SEEING: "picked as the largest of several, so likely smaller than it looks",
    Caution.OPTIMISM_POSSIBLE: "first runs after a change tend to be rated kindly",
}


def sentence(
    verdict_row: ChangeVerdict,
    *,
    before_words: str,
    after_words: str,
    better: str = "rated higher",
    worse: str = "rated lower",
    alike: str = "Little or no difference felt",
) -> str:
    """One plain sentence about a change, for screen, card and screen reader.

    better, worse and alike say what the response reports: ratings are "rated higher", and only lap times make
    "quicker".
    """
    row = verdict_row
    if Caution.CONFOUNDED in row.cautions and row.verdict is Verdict.CANNOT_TELL:
        return f"Cannot be told: between {before_words} and {after_words} more than one thing changed."
    if row.verdict is Verdict.NOT_FELT:
        return f"{alike} between {before_words} and {after_words}."
    way, chance = (better, row.chance_helped) if row.chance_helped >= 0.5 else (worse, 1.0 - row.chance_helped)
    rated = f"{way} with {after_words} than with {before_words}"
    if row.verdict is not Verdict.CANNOT_TELL:
        sure = _is_plain(row)
        lead = rated[0].upper() + rated[1:] if sure else f"Probably {rated}"
        return f"{lead} ({_out_of_twenty(chance)})."
    if chance >= PROBABLY:
        return f"Probably {rated} ({_out_of_twenty(chance)}), not settled.{_more(row)}"
    if chance >= MAYBE:
        return f"Perhaps {rated} ({_out_of_twenty(chance)}), not settled.{_more(row)}"
    return f"Cannot tell {after_words} from {before_words} yet.{_more(row)}"


def so_far(said: str) -> str:
    """The same sentence while the runs planned are not all ridden."""
    return f"So far: {said[:1].lower()}{said[1:]}"


def caution_words(verdict_row: ChangeVerdict) -> tuple[str, ...]:
    """What lowers certainty, as plain phrases, the weightiest first."""
    return tuple(words for caution, words in CAUTION_WORDS.items() if caution in verdict_row.cautions)


def _is_plain(row: ChangeVerdict) -> bool:
    """Said without "probably" only if blind, returned to, and repeated."""
    return row.cautions.isdisjoint(
        {Caution.NOT_BLIND, Caution.NO_RETURN, Caution.FEW_RUNS, Caution.CONFOUNDED, Caution.DAY_BOUNDARY}
    )


def _out_of_twenty(chance: float) -> str:
    """Countable odds; never twenty of twenty, which would read as certain."""
    return f"chance about {min(19, round(20 * chance))} in 20"


def _more(row: ChangeVerdict) -> str:
    if row.more_runs is None:
        return " Even a dozen more runs of these two would likely not settle it."
    each = max(1, row.more_runs // 2)
    return f" About {each} more run{'s' if each > 1 else ''} on each would likely settle it."

"""Whether a blind test was ridden as it was sealed before the first run."""

from __future__ import annotations

from workbench.actions.ride import SessionRecords
from workbench.model.blind import letter_at, valid
from workbench.model.ride import BlindPlan
from workbench.viewmodels.shown import short_time


def fits_seal(session: SessionRecords, plan: BlindPlan, letters: dict[str, str]) -> bool:
    """Check that seed, order, labels and time give the fingerprint, and that it was ridden as drawn."""
    from workbench.evidence.blind import draw_order, plan_digest

    drawn = "".join(str(one) for one in draw_order(("A", "B"), seed=plan.seed, blocks=len(plan.order) // 2))
    digest = plan_digest(plan.order, seed=plan.seed, labels=(plan.labels,), fixed_at=plan.fixed_at)
    follows = all(letters.get(run.setup_id) == letter_at(plan, place) for place, run in enumerate(valid(session.runs)))
    return drawn == plan.order and digest == plan.digest and follows


def proof_words(session: SessionRecords, plan: BlindPlan, *, is_proven: bool) -> str:
    """Say what the fingerprint proves, or that it does not fit."""
    if not is_proven:
        return (
            "The fingerprint kept before the first run does not fit what is on record now: the order, the setups or "
            "a time have been changed since. Do not rely on this test."
        )
    fixed, first = short_time(plan.fixed_at), session.runs[0].ridden_at if session.runs else ""
    if not first or first >= plan.fixed_at:
        before = f", before the first run ({short_time(first)})" if first else ""
        return (
            f"The order was fixed {fixed}{before}, and the fingerprint kept then fits the order revealed: "
            "nothing was moved since."
        )
    return (
        f"The fingerprint fits the order revealed. But it was fixed {fixed}, and the first run says "
        f"{short_time(first)}: the clock was set back in between, or that run is not of this test."
    )

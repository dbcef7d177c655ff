"""The sentence about a change: plain, and never surer than the runs allow."""

from __future__ import annotations

from itertools import product

import pytest

from workbench.evidence.verdicts import Caution, ChangeVerdict, Verdict, verdict_of
from workbench.evidence.words import CAUTION_WORDS, caution_words, sentence

BANNED = ("best", "optimal", "significant", "proven", "proof", "certain")


def row(chance=0.97, felt=0.9, cautions=(), more=4):
    verdict = verdict_of(chance, felt)
    return ChangeVerdict(
        before="A",
        after="B",
        runs_before=4,
        runs_after=4,
        effect=1.2,
        low=0.4,
        high=2.0,
        chance_helped=chance,
        chance_felt=felt,
        verdict=verdict,
        more_runs=more if verdict is Verdict.CANNOT_TELL else 0,
        repeat_sd=0.6,
        next_run_low=-0.3,
        next_run_high=2.7,
        cautions=frozenset(cautions),
    )


def said(**more):
    return sentence(row(**more), before_words="8 out", after_words="10 out")


def test_the_table_of_sentences():
    assert said() == "Rated higher with 10 out than with 8 out (chance about 19 in 20)."
    assert said(chance=0.02) == "Rated lower with 10 out than with 8 out (chance about 19 in 20)."
    assert said(cautions=[Caution.NOT_BLIND]) == (
        "Probably rated higher with 10 out than with 8 out (chance about 19 in 20)."
    )
    assert said(chance=0.5, felt=0.1) == "Little or no difference felt between 8 out and 10 out."
    assert said(chance=0.85) == (
        "Probably rated higher with 10 out than with 8 out (chance about 17 in 20), not settled. "
        "About 2 more runs on each would likely settle it."
    )
    assert said(chance=0.3, more=2) == (
        "Perhaps rated lower with 10 out than with 8 out (chance about 14 in 20), not settled. "
        "About 1 more run on each would likely settle it."
    )
    assert said(chance=0.5, more=None) == (
        "Cannot tell 10 out from 8 out yet. Even a dozen more runs of these two would likely not settle it."
    )


def test_lap_times_say_quicker():
    text = sentence(row(), before_words="8 out", after_words="10 out", better="quicker", worse="slower")
    assert text == "Quicker with 10 out than with 8 out (chance about 19 in 20)."


def test_two_things_at_once_cannot_be_told():
    confounded = row(chance=0.7, cautions=[Caution.CONFOUNDED])
    assert "more than one thing changed" in sentence(confounded, before_words="x", after_words="y")


@pytest.mark.parametrize("lowers", [Caution.NOT_BLIND, Caution.NO_RETURN, Caution.FEW_RUNS, Caution.DAY_BOUNDARY])
def test_what_lowers_certainty_makes_it_probably_at_most(lowers):
    assert said(cautions=[lowers]).startswith("Probably")
    assert said(chance=0.01, cautions=[lowers]).startswith("Probably")


def test_no_sentence_claims_too_much():
    chances, felts = (0.0, 0.03, 0.2, 0.5, 0.7, 0.9, 1.0), (0.05, 0.5, 1.0)
    for chance, felt, more, caution in product(chances, felts, (None, 2, 8), (None, *Caution)):
        text = said(chance=chance, felt=felt, more=more, cautions=[caution] if caution else [])
        assert text.endswith(".")
        assert "20 in 20" not in text
        assert not any(word in text.lower() for word in BANNED)


def test_every_caution_has_words():
    assert set(CAUTION_WORDS) == set(Caution)
    assert len(caution_words(row(cautions=list(Caution)))) == len(Caution)
    assert not any(word in " ".join(CAUTION_WORDS.values()) for word in BANNED)

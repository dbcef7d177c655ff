"""Symptoms and their suspects."""

from __future__ import annotations

import pytest

from tests.model.bikes import parts_of
from workbench.model.errors import InputError
from workbench.model.symptoms import (
    BOTH,
    MECHANIC,
    SYMPTOMS,
    WHERE,
    adjuster_to_try,
    check_symptom,
    ends_of,
    symptom,
)


def test_every_suspect_comes_with_one_test():
    for one in SYMPTOMS:
        assert one.suspects
        for suspect in one.suspects:
            assert len(suspect.test.split()) > 5, suspect.what


def test_no_sentence_claims_to_know_the_cause():
    said = " ".join(f"{one.care} {each.what} {each.test}" for one in SYMPTOMS for each in one.suspects).lower()
    assert not any(word in said for word in ("diagnos", "proven", "certainly", "the cause is"))


def test_knocks_and_lost_damping_are_left_to_a_mechanic():
    for key in ("clunks", "lost_damping"):
        found = symptom(key)
        assert found is not None
        assert found.care == MECHANIC
        assert not any(suspect.kind for suspect in found.suspects)


def test_a_suspect_points_to_the_counted_adjuster_of_that_end():
    packs = symptom("packs").suspects[0]
    assert adjuster_to_try(packs, "rear", parts_of()).id == "sr"
    assert adjuster_to_try(packs, BOTH, parts_of()).id == "fr"
    assert adjuster_to_try(packs, "rear", parts_of(ranges={"fr": 17})) is None


def test_low_speed_compression_is_no_stand_in_for_high_speed():
    spikes = symptom("spikes").suspects[0]
    assert adjuster_to_try(spikes, "front", parts_of()) is None


def test_a_hardtail_is_not_asked_about_its_rear():
    hardtail = parts_of(units=parts_of().units[:1])
    assert ends_of(symptom("packs"), hardtail) == ("front",)
    assert ends_of(symptom("packs"), parts_of()) == tuple(WHERE)


@pytest.mark.parametrize(("key", "end"), [("sings", "front"), ("washes", "rear"), ("packs", "")])
def test_what_is_not_in_the_list_is_refused(key, end):
    with pytest.raises(InputError):
        check_symptom(key, end)

"""What is said where a setting is changed that can hurt somebody."""

from __future__ import annotations

import pytest

from tests.model.bikes import ADJUSTERS
from workbench.model.care import care_for
from workbench.model.setting import Item

SAID = {
    Item.PRESSURE: ("lowest and highest", "gas charge", "Vent slowly", "do not unscrew"),
    Item.SECOND_PRESSURE: ("lowest and highest", "Vent slowly"),
    Item.NEGATIVE_PRESSURE: ("lowest and highest", "do not unscrew"),
    Item.SPACERS: ("every chamber", "do not unscrew", "No more spacers than the maker allows"),
    Item.SPRING_RATE: ("collar never loose", "never pressed solid"),
    Item.PRELOAD: ("preload than the maker allows", "collar never loose"),
}


@pytest.mark.parametrize("item", SAID)
def test_a_change_of_the_spring_says_what_can_go_wrong(item):
    assert all(words in care_for(item) for words in SAID[item])


def test_rebound_warns_of_being_pitched_forward_and_compression_of_nothing():
    said = {one.kind: care_for(Item.ADJUSTER, one) for one in ADJUSTERS}
    assert "pitch a rider forward" in said["rebound"]
    assert said["compression"] == ""
    assert care_for(Item.TYRE_PRESSURE) == ""

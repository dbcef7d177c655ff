"""The help on what each adjuster does knows everything that can be set."""

from __future__ import annotations

from workbench.model.adjuster import KINDS, Adjuster
from workbench.model.setting import Item
from workbench.resource import resource
from workbench.viewmodels.what_it_does import PAGE, heading_of


def headings():
    lines = resource(f"help/{PAGE}.md").read_text(encoding="utf-8").splitlines()
    return {line.removeprefix("## ") for line in lines if line.startswith("## ")}


def test_every_kind_of_adjuster_has_its_heading_on_the_page():
    asked = {heading_of(Item.ADJUSTER, Adjuster("a", "u", kind)) for kind in KINDS}
    assert len(asked) == len(KINDS)
    assert asked <= headings()


def test_every_other_item_that_can_be_set_has_one_too():
    assert {heading_of(item) for item in Item if item != Item.ADJUSTER} <= headings()


def test_a_kind_nobody_knows_has_none():
    assert heading_of(Item.ADJUSTER, Adjuster("a", "u", "humming")) == ""

"""Steps in the words of the person at the bench."""

from __future__ import annotations

from workbench.model.setting import Item
from workbench.model.steps import Step
from workbench.viewmodels.shown import Units
from workbench.viewmodels.step_lines import step_line


def test_before_spacers_are_changed_all_air_goes_out_first():
    said = step_line(Step(Item.SPACERS, "fork", "Fork: volume spacers", 2.0, "count", 1.0), Units())
    assert said.text == "Fork: volume spacers: 2"
    assert "now 1" in said.remark
    assert "let the air of every chamber out" in said.remark
    assert "do not open it" in said.remark

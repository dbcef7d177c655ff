"""A child on a fork that may not hold less air: the sheet says so, and the export has what was measured."""

from __future__ import annotations

import json

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLabel

from tests.fixtures import a_bike
from tests.ui.sag.test_page import click, open_page, to_spring, type_into
from workbench.actions.bundle import gather, layout
from workbench.actions.edit import edit
from workbench.actions.sag import sag_records
from workbench.exchange.bundle import write_bundle
from workbench.model.unit import Unit

PSI = 6.894757293168


def test_a_child_at_the_lowest_pressure_is_told_that_it_goes_no_further(qtbot, desk):
    bike = a_bike(desk, mass_kg=28.0)
    fork = desk.ask(sag_records(bike.id)).parts.unit("front")
    desk.do("Limit", edit(Unit, fork.id, "minimum_kpa", 40 * PSI), bike_id=bike.id)
    page = open_page(qtbot, desk, bike)
    to_spring(qtbot, page)
    type_into(qtbot, page, "sag_pressure_kpa", "40")
    click(qtbot, page, "sag_guide_verb")
    for text in ("12", "12.5"):
        qtbot.keyClicks(page.window().focusWidget(), text)
        qtbot.keyClick(page.window().focusWidget(), Qt.Key.Key_Return)
    click(qtbot, page, "sag_guide_verb")
    QApplication.processEvents()
    words = "\n".join(one.text() for one in page.findChildren(QLabel) if one.isVisibleTo(page))
    assert "Limited: the lowest pressure the maker allows." in words
    assert "The band is not met there; ask a mechanic about another spring." in words
    click(qtbot, page, "sag_guide_verb")
    bundle, _ = desk.ask(gather((bike.id,), "One bike", schema=desk.schema_number, now=desk.now()))
    (kept,) = json.loads(write_bundle(bundle, desk.ask(layout())))["records"]["sag_measurement"]
    assert (kept["sag_mm"], round(kept["pressure_kpa"] / PSI, 6)) == (12.25, 40.0)

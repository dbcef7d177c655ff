"""Two stories of the carry-over sheet: a shock that is hot, and a spacer with its pressure."""

from __future__ import annotations

import json

from PySide6.QtWidgets import QApplication

from tests.fixtures import a_bike
from tests.ui.driver import Driver
from tests.viewmodels.test_carry import PSI, SIZES, SPACERS, measured
from workbench.actions.bundle import gather, layout
from workbench.actions.on_bike import set_item
from workbench.actions.sag import sag_records
from workbench.exchange.bundle import write_bundle
from workbench.model.setting import Item
from workbench.ui.parts.labels import Words
from workbench.ui.spring.carry_page import CarryPage
from workbench.viewmodels.carry import CarryViewModel


def said(drive):
    """All words in sight, with ordinary spaces."""
    QApplication.processEvents()
    shown = [one.text() for one in drive.page.findChildren(Words) if one.isVisibleTo(drive.page)]
    return "\n".join(shown).replace("\u2009", " ")


def exported(desk, bike_id, table):
    """The rows of a table in the bike's bundle, as its text has them."""
    bundle, _ = desk.ask(gather((bike_id,), "One bike", schema=desk.schema_number, now=desk.now()))
    return json.loads(write_bundle(bundle, desk.ask(layout())))["records"][table]


def test_a_hot_shock_is_left_alone_and_the_export_keeps_the_pressure_set_cold(qtbot, desk):
    bike = a_bike(desk)
    shock = desk.ask(sag_records(bike.id)).parts.unit("rear")
    desk.do("Set", set_item(bike.id, Item.PRESSURE, shock.id, 165 * PSI, "set", temperature_c=20.0))
    drive = Driver(qtbot, desk, CarryPage, CarryViewModel, bike.id)
    drive.type_into("carry_here_c", "20")
    drive.type_into("carry_there_c", "55")
    words = said(drive)
    assert "Left alone it shows 186.5 psi there." in words
    assert "145.8 psi would remain at 20 °C: that is a changed setup" in words
    assert "A can that is hot from riding shows more: that is normal, let nothing out." in words
    lines = [
        row
        for row in exported(desk, bike.id, "on_bike")
        if row["subject_id"] == shock.id and row["item"] == Item.PRESSURE
    ]
    assert [(round(row["value"] / PSI, 6), row["temperature_c"]) for row in lines] == [(165.0, 20.0)]


def test_a_spacer_and_its_pressure_are_one_change_on_the_sheet(qtbot, desk):
    bench = measured(desk, **SIZES, **SPACERS)
    drive = Driver(qtbot, desk, CarryPage, CarryViewModel, bench.bike_id)
    drive.type_into("carry_here_c", "20")
    drive.type_into("carry_there_c", "20")
    drive.type_into("carry_spacers_front", "1")
    words = said(drive)
    assert "73.4 psi" in words
    assert "one change" in words

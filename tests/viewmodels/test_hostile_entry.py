"""What cannot be meant is refused at its field, and stands there as typed, also after a restart."""

from __future__ import annotations

import pytest

from tests.fixtures import a_bike, make_desk
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.garage import GarageViewModel
from workbench.viewmodels.new_bike import NewBikeViewModel

NO_NUMBERS = (
    "nan",
    "-nan",
    "inf",
    "-inf",
    "1e999",
    "-5 kg",
    "9" * 5000,
    "--",
    "1;2",
    "\U0001f6b2",
    "<b>84</b>",
    "٨٤ kg x",
)
NO_NAMES = ("W" * 10_000, "", "\u202e\u200b", "\n\t ")


@pytest.mark.parametrize("field", ["rider_mass", "shock_stroke"])
@pytest.mark.parametrize("text", NO_NUMBERS)
def test_a_new_bike_is_refused_at_the_field_that_is_no_number(tmp_path, field, text):
    refused = []
    with make_desk(tmp_path) as desk:
        sheet = NewBikeViewModel(desk, Bench(desk))
        sheet.refused.connect(refused.append)
        sheet.set_field("name", "Heron 140")
        sheet.set_field("rider", "M. Anders")
        sheet.set_field(field, text)
        assert not sheet.add()
        assert [problem.field for problem in refused] == [field]
        assert len(refused[0].text) < 400
    with make_desk(tmp_path) as desk:
        assert getattr(NewBikeViewModel(desk, Bench(desk)).state.draft, field) == text


@pytest.mark.parametrize("name", NO_NAMES)
def test_a_name_of_nothing_or_of_ten_thousand_letters_is_refused(tmp_path, name):
    refused = []
    with make_desk(tmp_path) as desk:
        sheet = NewBikeViewModel(desk, Bench(desk))
        sheet.refused.connect(refused.append)
        sheet.set_field("rider", "M. Anders")
        sheet.set_field("name", name)
        assert not sheet.add()
        assert [problem.field for problem in refused] == ["name"]
        assert len(refused[0].text) < 400
        assert sheet.state.draft.name == name


def test_text_left_in_a_fact_stands_there_again_after_a_restart(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        bench = Bench(desk)
        bench.put_bike(bike.id)
        GarageViewModel(desk, bench).keep_text("fork", "minimum_kpa", "about forty")
    with make_desk(tmp_path) as desk:
        sheet = GarageViewModel(desk, Bench(desk))
        assert typed_in(sheet, "fork", "minimum_kpa") == "about forty"
        assert typed_in(sheet, "shock", "minimum_kpa") == ""
        sheet.keep_text("fork", "minimum_kpa", "")
        assert typed_in(sheet, "fork", "minimum_kpa") == ""


def test_a_refused_fact_names_its_own_section(tmp_path):
    refused = []
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk)
        bench = Bench(desk)
        bench.put_bike(bike.id)
        sheet = GarageViewModel(desk, bench)
        sheet.refused.connect(refused.append)
        for value in (float("nan"), float("inf"), -1.0, 1e12):
            assert not sheet.set_fact("shock", "maximum_kpa", value)
        assert {problem.field for problem in refused} == {"shock/maximum_kpa"}


def typed_in(sheet: GarageViewModel, section: str, name: str) -> str:
    """The text kept of one field."""
    sheet.refresh()
    rows = next(one.rows for one in sheet.state.sections if one.key == section)
    return next(row.typed for row in rows if row.name == name)

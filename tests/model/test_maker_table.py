import pytest

from workbench.model.errors import InputError
from workbench.model.maker_table import read_table


def test_pairs_are_read_in_any_unit_and_sorted_by_mass():
    table = read_table("90 kg 190 psi; 154 lb 10.3 bar")
    assert [round(kg, 1) for kg, _ in table] == [69.9, 90.0]
    assert table[0][1] == pytest.approx(1030.0)


def test_an_empty_table_has_no_pairs():
    assert read_table("  ") == ()


@pytest.mark.parametrize("text", ["70 150", "70 kg", "psi 70 kg", "70 kg 150 psi; rubbish", "2 kg 150 psi"])
def test_a_pair_without_units_or_sense_is_refused_by_name(text):
    with pytest.raises(InputError, match="pressure table"):
        read_table(text)

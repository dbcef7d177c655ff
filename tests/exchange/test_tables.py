import csv
import io

import pytest

from workbench.exchange.tables import csv_text


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@x", "\tx", "\rx"])
def test_a_text_that_looks_like_a_formula_is_defused(text):
    cell = next(csv.reader(io.StringIO(csv_text(["note"], [[text]]).split("\r\n", 1)[1], newline="")))[0]
    assert cell == f"'{text}"


def test_a_negative_number_stays_a_number():
    assert csv_text(["clicks"], [[-2], [None], [0.5]]) == 'clicks\r\n-2\r\n""\r\n0.5\r\n'


def test_commas_quotes_and_line_breaks_come_back_as_they_were():
    cells = ['a "b", c', "two\nlines", "<b>"]
    found = list(csv.reader(io.StringIO(csv_text(["x", "y", "z"], [cells]), newline="")))
    assert found[1] == cells

"""Choice tests against printed tables of critical numbers."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from workbench.evidence.blind import choice_p, needed_correct

DATA = Path(__file__).parent / "data"


def rows(name):
    lines = (DATA / name).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def critical(name, prefix):
    return [
        (int(row["n"]), float(column.removeprefix(prefix)), int(value))
        for row in rows(name)
        for column, value in row.items()
        if column.startswith(prefix) and value
    ]


def test_triangle_numbers_are_those_of_iso_4120():
    # FAO document V7180E, appendix A: the numbers of ISO 4120 table A.1
    table = critical("triangle_critical.csv", "pub_")
    assert len(table) > 50
    for n, alpha, wanted in table:
        assert needed_correct(n, chance=1 / 3, alpha=alpha) == wanted, (n, alpha)


def test_duo_trio_numbers_are_those_of_iso_10399():
    # GOST ISO 10399-2015, table A.1; its row of 22 contradicts the binomial in the copy read and is left out
    table = [entry for entry in critical("duotrio_critical.csv", "pub_") if entry[0] != 22]
    assert len(table) > 50
    for n, alpha, wanted in table:
        assert needed_correct(n, alpha=alpha) == wanted, (n, alpha)


def test_the_row_the_printed_table_has_wrong_follows_the_exact_binomial():
    # scipy 1.17.1 binom, column exact_* of the same file
    for n, alpha, wanted in critical("duotrio_critical.csv", "exact_"):
        assert needed_correct(n, alpha=alpha) == wanted, (n, alpha)


def test_two_sided_paired_numbers_are_those_of_iso_5495():
    # smallest k with 2 P(X >= k) <= alpha, scipy 1.17.1
    for n, alpha, wanted in critical("paired_two_sided_critical.csv", "k_"):
        assert needed_correct(n, two_sided=True, alpha=alpha) == wanted, (n, alpha)


def test_sign_test_numbers_are_those_of_triola():
    # Triola, Elementary Statistics, table A-7: reject if the rarer sign occurs at most so often (one tail)
    for n, alpha, at_most in critical("sign_test_critical.csv", "pub_"):
        assert choice_p(n - at_most, n) <= alpha, (n, alpha)
        assert choice_p(n - at_most - 1, n) > alpha, (n, alpha)


def test_fifteen_of_twenty_five_odd_ones():
    # scipy 1.17.1 binom.sf(14, 25, 1/3)
    assert choice_p(15, 25, chance=1 / 3) == pytest.approx(0.00560007865, rel=1e-7)


@pytest.mark.parametrize(("right", "pairs"), [(5, 5), (6, 6), (7, 7), (7, 8), (8, 9), (9, 10), (10, 12), (12, 15)])
def test_right_answers_needed_of_so_many_pairs(right, pairs):
    # binomial, one-sided 5 %
    assert needed_correct(pairs) == right


def test_four_pairs_can_never_show_anything():
    assert needed_correct(4) is None
    assert needed_correct(5, two_sided=True) is None

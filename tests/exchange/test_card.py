"""What stands on a card: pure records in, a frozen sheet out."""

from __future__ import annotations

from dataclasses import replace

from tests.model.bikes import ADJUSTERS, COIL, FORK, a_log, parts_of
from workbench.exchange.card import CAUTIONS, NEVER_KNOWN, CardFigure, card_sheet
from workbench.exchange.card_text import card_text
from workbench.model.person import Person
from workbench.model.sag import SagMeasurement
from workbench.model.setting import Setup, latest

SETUP = Setup("s", "bike", "rider", 2, "change", "2031-05-14T09:00:00+00:00")
VALUES = {("pressure", "fork"): 551.58, ("adjuster", "fr"): 6.0, ("tyre_pressure", "rt"): 172.4}
RIDER = Person("rider", "M. Anders", mass_kg=84.5)
RANGES = {"fr": 17}
TODAY = "2031-05-15T09:00:00+00:00"


def a_card(*, parts=None, setup=SETUP, values=VALUES, log=(), sag=(), rider=RIDER, person=None):
    return card_sheet(
        parts or parts_of(log=log),
        setup,
        values,
        found=latest(log),
        ranges=RANGES,
        sag=sag,
        rider=rider,
        person=person,
        today=TODAY,
    )


def line(card, section, label):
    lines = next(one for one in card.sections if one.title == section).lines
    return next(one for one in lines if one.label == label)


def test_settings_stand_from_closed_and_from_open_beside_what_was_found():
    log = a_log(("adjuster", "fr", 4.0, "counted"))
    shown = line(a_card(log=log), "Fork", "Low-speed rebound")
    assert (shown.found, shown.left, shown.remark) == (
        "4 clicks from closed",
        "6 clicks from closed",
        "11 clicks from open",
    )


def test_what_was_never_recorded_says_so_and_invents_nothing():
    shown = line(a_card(), "Shock", "Air pressure")
    assert (shown.found, shown.left) == (NEVER_KNOWN, NEVER_KNOWN)
    assert line(a_card(), "Shock", "Low-speed rebound").left == "not known"


def test_the_card_speaks_the_riders_units():
    assert line(a_card(), "Fork", "Air pressure").left == "80\u2009psi"
    metric = a_card(rider=replace(RIDER, pressure_unit="bar", mass_unit="lb"))
    assert line(metric, "Fork", "Air pressure").left == "5.52\u2009bar"
    assert dict(metric.cells)["Rider"] == "M. Anders, 186.3\u2009lb"


def test_a_pressure_says_how_and_at_which_temperature_it_was_read():
    log = tuple(replace(one, temperature_c=19.0) for one in a_log(("pressure", "fork", 551.58, "as_pumped")))
    assert line(a_card(log=log), "Fork", "Air pressure").remark == "as pumped, at 19\u2009°C"


def test_how_another_pressure_was_read_is_not_said_of_this_one():
    log = a_log(("pressure", "fork", 600.0, "as_pumped"))
    assert line(a_card(log=log), "Fork", "Air pressure").remark == ""


def test_the_strip_holds_pressures_and_clicks_but_no_spacers():
    values = {**VALUES, ("spacers", "fork"): 2.0}
    assert a_card(values=values).strip == (
        CardFigure("front", "Fork: air pressure", "80\u2009psi"),
        CardFigure("front", "Fork: low-speed rebound", "6", "from closed, of 17"),
        CardFigure("rear", "Rear tyre pressure", "25\u2009psi"),
    )


def test_the_sag_stands_in_the_strip_beside_its_spring():
    sag = SagMeasurement(
        "m", "bike", "rider", "fork", TODAY, "standing", 150.0, 30.0, 1.0, 0.2, 0.18, 0.22, "common_practice"
    )
    figures = [(one.label, one.figure, one.note) for one in a_card(sag=(sag,)).strip]
    assert figures[1] == ("Fork: static sag", "20\u2009%", "30\u2009mm")


def test_what_was_left_otherwise_than_found_is_marked_and_nothing_else_is():
    log = a_log(("adjuster", "fr", 4.0, "counted"), ("pressure", "fork", 550.0, "as_attached"))
    card = a_card(log=log)
    assert line(card, "Fork", "Low-speed rebound").is_changed
    assert not line(card, "Fork", "Air pressure").is_changed, "a gauge cannot tell 550 kPa from 551.6"
    assert not line(card, "Tyres", "Rear tyre pressure").is_changed, "nothing is known of how it came"


def test_the_card_as_text_says_every_line_and_stars_the_changes():
    log = a_log(("adjuster", "fr", 4.0, "counted"))
    said = card_text(a_card(log=log, person=Person("p", "J. Okoro")))
    assert "* Low-speed rebound: 4 clicks from closed > 6 clicks from closed (11 clicks from open)" in said
    assert "Handed over by: J. Okoro" in said
    assert "* left otherwise than found" in said
    assert all(words in said for words in CAUTIONS)


def test_sag_stands_with_its_share_posture_and_aim():
    sag = SagMeasurement(
        "m", "bike", "rider", "fork", TODAY, "standing", 150.0, 30.0, 1.0, 0.2, 0.18, 0.22, "common_practice"
    )
    shown = line(a_card(sag=(sag,)), "Fork", "Static sag")
    assert shown.left == "30\u2009mm = 20\u2009%"
    assert shown.remark == "standing, aim 18 to 22\u2009%"
    missed = line(a_card(sag=(replace(sag, sag_mm=12.0),)), "Fork", "Static sag")
    assert missed.remark == "standing, aim 18 to 22\u2009%, not met"


def test_names_stand_as_they_were_typed():
    names = ("<b>HSC</b>", "דוד", "🚵 R2")
    adjusters = tuple(replace(one, name=name) for one, name in zip(ADJUSTERS, names, strict=True))
    parts = replace(parts_of(adjusters=adjusters), bike=replace(parts_of().bike, name="<img src=x> Larch"))
    card = a_card(parts=parts, setup=replace(SETUP, name="wet & <i>"), person=Person("m", "B. <Halloran>"))
    assert card.title == "<img src=x> Larch"
    assert card.subtitle == "Setup no. 2 “wet & <i>”"
    assert [one.label for one in card.sections[0].lines if "click" in one.left or "not known" in one.left][:2] == [
        "<b>HSC</b>",
        "דוד",
    ]
    assert dict(card.cells)["By"] == "B. <Halloran>"


def test_a_coil_is_listed_with_rate_and_preload_and_a_hardtail_without_a_shock():
    coil = a_card(parts=parts_of(units=(FORK, COIL)), values={("spring_rate", "shock"): 78.81})
    assert line(coil, "Shock", "Spring rate").left == "450\u2009lbf/in"
    assert line(coil, "Shock", "Preload").left == NEVER_KNOWN
    assert [one.title for one in a_card(parts=parts_of(units=(FORK,))).sections][:2] == ["Fork", "Tyres"]


def test_every_card_defers_to_the_manual_and_a_mechanic():
    assert a_card().cautions[-len(CAUTIONS) :] == CAUTIONS
    assert any("manual and a qualified mechanic" in words for words in CAUTIONS)


def test_the_card_says_what_its_own_springs_need():
    said = " ".join(a_card(parts=parts_of(units=(FORK,))).cautions)
    for words in ("lowest and highest pressure", "own valve", "gas charge", "Vent slowly", "do not unscrew", "spacers"):
        assert words in said
    assert "collar" not in said
    coil = " ".join(a_card(parts=parts_of(units=(COIL,)), values={}).cautions)
    assert "collar never loose" in coil
    assert "Vent slowly" not in coil


def test_a_card_without_rider_or_mechanic_leaves_the_cells_open():
    cells = dict(a_card(rider=None).cells)
    assert (cells["Rider"], cells["By"], cells["Date"]) == ("–", "–", "15 May 2031")


def test_the_card_says_what_ten_degrees_less_do_to_every_pressure():
    card = a_card(values={("pressure", "fork"): 551.58})
    colder = card.sections[-1]
    assert (colder.title, colder.heads) == ("On another day", ("If left alone", "Set instead"))
    # 80 psi at 20 degC, absolute ideal gas: (80 + 14.696) * 283.15 / 293.15 - 14.696 and the other way round
    assert colder.lines[0].found == "shows 76.8\u2009psi"
    assert colder.lines[0].left == "set 83.3\u2009psi"


SAG = SagMeasurement(
    "m", "bike", "rider", "fork", "2031-05-14T09:00:00+00:00", "standing", 150.0, 30.0, 1.0, 0.2, 0.18, 0.22, "own"
)


def on_another_day(card):
    """What stands there beside the colder day."""
    lines = next(section for section in card.sections if section.title == "On another day").lines
    return [one for one in lines if "more" in one.found]


def test_a_heavier_pack_asks_for_more_air_where_the_mass_at_the_sag_is_known():
    known = (replace(SAG, rider_mass_kg=80.0),)
    (shown,) = on_another_day(a_card(sag=known))
    # (80 + 14.7) x 85 / 80 - 14.7 psi
    assert (shown.label, shown.found) == ("Fork: air pressure", "with 5\u2009kg more")
    assert (shown.left, shown.remark) == ("set 85.9\u2009psi", "measure sag; rebound 6\u2009% more")
    (in_pounds,) = on_another_day(a_card(sag=known, rider=replace(RIDER, mass_unit="lb")))
    assert in_pounds.found == "with 10\u2009lb more"
    assert on_another_day(a_card(sag=(SAG,))) == []


def test_more_air_than_the_maker_allows_is_never_told_to_be_set():
    parts = parts_of()
    low = replace(parts, units=tuple(replace(unit, maximum_kpa=560.0) for unit in parts.units))
    (shown,) = on_another_day(a_card(parts=low, sag=(replace(SAG, rider_mass_kg=80.0),)))
    assert shown.left == "above the maker's highest"


def test_a_heavier_pack_asks_for_a_rate_or_of_a_progressive_spring_for_a_share():
    sag = (replace(SAG, unit_id="shock", rider_mass_kg=80.0),)
    for how, wanted in (("stated", "fit 478\u2009lbf/in"), ("table", "6\u2009% stiffer")):
        parts = parts_of(units=(FORK, COIL), log=a_log(("spring_rate", "shock", 78.81, how)))
        (shown,) = on_another_day(a_card(parts=parts, values={("spring_rate", "shock"): 78.81}, sag=sag))
        assert shown.left == wanted

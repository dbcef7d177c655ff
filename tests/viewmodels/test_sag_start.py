from tests.fixtures import a_bike, make_desk
from workbench.actions.edit import edit
from workbench.actions.sag import keep_sag, sag_records
from workbench.model.sag_rules import Band, SagRound, first_band
from workbench.model.unit import Unit
from workbench.viewmodels.sag_start import start_words
from workbench.viewmodels.shown import Units


def words(desk, bike):
    records = desk.ask(sag_records(bike.id))
    unit = records.parts.unit("rear")
    return start_words(records, unit, first_band(bike, unit), Units()).replace("\u2009", " ")


def test_without_evidence_no_pressure_is_offered(tmp_path):
    with make_desk(tmp_path) as desk:
        assert words(desk, a_bike(desk)) == ""


def test_the_makers_table_comes_first_and_is_named(tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_bike(desk, mass_kg=80.0)
        unit = desk.ask(sag_records(bike.id)).parts.unit("rear")
        desk.do("Table", edit(Unit, unit.id, "maker_table", "70 kg 150 psi; 90 kg 190 psi"))
        assert words(desk, bike) == "To start from: about 170 psi, from the maker's table."


def test_three_bikes_with_the_same_unit_suggest_a_pressure_two_do_not(tmp_path):
    with make_desk(tmp_path) as desk:
        band = Band(0.28, 0.32, "own")
        bikes = [a_bike(desk, name=f"Bike {place}", rider=f"Rider {place}", mass_kg=80.0) for place in range(4)]
        for place, bike in enumerate(bikes):
            unit = desk.ask(sag_records(bike.id)).parts.unit("rear")
            desk.do("Name", edit(Unit, unit.id, "name", "Alder R"))
            if place == 0:
                continue
            rider = desk.ask(sag_records(bike.id)).rider
            one = SagRound((18.0, 18.0), "standing", "helper", desk.now(), 1100.0 + 10 * place)
            desk.do("Keep sag", keep_sag(bike.id, rider.id, unit.id, (one,), band))
            if place == 2:
                assert words(desk, bikes[0]) == ""
        assert "from 3 earlier bikes with this unit" in words(desk, bikes[0])

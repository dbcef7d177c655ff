"""Names for the history: of a few things pointed at, and of everybody and every bike in the journal."""

from __future__ import annotations

from tests.fixtures import a_bike
from workbench.actions.garage import archive_bike
from workbench.actions.history import names_of, names_of_many
from workbench.actions.people import people


def test_names_of_many_are_those_of_each(desk):
    larch, tarn, fell = a_bike(desk), a_bike(desk, name="Tarn", rider="J. Okoye"), a_bike(desk, name="Fell", rider="")
    desk.do("Put away", archive_bike(tarn.id), bike_id=tarn.id)
    okoye, anders = (one.id for one in desk.ask(people()))
    for who, what in (((anders, okoye), (larch.id, tarn.id)), ((okoye, "gone"), (fell.id, "gone too")), ((), ())):
        assert desk.ask(names_of_many(who, what)) == desk.ask(names_of((*who, *what)))
    assert desk.ask(names_of_many((okoye,), (tarn.id,))) == {okoye: "J. Okoye", tarn.id: "Tarn"}

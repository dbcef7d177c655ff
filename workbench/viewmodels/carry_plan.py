"""What is typed on the carry-over sheet, kept as typed until it is put aside; and whether it goes on the card."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace

from workbench.viewmodels.coil_typed import Entry
from workbench.viewmodels.shown import Units
from workbench.viewmodels.typed_drafts import texts_as_meant, typed_in

PLANNED = "carry"
ENTRIES = (
    Entry("here_c", "Temperature here", "temperature", -40.0, 60.0),
    Entry("there_c", "Temperature at the ride", "temperature", -40.0, 60.0),
    Entry("here_m", "Altitude here", "altitude", -400.0, 6000.0),
    Entry("there_m", "Altitude at the ride", "altitude", -400.0, 6000.0),
    Entry("rider_kg", "Rider ready to ride, then", "mass", 5.0, 300.0, is_needed=False),
)


@dataclass(frozen=True, slots=True)
class CarryPlan:
    """The entries as typed, by name."""

    texts: tuple[tuple[str, str], ...] = ()
    is_on_card: bool = False

    def with_text(self, name: str, text: str) -> CarryPlan:
        """Note what is typed in one entry."""
        return replace(self, texts=tuple({**dict(self.texts), name: text}.items()))

    def to_json(self, units: Units) -> str:
        """Write the plan for keeping, with the units its bare numbers are meant in."""
        body = {"texts": dict(self.texts), "is_on_card": self.is_on_card, "typed_in": typed_in(units)}
        return json.dumps(body, ensure_ascii=False)


def plan_from_json(body: str, units: Units) -> CarryPlan:
    """Read a kept plan as it was meant, whoever reads it now."""
    known: Mapping[str, object] = json.loads(body)
    texts, noted = known.get("texts"), known.get("typed_in")
    quantities = {entry.name: entry.quantity for entry in ENTRIES}
    meant = texts_as_meant(
        {str(name): str(text) for name, text in texts.items()} if isinstance(texts, dict) else {},
        quantities,
        tuple(str(one) for one in noted) if isinstance(noted, list) else (),
        units,
    )
    return CarryPlan(tuple(meant.items()), known.get("is_on_card") is True)

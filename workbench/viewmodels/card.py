"""The card's sheet: which setup, what stands on it, where it was written."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import Signal

from workbench.actions.card import card_of, cards_of, hand_over
from workbench.actions.desk import Desk
from workbench.actions.parts import bike_parts
from workbench.actions.setups import name_setup, setup_on_bike, setup_values, setups_of
from workbench.actions.spring import spring_records
from workbench.exchange.card import CardSheet
from workbench.exchange.card_text import card_text
from workbench.viewmodels.base import ViewModel
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.card_attend import with_friction
from workbench.viewmodels.card_planned import with_planned
from workbench.viewmodels.carry import plan_of
from workbench.viewmodels.shown import short_time, units_of

PAPER = "card_paper"
PAPERS = ("A4", "A5")


@dataclass(frozen=True, slots=True)
class CardState:
    """The card of one setup."""

    setups: tuple[tuple[str, str], ...] = ()
    setup_id: str = ""
    setup_name: str = ""
    card: CardSheet | None = None
    handed_over: str = ""
    file_name: str = "card.pdf"
    paper: str = "A4"


class CardViewModel(ViewModel[CardState]):
    """Shows a setup's card; noting it as handed over is a deed."""

    station = "card"
    written = Signal(str)

    def __init__(self, desk: Desk, bench: Bench) -> None:
        self._setup_id = ""
        super().__init__(desk, bench)

    def read(self) -> CardState:
        """Read the card of the picked setup; by default the one on the bike, else the newest."""
        if not self.bike_id:
            return CardState()
        rider = self._desk.ask(bike_parts(self.bike_id)).rider(self._bench.rider_id)
        rider_id = rider.id if rider else None
        setups = self._desk.ask(setups_of(self.bike_id, rider_id))
        if not setups:
            return CardState()
        standing = self._desk.ask(setup_on_bike(self.bike_id, rider_id)) or setups[-1]
        setup = next((one for one in setups if one.id == self._setup_id), standing)
        card = self._desk.ask(card_of(setup.id, self._desk.now(), self._desk.person_id))
        springs = self._desk.ask(spring_records(self.bike_id, setup.rider_id))
        card = with_friction(card, springs.sag)
        units = units_of(springs.sag.rider)
        plan, _ = plan_of(self._desk, self.bike_id, setup.rider_id, units)
        card = with_planned(card, springs, self._desk.ask(setup_values(setup.id)), plan, units)
        issues = [one for one in self._desk.ask(cards_of(self.bike_id)) if one.setup_id == setup.id]
        return CardState(
            setups=tuple((one.id, f"no. {one.number} {one.name}".strip()) for one in reversed(setups)),
            setup_id=setup.id,
            setup_name=setup.name,
            card=card,
            handed_over=f"Handed over {short_time(issues[-1].made_at)}." if issues else "",
            file_name=_file_name(card.title, setup.number),
            paper=self._paper(),
        )

    def pick(self, setup_id: str) -> None:
        """Show another setup's card."""
        self._setup_id = setup_id
        self.refresh()

    def pick_paper(self, name: str) -> None:
        """Take another size of paper; the choice is kept."""
        if name in PAPERS:
            self._desk.set_setting(PAPER, name)
            self.refresh()

    def text(self) -> str:
        """Give the card as plain text."""
        return card_text(self.state.card) if self.state.card else ""

    def _paper(self) -> str:
        kept = self._desk.setting(PAPER, PAPERS[0])
        return kept if kept in PAPERS else PAPERS[0]

    def name(self, text: str) -> None:
        """Name the setup, as dry, wet or pack."""
        if text.strip() != self.state.setup_name:
            self.act(f"Name setup {text.strip()[:40]}", name_setup(self.state.setup_id, text))

    def note_handed_over(self) -> None:
        """Note that the card went with the bike."""
        if self.state.setup_id:
            self.act("Hand over the card", hand_over(self.state.setup_id))


def _file_name(bike: str, number: int) -> str:
    kept = "".join(char if char.isalnum() else "-" for char in bike.casefold()).strip("-")[:40]
    return f"{kept or 'bike'}-setup-{number}.pdf"

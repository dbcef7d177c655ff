"""Sessions with known truth: one rider, one course, a few settings, integer ratings."""

from __future__ import annotations

import itertools
from dataclasses import dataclass, replace

import numpy as np

from workbench.evidence.effects import RunRecord

SPARE = 16  # runs that may follow the plan


@dataclass(frozen=True)
class Family:
    """What a kind of session is made of; sizes in points."""

    level: tuple[float, float] = (5.3, 0.7)
    noise: tuple[float, float] = (0.6, 0.3)  # median, log sd
    spoilt: float = 0.05
    spoilt_sd: float = 2.5
    learning: tuple[float, float] = (0.6, 0.4)
    learning_runs: float = 4.0
    fatigue: float = 0.4
    wander: float = 0.1  # sd of each run's step
    drift: float = 0.0  # steady rise over the session
    optimism: float = 0.0
    carry: float = 0.0  # share of the setting before that lingers for one run
    sticky: float = 0.0  # pull of the last answer
    days: int = 1
    day_sd: float = 0.0
    null: bool = False
    changes: tuple[int, int] = (3, 4)
    runs: tuple[int, int] = (17, 22)
    zero_share: float = 0.5
    chains: float = 0.5  # sessions in which one change is made on top of the other
    returns: float = 0.6  # changes against the baseline after which it is ridden again
    effects: tuple[float, ...] = (-2.5, -2.0, -1.5, -1.0, -0.5, 0.5, 1.0, 1.5, 2.0, 2.5)


WITHIN_TWO = (-2.0, -1.5, -1.0, -0.5, 0.5, 1.0, 1.5, 2.0)
FAMILIES = {
    "plain": Family(),
    "short": Family(changes=(4, 5), runs=(12, 15), noise=(0.7, 0.3)),
    "null": Family(null=True),
    "outliers": Family(spoilt=0.15),
    "optimism": Family(optimism=0.7),
    "strong learning": Family(learning=(2.0, 0.5)),
    "days": Family(days=3, day_sd=0.8, runs=(18, 26)),
    "ceiling": Family(level=(7.8, 0.4)),
    "loud noise": Family(noise=(1.3, 0.15)),
    "sticky": Family(sticky=0.35),
    "carry-over": Family(carry=0.4),
    "pure drift": Family(null=True, drift=2.5, wander=0.15),
    "many changes": Family(changes=(5, 6), runs=(22, 28), chains=0.0, zero_share=0.35, effects=WITHIN_TWO),
    "mostly nothing": Family(
        changes=(3, 4), runs=(16, 20), chains=0.0, noise=(0.45, 0.3), zero_share=0.6, effects=WITHIN_TWO
    ),
    "there and back": Family(chains=0.0, returns=1.0, changes=(3, 3), runs=(20, 20)),
}


@dataclass(frozen=True)
class Session:
    """Runs as told, and what each setting is truly worth; spare holds what else would move runs still to come."""

    family: Family
    order: tuple[str, ...]
    days: tuple[int, ...]
    worth: dict[str, float]
    spare: np.ndarray

    @property
    def runs(self) -> tuple[RunRecord, ...]:
        """What the rider reports, the first run being a warm-up."""
        told = zip(self.order, self._answers(), self.days, strict=True)
        return tuple(RunRecord(s, a, day=d, warmup=i == 0) for i, (s, a, d) in enumerate(told))

    def continued(self, order: list[str]) -> Session:
        """The same session with more runs on its last day."""
        return replace(self, order=(*self.order, *order), days=self.days + self.days[-1:] * len(order))

    def _answers(self) -> list[float]:
        values = np.array([self.worth[name] for name in self.order])
        before = np.concatenate([values[:1], values[:-1]])
        moved = np.array([i > 0 and self.order[i] != self.order[i - 1] for i in range(len(self.order))])
        carried = np.where(moved, values + self.family.carry * (before - values), values)
        latent = carried + self.family.optimism * moved + self.spare[: len(self.order)]
        told: list[float] = []
        for feeling in latent:
            pull = self.family.sticky if told else 0.0
            told.append(float(np.clip(np.rint((1 - pull) * feeling + pull * (told or [0.0])[-1]), 1, 9)))
        return told


def draw(family: Family, rng: np.random.Generator) -> Session:
    """One session of a family."""
    count = int(rng.integers(family.runs[0], family.runs[1] + 1))
    names = [chr(65 + i) for i in range(int(rng.integers(family.changes[0], family.changes[1] + 1)) + 1)]
    is_chain = rng.random() < family.chains
    worth = {"A": 0.0}
    for earlier, name in itertools.pairwise(names):
        worth[name] = _effect(family, rng) + (worth[earlier] if is_chain else 0.0)
    order = _chain(names, count, rng) if is_chain else _star(names, count, family.returns, rng)
    days = np.minimum(np.arange(count + SPARE) * family.days // count, family.days - 1)
    return Session(family, tuple(order), tuple(days[:count].tolist()), worth, _all_else(days, count, family, rng))


def _effect(family: Family, rng: np.random.Generator) -> float:
    if family.null or rng.random() < family.zero_share:
        return 0.0
    return float(rng.choice(family.effects))


def _star(names: list[str], runs: int, returns: float, rng: np.random.Generator) -> list[str]:
    """A baseline, then one change after the other against it, often going back in between."""
    order = ["A"] * int(rng.integers(2, 4))
    while len(order) < runs:
        for name in names[1:]:
            order += [name] * int(rng.integers(2, 4))
            if rng.random() < returns:
                order += ["A"] * int(rng.integers(1, 3))
    return order[:runs]


def _chain(names: list[str], runs: int, rng: np.random.Generator) -> list[str]:
    """One change on top of the other; now and then one step back and forth again."""
    order: list[str] = []
    each = max(2, runs // len(names))
    for index, name in enumerate(names):
        if index and each > 2 and rng.random() < 0.5:
            order += [name, names[index - 1]] + [name] * (each - 2)
        else:
            order += [name] * each
    return (order + order[-1:] * runs)[:runs]


def _all_else(days: np.ndarray, planned: int, family: Family, rng: np.random.Generator) -> np.ndarray:
    """Everything that moves a run but its setting."""
    count = len(days)
    time = np.arange(count) - np.array([np.flatnonzero(days == day)[0] for day in days])
    noise = rng.lognormal(np.log(family.noise[0]), family.noise[1])
    scatter = np.where(rng.random(count) < family.spoilt, family.spoilt_sd, noise) * rng.normal(size=count)
    gain = max(0.0, rng.normal(*family.learning)) * (1 - np.exp(-time / family.learning_runs))
    tired = family.fatigue * np.maximum(0, time - 12) / 8
    levels = rng.normal(*family.level) + rng.normal(0, family.day_sd, size=family.days)[days]
    wander = np.cumsum(rng.normal(0, family.wander, size=count))
    return levels + gain - tired + wander + family.drift * np.arange(count) / planned + scatter

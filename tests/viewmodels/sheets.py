"""A view-model over a real library, and everything it says."""

from __future__ import annotations

from workbench.viewmodels.bench import Bench


class Heard:
    """What a view-model sent: refusals, labels kept, entries discarded, states."""

    def __init__(self, view_model) -> None:
        self.problems, self.labels, self.discarded, self.states = [], [], [], []
        view_model.refused.connect(self.problems.append)
        view_model.kept.connect(self.labels.append)
        view_model.discarded.connect(self._discard)
        view_model.state_changed.connect(self.states.append)

    def _discard(self, label, draft_id):
        self.discarded.append((label, draft_id))

    @property
    def field(self):
        """The field of the last refusal."""
        return self.problems[-1].field if self.problems else None


def shown(kind, desk, bike_id=None, **more):
    """A view-model in sight, over the bike, with what it says."""
    bench = Bench(desk)
    if bike_id is not None:
        bench.put_bike(bike_id)
    view_model = kind(desk, bench, **more)
    heard = Heard(view_model)
    view_model.show()
    return view_model, heard

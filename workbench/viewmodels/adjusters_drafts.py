"""What is kept of the adjusters' sheet while it is not yet on record: counts under way, text that cannot be read."""

from __future__ import annotations

import json

from workbench.actions.desk import Desk, Draft
from workbench.viewmodels.adjusters_count import CountDraft

COUNT = "count"
TYPED = "adjusters_typed"


class AdjusterDrafts:
    """The drafts of this sheet, kept through the desk."""

    def __init__(self, desk: Desk) -> None:
        self._desk = desk

    def counts(self, bike_id: str) -> tuple[Draft, ...]:
        """Give the counts under way, the last one touched first."""
        return tuple(one for one in self._desk.drafts(bike_id) if one.kind == COUNT)

    def count_of(self, bike_id: str, adjuster_id: str) -> Draft | None:
        """Give the count under way of one adjuster."""
        return self._desk.open_draft(COUNT, bike_id=bike_id, subject=adjuster_id)

    def keep_count(self, bike_id: str, adjuster_id: str, draft: CountDraft) -> None:
        """Keep a count as it stands."""
        self._desk.keep_draft(COUNT, draft.to_json(), bike_id=bike_id, subject=adjuster_id)

    def typed(self, bike_id: str) -> dict[str, str]:
        """Give the texts that could not be read, by row."""
        kept = self._desk.open_draft(TYPED, bike_id=bike_id)
        return {str(key): str(text) for key, text in json.loads(kept.body).items()} if kept else {}

    def keep_text(self, bike_id: str, key: str, text: str) -> None:
        """Keep a text that could not be read; an empty one is forgotten."""
        before = self.typed(bike_id)
        after = {name: words for name, words in {**before, key: text}.items() if words}
        if after == before:
            return
        if after:
            self._desk.keep_draft(TYPED, json.dumps(after), bike_id=bike_id)
        elif (kept := self._desk.open_draft(TYPED, bike_id=bike_id)) is not None:
            self._desk.discard_draft(kept.id)

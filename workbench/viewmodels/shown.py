"""How values are shown to somebody: their units, their words, short dates."""

from __future__ import annotations

from workbench.model.reading import (
    Units,
    from_open_text,
    how_many,
    how_often,
    position_text,
    short_date,
    short_time,
    units_of,
)

__all__ = ["Units", "from_open_text", "how_many", "how_often", "position_text", "short_date", "short_time", "units_of"]

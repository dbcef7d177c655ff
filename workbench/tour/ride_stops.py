"""Stops of the tour in the ride: what was noticed, several runs put right, a start half ticked."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtWidgets import QPushButton, QWidget

from workbench.app import Workbench

Go = Callable[[Workbench], QWidget | None]


def ride_stops(riding: Callable[[Workbench, int], None]) -> tuple[tuple[str, str, bool, Go], ...]:
    """Give the stops; ``riding`` goes on with a session of so many runs."""

    def noticed(workbench: Workbench) -> None:
        riding(workbench, 3)
        page = workbench.window.page("ride")
        page.view_model.notice("packs", None)  # type: ignore[attr-defined]
        page.view_model.notice("clunks", "front")  # type: ignore[attr-defined]
        _press(page, "run_notice")

    def several(workbench: Workbench) -> None:
        riding(workbench, 5)
        page = workbench.window.page("ride")
        page.view_model.mark_runs("2", "4", "lever:front closed")  # type: ignore[attr-defined]
        _press(page, "run_marks")

    return (("sample", "ride-noticed", False, noticed), ("sample", "ride-several", False, several))


def _press(page: QWidget, name: str) -> None:
    button = page.findChild(QPushButton, name)
    assert isinstance(button, QPushButton)
    button.click()

"""A library that cannot be opened, talked over with whoever started the program."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from workbench.actions.trouble import backups_beside, put_backup_in_place
from workbench.model.errors import LibraryError, WorkbenchError
from workbench.options import Options
from workbench.places import default_library
from workbench.ui.backups.trouble import TroubleDialog
from workbench.viewmodels.trouble import Way, resolve


def way_out(error: LibraryError, options: Options) -> Options:
    """Ask what to do about a refusal, do it, and give what to open next; raises the refusal when asked to quit."""
    while True:
        taken = _asked(error, options)
        if taken.way == Way.QUIT:
            raise error
        try:
            return _follow(taken, options)
        except LibraryError as further:
            error = further


def _asked(error: LibraryError, options: Options) -> TroubleDialog:
    location = options.library or default_library()
    try:
        backups = backups_beside(location)
    except WorkbenchError:  # what was given is no path at all
        backups = ()
    dialog = TroubleDialog(resolve(error, backups, is_file=Path(location).is_file()))
    dialog.exec()
    dialog.deleteLater()
    return dialog


def _follow(taken: TroubleDialog, options: Options) -> Options:
    if taken.way == Way.RESTORE:
        put_backup_in_place(options.library or default_library(), taken.target, now=options.now())
        return options
    if taken.way in (Way.OTHER, Way.NEW):
        return replace(options, library=taken.target, is_demo=False, looks_only=False)
    return replace(options, looks_only=taken.way == Way.LOOK, begins_anew=taken.way == Way.BEGIN)

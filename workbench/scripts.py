"""Export and check for scripts: no window, no Qt."""

from __future__ import annotations

import sys
from pathlib import Path

from workbench.exchange.files import write_whole
from workbench.library.dump import check, export_json
from workbench.library.library import Library, open_library
from workbench.library.tables import schema
from workbench.model.errors import LibraryDamaged, LibraryUnreachable
from workbench.options import Options
from workbench.places import default_library


def run(options: Options) -> int:
    """Export, check, or both, and give the exit code."""
    library = _open(options)
    try:
        if options.check:
            problems = check(library)
            for problem in problems:
                print(problem, file=sys.stderr)
            if problems:
                return LibraryDamaged.exit_code
            print(f"{library.path}: sound")
        if options.export is not None:
            write_whole(options.export, export_json(library))
    finally:
        library.close()
    return 0


def _open(options: Options) -> Library:
    if options.is_demo:
        from workbench.demo import demo_library

        location: str | Path = demo_library(Path(options.library) if options.library else None)
    else:
        location = options.library or default_library()
    try:
        return open_library(location, schema, now=options.now, create=False)
    except LibraryUnreachable:
        # A script only reads: what cannot be written can still be read from a copy.
        return open_library(location, schema, now=options.now, create=False, read_only=True)

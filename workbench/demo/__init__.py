"""The sample garage: an invented small shop, made by the program's own deeds, kept for the next start, never yours."""

from __future__ import annotations

import json
import os
import shutil
import sys
import tempfile
from pathlib import Path

from workbench.actions.desk import Desk
from workbench.library.library import open_library
from workbench.library.schema import fingerprint
from workbench.library.tables import schema
from workbench.model.errors import LibraryUnreachable
from workbench.places import cache_folder
from workbench.resource import resource

VERSION = 4  # rises when the scenario or what is made of it changes


def demo_library(target: Path | None = None) -> Path:
    """Give the path of a fresh copy of the sample library; with a target that exists, that one as it is."""
    if target is not None and target.exists():
        return target
    made = _made_once()
    try:
        if target is None:
            target = Path(tempfile.mkdtemp(prefix="trailbench-sample-")) / "sample.trailbench"
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(made, target)
    except OSError as error:
        raise LibraryUnreachable(f"The sample cannot be copied ({error.strerror}). Free some space.") from error
    return target


def _made_once() -> Path:
    from workbench.library.upgrade import SHIPPED

    kept = cache_folder() / f"sample-{SHIPPED.head}-{fingerprint(schema)}-{VERSION}.trailbench"
    if kept.exists():
        return kept
    try:
        kept.parent.mkdir(parents=True, exist_ok=True)
        folder = Path(tempfile.mkdtemp(prefix="making-", dir=kept.parent))
    except OSError:
        folder = Path(tempfile.mkdtemp(prefix="trailbench-making-"))
        kept = folder / "kept.trailbench"
    print("Making the sample garage; this is done once.", file=sys.stderr)
    making = folder / "sample.trailbench"
    build(making)
    os.replace(making, kept)
    if kept.parent != folder:
        shutil.rmtree(folder, ignore_errors=True)
    return kept


def build(path: Path) -> None:
    """Build the sample library at a path that does not exist yet."""
    from workbench.demo.riding import Riding
    from workbench.demo.shop import DemoClock, Shop

    scenario = json.loads(resource("demo/scenario.json").read_text(encoding="utf-8"))
    clock = DemoClock(scenario["begins"])
    library = open_library(path, schema, now=clock)
    try:
        desk = Desk(library)
        shop = Shop(desk, scenario)
        shop.people()
        for told in scenario["bikes"]:
            bike = shop.bike(told)
            if told["upto"] == "card":
                Riding(desk, clock, scenario, bike, shop.person(told["rider"])).ride_all()
    finally:
        library.close()

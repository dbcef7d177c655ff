"""The command `trailbench`: arguments in, an exit code out."""

from __future__ import annotations

import argparse
import gc
import sys
from collections.abc import Callable, Sequence
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path

from workbench.model.errors import ExchangeError, LibraryError, LibraryUnreachable, WorkbenchError
from workbench.options import Options

WRONG_ARGUMENTS = 2
OTHER_TROUBLE = 1


def main(arguments: Sequence[str] | None = None, *, painted: Callable[[], object] | None = None) -> int:
    """Run the command and give its exit code; every refusal is one sentence on stderr.

    ``painted`` is called once, when the window has first been painted.
    """
    options = read_arguments(sys.argv[1:] if arguments is None else arguments)
    try:
        return _dispatch(options, painted)
    except LibraryError as error:
        print(f"trailbench: {error}", file=sys.stderr)
        return error.exit_code
    except ExchangeError as error:
        print(f"trailbench: {error}", file=sys.stderr)
        return LibraryUnreachable.exit_code
    except WorkbenchError as error:
        print(f"trailbench: {error}", file=sys.stderr)
        return OTHER_TROUBLE


def read_arguments(arguments: Sequence[str]) -> Options:
    """Read the arguments; wrong ones end the program with code 2 and a sentence."""
    parser = argparse.ArgumentParser(
        prog="trailbench", description="Set up a bike's suspension and find out which change helped."
    )
    parser.add_argument("--library", metavar="PATH", default="", help="the library file to work in")
    parser.add_argument("--demo", action="store_true", help="open a sample garage; your own is not touched")
    parser.add_argument("--now", metavar="TIME", default="", help="take this ISO time as now")
    parser.add_argument("--tour", metavar="DIR", type=Path, help="write a picture of every screen into a folder")
    parser.add_argument("--size", metavar="WxH", type=_size, default=(1280, 800), help="window size for the tour")
    parser.add_argument("--theme", choices=("light", "dark"), default="", help="light or dark")
    parser.add_argument("--scale", type=int, choices=(1, 2), default=1, help="pixels per point for the tour")
    parser.add_argument("--pseudo-long", action="store_true", help="lengthen every text, to see what clips")
    parser.add_argument("--export", metavar="FILE", type=Path, help="write all records and the journal as JSON")
    parser.add_argument("--check", action="store_true", help="verify the library file")
    found = parser.parse_args(arguments)
    try:
        now = _clock(found.now)
    except ValueError:
        parser.error(f"--now {found.now}: write an ISO time such as 2031-05-14T09:00:00+00:00")
    return Options(
        library=found.library,
        is_demo=found.demo,
        now=now,
        has_fixed_now=bool(found.now),
        tour=found.tour,
        size=found.size,
        theme=found.theme,
        scale=found.scale,
        pseudo_long=found.pseudo_long,
        export=found.export,
        check=found.check,
    )


def _size(text: str) -> tuple[int, int]:
    width, _, height = text.partition("x")
    try:
        size = int(width), int(height)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text}: write it as 1280x800") from None
    if not (640 <= size[0] <= 7680 and 400 <= size[1] <= 4320):
        raise argparse.ArgumentTypeError(f"{text}: from 640x400 to 7680x4320")
    return size


def _clock(fixed: str) -> Callable[[], str]:
    if not fixed:
        return lambda: datetime.now(UTC).isoformat(timespec="milliseconds")
    moment = datetime.fromisoformat(fixed)
    if moment.tzinfo is None:
        moment = moment.replace(tzinfo=UTC)
    return _rising_clock(moment.astimezone(UTC))


def _rising_clock(start: datetime) -> Callable[[], str]:
    """Give a clock a millisecond later at every look, so that what comes later also bears the later time."""
    looks = count()
    return lambda: (start + timedelta(milliseconds=next(looks))).isoformat(timespec="milliseconds")


def _dispatch(options: Options, painted: Callable[[], object] | None) -> int:
    if options.export is not None or options.check:
        from workbench import scripts

        return scripts.run(options)
    if options.tour is not None:
        from workbench import tour

        return tour.run(options)
    return _open_window(options, painted)


def _open_window(options: Options, painted: Callable[[], object] | None) -> int:
    """Start without collecting garbage: while all is being imported there is none, and looking for it takes long."""

    def shown() -> None:
        gc.enable()
        if painted is not None:
            painted()

    gc.disable()
    try:
        from workbench import app

        return app.run(options, shown=shown)
    finally:
        gc.enable()


if __name__ == "__main__":
    sys.exit(main())

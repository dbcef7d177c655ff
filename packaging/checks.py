"""All checks, one line before each and a summary at the end."""

from __future__ import annotations

import subprocess
import time
from dataclasses import dataclass
from pathlib import Path

from trouble import complain, say

ROOT = Path(__file__).resolve().parent.parent
SCREEN = "-screen 0 1600x1000x24"
NOTHING_CHOSEN = 5  # pytest's exit code when no test was chosen


@dataclass(frozen=True)
class Check:
    """One step: what it is called, what it runs, and the Qt platform it runs on."""

    title: str
    command: tuple[str, ...]
    platform: str = "offscreen"


def house_checks(python: Path) -> list[Check]:
    """Lint, form, types and the rules between the rooms."""
    programs = python.parent
    own_scripts = sorted(str(path.relative_to(ROOT)) for path in (ROOT / "packaging").glob("*.py"))
    return [
        Check("lint (ruff check)", (str(programs / "ruff"), "check", ".")),
        Check("form (ruff format)", (str(programs / "ruff"), "format", "--check", ".")),
        Check("types (mypy)", (str(python), "-m", "mypy", "workbench")),
        Check("types of the set-up scripts (mypy)", (str(python), "-m", "mypy", *own_scripts)),
        Check("rules between rooms (import-linter)", (str(programs / "lint-imports"), "--no-logo")),
    ]


def test_checks(python: Path, arguments: list[str]) -> list[Check]:
    """Both passes of the tests."""
    pytest = (str(python), "-m", "pytest")
    # A few chosen tests start sooner in one process.
    spread = () if arguments else ("-n", "auto", "--dist", "worksteal")
    screen = ("xvfb-run", "-a", "-s", SCREEN, str(python), str(ROOT / "packaging" / "with_openbox.py"))
    return [
        Check("tests without a screen (pytest)", (*pytest, *spread, "-m", "not window", *arguments)),
        Check("tests in a real window (pytest, Xvfb)", (*screen, *pytest, "-m", "window", *arguments), "xcb"),
    ]


def run_all(python: Path, environment: dict[str, str], arguments: list[str], window_trouble: str) -> int:
    """Run every check, also after a failed one; 0 if all passed. Arguments narrow it to the tests they choose."""
    steps = ([] if arguments else house_checks(python)) + test_checks(python, arguments)
    results = []
    for number, check in enumerate(steps, 1):
        say(f"\n=== {number} of {len(steps)}: {check.title}")
        started = time.monotonic()
        words = _run(check, environment, bool(arguments), window_trouble if check.platform == "xcb" else "")
        results.append((check, words, time.monotonic() - started))
    return _summary(results, narrowed=bool(arguments))


def _run(check: Check, environment: dict[str, str], narrowed: bool, trouble: str) -> str:
    """Run one check; how it ended."""
    if trouble:
        complain(f"The tests in a real window did not run: {trouble}")
        return "FAILED"
    code = subprocess.run(check.command, cwd=ROOT, env={**environment, "QT_QPA_PLATFORM": check.platform}).returncode
    if code == 0:
        return "passed"
    if code == NOTHING_CHOSEN and narrowed and "pytest" in check.title:
        return "nothing chosen"
    return "FAILED" if code > 0 else f"FAILED (ended by signal {-code})"


def _summary(results: list[tuple[Check, str, float]], *, narrowed: bool) -> int:
    say("\n=== Summary")
    for check, words, seconds in results:
        say(f"{words:>15}  {check.title}, {seconds:.1f} s")
    if narrowed:
        say("pytest was given arguments, so lint, form, types and rules were left out.")
    passed = [words for _, words, _ in results if words == "passed"]
    failed = [words for _, words, _ in results if words.startswith("FAILED")]
    if failed:
        say(f"{len(failed)} of {len(results)} checks failed.")
    elif not passed:
        say("No test was chosen.")
    else:
        say("All checks passed.")
    return 1 if failed or not passed else 0

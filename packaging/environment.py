"""The virtual environment in the checkout: made once, filled from the hashed lock, stamped when whole."""

from __future__ import annotations

import hashlib
import importlib.util
import os
import subprocess
import sys
import time
from pathlib import Path

import system
from trouble import SetupError, complain, folder_trouble, pip_sentence, pip_trouble, say

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
LOCK = ROOT / "packaging" / "requirements.lock"
STAMP = VENV / "set-up-from"
TRIES = 3

# Settings of the person's shell that would put packages elsewhere, add some, or leave every start to compile anew.
UNWANTED = {
    *("PYTHONDONTWRITEBYTECODE", "PYTHONHOME", "PYTHONPATH", "PYTHONOPTIMIZE"),
    *("PIP_TARGET", "PIP_PREFIX", "PIP_ROOT", "PIP_USER", "PIP_REQUIREMENT", "PIP_CONSTRAINT", "PIP_NO_BINARY"),
    *("PIP_NO_DEPS", "PIP_NO_COMPILE", "PIP_DRY_RUN", "PIP_QUIET", "PIP_REQUIRE_VIRTUALENV"),
}


def child_environment() -> dict[str, str]:
    """The environment for every process started from here."""
    return {name: value for name, value in os.environ.items() if name.upper() not in UNWANTED}


def python() -> Path:
    """The environment's own Python."""
    if sys.platform == "win32":  # not tried
        return VENV / "Scripts" / "python.exe"
    return VENV / "bin" / "python"


def site_packages() -> Path:
    """Where the environment keeps its packages."""
    if sys.platform == "win32":  # not tried
        return VENV / "Lib" / "site-packages"
    return VENV / "lib" / f"python{sys.version_info[0]}.{sys.version_info[1]}" / "site-packages"


def wanted_stamp() -> str:
    """What the environment is made from: lock, pyproject, Python and place. Any change makes it anew."""
    digest = hashlib.sha256()
    for path in (LOCK, ROOT / "pyproject.toml"):
        digest.update(path.read_bytes())
    return f"{digest.hexdigest()} Python {sys.version} {sys.base_prefix} {ROOT}".replace("\n", " ")


def is_ready() -> bool:
    """Whether the environment stands and is the one wanted."""
    try:
        return STAMP.read_text(encoding="utf-8") == wanted_stamp() and python().exists()
    except OSError:
        return False


def make_ready() -> None:
    """Make the environment unless it stands; the stamp comes last, so a broken-off set-up starts anew."""
    if is_ready():
        return
    started = time.monotonic()
    _check_can_make()
    say(f"Setting up {VENV} (once; downloads about 140 MB).")
    try:
        _make_venv()
        _install()
        (site_packages() / "trailbench-checkout.pth").write_text(f"{ROOT}\n", encoding="utf-8")
        STAMP.write_text(wanted_stamp(), encoding="utf-8")
    except OSError as error:
        raise folder_trouble(error, ROOT) from error
    say(f"Environment ready after {time.monotonic() - started:.0f} s.")


def _check_can_make() -> None:
    if not os.access(ROOT, os.W_OK):
        raise folder_trouble(PermissionError(13, "Permission denied"), ROOT)
    if importlib.util.find_spec("venv") and importlib.util.find_spec("ensurepip"):
        return
    package = f"python3.{sys.version_info[1]}-venv"
    if not system.install([package]):
        raise SetupError(f"This Python lacks its venv module, which set-up needs: {system.advice([package], ['venv'])}")


def _make_venv() -> None:
    made = subprocess.run(
        [sys.executable, "-m", "venv", "--clear", str(VENV)],
        env=child_environment(), capture_output=True, text=True, errors="replace", check=False,
    )  # fmt: skip
    if made.returncode:
        words = made.stdout + made.stderr
        trouble = pip_trouble(words)
        if trouble in ("disk", "folder"):
            raise SetupError(pip_sentence(trouble, VENV, VENV))
        last = (words.strip().splitlines() or ["no reason given"])[-1]
        raise SetupError(f"The environment {VENV} could not be made: {last}")


def _install() -> None:
    """Install from the lock; only trouble with the network is worth another try."""
    log = VENV / "pip.log"
    for left in reversed(range(TRIES)):
        words = _pip(log)
        if words is None:
            return
        trouble = pip_trouble(words)
        if trouble != "network" or not left:
            raise SetupError(pip_sentence(trouble, VENV, log))
        complain("The download broke off; trying again.")
        time.sleep(2)


def _pip(log: Path) -> str | None:
    """Run pip once; what it said if it failed."""
    command = [str(python()), "-m", "pip", "install", "--no-input", "--disable-pip-version-check", "--retries", "2"]
    command += ["--require-hashes", "--only-binary", ":all:", "--progress-bar", "off", "-r", str(LOCK)]
    done = subprocess.run(
        command, env=child_environment(), stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, errors="replace",
        check=False,
    )  # fmt: skip
    if done.returncode == 0:
        return None
    log.write_text(done.stdout, encoding="utf-8")
    return done.stdout

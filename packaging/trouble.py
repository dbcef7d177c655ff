"""What can go wrong during set-up, said in one sentence each."""

from __future__ import annotations

import errno
import shutil
import sys
import tempfile
from pathlib import Path


class SetupError(Exception):
    """Set-up cannot go on; the text is one sentence for whoever typed the command."""


def say(text: str) -> None:
    """Tell what is being done, in order with the output of child processes."""
    print(text, flush=True)


def complain(text: str) -> None:
    """Tell what went wrong."""
    sys.stdout.flush()
    print(text, file=sys.stderr, flush=True)


def folder_trouble(error: OSError, folder: Path) -> SetupError:
    """The sentence for a folder that cannot take the environment."""
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return SetupError(disk_full(folder))
    if error.errno in (errno.EROFS, errno.EACCES, errno.EPERM):
        return SetupError(
            f"The folder {folder} cannot be written, and set-up keeps its environment there: "
            "copy the checkout to a folder of your own and start it from there."
        )
    return SetupError(f"Set-up could not write in {folder}: {error.strerror or error}.")


def disk_full(folder: Path) -> str:
    """The sentence for a full disk: the one of the checkout, or of the temporary files on the way there."""
    fuller = min((folder, Path(tempfile.gettempdir())), key=lambda path: shutil.disk_usage(path).free)
    return f"The disk that holds {fuller} is full: free about 1 GB there and start again."


# What pip prints -> what it means. The first match wins, so the telling lines stand before the general ones.
PIP_TROUBLES = (
    (("DO NOT MATCH THE HASHES",), "hash"),
    (("No space left on device", "[Errno 28]", "Disk quota exceeded"), "disk"),
    (("CERTIFICATE_VERIFY_FAILED", "SSLError"), "certificate"),
    (
        (
            "NewConnectionError",
            "Failed to establish a new connection",
            "name resolution",
            "getaddrinfo failed",
            "Network is unreachable",
            "ConnectTimeout",
            "ReadTimeout",
            "Connection refused",
            "ProxyError",
            "Connection broken",
            "IncompleteRead",
            "RemoteDisconnected",
        ),
        "network",
    ),
    (("Permission denied", "Read-only file system"), "folder"),
    (("No matching distribution found", "Could not find a version"), "platform"),
)


def pip_trouble(output: str) -> str:
    """Name the trouble in pip's output: one word, `unknown` if it is none of the usual ones."""
    for signs, name in PIP_TROUBLES:
        if any(sign in output for sign in signs):
            return name
    return "unknown"


def pip_sentence(trouble: str, venv: Path, log: Path) -> str:
    """The sentence for a trouble that `pip_trouble` named."""
    sentences = {
        "hash": "A downloaded package is not the one this version of Trailbench was tested with (its hash differs), so "
        "nothing was installed: try again later or on another network, and report it if it stays so.",
        "disk": disk_full(venv.parent),
        "certificate": "The package index could not be trusted (its certificate was refused): check the clock of this "
        "machine and, behind a company proxy, set PIP_CERT to its certificate.",
        "network": "The packages could not be downloaded because the network does not answer: connect this machine to "
        "the internet (or set its proxy) and start again.",
        "folder": f"The folder {venv.parent} cannot be written, and set-up keeps its environment there: "
        "copy the checkout to a folder of your own and start it from there.",
        "platform": f"There is no ready-made package for this system and Python {sys.version.split()[0]} "
        f"({sys.platform}): use 64-bit Python 3.11 to 3.13 on a recent system; pip's own words are in {log}.",
    }
    return sentences.get(trouble, f"The packages could not be installed; pip's own words are in {log}.")

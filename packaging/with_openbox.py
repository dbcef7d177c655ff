"""Start openbox on the present screen, wait until it manages windows, run a command, end openbox."""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

LONGEST_WAIT_S = 15.0


def main(command: list[str]) -> int:
    """Run the command beside a window manager; its exit code."""
    with tempfile.TemporaryDirectory() as folder:
        ready = Path(folder) / "ready"
        # openbox runs the start-up command once it manages the screen, so the file says that it does.
        manager = subprocess.Popen(
            ["openbox", "--sm-disable", "--startup", f"touch {ready}"],
            stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        try:
            if not _appears(ready, manager):
                print("The window manager openbox did not start on this screen.", file=sys.stderr)
                return 1
            return subprocess.run(command, check=False).returncode
        finally:
            manager.terminate()
            manager.wait()


def _appears(ready: Path, manager: subprocess.Popen[bytes]) -> bool:
    end = time.monotonic() + LONGEST_WAIT_S
    while time.monotonic() < end and manager.poll() is None:
        if ready.exists():
            return True
        time.sleep(0.02)
    return False


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

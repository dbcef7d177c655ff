"""Remake the pictures of the README: take the tour and keep the chosen screens.

    .venv/bin/python packaging/pictures.py

Nothing is drawn or cut by hand, so anybody gets the same pictures from the same checkout.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PICTURES = ROOT / "resources" / "pictures"
CHOSEN = ("garage", "adjusters-range", "sag-advice", "spring", "ride", "review", "review-changes", "card")
MOST_BYTES = 1_500_000


def main() -> int:
    """Take the tour, copy the chosen pictures, and say how large they are together."""
    with tempfile.TemporaryDirectory(prefix="trailbench-pictures-") as folder:
        tour = subprocess.run([sys.executable, "-m", "workbench", "--tour", folder], cwd=ROOT, check=False)
        if tour.returncode:
            return tour.returncode
        PICTURES.mkdir(exist_ok=True)
        for old in PICTURES.glob("*.png"):
            old.unlink()
        for name in CHOSEN:
            (taken,) = Path(folder).glob(f"[0-9][0-9][0-9]-{name}.png")
            shutil.copyfile(taken, PICTURES / f"{name}.png")
    size = sum(path.stat().st_size for path in PICTURES.glob("*.png"))
    print(f"{len(CHOSEN)} pictures in {PICTURES}, {size / 1000:.0f} kB together.")
    return 0 if size <= MOST_BYTES else 1


if __name__ == "__main__":
    sys.exit(main())

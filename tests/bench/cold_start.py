"""How long from the command to a painted garage, beside a bare window with one plot, in the same run.

    python -m tests.bench.cold_start [ROUNDS]

Whole processes, one of each kind in turn, so that a drifting machine slows both alike. Prints the medians and their
ratio, and which heavy modules the garage had loaded when it was painted.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
HEAVY = ("pyqtgraph", "numpy", "scipy", "alembic", "cv2")

BARE = """
from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QApplication, QMainWindow
import pyqtgraph as pg
app = QApplication([])
class Watch(QObject):
    def eventFilter(self, watched, event):
        if event.type() == QEvent.Type.Paint:
            QTimer.singleShot(0, app.quit)
        return False
window = QMainWindow()
plot = pg.PlotWidget()
plot.plot([1, 2, 3], [2, 1, 3])
window.setCentralWidget(plot)
watch = Watch(window)
plot.viewport().installEventFilter(watch)
window.resize(1280, 800)
window.show()
app.exec()
"""

GARAGE = f"""
HEAVY = {HEAVY!r}
import sys
from workbench.__main__ import main
def painted():
    from PySide6.QtCore import QCoreApplication
    QCoreApplication.quit()
main(["--library", sys.argv[1]], painted=painted)
print(",".join(name for name in HEAVY if name in sys.modules))
"""


def main(rounds: int) -> None:
    """Measure and print."""
    folder = Path(tempfile.mkdtemp(prefix="cold-start-"))
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    environment.setdefault("QT_QPA_PLATFORM", "offscreen")
    library = folder / "sample.trailbench"
    build = f"from pathlib import Path; from workbench.demo import demo_library; demo_library(Path({str(library)!r}))"
    subprocess.run([sys.executable, "-c", build], env=environment, check=True)
    bare, garage, loaded = [], [], ""
    for number in range(rounds + 1):
        bare_s, _ = timed([sys.executable, "-c", BARE], environment)
        garage_s, loaded = timed([sys.executable, "-c", GARAGE, str(library)], environment)
        if number:  # the first round warms the disk and writes byte code
            bare.append(bare_s)
            garage.append(garage_s)
    shutil.rmtree(folder)
    ratio = statistics.median(g / b for g, b in zip(garage, bare, strict=True))
    print(f"bare window with one plot   median {statistics.median(bare):.3f} s of {rounds}")
    print(f"garage over the sample      median {statistics.median(garage):.3f} s of {rounds}")
    print(f"ratio, pair by pair         median {ratio:.2f}")
    print(f"heavy modules loaded when the garage was painted: {loaded.strip() or 'none'}")


def timed(command: list[str], environment: dict[str, str]) -> tuple[float, str]:
    """Run a whole process and give its wall time and what it printed."""
    begun = time.perf_counter()
    done = subprocess.run(command, env=environment, capture_output=True, text=True, check=True, timeout=60)
    return time.perf_counter() - begun, done.stdout


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 9)

"""Every shared widget on a few pages, as pictures to look at: light, dark, bench, and with very long words.

Run it as  python -m tests.bench.parts_gallery FOLDER [PAGE ...]
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtWidgets import QApplication, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.ui.parts.banner import Banner
from workbench.ui.parts.big_number import BigNumber
from workbench.ui.parts.buttons import KINDS, Button
from workbench.ui.parts.care_note import CareNote
from workbench.ui.parts.counting_tool import CountingTool
from workbench.ui.parts.drawings import KINDS as DRAWINGS
from workbench.ui.parts.drawings import DrawingValues, DrawingView
from workbench.ui.parts.empty_state import EmptyState
from workbench.ui.parts.form import Form, FormRow
from workbench.ui.parts.job_line import JobLine, Mark
from workbench.ui.parts.labels import ROLES, Words
from workbench.ui.parts.rating_bar import ComparedBar, DirectionBar, RatingBar
from workbench.ui.parts.rulers import AdjusterRuler, AdjusterScale, Marker, SagRuler, SagScale, SagTick
from workbench.ui.parts.sheet import Sheet
from workbench.ui.parts.stage_sheet import StageSheet
from workbench.ui.parts.step_list import Step, StepList
from workbench.ui.parts.theme import SPACE_16, SPACE_24, Theme, apply_theme
from workbench.ui.parts.title_block import TitleBlock

stretch = {"on": False}


def words(text: str) -> str:
    """The text, or the text made as long as the wordiest language would make it."""
    if not stretch["on"]:
        return text
    return " ".join(f"{word}{word.lower() if len(word) > 3 else ''}" for word in text.split())


def page(*widgets: QWidget, width: int = 900) -> QWidget:
    """Widgets one below the other."""
    holder = QWidget()
    stack = QVBoxLayout(holder)
    stack.setContentsMargins(SPACE_24, SPACE_24, SPACE_24, SPACE_24)
    stack.setSpacing(SPACE_16)
    for widget in widgets:
        stack.addWidget(widget)
    stack.addStretch()
    holder.resize(width, 800)
    return holder


def beside(*widgets: QWidget) -> QWidget:
    """Widgets side by side."""
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.setContentsMargins(0, 0, 0, 0)
    for widget in widgets:
        row.addWidget(widget)
    return holder


def fields_page() -> QWidget:
    rows = [
        FormRow("name", words("Name of the bike"), value="Larch 150"),
        FormRow(
            "discipline",
            words("Ridden as"),
            "choice",
            choices=(("a", words("Trail")), ("b", "Enduro"), ("c", "Downhill"), ("d", "Cross-country")),
            value="a",
            help=words("Sets where the sag target starts."),
        ),
        FormRow("spring", words("Spring"), "choice", choices=(("air", words("Air")), ("coil", "Coil")), value="coil"),
        FormRow("travel", words("Travel"), "length", unit="mm", value=150.0, help=words("The unit's own.")),
        FormRow("most", words("Highest pressure allowed"), "pressure", unit="psi", value=827.37),
        FormRow("spacers", words("Most spacers allowed"), "count", value=4),
        FormRow("ebike", words("E-bike"), "flag", value=True),
        FormRow("tubeless", words("Tubeless & insert"), "flag", value=False),
        FormRow("note", words("Note"), "note", value="Two\nlines"),
    ]
    form = Form(rows, columns=2, name="bike")
    travel = form.field("travel")
    travel.line.setFocus()
    travel.line.setText("6 in")
    travel.line.textEdited.emit("6 in")
    form.field("most").set_typed("a lot")
    buttons = [Button(words("Put clicks back"), kind) for kind in KINDS]
    buttons[-1].setCheckable(True)
    buttons[-1].mark(True)
    off = Button(words("Not now"), "verb")
    off.setEnabled(False)
    return page(Words(words("The bike"), "title"), form, beside(*buttons, off))


def words_page() -> QWidget:
    banner = Banner()
    banner.say(words("Measurement 3 is removed."), "Undo")
    empty = EmptyState(words("No bike is in this garage yet."), words("Add the first bike"))
    note = CareNote(words("Every chamber has its own valve. Do not touch the damper's gas charge."))
    long_name = Words("Naïve 🚲 שלום <b>bold</b> " + "W" * 300, "strong", elide=True)
    labels = [Words(words(f"The role {role}: 28–32 % of 60 mm"), role) for role in ROLES]
    return page(banner, note, BigNumber("168", "psi", words("11.6 bar at 20 °C")), long_name, *labels, empty)


def job_marks(*, long: bool = False) -> list[Mark]:
    stations = ("Garage", "Check-in", "Adjusters", "Sag", "Baseline", "Ride", "Review", "Card")
    states = ("done", "skipped", "done", "now", "due", "due", "blocked", "blocked")
    return [Mark(w.lower(), words(w) * (2 if long else 1), s) for w, s in zip(stations, states, strict=True)]


def title_block() -> TitleBlock:
    block = TitleBlock()
    block.set_cells(
        [
            ("Bike", "Larch 150"),
            ("Rider", "M. Anders"),
            ("Sheet", words("Sag, rear")),
            ("Setup", words("before no. 1")),
            ("Date", "14 May 2031"),
            ("At the bench", "J. Okoye"),
        ]
    )
    return block


def job_page() -> QWidget:
    lines = []
    for long in (False, True):
        line = JobLine(name=f"line_{long}")
        line.set_marks(job_marks(long=long))
        lines.append(line)
    narrow = JobLine(name="narrow")
    narrow.set_marks(job_marks())
    narrow.setMaximumWidth(420)
    steps = StepList()
    steps.set_steps(
        [
            Step("a", words("Rebound: fully closed, then open 6"), True, words("4 clicks further closed than now")),
            Step("b", words("Low-speed compression: fully closed, then open 11")),
            Step("c", words("Set the air to 168 psi, cycling slowly"), False, words("from 150 psi, in two steps")),
        ]
    )
    return page(*lines, narrow, steps, title_block())


def sheet_page() -> QWidget:
    sheet = StageSheet(words("Rear sag"), name="sag")
    inner = QWidget()
    stack = QVBoxLayout(inner)
    stack.setContentsMargins(0, 0, 0, 0)
    stack.addWidget(Words(words("Rider off without loading the rear. Measure from the seal to the indicator.")))
    stack.addWidget(BigNumber("17.5", "mm"))
    sheet.set_stages([("prepare", QWidget()), ("rider on", QWidget()), (words("measure"), inner)])
    sheet.show_stage(2, verb=words("Put clicks back"), second=words("Measure again"))
    sheet.say_problem(words("Write the third measurement first."))
    sheet.set_margin(Words(words("Helper holds the bars. Brakes free."), "mute"))
    sheet.set_foot(title_block())
    plain = Sheet(words("Review"), words("Thirty runs over three sessions"), name="review")
    plain.body.addWidget(EmptyState(words("No run is rated yet."), words("Ride the first run")))
    return page(sheet, plain)


def rating_page() -> QWidget:
    liking = RatingBar(words("How did you like it?"))
    liking.set_value(7)
    direction = DirectionBar(
        words("Rebound was"), [words(w) for w in ("much too slow", "too slow", "right", "too fast", "much too fast")]
    )
    direction.set_value(1)
    compared = ComparedBar(words("Against the run before"))
    clicks = CountingTool("clicks", label="Rebound")
    clicks.set_count(11)
    turns = CountingTool("turns", label="Preload", name="turns")
    turns.set_count(5)
    lever = CountingTool(
        "positions", [words(w) for w in ("firm", "middle", "open")], label=words("Lever"), name="lever"
    )
    lever.set_count(1)
    return page(liking, direction, compared, beside(clicks, turns), lever, width=1000)


def rulers_page() -> QWidget:
    sag = SagRuler()
    sag.set_scale(
        SagScale(
            60.0,
            (
                SagTick(17.0),
                SagTick(18.0),
                SagTick(17.5, "29 %", "centre"),
                SagTick(19.2, words("predicted 32 %"), "predicted"),
            ),
            16.8,
            19.2,
            words("target 28–32 % (maker)"),
            words("stroke 60 mm"),
        )
    )
    inches = SagRuler(
        SagScale(160.0, (SagTick(32.0, "20 %", "centre"),), 28.8, 35.2, "target 18–22 %", "", 1 / 25.4, "in")
    )
    clicks = AdjusterRuler()
    clicks.set_scale(
        AdjusterScale(
            18,
            (
                Marker(6, words("on the bike: 6"), "now"),
                Marker(7, words("maker: 7")),
                Marker(9, words("next: 9"), "proposed"),
                Marker(18, words("as found: 18")),
            ),
            (4, 9),
        )
    )
    lever = AdjusterRuler(
        AdjusterScale(2, (Marker(1, words("middle"), "now"),), names=(words("firm"), words("middle"), words("open")))
    )
    unknown = AdjusterRuler(AdjusterScale(0))
    narrow = AdjusterRuler(
        AdjusterScale(40, (Marker(0, "W" * 80, "now"), Marker(3, "שלום 🚲 start"), Marker(39, words("near the end"))))
    )
    narrow.setMaximumWidth(320)
    return page(sag, inches, clicks, lever, unknown, narrow)


def drawings_page() -> QWidget:
    holder = QWidget()
    grid = QGridLayout(holder)
    for index, kind in enumerate(DRAWINGS):
        values = DrawingValues(distance="17.5 mm", closes="anticlockwise" if index % 2 else "clockwise")
        card = Sheet(kind, name=kind)
        card.body.addWidget(DrawingView(kind, values))
        card.setFixedSize(330, 400)
        grid.addWidget(card, index // 3, index % 3)
    return holder


PAGES: dict[str, Callable[[], QWidget]] = {
    "fields": fields_page,
    "words": words_page,
    "job": job_page,
    "sheet": sheet_page,
    "rating": rating_page,
    "rulers": rulers_page,
    "drawings": drawings_page,
}
LOOKS = {
    "light": (Theme(), False),
    "dark": (Theme(dark=True), False),
    "bench": (Theme(bench=True), False),
    "bench-dark": (Theme(dark=True, bench=True), False),
    "long": (Theme(), True),
}


def main(folder: str, *names: str) -> None:
    Path(folder).mkdir(parents=True, exist_ok=True)
    app = QApplication([])
    for look, (theme, is_long) in LOOKS.items():
        stretch["on"] = is_long
        apply_theme(app, theme)
        for name in names or PAGES:
            widget = PAGES[name]()
            widget.show()
            app.processEvents()
            widget.resize(widget.width(), max(widget.height(), widget.heightForWidth(widget.width())))
            app.processEvents()
            widget.grab().save(f"{folder}/{name}-{look}.png")
            widget.close()
            widget.deleteLater()


if __name__ == "__main__":
    main(*sys.argv[1:])

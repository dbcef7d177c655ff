import pytest
from PySide6.QtGui import QImage

from tests.fixtures import a_baseline, a_counted_bike, a_run, a_session, make_desk
from workbench.ui.review.export import ExportButton
from workbench.ui.review.page import ReviewPage
from workbench.viewmodels.bench import Bench
from workbench.viewmodels.review import ReviewViewModel


@pytest.fixture
def export(qtbot, tmp_path):
    with make_desk(tmp_path) as desk:
        bike = a_counted_bike(desk)
        a_baseline(desk, bike)
        session = a_session(desk, bike)
        for liking in (4, 5, 6):
            a_run(desk, session, liking=liking, note="=cmd")
        bench = Bench(desk)
        bench.put_bike(bike.id)
        page = ReviewPage(ReviewViewModel(desk, bench))
        qtbot.addWidget(page)
        page.resize(960, 600)
        page.show()
        yield page.findChild(ExportButton)


def test_the_runs_are_written_as_a_table_with_a_line_each(export, tmp_path):
    target = tmp_path / "runs.csv"
    export.write("Runs table", target)
    lines = target.read_text(encoding="utf-8").splitlines()
    assert len(lines) == 4
    assert "'=cmd" in lines[1].split(",")


def test_the_timeline_is_written_as_png_and_as_svg(export, tmp_path):
    export.write("Runs picture", tmp_path / "runs.png")
    export.write("Runs picture", tmp_path / "runs.svg")
    assert QImage(str(tmp_path / "runs.png")).width() > 600
    text = (tmp_path / "runs.svg").read_text(encoding="utf-8")
    assert "<svg" in text
    assert "no. 1" in text


def test_a_folder_that_is_not_there_is_said_in_a_sentence(export, tmp_path, qtbot):
    with qtbot.waitSignal(export.said) as heard:
        export.write("Runs table", tmp_path / "nowhere" / "runs.csv")
    assert "cannot be written" in heard.args[0]

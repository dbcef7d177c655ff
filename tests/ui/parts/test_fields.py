"""Entry fields: nothing typed is lost, nothing untouched is read again, and undo keys go to the right place."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QVBoxLayout, QWidget

from workbench.ui.parts.buttons import Button
from workbench.ui.parts.choice_field import ChoiceField, FlagField
from workbench.ui.parts.field_base import commit_focused
from workbench.ui.parts.form import Form, FormRow
from workbench.ui.parts.quantity_field import QuantityField
from workbench.ui.parts.sheet import Scrolled
from workbench.ui.parts.text_field import NoteField, TextField

PSI_120 = 827.3708750
SOME = (("air", "Air"), ("coil", "Coil"))
TRAVEL = FormRow("travel_mm", "Travel", "length", unit="mm", value=150.0, low=10, high=400)


@pytest.fixture
def pressure(qtbot):
    field = QuantityField("pressure", "bar", label="Pressure", low=0, high=3500, name="pressure")
    qtbot.addWidget(field)
    field.show()
    qtbot.waitExposed(field)
    field.activateWindow()
    return field


def heard(signal):
    got = []
    signal.connect(lambda *values: got.append(values[0] if values else None))
    return got


def test_a_field_nobody_typed_in_gives_back_the_very_double(pressure, qtbot):
    committed = heard(pressure.value_committed)
    pressure.set_value(PSI_120)
    pressure.set_unit("psi")
    pressure.set_unit("bar")
    pressure.line.setFocus()
    qtbot.keyClick(pressure.line, Qt.Key.Key_Return)
    assert pressure.value() == PSI_120
    assert committed == []


def test_a_value_is_read_in_the_unit_typed_and_the_reading_is_said_before_it_counts(pressure, qtbot):
    committed = heard(pressure.value_committed)
    qtbot.keyClicks(pressure.line, "82 psi")
    assert pressure.said.text().startswith("read as 5.65")
    assert committed == []
    qtbot.keyClick(pressure.line, Qt.Key.Key_Return)
    assert committed == [pytest.approx(565.37, abs=0.01)]
    assert pressure.typed() == "5.65"


def test_a_plain_number_is_not_echoed(pressure, qtbot):
    qtbot.keyClicks(pressure.line, "5.6")
    assert not pressure.said.isVisible()


@pytest.mark.parametrize("text", ["a lot", "9999 bar", "-3"])
def test_text_that_cannot_be_used_stays_as_typed_with_a_sentence_under_it(pressure, qtbot, text):
    pressure.set_value(560.0)
    committed, kept = heard(pressure.value_committed), heard(pressure.text_kept)
    pressure.line.selectAll()
    qtbot.keyClicks(pressure.line, text)
    assert pressure.commit() is False
    assert pressure.typed() == text
    assert pressure.problem()
    assert pressure.line.accessibleDescription() == pressure.problem()
    assert (committed, kept) == ([], [text])
    pressure.set_value(560.0)
    assert pressure.typed() == text


def test_typing_is_not_overwritten_by_a_value_that_arrives(pressure, qtbot):
    pressure.set_value(560.0)
    pressure.line.setFocus()
    qtbot.waitUntil(pressure.line.hasFocus)
    pressure.line.selectAll()
    qtbot.keyClicks(pressure.line, "61")
    pressure.set_value(600.0)
    assert pressure.typed() == "61"
    qtbot.keyClick(pressure.line, Qt.Key.Key_Escape)
    assert pressure.typed() == "6"


def test_an_emptied_field_commits_nothing_known(pressure, qtbot):
    pressure.set_value(560.0)
    committed = heard(pressure.value_committed)
    pressure.line.selectAll()
    qtbot.keyClick(pressure.line, Qt.Key.Key_Delete)
    assert pressure.commit()
    assert committed == [None]


def test_undo_keys_belong_to_the_text_only_while_something_is_typed(qtbot):
    window = QMainWindow()
    qtbot.addWidget(window)
    field = QuantityField("length", "mm", label="Travel")
    field.set_value(150.0)
    window.setCentralWidget(field)
    undo = QAction("Undo", window)
    undo.setShortcut(QKeySequence.StandardKey.Undo)
    window.addAction(undo)
    undone = heard(undo.triggered)
    window.show()
    qtbot.waitExposed(window)
    window.activateWindow()
    field.line.setFocus()
    qtbot.waitUntil(field.line.hasFocus)
    qtbot.keyClick(field.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert len(undone) == 1
    qtbot.keyClicks(field.line, "5")
    qtbot.keyClick(field.line, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert len(undone) == 1
    assert field.typed() == "150"


def test_a_name_loses_only_what_would_make_it_lie(qtbot):
    field = TextField(label="Name", limit=12)
    qtbot.addWidget(field)
    committed = heard(field.value_committed)
    field.line.insert("a\u202eb\u200fאב<b>🚲")
    field.commit()
    assert committed == ["abאב<b>🚲"]
    field.set_value("<img src=x>")
    assert field.line.text() == "<img src=x>"


def test_a_text_too_long_is_refused_and_never_cut(qtbot):
    for field, entry in ((TextField(label="Name", limit=12), "line"), (NoteField(label="Note", limit=12), "edit")):
        qtbot.addWidget(field)
        committed = heard(field.value_committed)
        getattr(field, entry).setFocus()
        qtbot.keyClicks(getattr(field, entry), "thirteen char")
        assert not field.commit()
        assert "this has 13" in field.problem()
        qtbot.keyClick(getattr(field, entry), Qt.Key.Key_Backspace)
        assert field.commit()
        assert committed == ["thirteen cha"]


def test_leaving_a_field_with_the_focus_commits_it(qtbot):
    form = Form([FormRow("name", "Name"), TRAVEL])
    qtbot.addWidget(form)
    got = []
    form.row_committed.connect(lambda name, value: got.append((name, value)))
    form.show()
    qtbot.waitExposed(form)
    form.activateWindow()
    form.field("name").line.setFocus()
    qtbot.waitUntil(form.field("name").line.hasFocus)
    qtbot.keyClicks(form.field("name").line, "Larch")
    assert commit_focused()
    form.field("travel_mm").line.selectAll()
    qtbot.keyClicks(form.field("travel_mm").line, "6 in")
    form.commit_all()
    assert got == [("name", "Larch"), ("travel_mm", pytest.approx(152.4))]


def test_new_rows_of_the_same_shape_keep_the_fields(qtbot):
    form = Form([TRAVEL])
    qtbot.addWidget(form)
    before = form.field("travel_mm")
    form.set_rows([FormRow("travel_mm", "Travel", "length", unit="in", value=127.0, problem="Is this right?")])
    assert form.field("travel_mm") is before
    assert before.typed() == "5"
    assert before.problem() == "Is this right?"


def test_few_choices_are_keys_and_many_are_a_list(qtbot):
    few = ChoiceField({"air": "Air", "coil": "Coil"}, label="Spring", name="spring")
    many = ChoiceField([(str(n), f"no. {n}") for n in range(5)], label="Number")
    qtbot.addWidget(few)
    qtbot.addWidget(many)
    picked, listed = heard(few.value_committed), heard(many.value_committed)
    few.show()
    qtbot.mouseClick(few.findChild(object, "spring_coil"), Qt.MouseButton.LeftButton)
    qtbot.mouseClick(few.findChild(object, "spring_coil"), Qt.MouseButton.LeftButton)
    many.focusProxy().activated.emit(3)
    assert (picked, few.value()) == (["coil"], "coil")
    assert (listed, many.value()) == (["3"], "3")
    few.set_value(None)
    assert few.value() is None


def test_a_tick_box_can_be_hit_anywhere_on_its_row(qtbot):
    field = FlagField(label="E-bike")
    qtbot.addWidget(field)
    ticked = heard(field.value_committed)
    field.resize(500, 60)
    field.show()
    qtbot.mouseClick(field.box, Qt.MouseButton.LeftButton, pos=QPoint(450, field.box.height() // 2))
    assert ticked == [True]


def test_a_note_keeps_its_lines(qtbot):
    note = NoteField(label="Note")
    qtbot.addWidget(note)
    committed = heard(note.value_committed)
    note.edit.insertPlainText("dry\nfast")
    note.edit.document().setModified(True)
    note.commit()
    assert committed == ["dry\nfast"]


def test_a_screen_reader_hears_what_a_fact_is_one_of_and_the_unit(qtbot):
    form = Form([FormRow("travel_mm", "Travel", "length", unit="mm"), FormRow("kind", "Kind", "choice", choices=SOME)])
    qtbot.addWidget(form)
    form.set_about("Fork")
    assert form.field("travel_mm").line.accessibleName() == "Fork: Travel, mm"
    assert [key.accessibleName() for key in form.findChildren(Button)] == ["Fork: Kind: Air", "Fork: Kind: Coil"]


def test_what_is_wrong_with_a_field_is_scrolled_into_sight(qtbot):
    inside = QWidget()
    rows = QVBoxLayout(inside)
    rows.addSpacing(300)
    field = QuantityField("length", "mm", label="Shock stroke", low=25, high=95, name="stroke")
    rows.addWidget(field)
    rows.addSpacing(300)
    scrolled = Scrolled(inside)
    qtbot.addWidget(scrolled)
    scrolled.resize(300, 200)
    scrolled.show()
    qtbot.waitExposed(scrolled)
    scrolled.activateWindow()
    field.setFocus()
    qtbot.waitUntil(field.line.hasFocus)
    scrolled.verticalScrollBar().setValue(0)
    field.refuse("Shock stroke can be at least 25 mm and at most 95 mm; 160 mm was read. Measure eye to eye, twice.")
    qtbot.waitUntil(lambda: not field.said.visibleRegion().isEmpty())
    qtbot.waitUntil(lambda: field.said.visibleRegion().boundingRect().height() == field.said.height())


def test_a_tick_box_stands_level_with_the_field_beside_it_and_wastes_no_room_without_one(qtbot):
    def shown(*rows):
        form = Form(rows, columns=2)
        qtbot.addWidget(form)
        form.resize(700, form.sizeHint().height())
        form.show()
        qtbot.waitExposed(form)
        return form

    def top(form, name):
        field = form.field(name)
        return field.mapTo(form, field.rect().topLeft()).y()

    beside = shown(FormRow("width", "Width", "length", unit="mm"), FormRow("tubeless", "Tubeless", "flag"))
    assert top(beside, "width") == top(beside, "tubeless") > 0
    alone = shown(FormRow("tubeless", "Tubeless", "flag"), FormRow("insert", "With an insert", "flag"))
    assert top(alone, "tubeless") == 0

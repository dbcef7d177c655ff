"""Shared widgets, the theme and the drawings: plain values in, signals in the past tense out.

Nothing here knows records, view-models or the library. Every widget takes `name` (its object name; parts inside
are called `name_something`) and most take `label` or set an accessible name themselves. User text is never markup.

Look
    theme: `Theme(dark, bench)` with `.palette .sizes .colour(token) .font(size, bold=)`; `apply_theme(app, theme)`;
    `apply_choice(app, ColourChoice.SYSTEM | LIGHT | DARK, bench=)`; `current()`; `announcer.changed(Theme)`;
    `SPACE_4 .. SPACE_40`; `GAP` (thin space). palette: `Palette`, `contrast(a, b)`.
    labels: `Words(text, role, elide=)`, `.set_words(text)` hides when empty, `.set_role(role)`; `isolate(name)`.
    buttons: `Button(text, kind)`, kind "verb" | "plain" | "link" | "key" | "option"; `.set_text .words .mark(bool)`.
    flow: `Flow(gap=)`.
Entry
    All fields: `value() set_value(v) set_problem(text) problem() commit() -> bool is_editing()`, signals
    `value_committed(object)` and `text_kept(str)`. field_base: `commit_focused() -> bool`.
    quantity_field: `QuantityField(quantity, unit, label=, low=, high=, big=)`, `set_unit set_limits typed set_typed`.
    text_field: `TextField(label=, limit=, placeholder=)`, `NoteField(label=, limit=, lines=)`.
    choice_field: `ChoiceField(choices, label=)`, `FlagField(label=)`, `TickBox(text)`.
    form: `FormRow(name, label, kind, quantity, unit, choices, value, help, problem, low, high)`,
    `Form(rows, columns=)`: `set_rows field(name) set_problem(name, text) commit_all()`, `row_committed(str, object)`,
    `row_kept(str, str)`.
    counting_tool: `CountingTool("clicks" | "turns" | "positions", names, label=)`: `count() set_count(n) words()`,
    `count_changed(int)`, `done()`; `count_words(count, mode, names)`.
    rating_bar: `RatingBar(question)`, `DirectionBar(question, words)`, `ComparedBar(question, words)`,
    `KeyBar(keys)`: `value() set_value(v)`, `picked(object)` (None when cleared).
    table: `Table(heads, samples, name=, label=).show_rows([TableRow(key, cells)], picked)`, `row_picked(str)`.
Sheet
    sheet: `Sheet(title, subtitle)`: `.body` (layout), `set_title set_margin(widget) set_foot(widget)`; `Rule`;
    `Scrolled(widget)`. stage_sheet: `StageSheet(title)`: `set_stages([(word, widget)])`,
    `show_stage(i, verb=, second=, can_go_back=)`, `say_problem(text, field)`, `stage()`; `verb_pressed`,
    `second_pressed`, `back_pressed`.
    job_line: `JobLine().set_marks([Mark(key, word, state, reason)])`, `station_requested(str)`; `STATES`.
    title_block: `TitleBlock(person_label=)`: `set_cells([(label, value)])`, `person_requested()`.
    banner: `Banner().say(text, action, stays_ms=)`, `dismiss()`, `action_requested()`, `closed()`.
    empty_state: `EmptyState(sentence, verb)`, `action_requested()`. care_note: `CareNote(text)`.
    big_number: `BigNumber(number, unit, remark).set_number(...)`.
    step_list: `StepList().set_steps([Step(key, text, done, remark)])`, `step_ticked(str, bool)`, `is_all_done()`.
Drawn
    rulers: `SagRuler().set_scale(SagScale(travel_mm, ticks, target_low_mm, target_high_mm, target_words, ...))` with
    `SagTick(at_mm, label, "measured" | "centre" | "predicted")`; `AdjusterRuler().set_scale(AdjusterScale(steps,
    markers, tested, ...))` with `Marker(at, words, "now" | "proposed" | "other")`. Set the accessible name yourself.
    sag_rows: `SagRows().set_rows([SagRow(label, words, at, kind, ticks, low, high)], low, high, band_words)`:
    sag against its band, a row a measurement.
    picture_print: `PicturePrint(content, says, size, name=)`; `small_print(content, size)`.
    word_pairs: `WordPairs(role).show_pairs(((title, text), ...))`: two columns of words.
    drawings: `DrawingView(kind, DrawingValues(distance, closes, opens, share, note))`; `KINDS`.
"""

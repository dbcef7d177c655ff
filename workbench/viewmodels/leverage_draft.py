"""A leverage survey as it is being typed: pairs, how the shock is read, and what they come to."""

from __future__ import annotations

import json
from dataclasses import dataclass, field, replace

from workbench.model.errors import InputError
from workbench.viewmodels.shown import Units

LINES = 8  # pairs offered at first; a new line appears when the last is used
USUAL_SD_MM = 1.0  # of a wheel reading with a rule; common practice, no source
ALLOWED_LENGTH_MM = (50.0, 500.0)
STROKE_SLACK_MM = 2.0  # by so much a stroke may be read beyond the stated one: bumpers give way
ALLOWED_SD_MM = (0.05, 10.0)


@dataclass(frozen=True, slots=True)
class SurveyDraft:
    """What has been typed so far, as typed: pairs of shock reading and wheel travel, and what they hold for."""

    pairs: tuple[tuple[str, str], ...] = ()
    mounting: str = ""
    by_length: bool = False  # the shock is read eye to eye instead of by its stroke
    extended: str = ""  # its length at full extension
    exact_to: str = ""  # how far off a wheel reading may be

    def to_json(self) -> str:
        """Write the draft for keeping."""
        return json.dumps(
            {
                "pairs": self.pairs,
                "mounting": self.mounting,
                "by_length": self.by_length,
                "extended": self.extended,
                "exact_to": self.exact_to,
            }
        )

    @classmethod
    def from_json(cls, text: str) -> SurveyDraft:
        """Read a kept draft; what is missing starts empty."""
        known = json.loads(text)
        return cls(
            tuple((str(a), str(b)) for a, b in known.get("pairs", ())),
            str(known.get("mounting", "")),
            bool(known.get("by_length", False)),
            str(known.get("extended", "")),
            str(known.get("exact_to", "")),
        )

    def with_free_line(self) -> tuple[tuple[str, str], ...]:
        """Give the lines to show: as many as are usual, and always an empty one at the end."""
        filled = list(self.pairs)
        while len(filled) < LINES or any(text.strip() for text in filled[-1]):
            filled.append(("", ""))
        return tuple(filled)


@dataclass(frozen=True, slots=True)
class Readings:
    """The pairs read: strokes and wheel travels, and the line each was typed in."""

    stroke_mm: tuple[float, ...]
    wheel_mm: tuple[float, ...]
    lines: tuple[int, ...]
    sd_mm: float = USUAL_SD_MM
    eye_to_eye_mm: float | None = None
    half_line: int | None = None  # a line of which one figure is missing
    pairs: tuple[tuple[float, float], ...] = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "pairs", tuple(zip(self.stroke_mm, self.wheel_mm, strict=True)))


class LineError(InputError):
    """Something in one line of the survey; `line` counts from 0."""

    def __init__(self, line: int, value: object, allowed: str, hint: str = "") -> None:
        super().__init__(f"Line {line + 1}", value, allowed, hint)
        self.line = line


def read_survey(draft: SurveyDraft, units: Units, stroke_mm: float | None = None) -> Readings:
    """Read what was typed, half a pair left out; an unreadable or impossible one raises, naming its line or field.

    ``stroke_mm`` is the shock's own stroke, which no reading lies beyond.
    """
    begun = [place for place, pair in enumerate(draft.pairs) if any(text.strip() for text in pair)]
    half = [place for place in begun if not all(text.strip() for text in draft.pairs[place])]
    found = [(place, *_pair(place, draft.pairs[place], draft, units)) for place in begun if place not in half]
    sd_mm = _within("Wheel read to within", draft.exact_to, units, ALLOWED_SD_MM) or USUAL_SD_MM
    lines = tuple(place for place, _, _ in found)
    wheels = tuple(wheel for _, _, wheel in found)
    shocks = tuple(shock for _, shock, _ in found)
    if not draft.by_length:
        _check_strokes(draft, lines, shocks, stroke_mm, units)
        return Readings(shocks, wheels, lines, sd_mm, half_line=half[0] if half else None)
    extended = _within("Extended, eye to eye", draft.extended, units, ALLOWED_LENGTH_MM)
    if extended is None:
        extended = _longest(found)
    for place, shock, _ in found:
        if extended is not None and shock > extended:
            allowed = f"up to {units.text(extended, 'length')}, the shock extended"
            raise LineError(place, draft.pairs[place][0].strip(), allowed)
    strokes = tuple((extended or 0.0) - one for one in shocks)
    _check_strokes(draft, lines, strokes, stroke_mm, units)
    return Readings(strokes, wheels, lines, sd_mm, extended, half[0] if half else None)


def _check_strokes(
    draft: SurveyDraft, lines: tuple[int, ...], strokes_mm: tuple[float, ...], stroke_mm: float | None, units: Units
) -> None:
    for place, one in zip(lines, strokes_mm, strict=True):
        if stroke_mm is not None and one > stroke_mm + STROKE_SLACK_MM:
            allowed = f"up to {units.text(stroke_mm, 'length')} of stroke, as stated in the garage"
            raise LineError(place, draft.pairs[place][0].strip(), allowed)


def _longest(found: list[tuple[int, float, float]]) -> float | None:
    """Give the length read where the wheel stood at zero: that is full extension."""
    at_zero = [shock for _, shock, wheel in found if wheel == 0]
    if found and not at_zero:
        raise InputError(
            "Extended, eye to eye",
            "nothing",
            "the length at full extension, here or as a line with wheel travel 0",
            "A stroke is what the shock is shorter than that.",
        )
    return max(at_zero, default=None)


def _pair(place: int, pair: tuple[str, str], draft: SurveyDraft, units: Units) -> tuple[float, float]:
    shock_words = "a length" if draft.by_length else "a stroke"
    values = []
    for text in pair:
        try:
            values.append(units.parse(text, "length"))
        except InputError as error:
            raise LineError(place, text.strip(), f"{shock_words} and a wheel travel") from error
        if values[-1] < 0:
            raise LineError(place, text.strip(), "0 or more")
    return values[0], values[1]


def _within(label: str, text: str, units: Units, allowed: tuple[float, float]) -> float | None:
    if not text.strip():
        return None
    low, high = allowed
    words = f"{units.text(low, 'length')} to {units.text(high, 'length')}"
    try:
        value = units.parse(text, "length")
    except InputError as error:
        raise InputError(label, text.strip(), words) from error
    if not low <= value <= high:
        raise InputError(label, text.strip(), words)
    return value


def half_words(line: int | None) -> str:
    """Say which line lacks a figure."""
    return "" if line is None else f"Line {line + 1} has only one of its two figures."


def read_other_way(draft: SurveyDraft, units: Units) -> SurveyDraft:
    """Give the draft with the shock read the other way: numbers are turned over where they can be, else left alone."""
    turned = replace(draft, by_length=not draft.by_length)
    try:
        extended = _within("", draft.extended, units, ALLOWED_LENGTH_MM)
        if extended is None and draft.by_length:
            extended = read_survey(draft, units).eye_to_eye_mm
    except InputError:
        return turned
    if extended is None:
        return turned
    return replace(turned, pairs=tuple((_turned(shock, extended, units), wheel) for shock, wheel in draft.pairs))


def _turned(text: str, extended_mm: float, units: Units) -> str:
    try:
        value = extended_mm - units.parse(text, "length")
    except InputError:
        return text
    return units.text(value, "length") if value >= 0 else text

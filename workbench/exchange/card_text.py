"""A card as plain text, for a message or a job sheet."""

from __future__ import annotations

from workbench.exchange.card_lines import CardLine, CardSheet

CHANGED, SAME = "*", " "


def card_text(sheet: CardSheet) -> str:
    """Give every line of the card; a star stands where something was left otherwise than found."""
    blocks = [f"{sheet.title}\n{sheet.subtitle}"]
    blocks.append("\n".join(f"{label}: {value}" for label, value in sheet.cells))
    figures = [f"{one.label}: {one.figure} {one.note}".rstrip() for one in sheet.strip]
    blocks.append("\n".join(figures))
    for section in sheet.sections:
        head = f"{section.title} ({section.heads[0].lower()} > {section.heads[1].lower()})"
        blocks.append("\n".join([head, *(_line(line) for line in section.lines)]))
    if any(line.is_changed for section in sheet.sections for line in section.lines):
        blocks.append(f"{CHANGED} left otherwise than found")
    blocks.append(sheet.note)
    blocks.append("\n".join(f"- {words}" for words in sheet.cautions))
    blocks.append("\n".join(f"{label}: {name or '................'}" for label, name in sheet.signed))
    return "\n\n".join(block for block in blocks if block) + "\n"


def _line(line: CardLine) -> str:
    found = f"{line.found} > " if line.found else ""
    remark = f" ({line.remark})" if line.remark else ""
    return f"{CHANGED if line.is_changed else SAME} {line.label}: {found}{line.left}{remark}"

"""Pictures: which files are some, told by their first bytes and never by their names."""

from __future__ import annotations

from dataclasses import dataclass

from workbench.model.errors import ExchangeError

LARGEST_BYTES = 40_000_000
_BEGINNINGS = (b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"GIF87a", b"GIF89a", b"BM")


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture's file, kept under its SHA-256, and the name it came with."""

    sha256: str
    name: str


def check_picture(name: str, content: bytes) -> bytes:
    """Give the content back if it is a picture this program shows, else say what it is not."""
    if len(content) > LARGEST_BYTES:
        raise ExchangeError(f"{name} is larger than {LARGEST_BYTES // 1_000_000} MB. Make it smaller and add it again.")
    is_webp = content[:4] == b"RIFF" and content[8:12] == b"WEBP"
    if not is_webp and not content.startswith(_BEGINNINGS):
        raise ExchangeError(f"{name} is no picture that can be shown. Add a JPEG, PNG, WebP, GIF or BMP file.")
    return content

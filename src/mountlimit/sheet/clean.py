"""Takes out of a text what would upset the page: control characters and changes of direction."""

from __future__ import annotations

_ODD = {
    *range(0x09), 0x0B, 0x0C, *range(0x0E, 0x20), *range(0x7F, 0xA0), 0x061C, 0x200E, 0x200F,
    *range(0x202A, 0x202F), *range(0x2066, 0x206A), *range(0xD800, 0xE000), *range(0xFDD0, 0xFDF0), 0xFEFF,
    *(plane * 0x10000 + end for plane in range(17) for end in (0xFFFE, 0xFFFF)),
}  # fmt: skip
_TABLE = dict.fromkeys(_ODD, "\N{REPLACEMENT CHARACTER}")
LONG = 34  # letters in one word or a number's cell, above which it is broken


def clean(text: str) -> str:
    """Put the mark of an unknown letter where a letter is none to be shown."""
    return text.translate(_TABLE)


def long_words(text: str) -> bool:
    """Whether some word of a text is too long to stand in a column unbroken."""
    return any(len(word) > LONG for word in text.split())

"""Signs for an output that has no Unicode: what stands for each, so that nothing ends in an error."""

import codecs
import unicodedata
from collections.abc import Mapping
from types import MappingProxyType

_WORDS: Mapping[str, str] = MappingProxyType({
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3", "⅛": "1/8", "⅞": "7/8", "⅐": "1/7", "⁄": "/",
    "·": "-", "•": "-", "…": "...", "–": "-", "—": "-", "×": "x", "°": "deg ", "“": '"', "”": '"', "″": '"',
    "‘": "'", "’": "'", "›": ">", "‣": ">", "█": "#", "▌": "#",
})  # fmt: skip
# One cell for one cell, as a screen must keep its columns; of block elements (U+2580 to U+259F) the low ones by height.
_CELLS: Mapping[str, str] = MappingProxyType({
    "·": ".", "•": "*", "…": "~", "–": "-", "—": "-", "×": "x", "°": "'", "“": '"', "”": '"', "‘": "'", "’": "'",
    "⏎": "^", "›": ">", "→": ">", "←": "<", "↑": "^", "↓": "v", "✓": "x", "☐": "_", "▒": ":", "░": ".", "▓": ":",
    "▁": "_", "▂": "_", "▃": "_", "▄": "=", "▅": "=", "▔": "-", "─": "-", "━": "-", "│": "|", "┃": "|",
})  # fmt: skip
_FRACTION = "~"  # about; the grams stand beside it


def _in_words(error: UnicodeError) -> tuple[str | bytes, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    return "".join(map(plain_words, error.object[error.start : error.end])), error.end


def _in_json(error: UnicodeError) -> tuple[str | bytes, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    units = error.object[error.start : error.end].encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[at]:02x}{units[at + 1]:02x}" for at in range(0, len(units), 2)), error.end


def plain_words(sign: str) -> str:
    """A sign in ASCII, as many as it takes."""
    known = _WORDS.get(sign)
    if known is not None:
        return known
    return unicodedata.normalize("NFKD", sign).encode("ascii", "ignore").decode() or "?"


def plain_cell(sign: str) -> str:
    """A sign in one ASCII sign."""
    if sign.isascii():
        return sign
    if sign in _CELLS:
        return _CELLS[sign]
    if "\u2500" <= sign <= "\u257f":
        return "+"
    if "\u2580" <= sign <= "\u259f":
        return "#"
    if unicodedata.category(sign) == "No":
        return _FRACTION
    plain = unicodedata.normalize("NFKD", sign).encode("ascii", "ignore").decode()
    return plain[:1] or "?"


def is_unicode(encoding: str | None) -> bool:
    """Whether an encoding has every sign."""
    return (encoding or "ascii").lower().replace("-", "").startswith("utf")


WORDS, JSON = "calmlarder-words", "calmlarder-json"  # names of error handlers for streams
codecs.register_error(WORDS, _in_words)
codecs.register_error(JSON, _in_json)

"""Regular expressions that are compiled when they are first used: the program's first screen reads no line yet.

The compiling of all of this room's expressions takes as long as to load Textual, and few of them fit any line of a
larder: where it is known which pieces of text an expression needs, no text without one is searched, and an expression
that no line has a piece of is never compiled.
"""

import re
from collections.abc import Callable, Iterator, Mapping
from functools import cached_property
from typing import ClassVar

Replacement = str | Callable[["re.Match[str]"], str]
Pieces = tuple[str, ...]
NOTHING: Pieces = ("",)  # is in each text
START = "\b"  # before a piece that only fits where a word begins; a sign that no plain text has


def is_at_start(piece: str, text: str) -> bool:
    """Whether a word of a text begins with a piece; `bin` is in `robin`, and no word begins with it there."""
    at = text.find(piece)
    while at > 0 and (text[at - 1].isalnum() or text[at - 1] == "_"):
        at = text.find(piece, at + 1)
    return at >= 0


class LatePattern:
    """What `re.compile` gives, for the ways in which this room uses it. Raises re.error at its first use.

    `needs` are pieces of text of which each text that fits holds one, with START before one that a word begins with.
    Where none are given they are those that were found in the expression itself (`needs.py`), once these are known.
    """

    every: ClassVar[list["LatePattern"]] = []  # each is made once, when its module is loaded
    known: ClassVar[dict[str, Pieces]] = {}  # what expressions need, by how they are written

    def __init__(self, pattern: str, flags: int = 0, needs: Pieces | None = None) -> None:
        self.written, self.flags, self.given = pattern, flags, needs
        self.every.append(self)

    @classmethod
    def know(cls, needs: Mapping[str, Pieces]) -> None:
        """What expressions need, from now on; of those that have been used already nothing changes."""
        cls.known.update(needs)

    @cached_property
    def needs(self) -> Pieces:
        """Pieces of text of which each text that fits holds one, as far as that is known."""
        if self.given is not None:
            return self.given
        return NOTHING if self.flags else self.known.get(self.written, NOTHING)

    @cached_property
    def _anywhere(self) -> Pieces:
        return tuple(piece for piece in self.needs if not piece.startswith(START))

    @cached_property
    def _at_starts(self) -> Pieces:
        return tuple(piece[len(START) :] for piece in self.needs if piece.startswith(START))

    def may_fit(self, text: str) -> bool:
        """Whether a text holds something of what the expression needs."""
        for one in self._anywhere:  # some hundred times a line, and `any` takes three times as long
            if one in text:
                return True
        for one in self._at_starts:  # noqa: SIM110
            if one in text and is_at_start(one, text):
                return True
        return False

    @cached_property
    def _compiled(self) -> "re.Pattern[str]":
        return re.compile(self.written, self.flags)

    def search(self, text: str, start: int = 0) -> "re.Match[str] | None":
        """The first place that fits, from an index on."""
        return self._compiled.search(text, start) if self.may_fit(text) else None

    def match(self, text: str, start: int = 0) -> "re.Match[str] | None":
        """What fits at an index."""
        return self._compiled.match(text, start) if self.may_fit(text) else None

    def fullmatch(self, text: str) -> "re.Match[str] | None":
        """The whole text, where it fits."""
        return self._compiled.fullmatch(text) if self.may_fit(text) else None

    def finditer(self, text: str) -> "Iterator[re.Match[str]]":
        """Every place that fits."""
        return self._compiled.finditer(text) if self.may_fit(text) else iter(())

    def findall(self, text: str) -> list[str]:
        """Every text that fits; of an expression with one group, or none."""
        return list(self._compiled.findall(text)) if self.may_fit(text) else []

    def sub(self, replacement: Replacement, text: str, count: int = 0) -> str:
        """The text with something else in place of what fits."""
        return self._compiled.sub(replacement, text, count) if self.may_fit(text) else text

    def split(self, text: str, most: int = 0) -> list[str]:
        """The text parted where it fits."""
        return list(self._compiled.split(text, most)) if self.may_fit(text) else [text]

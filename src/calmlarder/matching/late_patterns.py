"""Regular expressions that are compiled when they are first used: the program's first screen reads no line yet.

The compiling of all of this room's expressions takes as long as to load Textual. Python compiles each once.
"""

import re
from collections.abc import Callable, Iterator
from functools import cached_property

Replacement = str | Callable[["re.Match[str]"], str]


class LatePattern:
    """What `re.compile` gives, for the ways in which this room uses it. Raises re.error at its first use.

    `needs` are pieces of text of which each text that fits holds one, for what is long and seldom fits: no other text
    is searched, and where no line of a larder has one it is never compiled.
    """

    def __init__(self, pattern: str, flags: int = 0, needs: tuple[str, ...] = ("",)) -> None:
        self._written, self._flags, self.needs = pattern, flags, needs
        self._needs_nothing = "" in needs  # asked a hundred times a line

    def _may_fit(self, text: str) -> bool:
        return self._needs_nothing or any(one in text for one in self.needs)

    @cached_property
    def _compiled(self) -> "re.Pattern[str]":
        return re.compile(self._written, self._flags)

    def search(self, text: str, start: int = 0) -> "re.Match[str] | None":
        """The first place that fits, from an index on."""
        return self._compiled.search(text, start) if self._may_fit(text) else None

    def match(self, text: str, start: int = 0) -> "re.Match[str] | None":
        """What fits at an index."""
        return self._compiled.match(text, start)

    def fullmatch(self, text: str) -> "re.Match[str] | None":
        """The whole text, where it fits."""
        return self._compiled.fullmatch(text) if self._may_fit(text) else None

    def finditer(self, text: str) -> "Iterator[re.Match[str]]":
        """Every place that fits."""
        return self._compiled.finditer(text)

    def findall(self, text: str) -> list[str]:
        """Every text that fits; of an expression with one group, or none."""
        return list(self._compiled.findall(text))

    def sub(self, replacement: Replacement, text: str, count: int = 0) -> str:
        """The text with something else in place of what fits."""
        return self._compiled.sub(replacement, text, count) if self._may_fit(text) else text

    def split(self, text: str, most: int = 0) -> list[str]:
        """The text parted where it fits."""
        return list(self._compiled.split(text, most))

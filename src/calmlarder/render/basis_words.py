"""Where a figure comes from, in a cook's words."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.tables.vocabulary import Basis

BASIS_WORDS: Mapping[Basis, str] = MappingProxyType(
    {
        "analysed": "measured",
        "published": "published",
        "summed": "the sum of its parts",
        "borrowed": "taken from a food like it",
        "recalled": "from memory, not verified",
        "assumed": "assumed",
    }
)
_BASIS = re.compile(r"\b(?:borrowed|recalled)\b")


def in_plain_words(told: str) -> str:
    """The same words, with no word of the tables' own for where a figure comes from."""
    return _BASIS.sub(lambda found: {**BASIS_WORDS}[found[0]], told)  # type: ignore[index]

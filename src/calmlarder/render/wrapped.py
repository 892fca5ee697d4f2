"""Text in lines, no number parted from its unit: `0.19 g` stands on one line."""

import re
from textwrap import wrap

_UNIT = re.compile(r"(?<=\d) (?=(?:g|mg|kg|ml|oz|lb|min|minutes?|hours?|days?|cups?|tsp|tbsp|°[CF])\b|%)")
_HELD = "\N{NO-BREAK SPACE}"  # a space at which no line ends


def wrapped(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """Lines of so many columns; `first` and `rest` stand before them."""
    lines = wrap(_UNIT.sub(_HELD, text), width, initial_indent=first, subsequent_indent=rest)
    return [line.replace(_HELD, " ") for line in lines]

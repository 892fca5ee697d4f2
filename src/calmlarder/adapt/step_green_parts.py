"""Spring onions of which the steps take white and green apart, where all of them are greens now."""

import re
from collections.abc import Sequence

_GREENS = "spring onion greens"
_SOME = re.compile(rf"\b\d+ g of the {_GREENS}")
_SUCH = "(?:reserved |sliced |chopped |remaining )*"
# `the green parts of the spring onion greens`, `green onion tops [21 g of it]`
_GREEN_PARTS = re.compile(
    rf"\b(?:the )?{_SUCH}(?:dark )?green (?:parts?|tops?|ends?|bits?|slices) of "
    rf"(?:the )?{_GREENS}(?: \[[^\]]*\])?"
    rf"|\b(?:the )?{_SUCH}(?:green|spring) onions? (?:green )?(?:tops?|greens|green parts?)"
    r" \[(?:\d+ g|the rest) of it\]"
    rf"|\b(?:the )?{_SUCH}{_GREENS} (?:tops?|greens|green parts?)(?: \[[^\]]*\])?",
    re.IGNORECASE,
)
_WHITE_PARTS = re.compile(
    rf"\b(?:the )?(?:white|pale|light)(?: and (?:light|pale) green)? (?:parts?|ends?|bits?|slices) of (?:the )?"
    rf"(?P<now>(?:\d+ g of the )?{_GREENS})",
    re.IGNORECASE,
)


def green_parts_named(steps: Sequence[str]) -> list[str]:
    """The changed steps in which what was white and what was green are two shares of the same greens."""
    steps = [_WHITE_PARTS.sub(r"\g<now>", step) for step in steps]
    told: list[str] = []
    for place, step in enumerate(steps):
        before = _SOME.search(" ".join(steps[:place])) is not None
        some = _SOME.search(step)

        def named(found: re.Match[str], first: re.Match[str] | None = some, begun: bool = before) -> str:
            rest = begun or (first is not None and first.start() < found.start())
            return f"the rest of the {_GREENS}" if rest else f"the {_GREENS}"

        told.append(_GREEN_PARTS.sub(named, step))
    return told

"""Spring onions of which the steps take white and green apart, where all of them are greens now."""

import re
from collections.abc import Sequence

_GREENS = "spring onion greens"
_WHITE_AND_GREEN = ("white", "green")
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


_WHOLE = re.compile(
    r"(?<!of )\b(?:the )?(?:(?:green|spring) onion|scallion) greens\b(?! \[(?!only a minute))", re.IGNORECASE
)
_SHARED = re.compile(r"\b(?:half|rest|remaining|some|most|g|reserved)\b[^.;,]*$", re.IGNORECASE)
_WHITES = re.compile(
    r"\b(?:white|pale)\b[^.;]*\b(?:onions?|scallions?|parts?)\b|\b(?:onion|scallion) whites\b", re.IGNORECASE
)
_GREENS_APART = re.compile(
    r"\b(?:green|dark) (?:parts?|tops?|ends?|bits?|slices)\b|\b(?:onion|scallion) greens\b", re.IGNORECASE
)


def half_and_rest(steps: Sequence[str], marked: Sequence[str]) -> list[str]:
    """The changed steps, where one as written takes the white parts and a later one the green: half, and the rest.

    Half of them: common practice, no source.
    """
    told = list(marked)
    found = [(place, one) for place, text in enumerate(told) for one in _WHOLE.finditer(text)]
    if len(found) != len(_WHITE_AND_GREEN) or any(_SHARED.search(told[place][: one.start()]) for place, one in found):
        return told
    (first, half), (second, rest) = found
    if first >= second or not (_WHITES.search(steps[first]) and _GREENS_APART.search(steps[second])):
        return told
    for place, one, share in ((first, half, "half of"), (second, rest, "the rest of")):
        begun = share.capitalize() if one[0][0].isupper() else share
        told[place] = f"{told[place][: one.start()]}{begun} the {_GREENS}{told[place][one.end() :]}"
    return told

"""A short name that means the longer one before it: `half the fried onions … the remaining rice, onions and herbs`."""

import re
from collections.abc import Sequence

from calmlarder.adapt.names import Names, spans_in
from calmlarder.matching.names.words import words_of

_THE_REST = re.compile(
    r"\b(?:remaining|rest of(?: the)?|last of the|other half of(?: the)?)[a-z ,]{0,60}$", re.IGNORECASE
)


def by_their_longer_names(steps: Sequence[str], names: Names) -> tuple[str, ...]:
    """The steps, of which each names what is left of a thing as it named it before."""
    return tuple(_longer(step, names) for step in steps)


def _longer(step: str, names: Names) -> str:
    spans = list(spans_in(step, names))
    told, done = "", 0
    for place, (start, end, meant) in enumerate(spans):
        words = words_of(step[start:end])
        if len(words) != 1 or not _THE_REST.search(step[:start]):
            continue
        before = [step[a:b] for a, b, other in spans[:place] if _ends_so(step[a:b], words) and other != meant]
        alone = any(words_of(step[a:b]) == words for a, b, _ in spans[:place])
        if len(set(before)) == 1 and not alone:
            told, done = f"{told}{step[done:start]}{before[0]}", end
    return told + step[done:]


def _ends_so(name: str, words: tuple[str, ...]) -> bool:
    longer = words_of(name)
    return len(longer) > 1 and longer[-1:] == words

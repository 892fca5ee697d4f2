"""The steps of a recipe one by one: how far they are looked at, and the number of each."""

import re
from collections.abc import Iterator, Sequence

from calmlarder.cookbook.bounds import MOST_SIGNS_OF_STEPS

_OWN_NUMBER = re.compile(r"\s*(?:step )?(\d{1,2})[.):]\s", re.IGNORECASE)
_HEADING = re.compile(
    r"\s*(?:the )?(?:method|instructions?|directions?|steps|preparation|how to make it)\s*:?\s*", re.IGNORECASE
)


def within(steps: Sequence[str]) -> Iterator[str]:
    """The steps as far as they are looked at."""
    left = MOST_SIGNS_OF_STEPS
    for step in steps:
        left -= len(step)
        if left < 0:
            return
        yield step


def numbered(steps: Sequence[str]) -> Iterator[tuple[int, str]]:
    """Each step with the number that it bears, else its place; a heading is no step."""
    place = 0
    for step in steps:
        own = _OWN_NUMBER.match(step)
        place = int(own[1]) if own else place + (not _HEADING.fullmatch(step))
        yield place, step

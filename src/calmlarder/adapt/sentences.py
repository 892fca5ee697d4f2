"""The sentences of a step: where they end, which one stands around a place, what they say, how many minutes."""

import re
from bisect import bisect_right
from functools import lru_cache

TIME = re.compile(r"(\d+)(?:\s*(?:[-–—]|to)\s*\d+)?[\s-]*(minute|min|hour|hr)", re.IGNORECASE)
SENTENCE_ENDS = re.compile(r"[.;!?](?=\s|$)")


@lru_cache(maxsize=256)  # a step may name a food a hundred times
def says(what: re.Pattern[str], text: str) -> bool:
    return what.search(text) is not None


def sentence_at(step: str, end: int) -> str:
    """The sentence around a place."""
    ends = ends_in(step)
    behind = bisect_right(ends, end)
    return step[ends[behind - 1] if behind else 0 : ends[behind] - 1 if behind < len(ends) else len(step)]


@lru_cache(maxsize=256)
def ends_in(step: str) -> tuple[int, ...]:
    """Where the sentences of a step end, each behind its sign."""
    return tuple(one.end() for one in SENTENCE_ENDS.finditer(step))


@lru_cache(maxsize=256)
def sentence_behind(step: str, sentence: str) -> str:
    """The sentence that follows."""
    rest = step[step.find(sentence) + len(sentence) :].lstrip(".;!? ")
    return SENTENCE_ENDS.split(rest)[0]


def minutes_in(text: str) -> int:
    return sum(int(found[1]) * (60 if found[2].lower().startswith("h") else 1) for found in TIME.finditer(text))

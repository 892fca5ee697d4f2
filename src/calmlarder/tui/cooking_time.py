"""How long a dinner may take: what is offered, and what a typed number says."""

import re

from calmlarder.household.settings import NUMBERS, SHORTEST_COOKING

LEAST_MINUTES, MOST_MINUTES = SHORTEST_COOKING, NUMBERS["minutes"][2]
_USUAL = (15, 20, 30, 45, 60)  # common practice, no source
_ANY = "no hurry, as long as it takes"
_TYPED = re.compile(r"(\d{1,4})\s*(?:m|min|mins|minutes?)?\.?", re.IGNORECASE)


def minutes_offered(asked: int | None) -> dict[str, int | None]:
    """Usual times by their words; `asked` is what holds now."""
    return {_words(one, asked): one for one in (*_USUAL, None)}


def likeliest(asked: int | None, takes: int | None, *, is_none: bool) -> str:
    """The words of what is likely meant: less than the dinner that is shown takes, or any time where there is none.

    Where the shortest is asked for already nobody means it again.
    """
    spans = [span for span in (asked, takes) if span is not None]
    shortest = None if asked == _USUAL[0] else _USUAL[0]
    less = max((one for one in _USUAL if one < min(spans, default=one + 1)), default=shortest)
    return _words(None if is_none else less, asked)


def minutes_of(text: str) -> int:
    """Minutes that were typed; 0 where they are none that can be."""
    found = _TYPED.fullmatch(text.strip())
    minutes = int(found[1]) if found else 0
    return minutes if LEAST_MINUTES <= minutes <= MOST_MINUTES else 0


def _words(minutes: int | None, asked: int | None) -> str:
    words = _ANY if minutes is None else f"{minutes} minutes"
    return f"{words} (now)" if minutes == asked else words

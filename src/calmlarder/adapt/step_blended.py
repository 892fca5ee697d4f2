"""Green tops that would be blended into a red base, which they would turn brown: they are fried apart."""

import re
from collections.abc import Sequence
from itertools import pairwise

from calmlarder.adapt.sentences import SENTENCE_ENDS

_BLENDS = re.compile(r"\b(?:blend|blitz|pur[eé]e|whi[sz]z|liquidi[sz]e|processor)\b", re.IGNORECASE)
_RED = re.compile(r"\b(?:tomato(?:es)?|red peppers?)\b", re.IGNORECASE)
_GREENS = r"(?:\d+ g of the |the rest of the |the )?(?:leek greens|spring onion greens|chives)(?: \[[^\]]*\])?"
_IN_A_ROW = re.compile(rf", {_GREENS}(?=, | and )", re.IGNORECASE)
_FRIED = re.compile(rf"\b(?P<fry>fry|soften|cook|saut[eé]|sweat) (?P<greens>{_GREENS})", re.IGNORECASE)
_SO_MUCH = re.compile(r"^(?:\d+ g of|the rest of) the ", re.IGNORECASE)


def greens_out_of_a_red_base(steps: Sequence[str]) -> list[str]:
    """The changed steps without green tops in what is blended red, where a later step fries some: there all of them."""
    for place, step in enumerate(steps):
        later = next((at for at in range(place + 1, len(steps)) if _FRIED.search(steps[at])), None)
        if later is None:
            continue
        rest = "".join(map(_without_greens, _sentences(step)))
        if rest != step:
            all_of_them = _FRIED.sub(
                lambda one: f"{one['fry']} {_SO_MUCH.sub('the ', one['greens'])}", steps[later], count=1
            )
            return [{place: rest, later: all_of_them}.get(at, one) for at, one in enumerate(steps)]
    return list(steps)


def _without_greens(sentence: str) -> str:
    red = _BLENDS.search(sentence) and _RED.search(sentence)
    return _IN_A_ROW.sub("", sentence, count=1) if red else sentence


def _sentences(step: str) -> list[str]:
    ends = [0, *(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)]
    return [step[a:b] for a, b in pairwise(ends)]

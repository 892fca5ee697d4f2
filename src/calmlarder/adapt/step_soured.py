"""Milk that is soured for buttermilk stands before it is stirred in, and is the soured milk from then on."""

import re
from collections.abc import Sequence

from calmlarder.adapt.sentences import SENTENCE_ENDS

_SOURED = re.compile(
    r"\b(?:the )?"
    r"(?P<milk>(?:lactose-free )?(?:(?:whole|skimmed|semi-skimmed|almond|oat|rice|soya|soy) )?(?:milk|drink))"
    r"(?:,| and) (?:the )?(?P<sour>lemon juice|vinegar) \[stirred together and left ten minutes first\]",
    re.IGNORECASE,
)
_SO_MUCH_OF = re.compile(r"[\d./]+ ?(?:ml|cups?) of $")
_MILK_AND_SOUR = re.compile(
    r"\b(?P<milk>(?:lactose-free|soya|almond) (?:whole )?(?:milk|drink)) and (?:the )?(?:lemon juice|[a-z ]*vinegar)\b"
)
# `into 350 ml of the milk and leave it ten minutes. Stir it into the soured milk`, of which some is kept back.
_SHARE_SOURED = re.compile(
    r"(?P<into>\b(?:lemon juice|vinegar) into )(?P<much>[\d./]+ ?(?:ml|cups?) of )"
    r"(?P<behind>the [^.;]+ leave it ten minutes\.[^.;]*?)(?=the soured milk)"
)
_REST_OF_IT = re.compile(r"(?P<rest>\b(?:remaining|rest of the|last of the|reserved) )buttermilk\b", re.IGNORECASE)


def soured_from_then_on(steps: Sequence[str]) -> list[str]:
    """The changed steps that call `the lactose-free milk and lemon juice` the soured milk once it is that."""
    told: list[str] = []
    is_soured = False
    for place, step in enumerate(steps):
        all_of_it = any(map(_REST_OF_IT.search, steps[place:]))  # a share of the soured milk, of which the rest follows
        step = _SHARE_SOURED.sub(_shared, step) if all_of_it else step
        step = _REST_OF_IT.sub(r"\g<rest>soured milk", step) if is_soured or "the soured milk" in step else step
        told.append(_MILK_AND_SOUR.sub("soured milk", step) if is_soured else step)
        is_soured = is_soured or "the soured milk" in step
    return told


def _shared(found: re.Match[str]) -> str:
    return f"{found['into']}{found['behind']}{found['much']}"


def soured(step: str) -> str:
    """`Stir the lemon juice into the milk and leave it ten minutes.` before the sentence that takes both."""
    found = _SOURED.search(step)
    if found is None:
        return step
    before, rest = step[: found.start()], step[found.end() :]
    much = _SO_MUCH_OF.search(before)  # `190 ml of the lactose-free milk`, of which more goes in as it is
    before = before[: much.start()] if much else before
    milk = f"{much[0] if much else ''}the {found['milk'].strip()}"
    first = f"Stir the {found['sour']} into {milk} and leave it ten minutes. "
    ends = [one.end() for one in SENTENCE_ENDS.finditer(before)]
    number = re.match(r"\s*\d{1,2}[.)] ", step)
    at = ends[-1] + 1 if ends else number.end() if number else 0
    return f"{before[:at]}{first}{before[at:]}the soured milk{rest}"

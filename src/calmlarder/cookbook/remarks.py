"""Remarks of an ingredient line that would mislead its reader: the verb `can`, how it is cooked later, whole cloves."""

import re
from typing import NamedTuple

from calmlarder.cookbook.states import FROM_THE_PACKET

# `can` before or behind these is a verb, not a tin.
_VERB = re.compile(
    r"\b(?:you|we|i|they|it|that|which|(?<=\w )one)(?:'ll)? can\b"
    r"|\bcan (?:also |either |always |easily |just |even |not |only )*"
    r"(?:be|use|buy|get|find|make|add|take|leave|omit|skip|sub|substitute|swap|replace|have|go|do|eat|stand)\b"
    r"|\bcan(?:'t|not)\b"
)
_COOKED_LATER = re.compile(
    r"(?:\s*,\s*|\s*\(\s*|\s-\s*|\s+)cooked (?:(?:and |then )?drained )?(?:(?:as|according|following|per|to)\b[^,()]*"
    r"\b(?:pack(?:et|age|aging)?|box|bag|label|instructions?|directions?)\b[^,()]*|al dente)(?:\s*\))?"
    r"|(?:\s*,\s*|\s*\(\s*)cooked(?: and drained)?(?:\s*\)|\s*$|(?=\s*,))"
)
_CRUSHED_CLOVES = re.compile(
    r"(?!.*\bgarlic\b).*\bcloves?\b[^a-z]*(?:finely |roughly |thinly )?"
    r"(?:crushed|minced|chopped|peeled|sliced|smashed|pressed|grated|diced|bruised)\b"
)


class Dry(NamedTuple):
    """A line without its word on how the food is cooked later; `sure` where it says by which instructions."""

    line: str
    sure: bool


def without_verbs(line: str) -> str:
    """A plain line in which every `can` that is left is a tin, and cloves that are of garlic count as such."""
    line = _VERB.sub(" ", line)
    return re.sub(r"\bwhole (?=cloves?\b)", "", line) if re.search(r"\bgarlic\b", line) else line


def cooked_later(line: str) -> Dry | None:
    """The line as it was weighed (`8 oz spaghetti, cooked`), or None where it says no such thing."""
    found = _COOKED_LATER.search(line)
    if found is None or "leftover" in line:
        return None
    return Dry(f"{line[: found.start()]} {line[found.end() :]}", "cooked " in found[0] and len(found[0].split()) > 2)


def taken_dry(kind: str, state: str, sure: bool) -> bool:
    """Whether a food that is cooked later is meant as it comes from the packet."""
    return state in {"dry", "raw"} and (sure or kind in FROM_THE_PACKET)


def crushed_cloves(line: str) -> bool:
    """Cloves that are crushed or peeled, with no garlic named: hardly the spice."""
    return bool(_CRUSHED_CLOVES.match(line))

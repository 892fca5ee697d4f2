"""Asafoetida that came into a recipe goes into hot fat first, also where its step stirs it into what is cold or wet.

Raw it is harsh; a few seconds in hot fat mellow it (common practice, no source).
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.model import Adapted

_ASAFOETIDA = "asafoetida"
_NAME = re.compile(rf"\b(?:a pinch of |the )?{_ASAFOETIDA}\b(?! \[)", re.IGNORECASE)
_HOT_FAT = re.compile(
    r"\b(?:fry|fried|frying|saut\w+|sizzl\w*|sputter\w*|melt\w*|bloom\w*|sweat|soften\w*|heat|hot|warm|toast\w*|brown)\b",
    re.IGNORECASE,
)
_MIXED = re.compile(
    r"\b(?:bowl|jug|jar|blender|processor|whisk\w*|combine|mix|blend|beat|shake|add|pour|stir|tip|put)\b", re.IGNORECASE
)
# Dry spices that are mixed for a rub are heated with what they are rubbed on.
_WET = re.compile(
    r"\b(?:stock|broth|water|milk|cream|tomato(?:es)?|passata|soup|yogh?urt|mayonnaise|vinegar|juice)\b", re.IGNORECASE
)
_FIRST = " [first sizzled for a few seconds in a little hot fat]"


def bloomed(steps: Sequence[str], adapted: Adapted) -> list[str]:
    """The changed steps; where the sentence that names it first mixes it into what is wet and cold, that it sizzles."""
    told = list(steps)
    if not any(one.food == _ASAFOETIDA for change in adapted.changes for one in change.to):
        return told
    for place, step in enumerate(told):
        found = _NAME.search(step)
        if found is None:
            continue
        start = max((one.end() for one in re.finditer(r"[.;!?]\s", step[: found.start()])), default=0)
        end = re.compile(r"[.;!?](?=\s|$)").search(step, found.end())
        sentence = step[start : end.start() if end else len(step)]
        if _MIXED.search(sentence) and _WET.search(sentence) and not _HOT_FAT.search(sentence):
            told[place] = f"{step[: found.end()]}{_FIRST}{step[found.end() :]}"
        break
    return told

"""What an earlier step took some of is the rest of it, where a later one puts in all that is left.

`Add 50 g of the spring onion greens. … Fold in the spring onion greens.` folds in the rest of them.
"""

import re
from collections.abc import Sequence

_SOME_OF_IT = re.compile(r"\b\d+ g of the (?P<name>(?:leek|spring onion) greens)\b")
_PUTS_IN = re.compile(
    r"\b(?:add|stir in|stir through|fold in|fold through|scatter|sprinkle|top|garnish|finish|toss|tip in|throw in|serve"
    r"|mix in|pile)\b[^.;]*$",
    re.IGNORECASE,
)
_SHARE = re.compile(
    r"\b(?:(?:rest |some )?of the|remaining|reserved|half the|until the|once the|when the) $", re.IGNORECASE
)


def rest_of_it(steps: Sequence[str]) -> list[str]:
    """The changed steps, of which one that comes last takes the rest of what an earlier one took some of."""
    told = list(steps)
    taken = [(place, one["name"]) for place, step in enumerate(told) for one in _SOME_OF_IT.finditer(step)]
    for place, name in taken:
        if sum(other == name for _, other in taken) > 1:
            continue  # each step says how much
        bare = re.compile(rf"\b(?:the )?{re.escape(name)}\b")
        last = [
            (later, one)
            for later in range(place + 1, len(told))
            for one in bare.finditer(told[later])
            if _PUTS_IN.search(told[later][: one.start()]) and not _SHARE.search(told[later][: one.end()][: -len(name)])
        ]
        if len(last) == 1:
            later, one = last[0]
            told[later] = f"{told[later][: one.start()]}the rest of the {name}{told[later][one.end() :]}"
    return told

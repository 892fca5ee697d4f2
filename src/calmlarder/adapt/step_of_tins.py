"""A page's own time for tins, where its dry pulse comes from tins now: `30–35 minutes (10 if using tins)`."""

import re
from collections.abc import Mapping, Sequence

from calmlarder.adapt.model import Change

_FROM_TINS = r"(?:tins?|tinned|cans?|canned|jars?|jarred|ready[- ]cooked|pre[- ]?cooked)"
_MINUTES = r"\d+(?: ?(?:[-–]|to|or) ?\d+)?"
_OWN_TIME = re.compile(
    rf"\b(?:about |around )?(?:{_MINUTES} ?(?:minutes?|mins?)|(?:an?|one|{_MINUTES}) ?(?:hours?|hrs?)),? ?"
    rf"\((?:or )?(?:only |just |about |for )*(?P<minutes>{_MINUTES})(?: ?(?:minutes?|mins?))?"
    rf" (?:if|when|for)(?: (?:you(?: are|'re|’re)?|they(?: are|'re|’re)?|it is|it's|us(?:ed?|ing)|are|from|the))*"
    rf" {_FROM_TINS}\b[^()]{{0,40}}\)",
    re.IGNORECASE,
)
READY = "cooked already"  # what a change says of tins in the place of a dry pulse


def in_the_time_of_tins(steps: Sequence[str], changed: Mapping[str, Change]) -> tuple[tuple[str, ...], set[str]]:
    """The steps with the time that the page gives for tins, and the food of which it does; nothing where it gives none.

    Only where one pulse alone is from tins now, so that it is clear of which the page speaks.
    """
    ready = {food for food, change in changed.items() if change.heat.startswith(READY)}
    told = tuple(_OWN_TIME.sub(r"\g<minutes> minutes", step) for step in steps)
    return (told, ready) if len(ready) == 1 and told != tuple(steps) else (tuple(steps), set())

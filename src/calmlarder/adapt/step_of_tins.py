"""A page's own time for tins, where its dry pulse comes from tins now: `30–35 minutes (10 if using tins)`."""

import re
from collections.abc import Mapping, Sequence

from calmlarder.adapt.model import Change
from calmlarder.tables.book import Tables

_FROM_TINS = r"(?:tins?|tinned|cans?|canned|jars?|jarred|ready[- ]cooked|pre[- ]?cooked)"
_MINUTES = r"\d+(?: ?(?:[-–]|to|or) ?\d+)?"
_OWN_TIME = re.compile(
    rf"\b(?:about |around )?(?:{_MINUTES} ?(?:minutes?|mins?)|(?:an?|one|{_MINUTES}) ?(?:hours?|hrs?)),? ?"
    rf"\((?:or )?(?:only |just |about |for )*(?P<minutes>{_MINUTES})(?: ?(?:minutes?|mins?))?"
    rf" (?:if|when|for)(?: (?:you(?: are|'re|’re)?|they(?: are|'re|’re)?|it is|it's|us(?:ed?|ing)|are|from|the))*"
    rf" {_FROM_TINS}\b[^()]{{0,40}}\)",
    re.IGNORECASE,
)
_DRY = "dry"


def in_the_time_of_tins(
    steps: Sequence[str], changed: Mapping[str, Change], tables: Tables
) -> tuple[tuple[str, ...], set[str]]:
    """The steps with the time that the page gives for tins, and the food of which it does; nothing where it gives none.

    Only where one pulse alone is from tins now, so that it is clear of which the page speaks. What came beside the tins
    has its own minutes, where these are more.
    """
    rows = tables.food_by_id
    ready = {
        food for food, change in changed.items() if rows[food].kind == "pulse" and _is_from_tins(food, change, tables)
    }
    if len(ready) != 1 or not any(map(_OWN_TIME.search, steps)):
        return tuple(steps), set()
    beside = [rows[one.food] for food in ready for one in changed[food].to if rows[one.food].kind != "pulse"]
    least = max((row.minutes.get("boil", 0) for row in beside), default=0)

    def in_time(found: re.Match[str]) -> str:
        most = max(int(one) for one in re.findall(r"\d+", found["minutes"]))
        return f"{found['minutes'] if most >= least else least} minutes"

    return tuple(_OWN_TIME.sub(in_time, step) for step in steps), ready


def _is_from_tins(food: str, change: Change, tables: Tables) -> bool:
    to = [tables.food_by_id[one.food] for one in change.to if tables.food_by_id[one.food].kind == "pulse"]
    dry = tables.food_by_id[food].state == _DRY
    return dry and change.change == "swap" and bool(to) and all(one.state != _DRY for one in to)

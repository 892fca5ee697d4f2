"""What is asked of a plan: the sittings ahead, by the settings that are kept."""

from collections.abc import Collection

from calmlarder.compose.request import protein_floor
from calmlarder.plan.grammar import MOST_DAYS, sittings_of_days
from calmlarder.plan.sittings import Key, PlannedSitting, key_of
from calmlarder.tui.kitchen import Kitchen

USUAL_DAYS = 3


def fewer_or_more(days: int, by: int) -> int:
    """So many days, within what a plan can hold."""
    return max(1, min(MOST_DAYS, days + by))


def sittings_asked(kitchen: Kitchen, days: int, barred: Collection[tuple[Key, str]] = ()) -> tuple[PlannedSitting, ...]:
    """A dinner each day and packed lunches between, but for what was eaten; `barred` holds dishes not wanted there.

    What was set holds for each: people, minutes, and the protein aimed at for dinners. Whoever sits down later than
    usual tonight is sitting down now.
    """
    held, now = kitchen.settled(), kitchen.now()
    found = []
    for one in sittings_of_days(days, kitchen.today, held.people, held.minutes, None, kitchen.sittings_done()):
        key = key_of(one.at, one.sitting)
        changed: dict[str, object] = {
            "at": max(one.at, now) if one.day == now.date() else one.at,
            "not_patterns": tuple(pattern for where, pattern in barred if where == key),
        }
        if one.sitting == "dinner":
            changed["protein_g"] = float(held.protein_g)
            changed["protein_floor_g"] = protein_floor("dinner", float(held.protein_g))
        found.append(one.model_copy(update=changed))
    return tuple(found)

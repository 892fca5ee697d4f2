"""What is left of a dinner, put into boxes: what they hold, how many days they keep, and what must not be boxed."""

from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.larder.box import Box, leftover_days, with_boxes
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.leftovers import LEFTOVER_DAYS
from calmlarder.tables.mixture import Mixture, MixturePart
from calmlarder.tables.vocabulary import COOKED_STATES

_POOR_KEEPER_DAYS = 1  # of a dish whose pattern says that it does not keep: common practice, no source


class Boxed(NamedTuple):
    """What is left in boxes, or why it must not be kept."""

    lot: Lot | None
    why: str


class InBoxes(NamedTuple):
    """How many boxes, and the day on which they were filled."""

    boxes: int
    made: date


def box_up(dinner: Dinner, weighed: Mapping[str, int], into: InBoxes, pattern: Pattern, tables: Tables) -> Boxed:
    """So many shares of a dinner as one lot of its own composition, in the fridge since that day.

    `weighed` gives grams of the whole dish by lot id. The lot has no id before it is kept.

    What was warmed from a box is never boxed again, nor what could be neither warmed nor eaten cold later.
    """
    never = why_not_boxed(dinner, pattern, tables)
    if never:
        return Boxed(None, never)
    heated, cold = _was_warmed(dinner, pattern, tables), _is_eaten_cold(dinner, pattern)
    days, why = _keeps(dinner, pattern, tables)
    parts = tuple(
        MixturePart(food=use.food, grams=grams, most_hundredths=100 * grams + off, weighed=use.how == "weigh")
        for use in dinner.uses
        if (grams := weighed.get(use.lot, use.grams)) > 0
        and (off := dinner.tolerance.off_hundredths(grams, use.how == "weigh")) >= 0
    )
    mixture = Mixture(shares=dinner.people, share_grams=sum(p.grams for p in parts) // dinner.people, parts=parts)
    box = Box(
        title=dinner.title, mixture=mixture, keeps_days=days, keeps_why=why, freezes=pattern.freezes, heated=heated,
        cold=cold,
    )  # fmt: skip
    return Boxed(_lot(box, into.boxes, into.made, tables), why)


def why_not_boxed(dinner: Dinner, pattern: Pattern, tables: Tables) -> str:
    """Why nothing of a dinner may be kept in a box; empty where it may."""
    if any(use.how == "box" for use in dinner.uses):
        return "it was warmed from a box already: eat it now, and bin what is left"
    if _was_warmed(dinner, pattern, tables) and not _is_eaten_cold(dinner, pattern):
        return "something in it was warmed already, and it is no dish to eat cold: bin what is left"
    days, why = _keeps(dinner, pattern, tables)
    return "" if days else f"{why} is on its last day: eat it now, and bin what is left"


def _was_warmed(dinner: Dinner, pattern: Pattern, tables: Tables) -> bool:
    return any(
        tables.food_by_id[use.food].state in COOKED_STATES and pattern.slots[use.slot].method != "raw"
        for use in dinner.uses
    )


def _is_eaten_cold(dinner: Dinner, pattern: Pattern) -> bool:
    return not any(pattern.slots[use.slot].role == "liquid" for use in dinner.uses)


def _keeps(dinner: Dinner, pattern: Pattern, tables: Tables) -> tuple[int, str]:
    """Days in the fridge and what sets them: the shortest of its parts, of the pattern, and of leftovers at all."""
    limits = [(LEFTOVER_DAYS, "leftovers within two days")]
    limits.append((pattern.keeps_days or _POOR_KEEPER_DAYS, "this dish is best soon"))
    limits += [_part_keeps(use, tables) for use in dinner.uses]
    return min(limits, key=lambda limit: limit[0])


def _part_keeps(use: PlateUse, tables: Tables) -> tuple[int, str]:
    food = tables.food_by_id[use.food]
    days = leftover_days(food, tables)
    if food.state in COOKED_STATES and use.days_left is not None:
        days = max(0, min(days, use.days_left))
    return days, f"{food.name} in it"


def _lot(box: Box, boxes: int, made: date, tables: Tables) -> Lot:
    name = with_boxes(tables, [box]).food_by_id[box.food_id].name
    grams = float(box.mixture.share_grams * boxes)
    why = f"made {made.isoformat()}; keeps {box.keeps_days} days"
    return Lot(
        id="", line=f"{name}, made {made.isoformat()}", food=box.food_id, grams_low=grams, grams=grams,
        grams_high=grams, place="fridge", opened=False, dates=(LotDate(kind="made", on=made),),
        days_left=box.keeps_days,
        days_from=why, safety_days_left=box.keeps_days, safety_from=why, condition=None, to_bin=False, owner=None,
        owner_agrees=False, box=box,
    )  # fmt: skip

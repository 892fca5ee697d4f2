"""Which candidates hold, and in which order to offer them."""

from collections.abc import Sequence
from decimal import Decimal

from calmlarder.intake.eaters import allergens_met, suits_diet
from calmlarder.intake.groups import food_figures
from calmlarder.intake.load import Held, Serving, held_by, loads_by_group
from calmlarder.swaps.computed import computed
from calmlarder.swaps.dish import Dish, families_of, stands
from calmlarder.swaps.listed import listed
from calmlarder.swaps.model import Answer, Asked, Candidate, Substitute
from calmlarder.swaps.why import passed_by, why
from calmlarder.swaps.work import KITCHENS, work
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Group

# Points for leaving every cap untouched and for doing all the work, beside those for being a good swap: ours.
_ROOM_POINTS, _WORK_POINTS = 16, 12
# A part that brings, gram for gram, more than this share of what the original brings too much of is the same
# trouble under another name, however little of it is taken: ours, no source.
_SAME_TROUBLE = Decimal("0.75")
_SUMS = frozenset({"polyols", "total"})  # of other groups: they name no trouble of their own


def substitutes(asked: Asked, tables: Tables, dish: Dish | None = None, beside: Sequence[Serving] = ()) -> Answer:
    """What can stand in for the food: what is at home first, then by score. Only what holds is offered.

    The tables' rows come before all; where none of them holds, what is nearest in the tables is looked at. With a
    `dish` only what can stand where the food stood there; what lies `beside` it on the plate counts under the caps.
    """
    trouble = _trouble(asked, tables)
    holding = _holding(listed(asked.food, asked.grams, tables), asked, trouble, tables, dish, beside)
    if not holding:
        holding = _holding(computed(asked.food, asked.grams, tables), asked, trouble, tables, dish, beside)
    holding.sort(key=lambda one: (not one.in_larder, -one.score))
    return Answer(asked=asked, why=why(asked, tables), substitutes=tuple(holding))


def fitting(asked: Asked, whole: Decimal, tables: Tables) -> list[Candidate]:
    """What might stand in for `whole` grams of the food in a dish, whatever else is in it: caps are not looked at.

    The tables' rows, and only where none of them may be eaten, what is nearest in the tables.
    """
    trouble = _trouble(asked, tables)
    for candidates in (listed, computed):
        fit = [
            one
            for one in candidates(asked.food, whole, tables)
            if all(_may_be_eaten(part, asked, trouble, tables) for part in one.parts)
        ]
        if fit:
            return fit
    return []


def _trouble(asked: Asked, tables: Tables) -> tuple[Group, ...]:
    """The groups that the amount asked for brings too much of by itself."""
    return tuple(dict.fromkeys(held.cap.group for held in passed_by(asked, tables) if held.cap.group not in _SUMS))


def _holding(
    candidates: Sequence[Candidate],
    asked: Asked,
    trouble: Sequence[Group],
    tables: Tables,
    dish: Dish | None,
    beside: Sequence[Serving],
) -> list[Substitute]:
    fit = [one for one in candidates if all(_may_be_eaten(part, asked, trouble, tables) for part in one.parts)]
    if dish is not None:
        fit = [one for one in fit if stands(one, dish)]
    before = {cap.cap: cap.load for cap in held_by(beside, asked.profile, tables, asked.sure)}
    weighed = [(one, held_by((*one.parts, *beside), asked.profile, tables, asked.sure)) for one in fit]
    # A cap that the rest of the plate passes already is no reason against what adds nothing to it.
    found = [
        _substitute(one, held, asked, tables, dish)
        for one, held in weighed
        if all(cap.room >= 0 or cap.load <= before.get(cap.cap, Decimal(0)) for cap in held)
    ]
    return [one for one in found if one.in_larder or not asked.only_at_home]


def _may_be_eaten(part: Serving, asked: Asked, trouble: Sequence[Group], tables: Tables) -> bool:
    """Known figures, within diet and allergens, and not the original's trouble again."""
    food = part.food
    if tables.unknown_of(food.id) or not suits_diet(food, asked.diet) or allergens_met(food, asked.avoid):
        return False
    if not trouble:
        return True
    own = food_figures(tables.fermentables_of(food.id)).worst
    original = food_figures(tables.fermentables_of(asked.food.id)).worst
    return all(own[group] <= _SAME_TROUBLE * original[group] for group in trouble)


def _substitute(
    candidate: Candidate, held: Sequence[Held], asked: Asked, tables: Tables, dish: Dish | None
) -> Substitute:
    kitchens = families_of(asked.food, dish) if dish else KITCHENS
    done = work(asked.food, [part.food for part in candidate.parts], kitchens)
    fullest = max((one.load / one.cap.grams for one in held), default=Decimal(0))
    return Substitute(
        candidate=candidate,
        score=round(candidate.points + _WORK_POINTS * done + _ROOM_POINTS * max(0.0, 1 - float(fullest))),
        load_g=loads_by_group(candidate.parts, asked.profile, tables, asked.sure),
        headroom_g=_headroom(held),
        in_larder=all(asked.at_home.get(part.food.id, 0.0) >= float(part.grams) for part in candidate.parts),
    )


def _headroom(held: Sequence[Held]) -> dict[Group, Decimal]:
    """Grams left of each group, by the nearest cap; one that nothing counts to gives way to one that is used."""
    loaded = {one.cap.group for one in held if one.load > 0}
    room: dict[Group, Decimal] = {}
    for one in held:
        group = one.cap.group
        if one.load > 0 or group not in loaded:
            room[group] = min(one.room, room.get(group, one.room))
    return room

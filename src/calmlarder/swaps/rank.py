"""Which candidates hold, and in which order to offer them."""

from collections.abc import Sequence
from decimal import Decimal

from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.groups import food_figures
from calmlarder.intake.plate import Row, Serving, exact_grams
from calmlarder.swaps.candidates import computed, listed
from calmlarder.swaps.dish import Dish, families_of, stands
from calmlarder.swaps.model import Answer, Asked, Candidate, Substitute
from calmlarder.swaps.plate import likely_by_group, rows_for
from calmlarder.swaps.why import passed_by, why
from calmlarder.swaps.work import KITCHENS, work
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Group

# Points for leaving every limit untouched and for doing all the work, beside those for being a good swap: ours.
_ROOM_POINTS, _WORK_POINTS = 16, 12
# A part that brings, gram for gram, more than this share of what the original brings too much of is the same
# trouble under another name, however little of it is taken: ours, no source.
_SAME_TROUBLE = Decimal("0.75")
# Kinds of which in a dish one does for another without a cook's word. Of roots, squashes, breads and grains what is
# near by its figures was wrong each time on two hundred pages (swede for beetroot, injera for cornbread). Ours.
_ALIKE = frozenset({
    "pasta", "rice", "noodle", "leaf", "salad-leaf", "milk", "plant-drink", "oil", "fish", "shellfish", "poultry",
    "meat", "egg", "tofu",
})  # fmt: skip
_SUMS = frozenset({"polyols", "total"})  # of other groups: they name no trouble of their own


def substitutes(asked: Asked, tables: Tables, dish: Dish | None = None, beside: Sequence[Serving] = ()) -> Answer:
    """What can stand in for the food: what is at home first, unless it is so in fewer kitchens only, then by score.
    Only what holds is offered.

    The tables' rows come before all; where none of them holds, what is nearest in the tables is looked at. With a
    `dish` only what can stand where the food stood there; what lies `beside` it on the plate counts under the limits.
    """
    holding = _holding(listed(asked.food, asked.grams, tables), asked, tables, dish, beside)
    if not holding:
        holding = _holding(computed(asked.food, asked.grams, tables), asked, tables, dish, beside)
    holding.sort(key=lambda one: (not one.in_larder or _is_narrower(one, asked, dish), -one.score))
    return Answer(asked=asked, why=why(asked, tables), substitutes=tuple(holding))


def _is_narrower(one: Substitute, asked: Asked, dish: Dish | None) -> bool:
    """Whether it is no stand-in in every kitchen where the food is cooked: ginger for garlic is none in a pasta sauce.

    A dish has looked at that already.
    """
    kitchens = [family for family in KITCHENS if asked.food.fit(family)] if dish is None else []
    return any(not part.food.fit(family) for family in kitchens for part in one.candidate.parts)


def fitting(asked: Asked, whole: Decimal, tables: Tables) -> list[Candidate]:
    """What might stand in for `whole` grams of the food in a dish, whatever else is in it: limits are not looked at.

    The tables' rows, and only where none of them may be eaten, what is nearest in the tables: of what one eats alike,
    sort for sort (`_ALIKE`). Else less of it is the saner change, or none.
    """
    trouble = _trouble(asked, tables)
    for candidates in (listed, computed) if asked.food.kind in _ALIKE else (listed,):
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
    return tuple(dict.fromkeys(row.cap.group for row in passed_by(asked, tables) if row.cap.group not in _SUMS))


def _holding(
    candidates: Sequence[Candidate],
    asked: Asked,
    tables: Tables,
    dish: Dish | None,
    beside: Sequence[Serving],
) -> list[Substitute]:
    trouble = _trouble(asked, tables)
    fit = [one for one in candidates if all(_may_be_eaten(part, asked, trouble, tables) for part in one.parts)]
    if dish is not None:
        fit = [one for one in fit if stands(one, dish)]
    before = {(row.cap, row.food): row.sum for row in rows_for(beside, asked.limits, tables, asked.sure)}
    counted = [(one, rows_for((*one.parts, *beside), asked.limits, tables, asked.sure)) for one in fit]
    # A limit that the rest of the plate passes already is no reason against what adds nothing to it.
    found = [
        _substitute(one, rows, asked, tables, dish)
        for one, rows in counted
        if all(row.holds() or row.sum == before.get((row.cap, row.food)) for row in rows)
    ]
    return [one for one in found if one.in_larder or not asked.only_at_home]


def _may_be_eaten(part: Serving, asked: Asked, trouble: Sequence[Group], tables: Tables) -> bool:
    """Known figures, within diet and allergens, and not the original's trouble again."""
    food = part.food
    if food.id in asked.never or tables.unknown_of(food.id):
        return False
    if not suits_diet(food, asked.diet) or allergens_met(food, asked.avoid):
        return False
    if not trouble:
        return True
    own = food_figures(tables.fermentables_of(food.id))
    original = food_figures(tables.fermentables_of(asked.food.id))
    return all(own.at_most(group) <= _SAME_TROUBLE * original.at_most(group) for group in trouble)


def _substitute(
    candidate: Candidate, rows: Sequence[Row], asked: Asked, tables: Tables, dish: Dish | None
) -> Substitute:
    kitchens = families_of(asked.food, dish) if dish else KITCHENS
    done = work(asked.food, [part.food for part in candidate.parts], kitchens)
    fullest = max((exact_grams(row.sum.likely) / row.cap.typical_g for row in rows), default=Decimal(0))
    return Substitute(
        candidate=candidate,
        score=round(candidate.points + _WORK_POINTS * done + _ROOM_POINTS * max(0.0, 1 - float(fullest))),
        load_g=likely_by_group(candidate.parts, tables, asked.sure),
        headroom_g=_headroom(rows),
        in_larder=all(asked.at_home.get(part.food.id, 0.0) >= float(part.grams) for part in candidate.parts),
    )


def _headroom(rows: Sequence[Row]) -> dict[Group, Decimal]:
    """Grams left of each group, likely or at most, by the nearest limit.

    A limit that nothing counts to gives way to one that is used.
    """
    loaded = {row.cap.group for row in rows if row.sum.likely}
    room: dict[Group, Decimal] = {}
    for row in rows:
        group = row.cap.group
        if row.sum.likely or group not in loaded:
            left = row.cap.typical_g - exact_grams(row.sum.likely)
            if row.cap.at_most_g is not None:
                left = min(left, row.cap.at_most_g - exact_grams(row.sum.at_most))
            room[group] = min(left, room.get(group, left))
    return room

"""How much of what took a food's place a step means: `3 of the 4 cloves`, `half of the onion`, `the last clove`."""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from calmlarder.adapt.changed_lines import Part, stays_apart
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.step_notes import amount_of, bare
from calmlarder.adapt.written import written
from calmlarder.and_list import and_list
from calmlarder.tables.book import Tables

_NAME = r"(?:[\w-]+ ){0,2}[\w-]+$"
_COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_PARTS = {
    "half": Fraction(1, 2), "a third": Fraction(1, 3), "one third": Fraction(1, 3), "two thirds": Fraction(2, 3),
    "a quarter": Fraction(1, 4), "three quarters": Fraction(3, 4),
}  # fmt: skip
_TINS = r"(?:tins?|cans?|jars?|packets?)"
_SO_MANY = re.compile(
    rf"\b(\d{{1,2}}|{'|'.join(_COUNTS)}) (?:of (?:the|your)|(?:of the )?{_TINS} of(?: the)?) {_NAME}", re.IGNORECASE
)
_HAD_TINS = re.compile(
    rf"\D{{0,8}}(\d{{1,2}}) (?:x )?(?:\([^)]*\) |\d+ ?-?(?:g|oz|ounce|ml) )?{_TINS}\b", re.IGNORECASE
)
_SUCH_A_PART = re.compile(rf"\b({'|'.join(_PARTS)})(?: of)? (?:the|your) {_NAME}", re.IGNORECASE)
_PART_OF_IT = re.compile(rf"\b({'|'.join(_PARTS)}) (?:of )?$", re.IGNORECASE)
_THE_REST = re.compile(
    rf"\b(?:the (?:last|rest|remaining|other|second)|remaining)\b(?: of the)? {_NAME}", re.IGNORECASE
)
_HAD = re.compile(r"\D{0,8}(\d{1,2})(?= [a-z])")
_WEIGHED = re.compile(r"\D{0,8}\d{1,2} (?:kg|g|ml|l|oz|lbs?|cups?|tbsp|tsp|tablespoons?|teaspoons?)\b", re.IGNORECASE)

# `2 onions, 1 quartered and 1 sliced`, of which a step takes the `quartered onion`.
_SO_MANY_CUT = re.compile(
    r"\b(\d{1,2}|one|two|three|four|five|six) (?:(?:finely|roughly|thinly|coarsely) )?"
    r"(quartered|halved|sliced|chopped|diced|grated|minced|crushed|whole)\b",
    re.IGNORECASE,
)
_AS_CUT = re.compile(
    r"\b(quartered|halved|sliced|chopped|diced|grated|minced|crushed|whole) (?:[\w-]+ )?[\w-]+$", re.IGNORECASE
)
_NOTICED = Decimal("0.25")  # of what a line had; less beside it needs no telling apart: ours


def shared_out(before: str, change: Change, tables: Tables, more_of_it: bool = False, alone: bool = False) -> list[str]:
    """What of each stand-in a step takes that takes a part of the food; nothing where it takes no such part.

    `before` is the step up to the food's name and with it; of `more_of_it` the list has more than the stand-in, so
    that a half stays a half; so it does where it stands `alone` in the list, for no other food.
    """
    lines = [line for one, line in zip(change.to, change.lines, strict=False) if amount_of(line)]
    if change.change != "swap" or len(lines) < len(change.to) or not lines:
        return []
    if _THE_REST.search(before):
        return [f"the rest of the {bare(line)}" for line in lines]
    share = _share(before, change.ingredient)
    if share is None:
        return []
    said = _SUCH_A_PART.search(before)
    if more_of_it and said is not None:
        return [f"{said[1].lower()} of the {bare(line)}" for line in lines]
    if said is not None and alone:
        return [f"{said[1].lower()} of the {and_list([bare(line) for line in lines])}"]
    part = Decimal(share.numerator) / Decimal(share.denominator)
    told = [written(tables.food_by_id[one.food], one.grams * part, tables).line for one in change.to]
    return [f"{amount_of(one)} of the {bare(line)}" for one, line in zip(told, lines, strict=True)]


def _share(before: str, ingredient: str) -> Fraction | None:
    part = _SUCH_A_PART.search(before)
    if part is not None:
        return _PARTS[part[1].lower()]
    cut = _AS_CUT.search(before)
    each = {how.lower(): int(_COUNTS.get(many.lower(), many)) for many, how in _SO_MANY_CUT.findall(ingredient)}
    if cut is not None and len(each) > 1 and cut[1].lower() in each:
        return Fraction(each[cut[1].lower()], sum(each.values()))
    tins = _HAD_TINS.match(ingredient)
    many, had = _SO_MANY.search(before), tins or _HAD.match(ingredient)
    if many is None or had is None or (_WEIGHED.match(ingredient) and not tins):
        return None
    of_it = _PART_OF_IT.search(before[: many.start()])  # `half of one tin of the beans`
    less = _PARTS[of_it[1].lower()] if of_it is not None else 1
    count, whole = _COUNTS.get(many[1].lower()) or int(many[1]), int(had[1])
    return less * Fraction(count, whole) if 0 < less * count < whole else None


def in_one_line(parts: Sequence[Part], adapted: Adapted, tables: Tables) -> set[str]:
    """Foods whose line holds what takes the place of others too: a step does not take all of it."""
    changed = {change.place for change in adapted.changes}
    kept = {
        part.read.food
        for place, part in enumerate(parts)
        if place not in changed
        and place in adapted.amounts
        and not stays_apart(part, tables.food_by_id[adapted.amounts[place].food])
    }
    to = {one.food for change in adapted.changes if change.change == "swap" for one in change.to}
    return twice(adapted) | {food for food in to if food in kept}


def own_amounts(adapted: Adapted, shared: set[str], tables: Tables) -> dict[str, str]:
    """How much a line had of a food that stays, where another's stand-in was put to it."""
    changed = {change.place for change in adapted.changes}
    more: dict[str, Decimal] = {}
    for one in (one for change in adapted.changes for one in change.to):
        more[one.food] = more.get(one.food, Decimal(0)) + one.grams
    return {
        amount.food: amount_of(written(tables.food_by_id[amount.food], amount.grams, tables).line)
        for place, amount in adapted.amounts.items()
        if place not in changed and amount.food in shared and more[amount.food] >= _NOTICED * amount.grams
    }


def twice(adapted: Adapted) -> set[str]:
    """Foods that take the place of more than one line."""
    to = [one.food for change in adapted.changes for one in change.to]
    return {food for food in to if to.count(food) > 1}


_SO_MUCH_OF = re.compile(
    r"(?P<lead>, and | and |, )?\b[\d/ ]+ (?:tsp|tbsp|g|pinch) of the (?P<name>[a-z]+(?: [a-z]+){0,2})"
    r"(?=,| and |[.;]|$)",
    re.IGNORECASE,
)


def all_in_one_step(step: str) -> str:
    """A step without how much of a thing is a stand-in's and how much its own, where both go in together.

    `2 tsp of the ground cumin, cumin [1 tbsp of it]` is all the cumin.
    """
    looked_at: set[str] = set()
    while True:
        found = next((one for one in reversed([*_SO_MUCH_OF.finditer(step)]) if one[0] not in looked_at), None)
        if found is None:
            return step
        looked_at.add(found[0])
        word = re.escape(found["name"].split()[-1])
        own = re.search(rf"\b({word}) \[[\d/ ]+ (?:tsp|tbsp|g|pinch) of it\]", step, re.IGNORECASE)
        heads = step.startswith(", ", found.end()) and not found["lead"]  # `5 tsp of the paprika, cumin and paprika`
        if own is not None and (found["lead"] or heads) and not own.start() < found.end() < own.end():
            whole = (found.start(), found.end() + 2) if heads else found.span()
            first, second = sorted(((whole, " the " if heads else ""), (own.span(), own[1])))
            (a, b), in_first = first
            (c, d), in_second = second
            step = f"{step[:a]}{in_first}{step[b:c]}{in_second}{step[d:]}"


_SPOONFUL = re.compile(
    r"\b(?P<little>(?:an?|one|1) (?:(?:heaped|level|small|large) )?"
    r"(?:(?:table)?spoonful|tablespoon|tbsp|handful|dusting) of (?:the )?[a-z -]+?)"
    r" and [\d/ ]+ (?:tsp|tbsp|g) of the (?P<other>[a-z]+(?: [a-z]+){0,2}?)"
    r"(?= if\b| at\b|[,.;]|$)",
    re.IGNORECASE,
)


def spoonfuls_alone(steps: Sequence[str]) -> list[str]:
    """The changed steps; a spoonful of flour takes nothing of the raising agent with it that goes in with the rest.

    As in `a spoonful of the flour and 2 tsp of the baking powder` before `fold in baking powder [1 tsp of it]`.
    """
    told = list(steps)
    for place, step in enumerate(told):
        found = _SPOONFUL.search(step)
        own = re.compile(rf"\b({re.escape(found['other'])}) \[[\d/ ]+ (?:tsp|tbsp|g) of it\]") if found else None
        later = next((n for n in range(place + 1, len(told)) if own and own.search(told[n])), None)
        if found and own and later is not None:
            told[place] = f"{step[: found.end('little')]}{step[found.end() :]}"
            told[later] = own.sub(r"\1", told[later], count=1)
    return told

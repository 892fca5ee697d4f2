"""What may be done with each line of a recipe, each with its price: keep, swap, less, or leave out."""

from collections.abc import Iterator, Sequence

from calmlarder.adapt import prices
from calmlarder.adapt.alliums import goes_out, holds_allium, is_allium
from calmlarder.adapt.body import bulbs_made_of, is_the_soup
from calmlarder.adapt.choice import Choice, Open
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.dish import (
    STRANDS,
    Dish,
    is_eastern,
    is_made_anew,
)
from calmlarder.adapt.lessened import HALF, halved, left_out, lessened, smaller_ones
from calmlarder.adapt.loads import LineLoad, share_filled
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.near import is_near
from calmlarder.adapt.stand_ins import swaps_of
from calmlarder.adapt.told import NOTHING_TOLD, Told
from calmlarder.swaps.candidates import same_thing
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_TITLED = prices.POINT * prices.TITLED
_CALLED_ALIKE = frozenset({"pasta", "noodle", "rice", "bread", "milk", "pepper", "mushroom", "squash", "allium"})
_STAYS = frozenset({None, "less", "weigh"})
IN_LEAVES = frozenset({"brassica", "leaf"})
_WHOLE = frozenset({"bread", "wrap"})
_LACTOSE_FREE = "lactose-free "
_GARLIC = "garlic"  # whose oil stays in the pan when the clove goes
_SEASONS_G = 10  # a usual portion below it seasons a dish, whatever the title says of it: dried mushrooms
_SEASONED_G = 30  # g a serving, a big spoonful or two: ours
_BINDS = frozenset({"flour", "starch", "egg"})
_BODY = frozenset({"tomato-canned", "passata"})


def open_lines(
    lines: Sequence[Counted], serves: int, eaters: Eaters, tables: Tables, told: Told = NOTHING_TOLD
) -> tuple[Open, ...]:
    """The choices of every line. One that brings nothing and breaks nothing is only ever kept."""
    kinds = frozenset(line.food.kind for line in lines if not line.breaks)
    stay = frozenset(line.food.id for line in lines if not line.breaks and not tables.swaps_of(line.food.id))
    beside: dict[str, frozenset[str]] = {}
    for line in lines:
        beside[line.read.text] = beside.get(line.read.text, frozenset()) | {line.food.id}
    eastern = is_eastern(line.food for line in lines)
    bulbs = bulbs_made_of(lines, serves, told)
    dish = Dish(serves, eaters, tables, told, kinds, {}, stay, beside, eastern, bulbs)
    return tuple(_open(line, dish) for line in lines)


def weight_of(line: Counted, serves: int) -> int:
    """How much of the dish a line is: its role's weight, by how much of a usual portion there is of it."""
    share = float(line.amount.grams / serves / line.food.portion_g) if line.amount else prices.LEAST_SHARE
    share = min(prices.MOST_SHARE, max(prices.LEAST_SHARE, share))
    return round(prices.POINT * prices.WEIGHT[line.food.roles[0]] * share)


def _open(line: Counted, dish: Dish) -> Open:
    weight = weight_of(line, dish.serves)
    choices: list[Choice] = []
    if not line.breaks:
        own = (LineLoad(line.food, line.amount, line.profile),) if line.amount and line.profile else ()
        choices.append(Choice(None, own, (line.read.text,), 0, 0))
    unknown = line.profile is None and line.amount is not None
    if line.brings or line.breaks or unknown:
        titled = dish.told.is_titled(line.food.id)
        is_body = line.food.id in _BODY and _body_floor(line, dish) < 1
        of_bulbs = line.food.id in dish.bulbs
        is_body |= of_bulbs
        for choice in () if of_bulbs else swaps_of(line, weight, dish):
            unlike = _unlike_title(choice, line, dish) if titled else 0
            if unlike and is_the_soup(line, dish.serves, dish.told):
                continue
            choices.append(choice._replace(price=choice.price + round(_TITLED * unlike)))
        in_leaves = line.food.kind in IN_LEAVES  # of a cabbage the leaves are filled, and fewer make as many rolls
        whole = (line.food.id in dish.told.stuffed and not in_leaves) or holds_allium(line.food, dish.tables)
        if not line.breaks and line.food.id in dish.told.stuffed and not in_leaves:
            choices += smaller_ones(line, weight, dish)
            choices += halved(line, weight, dish)
        if not line.breaks and not unknown and not whole:
            titled_floor = prices.TITLED_FLOOR if titled and line.food.portion_g >= _SEASONS_G else 0
            floor = max(prices.FLOOR[line.food.roles[0]], titled_floor)
            floor = max(floor, _body_floor(line, dish)) if line.food.id in _BODY else floor
            floor = prices.BOUND_FLOOR if line.food.kind in _BINDS else floor
            if (dish.told.bears_less or titled) and line.food.roles[0] == "protein":
                floor = min(floor, prices.LEAST_OF_A_MAIN)  # less of it is still the dish
            choices += _in_pieces(line, lessened(line, weight, floor, dish))
        may_go = may_go_unknown(line, dish.serves) if unknown else True
        if (not (titled or is_body) or line.read.optional or line.breaks) and may_go:
            choices.append(left_out(line, weight))
    choices = _without_lactose(choices)
    return Open(line, weight, tuple(_swapped_first(line, _out_last(line, choices, dish), dish)))


def _without_lactose(choices: list[Choice]) -> list[Choice]:
    """Nobody takes less milk or cream who can have as much of it without its lactose."""
    plain = [one.candidate.parts for one in choices if one.kind == "swap" and one.candidate is not None]
    if not any(len(parts) == 1 and parts[0].food.name.startswith(_LACTOSE_FREE) for parts in plain):
        return choices
    return [one for one in choices if one.kind not in {"less", "weigh"}]


def _body_floor(line: Counted, dish: Dish) -> float:
    """The least share of the tomatoes that are the sauce; 1 where nobody says how much."""
    if line.amount is None:
        return 1
    return min(prices.BODY_FLOOR, prices.BODY_SERVING_G * dish.serves / float(line.amount.grams))


_BODY_OF_A_SAUCE = frozenset({"cream", "milk", "plant-drink", "stock"})
_A_SAUCE_G = 40  # a serving, of which a sauce is made: common practice, no source


def may_go_unknown(line: Counted, serves: int) -> bool:
    """Whether a food of which no figure is known but seasons the dish, so that it may go."""
    seasons = line.food.roles[0] not in {"base", "protein", "vegetable"}
    return line.profile is None and line.amount is not None and seasons and line.amount.grams <= _SEASONED_G * serves


def _out_last(line: Counted, choices: list[Choice], dish: Dish) -> list[Choice]:
    """Nothing is left out where something can do its work, or where it fills but little of a limit."""
    seasons = is_allium(line.food) and not line.read.also  # the garlic of a dip is what the dip tastes of
    free = [
        c.price
        for c in choices
        if c.candidate and (seasons or any("-free" in part.food.name for part in c.candidate.parts))
    ]
    if line.read.optional and free:  # lactose-free yoghurt is the yoghurt
        least = min(free) + prices.POINT
        return [c._replace(price=max(c.price, least)) if c.kind == "out" else c for c in choices]
    if line.read.optional or line.breaks or line.amount is None:
        return choices
    if line.food.kind in _BODY_OF_A_SAUCE and line.amount.grams >= _A_SAUCE_G * dish.serves:
        choices = [choice for choice in choices if choice.kind != "out"] or choices  # no curry without its coconut milk
    rest = [choice.price for choice in choices if choice.kind not in {None, "out"}]
    if line.profile is None:  # what nobody knows goes, and what does its work comes
        least = min(rest, default=0) + prices.POINT
        return [c._replace(price=max(c.price, least)) if c.kind == "out" else c for c in choices]
    if rest and line.food.id in dish.told.thrown_away and line.food.kind == "allium" and line.food.id != _GARLIC:
        return [
            c._replace(price=min(rest) - 1) if c.kind == "out" else c for c in choices
        ]  # no greens to be strained out
    small = share_filled(LineLoad(line.food, line.amount, line.profile), dish.serves, dish.eaters.limits) <= HALF
    swapped = any(choice.kind == "swap" for choice in choices)
    if not rest or not (small or swapped):
        return choices
    least = min(rest) + round(prices.POINT * prices.OUT_THOUGH_NEEDED)
    return [c._replace(price=max(c.price, least)) if c.kind == "out" else c for c in choices]


def _in_pieces(line: Counted, less: Iterator[Choice]) -> Iterator[Choice]:
    """Of rolls and wraps, which come whole, only those that weigh much the same; of all else every one."""
    whole = line.food.kind in _WHOLE and line.amount is not None and not line.amount.weighed
    return (choice for choice in less if not whole or choice.kind == "weigh")


def _swapped_first(line: Counted, choices: list[Choice], dish: Dish) -> list[Choice]:
    """In elimination onion, garlic and what is made with them stay only where no stand-in is to be had."""
    swaps = [choice.price for choice in choices if choice.kind == "swap"]
    plain = [c.price for c in choices if c.kind == "swap" and c.candidate and len(c.candidate.parts) == 1]
    if plain and is_near(line, dish) and not line.read.optional:
        nearly = min(plain) + round(prices.POINT * prices.NEAR_LIMIT)
        choices = [c._replace(price=max(c.price, nearly)) if c.kind in _STAYS else c for c in choices]
    gone = [choice.price for choice in choices if choice.kind == "out"]
    if line.profile is None and (swaps or gone):
        known = min(swaps or gone) + round(prices.POINT * prices.LEFT_IN)  # what nobody knows goes before what is known
        return [choice._replace(price=known) if choice.kind is None else choice for choice in choices]
    if not swaps or not goes_out(line, dish.serves, dish.eaters, dish.tables):
        return choices
    dear = min(swaps) + round(prices.POINT * prices.LEFT_IN)
    return [choice._replace(price=dear) if choice.kind is None else choice for choice in choices]


def _unlike_title(choice: Choice, line: Counted, dish: Dish) -> float:
    """How far what takes the place of a food that the title names is from it, 0 (green peppers for red) to 1."""
    named = any(
        one.food.id == line.food.id
        or (dish.told.is_titled(one.food.id) and not _is_there(one.food, line, dish))
        or same_thing(one.food.id, line.food.id)
        or (one.food.kind == line.food.kind and line.food.kind in _CALLED_ALIKE)
        or {one.food.kind, line.food.kind} <= STRANDS
        for one in choice.brings
    )
    kept = next((one.amount.grams for one in choice.brings if one.food.id == line.food.id), None)
    if kept is not None and line.amount is not None and kept < prices.NAMED_STILL * line.amount.grams:
        return prices.HARDLY_NAMED  # a bean chilli with a spoon of beans each
    named |= is_made_anew(line.food, [one.food for one in choice.brings])
    near = line.food.kind == "pulse" and any(one.food.kind == "pulse" for one in choice.brings)
    return 0 if named else prices.ANOTHER_PULSE if near else 1


def _is_there(food: Food, line: Counted, dish: Dish) -> bool:
    """Whether another line of the dish is of it: more bananas in a banana and date loaf are no dates."""
    others = {food for foods in dish.beside.values() for food in foods} - {line.food.id}
    return any(same_thing(food.id, other) for other in others)

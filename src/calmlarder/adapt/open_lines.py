"""What may be done with each line of a recipe, each with its price: keep, swap, less, or leave out."""

import re
from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import combinations

from calmlarder.adapt import prices
from calmlarder.adapt.alliums import ELIMINATION, goes_out, holds_allium, is_allium
from calmlarder.adapt.body import bulbs_made_of, is_the_soup
from calmlarder.adapt.choice import Choice, Open, tie
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.dish import (
    STRANDS,
    Dish,
    belongs,
    is_eastern,
    is_made_anew,
    is_sane,
    is_strange,
    may_stand,
    suits_use,
)
from calmlarder.adapt.exchanged import mixed, pairs, smaller, swap
from calmlarder.adapt.lessened import HALF, halved, left_out, lessened, smaller_ones
from calmlarder.adapt.line_words import tail_of
from calmlarder.adapt.loads import LineLoad, share_filled
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.near import is_near
from calmlarder.adapt.told import NOTHING_TOLD, Told
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.plate import Serving
from calmlarder.swaps.candidates import listed, same_thing
from calmlarder.swaps.model import MOST_GRAMS, Asked, Candidate
from calmlarder.swaps.rank import fitting
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_LEAST_GRAMS = Decimal("0.1")
_TITLED = prices.POINT * prices.TITLED
# What may be kept in part, with a stand-in for the rest, or have two stand-ins: nobody boils two pastas in one pot,
# but mixes pulses, vegetables and fruit. Ours, from common practice.
_MIXED = frozenset({
    "pulse", "mushroom", "pepper", "root", "squash", "potato", "brassica", "fruit-vegetable", "pod", "leaf",
    "sweetcorn", "fruit", "stem", "nut",
})  # fmt: skip
_CALLED_ALIKE = frozenset({"pasta", "noodle", "rice", "bread", "milk", "pepper", "mushroom", "squash", "allium"})
_STAYS = frozenset({None, "less", "weigh"})
IN_LEAVES = frozenset({"brassica", "leaf"})
_WHOLE = frozenset({"bread", "wrap"})
_LACTOSE_FREE = "lactose-free "
_LEEK_GREENS, _MOST_LEEK_G = "leek-green", 50  # a serving: of two leeks for four; more is a bed of greens; ours
_GARLIC = "garlic"  # whose oil stays in the pan when the clove goes
_A_COATING = "as a coating"
_IN_A_BLENDER = "where it is blended"
_KEPT_DRY = "in a mix that is kept dry"
_QUICK = ("quick in the pan", "a minute in the wok", "in the wok", "in stews")  # what a tray in the oven would dry out
_SEASONS_G = 10  # a usual portion below it seasons a dish, whatever the title says of it: dried mushrooms
_SEASONED_G = 30  # g a serving, a big spoonful or two: ours
_MEAT = frozenset({"meat", "poultry"})
_SAVOURY = frozenset({"allium", "meat", "poultry", "fish", "pulse"})
_MILKY = frozenset({"milk", "yoghurt", "plant-drink"})  # in a cold bowl of it nobody wants oranges: common practice
_BREAKFAST_FRUIT = frozenset(
    {"blueberry", "banana-firm", "pineapple-canned"}
)  # in a pilaf or a korma nobody wants them
_SLIPPERY = "mushroom-enoki"  # for a broth or the wok; in a pie or under cream they are threads: common practice
_MILKY_DISH = frozenset({"butter", "cream", "cheese", "milk"})
_WHITES, _GREENS = "spring-onion-white", "spring-onion-green"
_PIECES = re.compile(r"\b(?:chopped|sliced|halved|torn|quartered|diced|in pieces)\b")
_BESIDE_FRUIT = frozenset({"meat", "poultry", "fish"})
_PUDDING_FRUIT = frozenset({"rhubarb", "banana-firm", "strawberry"})  # stewed with sugar beside sausages: nobody
# Of these no blender makes a spread with tahini: potatoes turn to glue, grains stay grainy.
_NO_CREAM = frozenset({"potato", "grain", "rice", "tofu", "tempeh", "seitan"})
_TORN = re.compile(r"\b(?:torn|cubed|diced|chunks|cubes|croutons|cut into|toast(?:ed)?|slices?|grilled)\b")
_GRATED = re.compile(r"\b(?:coarsely )?grated\b")
_THICKENS = frozenset({"potato", "squash"})
_DRINKS = frozenset({"grain", "rice"})
_BINDS = frozenset({"flour", "starch", "egg"})
_HOLDS_A_FILLING = frozenset({"pepper", "fruit-vegetable", "squash", "tomato", "potato"})  # torn mushrooms hold none
_BODY = frozenset({"tomato-canned", "passata"})
_LESS_OF = frozenset({"mushroom"})  # what cooks down: nobody counts them
_PULSE = frozenset({"pulse"})  # boiled soft with the rest, where it was dry
_MOST_MIXED = 5


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
        for choice in () if of_bulbs else _swaps(line, weight, dish):
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
        or dish.told.is_titled(one.food.id)
        or same_thing(one.food.id, line.food.id)
        or (one.food.kind == line.food.kind and line.food.kind in _CALLED_ALIKE)
        or {one.food.kind, line.food.kind} <= STRANDS
        for one in choice.brings
    )
    named |= is_made_anew(line.food, [one.food for one in choice.brings])
    near = line.food.kind == "pulse" and any(one.food.kind == "pulse" for one in choice.brings)
    return 0 if named else prices.ANOTHER_PULSE if near else 1


def _is_spice(food: Food) -> bool:
    return food.roles[0] == "spice"


def _swaps(line: Counted, weight: int, dish: Dish) -> Iterator[Choice]:
    if line.amount is None:
        yield from _unmeasured(line, weight, dish)
        return
    found = [*_alternatives(line, line.amount.grams, dish.eaters, dish.tables), *_stand_ins(line, dish)]
    # Couscous, chicken, the stock that couscous soaks in.
    never_raw = line.food.roles[0] in {"base", "protein"} and "raw" not in line.food.minutes
    never_raw |= line.food.kind == "stock"
    use = "cooked" if never_raw else dish.told.use_of(line.read)
    if _is_spice(line.food) and line.food.id in dish.told.in_a_rub:
        use = "raw"  # asafoetida is harsh but in hot fat, greens want softening (common practice)
        dry = [one for one in found if not any(part.food.kind == "herb" for part in one.parts)]
        found = dry or found  # what burns before the meat is done
    fit = [one for one in found if all(when in {"any", use} for when in one.whens)]
    if line.food.id not in dish.told.coats:  # what binds a patty is no crust
        fit = [one for one in fit if not one.when.endswith(_A_COATING)]
    if dish.told.brothy and line.food.kind == "pulse":
        fit = _thickening(fit)
    if line.food.kind == "pulse" and dish.kinds & _MEAT:  # no raw mince goes late into a pot that has its meat
        fit = [one for one in fit if not any(part.food.kind in _MEAT for part in one.parts)] or fit
    if line.food.kind == "dried-fruit" and dish.kinds & _SAVOURY:
        fit = [one for one in fit if not any(part.food.id in _BREAKFAST_FRUIT for part in one.parts)]
        if _PIECES.search(line.read.text):  # what is bitten into, no syrup is
            fit = [one for one in fit if not any(part.food.kind == "sweetener" for part in one.parts)]
    if line.food.kind == "fruit" and dish.kinds & _BESIDE_FRUIT:
        fit = [one for one in fit if not any(part.food.id in _PUDDING_FRUIT for part in one.parts)]
    if line.food.id in dish.told.roasted:
        fit = [one for one in fit if not any(quick in one.when for quick in _QUICK)]
    if line.food.kind == "mushroom" and (not dish.eastern or dish.kinds & _MILKY_DISH):
        fit = [one for one in fit if not any(part.food.id == _SLIPPERY for part in one.parts)] or fit
    if line.food.kind == "nut" and line.food.id in dish.told.blended:  # to a cream, which no toasted nut makes
        fit = [one for one in fit if "toast" not in one.when] or fit
    if line.food.kind == "pulse" and line.food.id in dish.told.blended and not dish.told.brothy:
        fit = [one for one in fit if not any(part.food.kind in _NO_CREAM for part in one.parts)]
    if line.food.kind == "fruit" and _GRATED.search(line.read.text) and (dish.kinds & _SAVOURY or dish.told.savoury):
        fit = [one for one in fit if not any(part.food.id in _PUDDING_FRUIT for part in one.parts)]
    if line.food.kind == "fruit" and use == "raw" and dish.kinds & _MILKY and not dish.kinds & _SAVOURY:
        fit = [one for one in fit if not any(part.food.kind == "citrus" for part in one.parts)] or fit
    if line.food.kind == "bread" and _TORN.search(line.read.text):
        fit = [one for one in fit if all(part.food.kind == "bread" for part in one.parts)] or fit
    if line.food.id not in dish.told.blended:
        fit = [one for one in fit if not one.when.endswith(_IN_A_BLENDER)]
    if not dish.told.kept_dry:
        fit = [one for one in fit if not one.when.endswith(_KEPT_DRY)]
    cooked = use == "cooked"
    fit = [one for one in fit if all(suits_use(part.food, line.food, cooked, dish.told) for part in one.parts)]
    if dish.told.is_titled(line.food.id):  # no falafel is of tofu, no cauliflower cheese of potatoes
        fit = [one for one in fit if not any(is_strange(part.food, line.food) for part in one.parts)]
    if line.food.id in dish.told.stuffed and line.food.kind in _HOLDS_A_FILLING | {"mushroom"}:
        fit = [one for one in fit if all(part.food.kind in _HOLDS_A_FILLING for part in one.parts)]
    greens = [one for one in fit if [part.food.id for part in one.parts] == [_GREENS]]
    if line.food.id == _WHITES and line.read.assumed and greens:
        # Who has the whole of it has the greens: more of those, or fewer, and nothing else.
        yield swap(line, weight, greens[0], dish)
        yield from smaller(line, weight, greens[0], dish)
        return
    for candidate in fit:
        yield swap(line, weight, candidate, dish)
        alike = {line.food.kind, *(part.food.kind for part in candidate.parts)}
        filled = line.food.id in dish.told.stuffed and (len(alike) == 1 or line.food.kind == "mushroom")
        boiled = alike <= _PULSE and line.food.state == "dry" and line.food.id not in dish.told.blended
        if len(candidate.parts) == 1 and (alike <= _LESS_OF or boiled or filled):
            yield from smaller(line, weight, candidate, dish)
    whole = [one for one in fit if len(one.parts) == 1 and one.parts[0].food.id != line.food.id]
    plain = [one for one in whole if not is_strange(one.parts[0].food, line.food)] or whole
    soaked = line.food.kind == "mushroom" and line.food.state.startswith("dr")  # fresh ones soak in no bowl with them
    if line.food.kind in _MIXED and line.profile is not None and line.food.id not in dish.told.stuffed and not soaked:
        others = [one for one in plain if not same_thing(line.food.id, one.parts[0].food.id)][:_MOST_MIXED]
        for candidate in others if not line.breaks else ():
            yield from mixed(line, weight, candidate, dish)
        for first, second in combinations(plain[:_MOST_MIXED], 2):
            yield from pairs(line, weight, (first, second), dish)


def _thickening(candidates: list[Candidate]) -> list[Candidate]:
    """Of what may stand for a pulse in a broth no boiled grain, where something thickens as the pulse did."""
    other = [one for one in candidates if not any(part.food.kind in _DRINKS for part in one.parts)]
    return other if any(part.food.kind in _THICKENS for one in other for part in one.parts) else candidates


def _stand_ins(line: Counted, dish: Dish) -> list[Candidate]:
    assert line.amount is not None
    eaters = dish.eaters
    if line.profile is None:  # what it brings nobody knows: what a cook listed in its place is known
        listed_ones = listed(line.food, line.amount.grams, dish.tables)
        return [one for one in listed_ones if all(may_stand(part.food, dish) for part in one.parts)]
    in_halves = line.food.id in dish.told.stuffed and line.food.kind != "mushroom"  # a cap is one already
    whole = line.amount.grams * (HALF if in_halves else 1)
    each = min(Decimal(MOST_GRAMS), max(_LEAST_GRAMS, whole / dish.serves))
    asked = Asked(
        food=line.food, grams=each, profile=eaters.profile, diet=eaters.diet, avoid=eaters.avoid, sure=eaters.sure
    )
    found = [_no_bed_of_leeks(one, dish) for one in fitting(asked, whole, dish.tables)]
    return [
        one
        for one in found
        if all(
            (is_sane(part, dish.serves) or (line.food.id == _GARLIC and part.food.kind == "oil"))  # lessened later
            and belongs(part, line.food, dish)
            for part in one.parts
        )
    ]


def _no_bed_of_leeks(candidate: Candidate, dish: Dish) -> Candidate:
    """A stand-in of leek greens by the handful, where onions are many; where they are the dish it stands as it is."""
    most = Decimal(_MOST_LEEK_G * dish.serves)
    if not any(part.food.id == _LEEK_GREENS and most < part.grams <= 3 * most for part in candidate.parts):
        return candidate
    parts = tuple(
        part._replace(grams=min(part.grams, most)) if part.food.id == _LEEK_GREENS else part for part in candidate.parts
    )
    return candidate.model_copy(update={"parts": parts})


def _unmeasured(line: Counted, weight: int, dish: Dish) -> Iterator[Choice]:
    """The line's own "or", where it says no amount: only what brings nothing, however much of it is taken."""
    for candidate in _alternatives(line, _LEAST_GRAMS, dish.eaters, dish.tables):
        food = candidate.parts[0].food
        if not dish.profile_of(food).anything:
            lost = round(weight * (1 - prices.ALTERNATIVE_POINTS / prices.SWAP_LIKENESS))
            text = f"{food.name}{tail_of(line.read.text)}"
            price = lost + round(prices.POINT * prices.TOUCHED) + tie(line, text)
            yield Choice("swap", (), (text,), price, lost, candidate)


def _alternatives(line: Counted, grams: Decimal, eaters: Eaters, tables: Tables) -> Iterator[Candidate]:
    """What the line itself allows in the food's place: by its own amount where it has one, else gram for gram."""
    measured = {one.food: Decimal(str(one.grams)) for one in line.read.instead if one.grams}
    for name in line.read.alternatives:
        food = tables.food_by_id.get(name)
        if food is None or food.id == line.food.id or tables.unknown_of(name):
            continue
        if eaters.profile.name == ELIMINATION and holds_allium(food, tables):
            continue  # `chicken or vegetable stock`: either is bought without onion, and neither goes with it
        if suits_diet(food, eaters.diet) and not allergens_met(food, eaters.avoid):
            yield Candidate(
                parts=(Serving(food, measured.get(name, grams)),), points=prices.ALTERNATIVE_POINTS,
                keeps="what the recipe itself allows",
                loses="", when="", whens=("any",), caution="", source="the recipe",
            )  # fmt: skip

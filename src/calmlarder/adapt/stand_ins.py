"""What a cook would put in the place of a line: which stand-ins fit the dish, whole, smaller, mixed or in pairs."""

import re
from collections.abc import Iterator
from decimal import Decimal
from itertools import combinations

from calmlarder.adapt import prices
from calmlarder.adapt.alliums import ELIMINATION, holds_allium
from calmlarder.adapt.choice import Choice, tie
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.dish import (
    STRANDS,
    Dish,
    belongs,
    is_sane,
    is_strange,
    may_stand,
    most_of,
    suits_use,
)
from calmlarder.adapt.exchanged import mixed, pairs, smaller, swap
from calmlarder.adapt.lessened import HALF
from calmlarder.adapt.line_words import tail_of
from calmlarder.adapt.model import Eaters
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.plate import Serving
from calmlarder.swaps.candidates import listed, same_thing
from calmlarder.swaps.model import MOST_GRAMS, Asked, Candidate
from calmlarder.swaps.rank import fitting
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_LEAST_GRAMS = Decimal("0.1")
# What may be kept in part, with a stand-in for the rest, or have two stand-ins: nobody boils two pastas in one pot,
# but mixes pulses, vegetables and fruit. Ours, from common practice.
_MIXED = frozenset({
    "pulse", "mushroom", "pepper", "root", "squash", "potato", "brassica", "fruit-vegetable", "pod", "leaf",
    "sweetcorn", "fruit", "stem", "nut",
})  # fmt: skip
_FREE_SORTS = ("lactose-free ", "gluten-free ", "plain lactose-free", "dry gluten-free")
_LEEK_GREENS, _MOST_LEEK_G = "leek-green", 35  # a serving: of two leeks for four; more is a bed of greens; ours
_A_DISH_OF_IT_G = 150  # a serving: with more the onions are the dish, and nothing stands in for them; ours
_GREEN_TOPS = frozenset({_LEEK_GREENS, "spring-onion-green"})
_GARLIC = "garlic"  # whose oil stays in the pan when the clove goes
_A_COATING = "as a coating"
_IN_A_BLENDER = "where it is blended"
_KEPT_DRY = "in a mix that is kept dry"
_QUICK = ("quick in the pan", "a minute in the wok", "in the wok", "in stews")  # what a tray in the oven would dry out
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
_HOLDS_A_FILLING = frozenset({"pepper", "fruit-vegetable", "squash", "tomato", "potato"})  # torn mushrooms hold none
_LESS_OF = frozenset({"mushroom"})  # what cooks down: nobody counts them
_PULSE = frozenset({"pulse"})  # boiled soft with the rest, where it was dry
_MOST_MIXED = 5


def _is_spice(food: Food) -> bool:
    return food.roles[0] == "spice"


def swaps_of(line: Counted, weight: int, dish: Dish) -> Iterator[Choice]:
    if line.amount is None:
        yield from _unmeasured(line, weight, dish)
        return
    own = _alternatives(line, line.amount.grams, dish.eaters, dish.tables)
    found = [*own, *_free_sorts(line, line.amount.grams, dish), *_stand_ins(line, dish)]
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
        tops = line.food.kind == "allium" and candidate.parts[0].food.id in _GREEN_TOPS  # they season, as onion did
        if len(candidate.parts) == 1 and (alike <= _LESS_OF or boiled or filled or tops):
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
    if line.food.roles[0] == "sauce":
        found = [_no_pool_of_oil(one, dish.serves) for one in found]
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
    if not any(
        part.food.id == _LEEK_GREENS and most < part.grams <= _A_DISH_OF_IT_G * dish.serves for part in candidate.parts
    ):
        return candidate
    parts = tuple(
        part._replace(grams=min(part.grams, most)) if part.food.id == _LEEK_GREENS else part for part in candidate.parts
    )
    return candidate.model_copy(update={"parts": parts})


def _no_pool_of_oil(candidate: Candidate, serves: int) -> Candidate:
    """A stand-in that is oil alone by as much as anybody pours: the crisp of a jar is spooned more freely."""
    only = candidate.parts[0]
    if len(candidate.parts) > 1 or only.food.kind != "oil":
        return candidate
    return candidate.model_copy(update={"parts": (only._replace(grams=min(only.grams, most_of(only.food, serves))),)})


def _unmeasured(line: Counted, weight: int, dish: Dish) -> Iterator[Choice]:
    """The line's own "or", where it says no amount: only what brings nothing, however much of it is taken."""
    for candidate in _alternatives(line, _LEAST_GRAMS, dish.eaters, dish.tables):
        food = candidate.parts[0].food
        if not dish.profile_of(food).anything:
            lost = round(weight * (1 - prices.ALTERNATIVE_POINTS / prices.SWAP_LIKENESS))
            text = f"{food.name}{tail_of(line.read.text)}"
            price = lost + round(prices.POINT * prices.TOUCHED) + tie(line, text)
            yield Choice("swap", (), (text,), price, lost, candidate)


def _free_sorts(line: Counted, grams: Decimal, dish: Dish) -> Iterator[Candidate]:
    """Of what the line allows besides its sort without gluten or lactose: of `custard or cream` lactose-free cream."""
    measured = {one.food: Decimal(str(one.grams)) for one in line.read.instead if one.grams}
    for name in line.read.alternatives:
        food = dish.tables.food_by_id.get(name)
        if food is None or food.kind == line.food.kind:
            continue
        alike = {food.kind, line.food.kind} <= STRANDS  # as much spaghetti as noodles
        much = measured.get(name, grams if alike else grams * Decimal(food.portion_g) / Decimal(line.food.portion_g))
        for one in listed(food, much, dish.tables):
            free = one.parts[0].food
            if len(one.parts) == 1 and free.name.startswith(_FREE_SORTS) and may_stand(free, dish):
                yield one.model_copy(update={"points": prices.ALTERNATIVE_POINTS})
                break


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

"""A stand-in for a line: all of its place, a smaller amount, beside what is kept, or two together; with its price."""

import re
from collections.abc import Iterator
from decimal import Decimal

from calmlarder.adapt import prices
from calmlarder.adapt.choice import Choice, tie
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.dish import (
    Dish,
    at_home,
    brings_new_allergen,
    is_another_kind,
    is_another_shape,
    is_dulled,
    is_its_other_sort,
    is_of_another_kitchen,
    is_plain_tomato,
    is_strange,
    is_there_already,
)
from calmlarder.adapt.lessened import IN_HALVES
from calmlarder.adapt.line_words import (
    BAKING_POWDER,
    for_what,
    if_optional,
    is_unraised,
    own_words,
    stand_in_words,
    what_holds,
)
from calmlarder.adapt.loads import LineLoad, share_filled
from calmlarder.adapt.model import Amount
from calmlarder.adapt.near import too_much
from calmlarder.adapt.usual_amounts import is_beside
from calmlarder.adapt.written import BY_THE_PIECE, Written, amount_told, in_own_count, in_own_measure, written
from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import Candidate
from calmlarder.tables.rows import Food

# Shares of a line that are tried, and how many lines come in two: ours, what a cook would do.
_FIRST_OF_TWO = (Decimal("0.7"), Decimal("0.5"))
_KEPT = tuple(Decimal(share) for share in ("0.75", "0.6", "0.5", "0.4", "0.3"))
_KEPT_OF_A_NAME = Decimal("0.2")  # of what the dish is named for: it is tasted and seen still
_FRUIT = "fruit"  # of which nobody buys two for a few bites of one
_SMALLER_STAND_IN = (Decimal("0.6"), Decimal("0.4"))  # what takes the rest of a large thing's place need not fill it
_SMALLER = (Decimal("0.85"), Decimal("0.7"), Decimal("0.5"))  # shares of what stands in for the whole of it
_LEAST_BESIDE = Decimal("0.2")  # of a portion a serving: nobody opens a tin for less
_POWDER = Decimal("0.046")  # g of baking powder to a gram of flour: a teaspoon to 100 g, common practice, no source
_MOST_OIL = Decimal("4.5")  # g a serving, a teaspoon: common practice, no source
_A_SPOON_OF_OIL = Decimal("13.7")  # g, a tablespoon, which a dish for few takes too: common practice, no source


def smaller(line: Counted, weight: int, candidate: Candidate, dish: Dish) -> Iterator[Choice]:
    """The same stand-in, less of it: a fit one that would pass its own limit goes before another that is unlike."""
    part = candidate.parts[0]
    for share in _SMALLER:
        fewer = part._replace(grams=part.grams * share)
        points = candidate.points * float(share)
        yield swap(line, weight, candidate.model_copy(update={"parts": (fewer,), "points": points}), dish)


def swap(line: Counted, weight: int, candidate: Candidate, dish: Dish) -> Choice:
    halved = IN_HALVES if line.food.id in dish.told.stuffed else ""
    lines = [_line_of(part, line, halved, dish) for part in candidate.parts]
    lines += _raising(line, candidate, dish)
    brings = tuple(LineLoad(food, one.amount, dish.profile_of(food)) for one in lines for food in [_food_of(one, dish)])
    lost = round(weight * max(0.0, 1 - candidate.points / prices.SWAP_LIKENESS))
    more = sum(prices.ANOTHER_SPICE if part.food.is_staple else prices.ANOTHER_PART for part in candidate.parts[1:])
    texts = tuple(one.line for one in lines)
    strange = prices.STRANGE * sum(is_strange(part.food, line.food) for part in candidate.parts) / len(candidate.parts)
    other = prices.ANOTHER_KIND * all(is_another_kind(part.food, line.food) for part in candidate.parts)
    other *= 1 if dish.told.named_for_a_food else prices.NAMED_FOR_NONE
    other += prices.ANOTHER_KITCHEN * any(is_of_another_kitchen(part.food, line.food, dish) for part in candidate.parts)
    if line.food.id == "pasta-sauce-tomato":
        other += prices.ANOTHER_KIND * (not is_plain_tomato(candidate, line.read.text))
    other += prices.ANOTHER_KIND * any(
        is_another_shape(part.food, line.food, line.read.text) for part in candidate.parts
    )
    other += prices.DULLED * any(is_dulled(part.food, line.food, dish) for part in candidate.parts)
    much = sum(too_much(part, dish) for part in candidate.parts)
    new = prices.NEW_ALLERGEN * brings_new_allergen(candidate, line.food)
    new += prices.THERE_ALREADY * is_there_already(candidate, dish)
    less = at_home(candidate, dish) + prices.ONE_SORT * is_its_other_sort(candidate, line.read.text, line.food, dish)
    dear = max(0.0, prices.TOUCHED + more + strange + other + much + new - less)
    price = lost + round(prices.POINT * dear) + tie(line, *texts)
    return Choice("swap", brings, texts, price, lost, candidate)


def _raising(line: Counted, candidate: Candidate, dish: Dish) -> list[Written]:
    """The baking powder that makes a stand-in of self-raising flour, which is not so itself, rise."""
    powder = dish.tables.food_by_id.get(BAKING_POWDER)
    flour = sum((part.grams for part in candidate.parts if is_unraised(line.read, part.food)), Decimal(0))
    if powder is None or not flour:
        return []
    return [written(powder, flour * _POWDER, dish.tables, sure=dish.eaters.sure)]


_SEVERAL_OF_IT = re.compile(r"(?<=gluten-free )(pitta|bagel|baguette)\b(?!s)")
_ONE_OF_THEM = re.compile(r"\b(roll|cube|tortilla|bun|wrap|bagel)s\b")


def _food_of(one: Written, dish: Dish) -> Food:
    return dish.tables.food_by_id[one.amount.food]


def _line_of(part: Serving, line: Counted, halved: str, dish: Dish) -> Written:
    """The line of a stand-in, in the measure of the line whose place it takes where that comes to the same."""
    told = _as_told(part, line)
    if told is not None:
        return Written(told[0], told[1].model_copy(update={"sure": dish.eaters.sure}))
    holds = "" if line.read.also else what_holds(line.read.text, part.food)
    called = stand_in_words(line.read, part.food, dish.tables, bool(halved))
    optional = "" if "optional" in called else if_optional(line.read)
    words = f"{called}{halved}{holds}{for_what(line.read.text)}{optional}"
    grams = _enough_of(part, line, dish)
    own = in_own_measure(line.read, part.food, grams, dish.tables)
    if own is not None and (own.amount.weighed or not dish.profile_of(part.food).anything):
        return Written(f"{own.line} {words}", own.amount.model_copy(update={"sure": dish.eaters.sure}))
    counted = in_own_count(line.read, part.food, grams, dish.tables)
    if counted is not None:
        words = _ONE_OF_THEM.sub(r"\1", words) if counted.line == "1" else _SEVERAL_OF_IT.sub(r"\1s", words)
        return Written(f"{counted.line} {words}", counted.amount.model_copy(update={"sure": dish.eaters.sure}))
    taken = line.read.assumed.startswith(_TAKEN_AS)
    if taken and part.food.kind in BY_THE_PIECE:
        grams = _so_many_each(part.food, grams, dish)
    told = written(part.food, grams, dish.tables, words, dish.eaters.sure)
    if halved and dish.serves % 2 == 0 and told.line == f"{told.amount.grams:g} g {called}{halved}":
        each = round(2 * told.amount.grams / dish.serves)  # so many to buy, rather than grams of halves
        several = called if called.endswith("s") or dish.serves == _TWO_HALVES else f"{called}s"
        return told._replace(line=f"{dish.serves // 2} {several}, about {each} g each{halved}")
    return told._replace(line=words) if taken and is_beside(line.read) and _brings_little(told.amount, dish) else told


_TAKEN_AS = "taken as"  # how a usual amount is told
_TWO_HALVES = 2  # of one
_LITTLE = Decimal("0.5")  # of a limit: ours


def _brings_little(amount: Amount, dish: Dish) -> bool:
    """Whether twice as much of it fills little of a limit, so that nobody weighs what the page itself does not."""
    food = dish.tables.food_by_id[amount.food]
    double = amount.model_copy(update={"grams": 2 * amount.grams, "high": 2 * amount.high})
    return share_filled(LineLoad(food, double, dish.profile_of(food)), dish.serves, dish.eaters.limits) <= _LITTLE


def _so_many_each(food: Food, grams: Decimal, dish: Dish) -> Decimal:
    """Grams of what comes whole and has no amount of its own: as many for everybody, and no 19 for 8."""
    one = amount_told("1", food, dish.tables)
    return grams if one is None else one.grams * max(1, round(grams / one.grams / dish.serves)) * dish.serves


def _as_told(part: Serving, line: Counted) -> tuple[str, Amount] | None:
    """The line's own words for what it allows instead, where so much of it takes the place."""
    for one in line.read.instead:
        if one.food == part.food.id and one.grams and Decimal(str(one.grams)) == part.grams:
            high = Decimal(str(max(one.grams, one.grams_high or 0)))
            return one.text, Amount(food=part.food.id, grams=part.grams, high=high, weighed=one.weighed)
    return None


def _enough_of(part: Serving, line: Counted, dish: Dish) -> Decimal:
    """Grams of a stand-in: of an oil for its taste no more than a spoon or so a serving, for a whole bulb too."""
    if part.food.kind != "oil" or line.food.kind in {"oil", "butter"}:
        return part.grams
    return min(part.grams, max(_A_SPOON_OF_OIL, _MOST_OIL * dish.serves))


def mixed(line: Counted, weight: int, candidate: Candidate, dish: Dish) -> Iterator[Choice]:
    """Some of a main thing kept, and the rest of its place taken by a stand-in: it stays the dish that it was."""
    assert line.amount is not None
    assert line.profile is not None
    stand_in = candidate.parts[0]
    words = own_words(line.read, line.food, line.amount.grams, dish.tables)
    cut = stand_in_words(line.read, stand_in.food, dish.tables)
    whole = (*_KEPT, _KEPT_OF_A_NAME) if dish.told.is_titled(line.food.id) and line.food.kind != _FRUIT else _KEPT
    fewer = [(share, filled) for share in _KEPT[2:] for filled in _SMALLER_STAND_IN]
    for share, filled in [(share, Decimal(1)) for share in whole] + fewer:
        own = written(line.food, line.amount.grams * share, dish.tables, words, line.amount.sure)
        grams = stand_in.grams * (1 - share) * filled
        other = written(stand_in.food, grams, dish.tables, cut, dish.eaters.sure)
        least = _LEAST_BESIDE * stand_in.food.portion_g * dish.serves
        if own.amount.grams >= line.amount.grams or other.amount.grams < least:
            continue
        unlike = max(0.0, 1 - candidate.points / prices.SWAP_LIKENESS) * float(filled) + float(1 - filled)
        lost = round(weight * float(1 - share) * unlike)
        texts = (own.line, other.line)
        other_kind = float(1 - share) * prices.ANOTHER_KIND * is_another_kind(stand_in.food, line.food)
        other_kind += prices.DULLED * is_dulled(stand_in.food, line.food, dish)
        other_kind += prices.ANOTHER_KITCHEN * is_of_another_kitchen(stand_in.food, line.food, dish)
        dear = prices.TOUCHED + prices.ANOTHER_PART + other_kind
        price = lost + round(prices.POINT * dear) + tie(line, *texts)
        brings = (
            LineLoad(line.food, own.amount, line.profile),
            LineLoad(stand_in.food, other.amount, dish.profile_of(stand_in.food)),
        )
        yield Choice("swap", brings, texts, price, lost, candidate)


def pairs(line: Counted, weight: int, both: tuple[Candidate, Candidate], dish: Dish) -> Iterator[Choice]:
    """Two stand-ins together, the first the larger part: tinned lentils and quinoa for a dry pulse."""
    for share in _FIRST_OF_TWO:
        parts = tuple(
            part._replace(grams=part.grams * of)
            for part, of in ((both[0].parts[0], share), (both[1].parts[0], 1 - share))
        )
        mixed = both[0].model_copy(
            update={
                "parts": parts,
                "points": float(share) * both[0].points + float(1 - share) * both[1].points,
                "keeps": f"{both[0].keeps}; {both[1].keeps}",
                "caution": "; ".join(dict.fromkeys(one.caution for one in both if one.caution)),
            }
        )
        yield swap(line, weight, mixed, dish)

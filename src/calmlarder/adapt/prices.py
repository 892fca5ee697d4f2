"""What each change costs: how much of the dish it takes away. Ours, from common practice; no source.

A point is about a hundredth of a main thing on the plate.
"""

from collections.abc import Mapping
from decimal import Decimal
from types import MappingProxyType

from calmlarder.tables.vocabulary import Role

POINT = 1000  # the model counts in thousandths of a point

# How much of the dish a thing is at a usual portion, by what it does there: without the rice or the fish it is
# another dish, without the parsley the same one.
WEIGHT: Mapping[Role, int] = MappingProxyType({
    "base": 100, "protein": 100, "vegetable": 60, "sauce": 40, "sweet": 40, "liquid": 30, "thickener": 30,
    "topping": 30, "aromatic": 25, "acid": 20, "fat": 20, "spice": 15,
})  # fmt: skip
# More than a usual portion counts more, less counts less, within reason: a splash of cream is still noticed.
LEAST_SHARE, MOST_SHARE = 0.25, 1.5

# Less of a thing of which there is a fair part of a usual portion still: so much of what is lost counts.
LESS_OF_IT = 0.7
CUT_OPEN = 3  # what is filled in halves, where the steps fill it whole: small ones go before
TOUCHED = 4  # any line that changes: something to explain, perhaps to buy
# Points beside the price of its stand-in for onion or garlic that stays in an elimination dish: more than two limits
# filled to the brim (FULL).
LEFT_IN = 40
AT_HOME = 4  # points for a stand-in that the larder holds: it goes before an equal one from the shop
STRANGE = 25  # potatoes in the place of a vegetable, tofu in that of pulses: no longer that dish
ANOTHER_KIND = 8  # all of it another kind of thing: less of what is there, or some of it kept, is nearer the dish
NAMED_FOR_NONE = 2  # times as much where the title names no food: a ratatouille is all of its vegetables
DULLED = 40  # green peppers blended into a red base
ANOTHER_KITCHEN = 20  # rice noodles under butter, pasta in a wok
NEW_ALLERGEN = 5  # of the fourteen, that the line did not hold: somebody at the table may mind
THERE_ALREADY = 6  # more of what the dish holds anyhow
ONE_SORT = 8  # for a stand-in that its own line names beside the food: one thing fewer to buy
ANOTHER_PART = 7  # a swap in two parts: one more thing to buy
ANOTHER_SPICE = 1  # the same of a jar that stands in the kitchen
SWAP_LIKENESS = 100  # points of a perfect stand-in; a listed swap has 56 to 80 of them, see swaps/listed.py
ALTERNATIVE_POINTS = 95  # the recipe's own "or": its writer would cook it so

# Leaving a thing out beside its weight: the main of a dish and what binds it are missed more than their weight.
OUT: Mapping[Role, float] = MappingProxyType({"base": 4, "protein": 4, "thickener": 2, "vegetable": 1.5, "liquid": 2})
OUT_ELSE = 1.2
BOUND_FLOOR = 0.95  # of flour and eggs a batter bears hardly less
BODY_FLOOR = 0.7  # of the tomatoes that are a sauce: less of them, and there is no sauce to the rest
BODY_SERVING_G = 120  # of tomatoes a serving are a sauce still, whatever was written
TITLED_FLOOR = 0.5  # of what the dish is named for there is at least so much
LEAST_OF_A_MAIN = 0.5  # of what a dish is named for, and of any main thing before all of the dish is served smaller
TITLED = 60  # points beside it where nothing of what the dish is named for stays: it is replaced last
NAMED_STILL, HARDLY_NAMED = Decimal("0.4"), 0.3  # of it kept, beside a stand-in; and of that, where it is less
ANOTHER_PULSE = 0.4  # of that, where lentils stand for beans: not called so, and yet near
# Wheat and milk foods beyond so much of a limit by themselves: points beside the price of a plain stand-in.
NEAR_LIMIT, OF_ITS_LIMIT, OF_LACTOSE = 3, Decimal("0.8"), Decimal("0.9")
BIG, TOO_BIG = 1.4, 12  # usual portions a serving of a vegetable that fills a limit; points beyond
OUT_THOUGH_NEEDED = 12  # points beside the least other change: a dish wants something in its place
OPTIONAL_OUT = 0.25  # the recipe says itself that it may be left out

# The least a dish bears of a thing, as a share of what is written.
FLOOR: Mapping[Role, float] = MappingProxyType({
    "base": 0.6, "protein": 0.6, "vegetable": 0.4, "sauce": 0.5, "sweet": 0.5, "liquid": 0.6, "thickener": 0.7,
    "topping": 0.25, "aromatic": 0.4, "acid": 0.5, "fat": 0.6, "spice": 0.5,
})  # fmt: skip

# A limit of the sitting filled beyond so many twentieths leaves nothing for the evening: worth a larger change.
BRIM, OF_A_BRIM = 19, 20
FULL = 6

# Of a limit of the sitting so much still reads as 100 % of it; one that is all but used up keeps its own room.
SHOWN_AS_FULL, LEAST_SHOWN = Decimal("1.004"), Decimal("0.1")

# Serving smaller: nobody likes to go hungry, so a tenth less on each plate costs as much as a good swap of a main.
SMALLER = 400  # times the share by which a serving shrinks
HARDLY_SMALLER = 1.15  # times as many, beside what else would have to go: of four or six people none
MOST_AT_ALL = 2  # where nothing else brings it under: half a plate is the least that is still that dish
MOST_SERVINGS = 1.5  # times as many at the most: two thirds of a plate are the least that is still that dish
MOST_LOST = 0.5  # of the dish's weight: beyond it is another dish


def serving_price(serves: int, more: int) -> int:
    """Thousandths of a point for cutting a dish for `serves` into `more` servings."""
    return round(POINT * SMALLER * (more - serves) / more)

"""What is taken for an amount where a line says none: what is usual, which is told."""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from calmlarder.adapt.model import Eaters
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.plate import Item, exact_grams, rows_of
from calmlarder.matching.names.words import plain
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# Of these nobody takes much more than is usual.
SEASONINGS = frozenset({"spice", "herb", "acid", "oil", "butter", "soy-sauce", "salad-leaf", "citrus", "seed"})
_BESIDE = frozenset({"bread", "wrap"})  # without an amount they are eaten with it
_TO_SERVE = re.compile(
    r"\b(?:to|for) (?:serve|serving|garnish|garnishing|finish|finishing|decorate|decorating|topping|top|the table"
    r"|drizzle|drizzling|sprinkle|sprinkling|scatter|scattering|dollop|dolloping|spreading|dusting|passing)\b"
)
# A heading over what is put on each plate.
_ON_TOP = re.compile(
    r"\b(?:(?:to|for) serv(?:e|ing)|(?:for|on) (?:the )?top|toppings?|garnish|to (?:finish|assemble|build|stack))\b"
)
_CHOSEN = re.compile(r"\b(?:optional|pick|choose|your choice|you (?:like|fancy)|any or all)\b")
_HEADED = re.compile(r"\W*(?:optional )?(?:toppings?|garnish(?:es)?|(?:to|for) (?:serve|serving|top)|serve with)\s?:")
_A_SPRINKLE = Decimal("0.3")  # g a serving of a spice, a pinch: common practice, no source
_GARNISH = re.compile(r"\b(?:garnish\w*|decorate)\b")
_A_GARNISH = Decimal(3)  # g a serving: common practice, no source
# Grams of a stalk of spring onion, green and white; on top half a stalk does. Common practice, no source.
_OF_A_STALK = {"spring-onion-green": Decimal(7), "spring-onion-white": Decimal(8)}
_ON_TOP_OF_IT = frozenset({"tomato", "fruit-vegetable", "leaf", "brassica", "pepper", "mushroom"})
# What is scattered over a dish at the table, g a serving: common practice, no source.
_SCATTERED = {"fruit": Decimal(20), "nut": Decimal(8), "seed": Decimal(3), "dried-fruit": Decimal(8)}
_RINGS = Decimal(15)  # g a serving, a few rings of raw onion on top: common practice, no source
_ALLIUM = "allium"
_A_FEW = re.compile(r"\s*a (?:few|little|couple)\b")
_OF_A_FEW = Decimal("0.5")  # of a usual portion, as likely as twice that: common practice, no source
_OF_A_LIMIT = 4  # beyond a quarter of a limit it counts how much there is: ours
NO_AMOUNT = "it does not say how much"


# What stays on the board or in the tin, most of it.
_DUSTED = re.compile(
    r"\b(?:dust(?:ing)?|work ?(?:top|surface)|rolling(?: out)?|greas(?:e|ing)|brush(?:ing)?|lin(?:e|ing)"
    r"|the (?:tin|pan|tray))\b"
)
_A_DUSTING = Decimal(5)  # g a serving: common practice, no source


def with_usual_amounts(
    reads: Sequence[IngredientRead], serves: int, eaters: Eaters, tables: Tables
) -> tuple[IngredientRead, ...]:
    """The lines, of which what has no amount has a usual portion a serving, up to twice that.

    Of seasonings where a portion brings little, and of whatever is served beside the dish, that is swapped, or weighed,
    like all else. Of anything else that may bring something it is told that the amount is not known (`unsure`).
    """
    found = []
    on_top = chosen = False
    for read in reads:
        if read.outcome == "heading":
            on_top, chosen = bool(_ON_TOP.search(plain(read.text))), bool(_CHOSEN.search(plain(read.text)))
        told = read.model_copy(update={"optional": True}) if chosen and read.outcome != "heading" else read
        found.append(_usual(told, serves, eaters, tables, on_top))
    return tuple(found)


def is_beside(read: IngredientRead) -> bool:
    """Whether a line is optional, or but served with the dish, so that the dish does without it."""
    text = read.text.casefold()
    return read.optional or bool(_TO_SERVE.search(text) or _HEADED.match(text))


def _comes_cooked(food: Food) -> bool:
    """Whether it is a base that is cooked already (`hot cooked rice`): without an amount it goes beside the dish."""
    return food.roles[0] == "base" and food.state == "cooked"


def _usual(read: IngredientRead, serves: int, eaters: Eaters, tables: Tables, on_top: bool) -> IngredientRead:
    food = tables.food_by_id.get(read.food or "")
    if food is None or read.grams is not None or read.outcome != "read":
        return read
    served = on_top or is_beside(read)
    portion = _portion(read, food, served)
    grams = float(portion * serves)
    told = f"taken as {float(portion):g} g a serving"
    update = {"grams_low": 0.0, "grams": grams, "grams_high": 2 * grams, "assumed": told}
    if tables.unknown_of(food.id):
        return read.model_copy(update={**update, "unsure": NO_AMOUNT})
    profile = load_profile_of(food, tables)
    if not profile.anything:
        return read
    rows = rows_of([Item(food.id, profile, Fraction(2 * portion), False)], eaters.limits)
    served |= food.kind in _BESIDE
    much = any(_OF_A_LIMIT * exact_grams(row.sum.likely) > row.cap.typical_g for row in rows)
    if much and not served:
        update["unsure"] = NO_AMOUNT
    return read.model_copy(update=update)


def _portion(read: IngredientRead, food: Food, on_top: bool) -> Decimal:
    """Grams a serving that are usual, for what the line says of its use; what is put `on_top` is little."""
    text = read.text.casefold()
    most = [Decimal(food.portion_g)]
    most += [_A_SPRINKLE] if food.kind == "spice" else []
    if food.id in _OF_A_STALK:
        most.append(_OF_A_STALK[food.id] * (_OF_A_FEW if on_top else 1))
    elif on_top:
        most += [_RINGS] if food.kind == _ALLIUM else []
        most += [food.portion_g * _OF_A_FEW] if food.kind in _ON_TOP_OF_IT else []
        most += [_SCATTERED[food.kind]] if food.kind in _SCATTERED else []
    most += [_A_GARNISH] if _GARNISH.search(text) else []
    most += [_A_DUSTING] if _DUSTED.search(text) else []
    return min(most) * (_OF_A_FEW if _A_FEW.match(text) else 1)

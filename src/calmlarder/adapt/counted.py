"""Which lines of a recipe count, and what each stands for."""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from calmlarder.adapt.model import Amount, Eaters, Unread
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.intake.plate import Item, exact_grams, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.matching.names.words import plain
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


class Counted(NamedTuple):
    """A line whose food is known. `amount` or `profile` is None where it cannot be told what it brings.

    `breaks` says how the food breaks diet or allergens; nothing where it may be eaten.
    """

    place: int
    read: IngredientRead
    food: Food
    amount: Amount | None
    profile: LoadProfile | None
    breaks: str

    @property
    def brings(self) -> bool:
        """Whether any figure of it is above nothing."""
        return self.amount is not None and self.profile is not None and self.profile.anything


class Lines(NamedTuple):
    """The lines that count, in order, and those that do not."""

    counted: tuple[Counted, ...]
    unread: tuple[Unread, ...]


def counted(reads: Sequence[IngredientRead], eaters: Eaters, tables: Tables) -> Lines:
    """Sort the lines of a recipe. A line is never taken for harmless because it was not understood."""
    known: list[Counted] = []
    unread: list[Unread] = []
    profiles: dict[str, LoadProfile | None] = {}
    for place, read in enumerate(reads):
        if read.outcome in {"heading", "nothing"}:
            continue
        why = _why_unread(read, tables)
        if why is None:
            food = tables.food_by_id[read.food or ""]
            if food.id not in profiles:
                profiles[food.id] = None if tables.unknown_of(food.id) else load_profile_of(food, tables)
            line = Counted(place, read, food, _amount(read, eaters.sure), profiles[food.id], _breaks(food, eaters))
            known.append(line)
            why = _why_uncounted(line, tables)
        if why is not None:
            unread.append(Unread(place=place, text=read.text, why=why))
    return Lines(tuple(known), tuple(unread))


def _why_unread(read: IngredientRead, tables: Tables) -> str | None:
    if read.outcome == "ask":
        named = " or ".join(f"`{choice}`" for choice in read.choices[:4])
        return f"it may be several foods: write {named}" if named else "it may be several foods"
    if read.outcome == "unknown" or read.food not in tables.food_by_id:
        return "the tables know no food of that name"
    return None


def _why_uncounted(line: Counted, tables: Tables) -> str | None:
    if line.profile is None:
        other = f"; `calmlarder swap {line.food.name}` says what can stand in" if tables.swaps_of(line.food.id) else ""
        return f"no figure is known for the {', '.join(tables.unknown_of(line.food.id))} of {line.food.name}{other}"
    if line.amount is None and line.profile.anything:
        return f"it does not say how much {line.food.name}"
    return None


def _amount(read: IngredientRead, sure: Tolerance) -> Amount | None:
    """The amount of a line; None where it gives none, or none that can be."""
    if read.food is None or read.grams is None or not 0 < read.grams < 1_000_000:
        return None
    grams = Decimal(str(read.grams))
    high = grams if read.grams_high is None else max(grams, Decimal(str(read.grams_high)))
    return Amount(food=read.food, grams=grams, high=high, weighed=read.weighed, sure=sure)


def _breaks(food: Food, eaters: Eaters) -> str:
    if not suits_diet(food, eaters.diet):
        return f"{food.name} is not {eaters.diet}"
    met = allergens_met(food, eaters.avoid)
    return f"{food.name} holds or may hold {', '.join(met)}" if met else ""


_KINDS = frozenset({"spice", "herb", "acid", "oil", "butter", "soy-sauce", "salad-leaf", "citrus", "seed"})
_BESIDE = frozenset({"bread", "wrap"})  # without an amount they are eaten with it
_TO_SERVE = re.compile(
    r"\b(?:to|for) (?:serve|serving|garnish|garnishing|finish|finishing|decorate|decorating|topping|top|the table"
    r"|drizzle|drizzling|sprinkle|sprinkling|scatter|scattering|dollop|dolloping|spreading|dusting|passing)\b"
)
# A heading over what is put on each plate.
_ON_TOP = re.compile(r"\b(?:to serve|(?:for|on) (?:the )?top|toppings?|garnish|to finish)\b")
_HEADED = re.compile(r"\W*(?:optional )?(?:toppings?|garnish(?:es)?|(?:to|for) (?:serve|serving|top)|serve with)\s?:")
_A_SPRINKLE = Decimal("0.3")  # g a serving of a spice, a pinch: common practice, no source
_GARNISH = re.compile(r"\b(?:garnish\w*|decorate)\b")
_A_GARNISH = Decimal(3)  # g a serving: common practice, no source
_A_FEW = re.compile(r"\s*a (?:few|little|couple)\b")
_OF_A_FEW = Decimal("0.5")  # of a usual portion, as likely as twice that: common practice, no source
_OF_A_LIMIT = 4  # at most a quarter of any limit, else the cook must say how much: ours


def with_usual_amounts(
    reads: Sequence[IngredientRead], serves: int, limits: Profile, tables: Tables
) -> tuple[IngredientRead, ...]:
    """The lines, of which what has no amount has a usual portion a serving, up to twice that.

    Of seasonings where a portion brings little (`garlic powder` without an amount stays open), and of whatever is
    served beside the dish: that is swapped, or weighed, like all else.
    """
    found = []
    on_top = False
    for read in reads:
        on_top = bool(_ON_TOP.search(plain(read.text))) if read.outcome == "heading" else on_top
        found.append(_usual(read, serves, limits, tables, on_top))
    return tuple(found)


def _comes_cooked(food: Food) -> bool:
    """Whether it is a base that is cooked already (`hot cooked rice`): without an amount it goes beside the dish."""
    return food.roles[0] == "base" and food.state == "cooked"


def _usual(read: IngredientRead, serves: int, limits: Profile, tables: Tables, on_top: bool) -> IngredientRead:
    food = tables.food_by_id.get(read.food or "")
    if food is None or read.grams is not None or tables.unknown_of(food.id):
        return read
    most = _A_SPRINKLE if food.kind == "spice" else _A_GARNISH if _GARNISH.search(read.text.casefold()) else None
    portion = Decimal(food.portion_g) if most is None else min(Decimal(food.portion_g), most)
    portion *= _OF_A_FEW if _A_FEW.match(read.text.casefold()) else 1
    profile = load_profile_of(food, tables)
    rows = rows_of([Item(food.id, profile, Fraction(2 * portion), False)], limits)
    text = read.text.casefold()
    served = on_top or read.optional or food.kind in _BESIDE or bool(_TO_SERVE.search(text) or _HEADED.match(text))
    much = any(_OF_A_LIMIT * exact_grams(row.sum.likely) > row.cap.typical_g for row in rows)
    seasons = food.kind in _KINDS
    if not profile.anything or (not served and (much or (not seasons and not _comes_cooked(food)))):
        return read
    grams = float(portion * serves)
    told = f"taken as {float(portion):g} g a serving"
    return read.model_copy(update={"grams_low": 0.0, "grams": grams, "grams_high": 2 * grams, "assumed": told})

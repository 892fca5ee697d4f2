"""Which lines of a recipe count, and what each stands for."""

from collections.abc import Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.adapt.model import Amount, Eaters, Unread
from calmlarder.adapt.triggers import passes_alone
from calmlarder.adapt.worst import POWDERS, is_harmless, matters
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


class Counted(NamedTuple):
    """A line whose food is known. `amount` or `profile` is None where it cannot be told what it brings.

    `breaks` says how the food breaks diet or allergens, or that nobody knows how much there is of what passes a limit;
    nothing where it may be eaten.
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
            breaks = _breaks(food, eaters) or _passes_unmeasured(read, eaters, tables)
            line = Counted(place, read, food, _amount(read, eaters.sure), profiles[food.id], breaks)
            known.append(line)
            why = _why_uncounted(line, tables)
        if why is not None:
            harmless = read.outcome != "read" and is_harmless(read.text, read.choices, eaters, tables)
            unread.append(Unread(place=place, text=read.text, why=why, harmless=harmless))
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


def _passes_unmeasured(read: IngredientRead, eaters: Eaters, tables: Tables) -> str:
    """Why a food may not stay of which nobody knows how much there is: what a dish usually holds passes a limit.

    Of what is made with onion or garlic ten times that is enough: nobody knows how much of them it holds.
    """
    food = tables.food_by_id[read.food or ""]
    if not read.unsure or tables.unknown_of(food.id):
        return ""
    over = passes_alone(food.id, eaters, tables)
    over = over or (_holds_allium(food, tables) and matters(food.id, eaters, tables))
    return f"{read.unsure} {food.name}, and a usual amount may pass a limit" if over else ""


def _holds_allium(food: Food, tables: Tables) -> bool:
    parts = [food.id, *(row.part for row in tables.parts if row.food == food.id)]
    return any(one in POWDERS or tables.food_by_id[one].kind == "allium" for one in parts if one in tables.food_by_id)

"""`calmlarder cooked`: a dinner that `tonight` proposed was cooked."""

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.commands.given import log as given
from calmlarder.commands.inputs import food_named, household_of
from calmlarder.commands.moment import past_moment_of
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.cooked_text import cooked_text
from calmlarder.render.logged import eaten_line, eaten_object
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.household.cooking import Cooked

_MOST_GRAMS = 20_000  # of one food in a dish for at most twelve; beyond it is a slip of the pen: ours


def cooked(options: given.Cooked) -> int:
    """Deduct the lots, log each share, box the rest, as one action. Raises CannotGoOn where that cannot be."""
    from calmlarder.household.cooking import cook, proposed

    at = past_moment_of(options)
    # What was proposed is read, and forgotten, in the transaction that takes it out.
    with household_of(options) as household, household.store.transaction():
        dinner = proposed(household, options.number)
        household.lots()
        weighed = _weighed(options.weighed, dinner, household.tables)
        done = cook(household, dinner, weighed, options.boxes, at)
        manner = household.manner
    if options.json:
        print(json.dumps(_object(done, options.boxes), ensure_ascii=False, indent=2))
        return 0
    print(f"{cooked_text(done, manner)}.")
    for entry in done.by_person or ((done.eaten,) if done.eaten else ()):
        print(eaten_line(None, entry))
    if done.boxed is not None:
        lot = done.boxed
        print(f"boxed: {lot.line}, {lot.grams:g} g; {lot.days_left} d in the fridge ({done.about_boxes})")
    return 0


def _object(done: "Cooked", boxes: int) -> dict[str, Any]:
    lot = done.boxed
    return {
        "eaten": [eaten_object(None, one) for one in done.by_person or ((done.eaten,) if done.eaten else ())],
        "boxed": None if lot is None else {"line": lot.line, "grams": lot.grams, "days_left": lot.days_left},
        "not_boxed": done.about_boxes if boxes and lot is None else None,
    }


def _weighed(given: Sequence[str], dinner: "Dinner", tables: Tables) -> dict[str, int]:
    """Grams by lot id of what the scale showed; `LOT=G`, or `FOOD=G` where the dish holds one lot of it.

    Raises CannotGoOn for what is not in the dish, for a food of several lots, or no amount.
    """
    found = {}
    lots = {use.lot for use in dinner.uses}
    for text in given:
        name, _, grams = text.rpartition("=")
        number = grams.strip().removesuffix("g").strip()
        if not name or not number.isascii() or not number.isdigit() or int(number) > _MOST_GRAMS:
            remedy = 'write it like "firm tofu=180", or with the number of the item, "12=180"'
            raise CannotGoOn([Problem(where="--weighed", what=f"`{text}` says no grams", remedy=remedy)])
        name = name.strip()
        found[name if name in lots else _only_lot(food_named(name, "--weighed", tables), dinner)] = int(number)
    return found


def _only_lot(food: Food, dinner: "Dinner") -> str:
    """The id of the one lot of a food in the dish. Raises CannotGoOn where there is none, or several."""
    uses = [use for use in dinner.uses if use.food == food.id]
    if len(uses) == 1:
        return uses[0].lot
    if not uses:
        what = f"{food.name} is not in the dish"
        remedy = f"it holds {', '.join(dict.fromkeys(use.name for use in dinner.uses))}"
    else:
        what = f"the dish holds {len(uses)} items of {food.name}"
        ways = " or ".join(f"`{use.lot}={use.grams}` for {use.grams} g of `{use.line}`" for use in uses)
        remedy = f"say which one: {ways}"
    raise CannotGoOn([Problem(where="--weighed", what=what, remedy=remedy)])

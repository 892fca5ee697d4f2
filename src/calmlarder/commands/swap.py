"""`calmlarder swap FOOD`: what can stand in for a food."""

import json
from decimal import Decimal
from pathlib import Path

from calmlarder.commands.given.foods import Swap
from calmlarder.commands.inputs import allergens_of, at_fault, food_named, household_of, seats_of, tolerance_of
from calmlarder.household.larder import lots_to_cook
from calmlarder.household.swapping import Swaps, asked_for, grams_to_eat, swaps
from calmlarder.household.table import eaters_at
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.swaps.dish import Dish, dish_of, usual_grams
from calmlarder.swaps.model import MOST_GRAMS, Asked
from calmlarder.swaps.plate import Plate, plate_of
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from calmlarder.tables.rows import Food


def swap(options: Swap) -> int:
    """Say the substitutes; status 3 where nothing can stand in."""
    with household_of(options) as household:
        # `--from-larder` needs a larder.
        lots = lots_to_cook(household) if options.from_larder else [one.lot for one in household.lots()]
        tables = household.tables
        food = food_named(" ".join(options.food), "FOOD", household.plain_tables)
        dish = _dish(food, options.pattern) if options.pattern is not None else None
        plate = _plate(food, options.recipe, tables) if options.recipe is not None else None
        usual = usual_grams(food, dish) if dish is not None else food.portion_g
        if plate is not None and plate.grams is not None:
            usual = plate.grams
        eating = household.eating(options.profile, options.diet, allergens_of(options))
        asked = Asked(
            food=food,
            grams=usual if options.amount is None else _grams(options.amount),
            profile=eating.profile,
            sitting=options.sitting,
            diet=eating.diet,
            avoid=eating.avoid,
            sure=tolerance_of(options, household),
            at_home=grams_to_eat(lots, eating.avoid),
            only_at_home=options.from_larder,
        )
        seats = seats_of(options)
        if seats is not None:
            asked = asked_for(asked, eaters_at(household, seats, options.sitting), lots)
        found = swaps(household, asked, dish, plate.beside if plate else ())
    return _show(found, plate, options.json)


def _show(found: Swaps, plate: Plate | None, as_json: bool) -> int:
    from calmlarder.render.style import style_of_output
    from calmlarder.render.swap_text import swap_object, swap_text

    if found.faults:
        return at_fault("a substitute", found.faults)
    if as_json:
        more = {} if plate is None else {"not_counted": list(plate.not_counted)}
        print(json.dumps({**swap_object(found.answer), **more}, ensure_ascii=False, indent=2))
    else:
        print(swap_text(found.answer, found.tables, style_of_output()), end="")
        if plate is not None:
            print("The rest of the recipe is counted beside it, as its lines were read.")
        if plate is not None and plate.not_counted:
            print(f"Not counted, as the food, its amount or its figures are not known: {'; '.join(plate.not_counted)}.")
    return 0 if found.answer.substitutes else 3


def _grams(amount: float) -> Decimal:
    if not 0.1 <= amount <= MOST_GRAMS:  # also holds off what is no number
        remedy = f"give the grams of one person, from 0.1 to {MOST_GRAMS}"
        raise CannotGoOn([Problem(where="--amount", what=f"`{amount:g}` g is out of range", remedy=remedy)])
    return Decimal(str(round(amount, 1)))


def _dish(food: Food, name: str) -> Dish:
    """Where the food stands in the pattern. Raises CannotGoOn for one that is not there, or has no place for it."""
    from calmlarder.patterns.load import load_patterns

    patterns = {pattern.id: pattern for pattern in load_patterns(shipped("recipes"))}
    if name not in patterns:
        remedy = f"choose from: {', '.join(patterns)}"
        raise CannotGoOn([Problem(where="--in", what=f"there is no pattern {name!r}", remedy=remedy)])
    dish = dish_of(food, patterns[name])
    if dish is None:
        fitting = [pattern.id for pattern in patterns.values() if dish_of(food, pattern) is not None]
        remedy = f"it could stand in {', '.join(fitting)}" if fitting else "ask without --in"
        raise CannotGoOn([Problem(where="--in", what=f"{name} has no place for {food.name}", remedy=remedy)])
    return dish


def _plate(food: Food, name: str, tables: Tables) -> Plate:
    """One person's share of the recipe. Raises CannotGoOn where it tells no servings or no amount of the food."""
    from calmlarder.cookbook.bounds import MOST_SIGNS
    from calmlarder.cookbook.lines import LineReader
    from calmlarder.cookbook.read import read_recipe

    try:
        with Path(name).open("rb") as file:
            recipe = read_recipe(file.read(MOST_SIGNS + 1).decode("utf-8-sig"))
    except (OSError, ValueError) as error:
        what = f"cannot be read as text ({getattr(error, 'strerror', None) or type(error).__name__})"
        raise CannotGoOn([Problem(where="--in-recipe", what=what, remedy="give a file of UTF-8 text")]) from None
    if recipe.serves is None:
        remedy = "write `Serves 4` into it, with its own number"
        raise CannotGoOn([Problem(where="--in-recipe", what="does not say how many it serves", remedy=remedy)])
    reader = LineReader(tables)
    plate = plate_of(food.id, [reader.read(line) for line in recipe.ingredients], recipe.serves, tables)
    if plate.grams is None:
        remedy = "name the food as its line does, or give the line an amount"
        raise CannotGoOn([Problem(where="--in-recipe", what=f"no line gives an amount of {food.name}", remedy=remedy)])
    return plate

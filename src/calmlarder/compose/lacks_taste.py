"""What would season the nearest dinner, where the larder has nothing but salt and pepper for it."""

from calmlarder.and_list import and_list
from calmlarder.compose.market import lot_of
from calmlarder.compose.offer import offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.solve import Plan
from calmlarder.compose.taste import seasons
from calmlarder.intake.limit import limit_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# By kitchen, what any shop has; the last ones suit all. Common practice, no source.
_ASIAN = ("soy-sauce", "tamari", "ginger")
_SEASON = {
    "east-asian": _ASIAN,
    "southeast-asian": _ASIAN,
    "south-asian": ("cumin", "turmeric"),
    "middle-eastern": ("cumin", "lemon"),
    "latin": ("cumin", "lime"),
    "mediterranean": ("oregano", "lemon"),
    "northern": ("mustard", "chives"),
}
_ANYWHERE = ("lemon", "chives")
_MOST_NAMED = 2  # more is a shopping list: ours


def lacks_taste(plan: Plan, wanted: DinnerRequest, tables: Tables) -> tuple[str, ...]:
    """One sentence with what may be eaten and fits by itself, or none where something seasons the dish."""
    if wanted.sitting != "dinner" or any(seasons(plan.problem, use.option) for use in plan.uses):
        return ()
    foods = (tables.food_by_id[name] for name in (*_SEASON.get(plan.family, ()), *_ANYWHERE))
    named = list(dict.fromkeys(food.name for food in foods if _may_be_eaten(food, wanted, tables)))[:_MOST_NAMED]
    if not named:
        return ()
    them = "them" if len(named) > 1 else "it"
    return (f"So far it tastes of salt and pepper alone: add {and_list(named)}, if you have or buy {them}.",)


def _may_be_eaten(food: Food, wanted: DinnerRequest, tables: Tables) -> bool:
    things, _ = offer([lot_of(food, wanted.people)], wanted, tables)
    if not things:
        return False
    fits = limit_of(food, wanted.limits, tables, wanted.tolerance).grams_eye
    return fits is None or float(fits) >= float(food.portion_g)

"""What can be served in the place of something beside the dish that passes a limit at a usual portion."""

from collections.abc import Iterable, Mapping

from calmlarder.adapt.model import Eaters
from calmlarder.adapt.triggers import passes_alone
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


def stand_ins_beside(over: Mapping[str, Iterable[str]], eaters: Eaters, tables: Tables) -> tuple[str, ...]:
    """One name for each of what passes, each once: the first in the tables that does not (`lactose-free milk`)."""
    found = (_first(meant, eaters, tables) for meant in over.values())
    return tuple(dict.fromkeys(one for one in found if one))


def _first(meant: Iterable[str], eaters: Eaters, tables: Tables) -> str:
    """The first stand-in of foods that a word may mean, in the order of the tables; nothing where none will do."""
    rows = [row for food in sorted(meant) for row in tables.swaps_of(food) if not row.part_of]
    foods = (tables.food_by_id[row.to] for row in rows)
    return next((food.name for food in foods if _may_stand(food, eaters, tables)), "")


def _may_stand(food: Food, eaters: Eaters, tables: Tables) -> bool:
    allowed = suits_diet(food, eaters.diet) and not allergens_met(food, eaters.avoid)
    return allowed and not tables.unknown_of(food.id) and not passes_alone(food.id, eaters, tables)

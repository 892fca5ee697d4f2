"""What a food of a dinner is called: as the dinner has it, and as the tables do, so that either name finds it."""

from typing import TYPE_CHECKING

from calmlarder.household.household import Household

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner


def name_in(kitchen: Household, food: str, dinner: "Dinner | None") -> str:
    """Both names where they differ; that of the tables for what is not in the dinner."""
    uses = dinner.uses if dinner is not None else ()
    here = next((kitchen.manner.name(use.name) for use in uses if use.food == food), "")
    tables_name = kitchen.name_of(food)
    return f"{here}, {tables_name}" if here and here != tables_name else tables_name


def names_in(kitchen: Household, dinner: "Dinner | None") -> dict[str, str]:
    """Ids of the foods of a dinner by what each is called."""
    uses = dinner.uses if dinner is not None else ()
    return {name_in(kitchen, use.food, dinner): use.food for use in uses}

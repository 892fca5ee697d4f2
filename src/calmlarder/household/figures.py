"""One food as this home reads it: its figures with their sources, and the limits of one's own that are on it."""

from calmlarder.household.household import Household
from calmlarder.household.settings import people_of
from calmlarder.render.food_text import PER, food_text


def figures_of(household: Household, food: str) -> str:
    """The whole food, with the sources of its figures in words; its portion and name in the home's own measures."""
    told = food_text(household.tables.food_by_id[food], household.tables, on_screen=True)
    of_it, per, figures = told.partition(f"\n{PER}")
    return household.manner.told(of_it) + _own_limits_on(household, food) + per + figures


def _own_limits_on(household: Household, food: str) -> str:
    """My own limits on what it holds, and whether they hold now."""
    held = {name for name, row in household.tables.fermentables_of(food).items() if row.g_per_100g or row.high}
    mine = [own for own in people_of(household.settled())[0].own_limits if own.component in held]
    if not mine:
        return ""
    from calmlarder.render.challenge_names import limit_line

    holds = household.profile()
    now = "" if holds.own_limits else f"; now the limits of {holds.name} hold"
    return "\n".join([f"\nyour own limits{now}", *(f"  {limit_line(own)}" for own in mine)])

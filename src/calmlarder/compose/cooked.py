"""A dinner as it was cooked, as one entry of the log: what each person had of it."""

from collections.abc import Mapping
from datetime import datetime

from calmlarder.compose.dinner import Dinner
from calmlarder.sitting.eaten import EVERYONE, ME, Eaten, Portion, loads_of, most_of
from calmlarder.tables.book import Tables


def share_eaten(dinner: Dinner, weighed: Mapping[str, int], at: datetime, tables: Tables) -> Eaten:
    """One person's equal share, with the amounts the scale showed where it was asked.

    `weighed` gives grams of the whole dish by food id. A dish for one is mine; a shared one counts for everyone.
    """
    portions = []
    for use in dinner.uses:
        on_scale = use.how == "weigh"
        grams = weighed.get(use.food, use.grams)
        most = most_of(grams, grams, on_scale, dinner.sureness)
        portions.append(Portion(tables.food_by_id[use.food], grams / dinner.people, most / dinner.people))
    loads, unknown = loads_of(portions, tables)
    return Eaten(
        at=at,
        who=ME if dinner.people == 1 else EVERYONE,
        text=dinner.title,
        food="",
        title=dinner.title,
        grams=round(sum(portion.grams for portion in portions), 1),
        loads=loads,
        unknown=unknown,
    )

"""`calmlarder limit FOOD`: how much of one food fits one sitting."""

import json

from calmlarder.commands.given.foods import Limit
from calmlarder.commands.inputs import food_named, household_of, seats_of, tolerance_of
from calmlarder.household.household import Household
from calmlarder.intake.cap_words import component_words
from calmlarder.intake.limit import limit_of
from calmlarder.render.limit_text import limit_object, limit_text, table_limit_object, table_limit_text
from calmlarder.tables.rows import Food


def limit(options: Limit) -> int:
    """Say the amounts; a food with unknown figures has no limit that can be told."""
    household = household_of(options)
    tables = household.tables
    food = food_named(" ".join(options.food), "FOOD", tables)
    profile = household.eating(options.profile, None, ()).profile
    unknown = tables.unknown_of(food.id)
    if unknown:
        if options.json:
            empty = dict.fromkeys(("grams_weighed", "grams_eye", "binding", "household"))
            print(json.dumps({"food": food.id, **empty, "unknown": list(unknown)}))
        else:
            print(f"{food.name}: no figure is known for its {component_words(unknown)}, so no limit can be told.")
        return 3
    with household:
        if options.eaters is not None:
            return _at_table(options, household, food)
        answer = limit_of(food, profile.at(options.sitting), tables, tolerance_of(options, household))
    if options.json:
        print(json.dumps(limit_object(answer), ensure_ascii=False))
    else:
        print(limit_text(answer, profile.name, tables), end="")
    return 0


def _at_table(options: Limit, household: Household, food: Food) -> int:
    """The amounts of each who is named, and of a dish that they share."""
    from calmlarder.household.table import eaters_at
    from calmlarder.intake.limit_at_table import limits_at_table

    seats = seats_of(options)
    assert seats is not None
    eaters = eaters_at(household, seats, options.sitting)
    answer = limits_at_table(food, eaters, options.sitting, household.tables, tolerance_of(options, household))
    if options.json:
        print(json.dumps(table_limit_object(answer), ensure_ascii=False))
    else:
        print(table_limit_text(answer, household.tables), end="")
    return 0

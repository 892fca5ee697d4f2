"""`calmlarder swap FOOD`: what can stand in for a food."""

import argparse
import json
from collections import defaultdict
from decimal import Decimal

from calmlarder.commands.kitchen_table import allergens_of, at_fault, day_of, folders_of, food_named, tables_of
from calmlarder.larder.usable import why_unfit
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.sitting.profile import profile_named
from calmlarder.swaps.model import MOST_GRAMS, Asked
from calmlarder.swaps.rank import substitutes
from calmlarder.swaps.verify import verify
from calmlarder.tables.book import Tables


def swap(options: argparse.Namespace) -> int:
    """Say the substitutes; status 3 where nothing can stand in."""
    tables = tables_of(options)
    food = food_named(" ".join(options.food), "FOOD", tables)
    asked = Asked(
        food=food,
        grams=food.portion_g if options.amount is None else _grams(options.amount),
        profile=profile_named(options.profile, tables),
        diet=options.diet,
        avoid=allergens_of(options),
        at_home=_at_home(options, tables),
        only_at_home=options.from_larder,
    )
    answer = substitutes(asked, tables)

    from calmlarder.export.style import style_of_output
    from calmlarder.export.swap_text import swap_object, swap_text

    request = {"profile": asked.profile.name, "diet": asked.diet, "avoid": asked.avoid}
    faults = verify(swap_object(answer), request, folders_of(options))
    if faults:
        return at_fault("a substitute", faults)
    if options.json:
        print(json.dumps(swap_object(answer), ensure_ascii=False, indent=2))
    else:
        print(swap_text(answer, tables, style_of_output()), end="")
    return 0 if answer.substitutes else 3


def _grams(amount: float) -> Decimal:
    if not 0.1 <= amount <= MOST_GRAMS:  # also holds off what is no number
        remedy = f"give the grams of one person, from 0.1 to {MOST_GRAMS}"
        raise CannotGoOn([Problem(where="--amount", what=f"`{amount:g}` g cannot be", remedy=remedy)])
    return Decimal(str(round(amount, 1)))


def _at_home(options: argparse.Namespace, tables: Tables) -> dict[str, float]:
    """Grams of each food in the kept larder that may be eaten. `--from-larder` needs a larder."""
    from calmlarder.commands.larder import lots_at_home, lots_kept

    today = day_of(options)
    lots = (lots_at_home if options.from_larder else lots_kept)(options, tables, today)
    grams: dict[str, float] = defaultdict(float)
    for lot in lots:
        if why_unfit(lot) is None:
            grams[lot.food] += lot.grams
    return dict(grams)

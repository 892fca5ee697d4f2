"""What a dinner leaves in a pack that it opens or thaws, told with it: half a tin is forgotten at the back."""

from collections.abc import Sequence

from calmlarder.compose.called import name_said
from calmlarder.compose.solve import Plan, Use
from calmlarder.larder.freezing import thaws
from calmlarder.larder.opening import left_in_open_pack, left_of_a_block
from calmlarder.tables.book import Tables

_WORTH_A_WORD_G = 25  # less is eaten up beside it: ours
_WORTH_A_MEAL_G = 60  # of what is frozen: nobody saws off less. Ours


def left_open(plan: Plan, tables: Tables, said: Sequence[str] = ()) -> tuple[str, ...]:
    """A sentence with the grams and days of each (keeping.csv), and one of what need not thaw.

    `said` is told of the dinner before: of what has its rest there nothing is said again.
    """
    told, cold = [], []
    for use in plan.uses:
        food, lot = use.option.offered.food, use.option.offered.lot
        name = name_said(food, lot.line, tables)
        if any(f"the rest of the {name}" in one or f"g of the {name} is left" in one for one in said):
            continue
        if any(one.startswith(food.name.capitalize()) and "g is left" in one for one in said):
            continue
        if thaws(lot, food):
            cold += [f"{use.grams} g of the {name}"] if lot.grams - use.grams >= _WORTH_A_MEAL_G else []
            continue
        told += _in_its_pack(use, name, tables)
    sentences = [f"Left in what you open: {', '.join(told)}. Keep it in the fridge in a lidded box."] if told else []
    if cold:
        sentences.append(
            f"Thaw no more than {', '.join(cold)}; what is thawed with it keeps a day in the fridge, and is not frozen "
            "again raw."
        )
    return tuple(sentences)


def _in_its_pack(use: Use, name: str, tables: Tables) -> list[str]:
    food, lot = use.option.offered.food, use.option.offered.lot
    rest = max(
        left_in_open_pack(lot, lot.grams - use.grams, tables), left_of_a_block(lot, lot.grams - use.grams, tables)
    )
    row = tables.keeping_of(food, "fridge", "opened")
    if rest < _WORTH_A_WORD_G or row is None:
        return []
    most = row.days if lot.days_left is None or lot.place != "fridge" else min(row.days, max(lot.days_left, 1))
    days = f"{most} days" if most > 1 else "a day"
    return [f"{name} ({rest:.0f} g, {days})"]

"""The smallest change once more, as one mixed-integer linear programme for SciPy's HiGHS, and made-up recipes.

Written from the rules and not from the CP-SAT model: it reads the same choices (foods, grams, prices), works out
what each brings from the figures itself, and knows nothing of whole numbers.
"""

import random
from collections.abc import Sequence

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from calmlarder.adapt import prices
from calmlarder.adapt.choices import Choice, Open
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap


def lowest_price(lines: Sequence[Open], serves: int, profile: Profile) -> float | None:
    """The price of the smallest change in thousandths of a point; None where there is none."""
    flat = [(n, choice) for n, line in enumerate(lines) for choice in line.choices]
    counts = list(range(serves, serves * prices.MOST_SERVINGS + 1))
    columns = len(flat) + len(counts)
    price = [choice.price for _, choice in flat]
    price += [1000 * prices.SMALLER * (1 - serves / count) for count in counts]
    rows: list[np.ndarray] = []
    low: list[float] = []
    high: list[float] = []

    def row(values: Sequence[float], least: float, most: float) -> None:
        rows.append(np.array(values, dtype=float))
        low.append(least)
        high.append(most)

    for n in range(len(lines)):
        row([float(m == n) for m, _ in flat] + [0.0] * len(counts), 1, 1)
    row([0.0] * len(flat) + [1.0] * len(counts), 1, 1)
    weight = sum(line.weight for line in lines)
    row([c.lost / weight for _, c in flat] + [0.0] * len(counts), -np.inf, prices.MOST_LOST)
    foods = {one.food.id for _, choice in flat for one in choice.brings}
    for cap in profile.sitting_caps:
        row(_share(flat, cap, None, serves) + [-count / serves for count in counts], -np.inf, 0)
    for cap in profile.food_caps:
        for food in foods:
            row(_share(flat, cap, food, serves) + [-count / serves for count in counts], -np.inf, 0)
    result = milp(
        np.array(price) / 1000,
        integrality=np.ones(columns),
        bounds=Bounds(0, 1),
        constraints=LinearConstraint(np.array(rows), np.array(low), np.array(high)),
        options={"mip_rel_gap": 0.0},
    )
    if result.status == 2:
        return None
    assert result.status == 0, result.message
    return float(result.fun) * 1000


def _share(flat: Sequence[tuple[int, Choice]], cap: Cap, food: str | None, serves: int) -> list[float]:
    """What each choice takes of a cap, were the dish cut into `serves`."""
    shares = []
    for _, choice in flat:
        load = 0.0
        for one in choice.brings:
            if (food and one.food.id != food) or (cap.applies_to and one.food.cutoff_class not in cap.applies_to):
                continue
            amount = one.amount
            if cap.holds == "worst":
                extra = float(amount.grams) + 2 if amount.weighed else float(amount.grams) * 1.3
                load += one.figures.worst[cap.group] * max(extra, float(amount.high)) / 100_000
            else:
                load += one.figures.plan[cap.group] * float(amount.grams) / 100_000
        shares.append(load / float(cap.grams) / serves)
    return shares


def made_up_recipe(tables: Tables, size: int, serves: int, seed: int) -> list[IngredientRead]:
    """`size` lines over the real tables, in the amounts of such a dish; the same for the same seed."""
    rng = random.Random(seed)
    usable = [food for food in tables.foods if not tables.unknown_of(food.id)]
    return [
        line(food.name, food.id, round(float(food.portion_g) * rng.uniform(0.1, 1.2) * serves, 1), rng.random() < 0.5)
        for food in (rng.choice(usable) for _ in range(size))
    ]


def line(name: str, food: str, grams: float, weighed: bool = True, **more: object) -> IngredientRead:
    """A line as if it had been read."""
    values = {"grams_low": grams, "grams": grams, "grams_high": grams, "weighed": weighed, **more}
    return IngredientRead(text=f"{grams:g} g {name}", outcome="read", food=food, **values)

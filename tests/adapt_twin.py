"""The smallest change once more, as one mixed-integer linear programme for SciPy's HiGHS, and made-up recipes.

Written from the rules and not from the CP-SAT model: it reads the same choices (foods, grams, prices), works out
what each brings from the figures itself, and knows nothing of whole numbers.
"""

import random
from collections.abc import Sequence

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import csr_matrix

from calmlarder.adapt import prices
from calmlarder.adapt.choice import Choice, Open
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap


def lowest_price(lines: Sequence[Open], serves: int, limits: Profile) -> float | None:
    """The price of the smallest change in thousandths of a point; None where there is none."""
    flat = [(n, choice) for n, line in enumerate(lines) for choice in line.choices]
    counts = list(range(serves, max(serves, int(serves * prices.MOST_SERVINGS)) + 1))
    foods = {food for _, choice in flat for one in choice.brings for food in one.profile.foods}
    pairs: list[tuple[Cap, str | None]] = [(cap, None) for cap in limits.sitting_caps]
    pairs += [(cap, food) for cap in limits.food_caps for food in sorted(foods)]
    columns = len(flat) + len(counts) + len(pairs)  # the last say of each limit whether it is full to the brim
    price = [choice.price for _, choice in flat]
    price += [1000 * prices.SMALLER * (1 - serves / count) for count in counts]
    price += [1000 * prices.FULL] * len(limits.sitting_caps) + [0.0] * len(limits.food_caps) * len(foods)
    rows: list[np.ndarray] = []
    low: list[float] = []
    high: list[float] = []

    def row(values: Sequence[float], least: float, most: float) -> None:
        rows.append(np.array([*values, *[0.0] * (columns - len(values))], dtype=float))
        low.append(least)
        high.append(most)

    for n in range(len(lines)):
        row([float(m == n) for m, _ in flat] + [0.0] * len(counts), 1, 1)
    row([0.0] * len(flat) + [1.0] * len(counts), 1, 1)
    weight = sum(line.weight for line in lines)
    row([c.lost / weight for _, c in flat] + [0.0] * len(counts), -np.inf, prices.MOST_LOST)
    place = np.array([n for n, _ in flat])

    def limit(brings: np.ndarray, most: float) -> None:
        """No row where not even what brings most in each line, for the fewest, could pass it."""
        if sum(brings[place == n].max() for n in range(len(lines))) > most * serves:
            row([*brings, *(-most * count for count in counts)], -np.inf, 0)

    bounded = []  # what may come at most under each limit: likely, how far off by item, and grams a serving
    for place_of_full, (cap, food) in enumerate(pairs):
        likely, off, by_eye = _brings(flat, cap, food)
        typical = float(cap.typical_g) + 0.005
        shown = typical if food or cap.typical_g < prices.LEAST_SHOWN else float(cap.typical_g * prices.SHOWN_AS_FULL)
        row(list(likely) + [-min(typical, shown) * count for count in counts], -np.inf, 0)
        brim = prices.BRIM / prices.OF_A_BRIM * typical
        full = [0.0] * len(pairs)
        full[place_of_full] = -float(likely.sum())
        row([*likely, *(-brim * count for count in counts), *full], -np.inf, 0)
        for wrong in by_eye.values():
            row(list(likely + wrong) + [-typical * count for count in counts], -np.inf, 0)
        if cap.at_most_g is not None and off:
            most = float(cap.at_most_g) + 0.005
            whole = food or cap.typical_g < prices.LEAST_SHOWN
            most = most if whole else min(most, float(cap.at_most_g * prices.SHOWN_AS_FULL))
            bounded.append((likely, np.array(list(off.values())), most))
    while True:
        result = milp(
            np.array(price) / 1000,
            integrality=np.ones(columns),
            bounds=Bounds(0, 1),
            constraints=LinearConstraint(csr_matrix(np.array(rows)), np.array(low), np.array(high)),
            options={"mip_rel_gap": 0.0},
        )
        if result.status == 2:
            return None
        assert result.status == 0, result.message
        # A row for every two items would fill the memory: only those whose two largest pass a limit get theirs.
        taken, serving = (
            np.round(result.x[: len(flat)]),
            float(np.round(result.x[len(flat) : len(flat) + len(counts)]) @ np.array(counts)),
        )
        passed = False
        for likely, each, most in bounded:
            largest = np.argsort(each @ taken)[-2:]
            whole = likely + each[largest].sum(axis=0)
            if whole @ taken > most * serving + 1e-9:
                row(list(whole) + [-most * count for count in counts], -np.inf, 0)
                passed = True
        if not passed:
            return float(result.fun) * 1000


def _brings(
    flat: Sequence[tuple[int, Choice]], cap: Cap, food: str | None
) -> tuple[np.ndarray, dict[str, np.ndarray], dict[str, np.ndarray]]:
    """Grams each choice brings of a limit in the whole dish: likely, how far off by item, and misjudged by item."""
    likely = np.zeros(len(flat))
    off: dict[str, np.ndarray] = {}
    by_eye: dict[str, np.ndarray] = {}
    for k, (_, choice) in enumerate(flat):
        for one in choice.brings:
            amount, item = one.amount, one.food.id
            grams, eye = float(amount.grams), 0.3
            eye = max(eye, np.ceil(100 * (float(amount.high) / grams - 1) - 1e-9) / 100)
            # Figures count in whole mg per 100 g, rounded up once for each food, as the agreed rule has it.
            typical = error = deviation = 0.0
            for part in one.profile.parts:
                if not cap.covers(part.cutoff_class) or food not in {None, part.food}:
                    continue
                exact, wrong = (float(figure) for figure in part.figures.exact[cap.group])
                share = float(part.share)
                typical += share * _up(exact)
                error += share * _up(wrong)
                deviation += share * _up(float(np.hypot(eye * exact, wrong)))
            load = grams * _up(typical) / 100_000
            error = (grams * _up(error) + 2 * _up(typical)) / 100_000
            deviation = grams * _up(deviation) / 100_000
            likely[k] += load
            off.setdefault(item, np.zeros(len(flat)))[k] += error if amount.weighed else deviation
            if not amount.weighed:
                by_eye.setdefault(item, np.zeros(len(flat)))[k] += eye * load
    return likely, off, by_eye


def _up(figure: float) -> float:
    return float(np.ceil(figure - 1e-9))


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

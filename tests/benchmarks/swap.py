"""A swap once the tables are loaded, as a multiple of loading them.

Run: python tests/benchmarks/swap.py. Aim: under 50 ms a swap on two cores.
"""

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.intake.profile import profile_named
from calmlarder.patterns.load import load_patterns
from calmlarder.swaps.dish import dish_of
from calmlarder.swaps.model import Asked
from calmlarder.swaps.rank import substitutes
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped

FOODS = ("garlic", "onion-brown", "cauliflower", "mushroom-button", "chickpeas-boiled", "carrot", "rice-white-cooked")


def main() -> None:
    """Listed and computed swaps, alone and in a dish; the tables' own lookups are warm, as in the program."""
    start = time.perf_counter()
    tables = load_tables([shipped("ingredient_tables")])
    loading = time.perf_counter() - start
    profile = profile_named("elimination", tables)
    dish = next(pattern for pattern in load_patterns(shipped("recipes")) if pattern.id == "stir-fry")
    substitutes(Asked(food=tables.food_by_id["garlic"], grams=tables.foods[0].portion_g, profile=profile), tables)
    times = []
    for name in FOODS:
        food = tables.food_by_id[name]
        for place in (None, dish_of(food, dish)):
            start = time.perf_counter()
            substitutes(Asked(food=food, grams=food.portion_g, profile=profile), tables, place)
            times.append(time.perf_counter() - start)
    middle, worst = statistics.median(times), max(times)
    print(f"a swap: {middle / loading:.3f} times loading the tables, {worst / loading:.3f} at the most")
    print(f"that is {1000 * middle:.1f} ms, {1000 * worst:.1f} ms at the most (wanted 50 ms)")


if __name__ == "__main__":
    main()

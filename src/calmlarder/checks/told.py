"""Steps and timeline of a dinner beside its amounts: every food comes in once, and in one order."""

import re
from collections import Counter
from collections.abc import Mapping
from typing import Any

from calmlarder.checks.tables import Row


def told_faults(dinner: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    """What the steps or the timeline leave out, tell twice, or tell in another order. Amounts are in g of the dish."""
    moments = [moment["adds"] for moment in dinner["timeline"]]
    come_in = Counter(food for adds in moments for food in adds)
    used = Counter(food for _, food in {(use["slot"], use["food"]) for use in dinner["uses"]})
    faults = [
        f"{food} comes in {come_in[food]} times in the timeline, not {used[food]}"
        for food in sorted({*come_in, *used})
        if come_in[food] != used[food]
    ]
    grams: Counter[str] = Counter()
    for use in dinner["uses"]:
        grams[use["food"]] += use["grams"]
    places: dict[str, tuple[int, int]] = {}
    names = {use["food"]: use["name"] for use in dinner["uses"]}
    pinches = {use["food"] for use in dinner["uses"] if use["household"] == "a pinch"}
    for food in (food for food, times in used.items() if times == 1 and food in foods):
        words = f"a pinch of {names[food]}" if food in pinches else f"{grams[food]} g {names[food]}"
        counted = rf"|(?<!\d)\d+ {re.escape(names[food])} \({grams[food]} g\)"  # 2 eggs (110 g)
        there = [(n, re.search(re.escape(words) + counted, step)) for n, step in enumerate(dinner["steps"])]
        said = [(number, found.start()) for number, found in there if found]
        if len(said) != 1:
            faults.append(f"the steps say `{words}` {len(said)} times")
        elif not dinner["steps"][said[0][0]].startswith("Weigh "):
            places[food] = said[0]
    order = [number for number, adds in enumerate(moments) for food in adds if food in places]
    by_steps = sorted(places, key=lambda food: places[food])
    by_time = {food: number for number, adds in reversed(list(enumerate(moments))) for food in adds}
    if [by_time.get(food) for food in by_steps] != order:
        faults.append("the steps and the timeline have another order")
    return faults

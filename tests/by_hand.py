"""The limits of a sitting recounted in floats from foods.csv, mixtures.csv and fermentables.csv, for the tests.

Nothing here calls the program's own sums. The cut-offs are those of Varney et al. 2017 (doi:10.1111/jgh.13698); what
holds beside them is told in the README, "How it decides".
"""

import csv
from collections import defaultdict
from collections.abc import Iterable
from functools import cache
from math import hypot
from pathlib import Path

TABLES = Path(__file__).parents[1] / "ingredient_tables"
# Varney et al. 2017: grams of one food at one sitting; core is grains, pulses, nuts and seeds.
VARNEY_2017 = {
    ("oligosaccharides", "core"): 0.30, ("oligosaccharides", "fresh"): 0.20, ("oligosaccharides", "other"): 0.20,
    ("excess_fructose", "core"): 0.15, ("excess_fructose", "fresh"): 0.40, ("excess_fructose", "other"): 0.15,
    ("lactose", ""): 1.00, ("sorbitol", ""): 0.20, ("mannitol", ""): 0.20, ("polyols", ""): 0.40,
}  # fmt: skip
# All foods of a dinner: one food of each class at its cut-off; a quarter of the 3 g a day of Halmos et al. 2014.
SITTING = {"oligosaccharides": 0.50, "lactose": 1.00, "excess_fructose": 0.40, "polyols": 0.40, "total": 0.75}
AT_MOST = 1.6  # times a limit: ours
EXACT = 0.005  # g: figures carry no more
BY_EYE = 0.3  # common practice, no source
SHARE = {"analysed": 0.3, "published": 0.3, "borrowed": 0.5, "recalled": 0.5, "assumed": 0.5}
COMPONENTS = ("fructans", "gos", "lactose", "fructose", "glucose", "sorbitol", "mannitol")
PARTS = {
    "oligosaccharides": ("fructans", "gos"), "lactose": ("lactose",), "excess_fructose": ("excess",),
    "sorbitol": ("sorbitol",), "mannitol": ("mannitol",), "polyols": ("sorbitol", "mannitol"),
    "total": ("fructans", "gos", "sorbitol", "mannitol", "excess"),
}  # fmt: skip

Figure = tuple[float, float]  # g per 100 g that are typical, and by how much it may be more


def rows(name: str) -> list[dict[str, str]]:
    with (TABLES / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@cache
def foods() -> dict[str, dict[str, str]]:
    return {row["id"]: row for row in rows("foods")}


@cache
def parts_of() -> dict[str, dict[str, float]]:
    """Grams of each part of a mixture in a gram of it."""
    found: dict[str, dict[str, float]] = defaultdict(dict)
    for row in rows("mixtures"):
        found[row["food"]][row["part"]] = float(row["grams"])
    return {
        food: {part: grams / sum(parts.values()) for part, grams in parts.items() if part != "water"}
        for food, parts in found.items()
    }


@cache
def figures() -> dict[str, dict[str, Figure]]:
    """By food and component, `excess` for fructose in excess of glucose."""
    found: dict[str, dict[str, Figure]] = defaultdict(dict)
    high: dict[tuple[str, str], float] = {}
    for row in rows("fermentables"):
        typical, upper = float(row["g_per_100g"]), float(row["high"] or 0)
        off = max(upper - typical, SHARE[row["basis"]] * typical) if typical else upper / 2
        found[row["food"]][row["component"]] = (typical, off)
        high[row["food"], row["component"]] = upper
    for food in parts_of():
        _add_sum(food, found)
    for food, known in found.items():
        if {"fructose", "glucose"} <= set(known):
            fructose, glucose = known["fructose"][0], known["glucose"][0]
            excess, upper = max(0.0, fructose - glucose), high.get((food, "fructose"), 0.0)
            known["excess"] = (excess, max(0.0, upper - glucose - excess) if upper else 0.08 * fructose)
    return found


def _add_sum(food: str, found: dict[str, dict[str, Figure]]) -> None:
    """What no row tells of a mixture is the sum over its parts."""
    for part in parts_of()[food]:
        if part in parts_of():
            _add_sum(part, found)
    for name in set(COMPONENTS) - set(found[food]):
        if all(name in found[part] for part in parts_of()[food]):
            of_parts = [(found[part][name], share) for part, share in parts_of()[food].items()]
            found[food][name] = (sum(f[0] * share for f, share in of_parts), sum(f[1] * share for f, share in of_parts))


def known(food: str) -> bool:
    return set(COMPONENTS) <= set(figures()[food])


@cache
def _with_own_rows() -> frozenset[str]:
    return frozenset(row["food"] for row in rows("fermentables"))


def leaves(food: str, grams: float) -> list[tuple[str, float]]:
    """What counts: a mixture without figures of its own counts as its parts."""
    if food not in parts_of() or food in _with_own_rows():
        return [(food, grams)]
    return [leaf for part, share in parts_of()[food].items() for leaf in leaves(part, grams * share)]


def likely(food: str, grams: float) -> dict[str, float]:
    """Grams of each group that are likely."""
    return {
        group: sum(figures()[leaf][name][0] * g / 100 for leaf, g in leaves(food, grams) for name in names)
        for group, names in PARTS.items()
    }


def off(food: str, grams: float, group: str, eye: float = BY_EYE) -> float:
    """Grams of a group by which a food may bring more: its composition, with its amount judged by eye."""
    own = [figures()[food][name] for name in PARTS[group]]
    typical, error = sum(one[0] for one in own), hypot(*(one[1] for one in own))
    return grams * hypot(eye * typical, error) / 100


def at_most(food: str, group: str) -> float:
    """Grams of a group in 100 g at the upper end of composition."""
    own = [figures()[food][name] for name in PARTS[group]]
    return sum(one[0] for one in own) + hypot(*(one[1] for one in own))


def passed(plate: Iterable[tuple[str, float]]) -> set[str]:
    """Groups that foods eaten together, judged by eye, bring too much of."""
    items = [leaves(food, grams) for food, grams in plate]
    over = {group for group, cut in SITTING.items() if not _fits(items, group, cut)}
    for food in {leaf for item in items for leaf, _ in item}:
        alone = [[(leaf, grams) for leaf, grams in item if leaf == food] for item in items]
        own_class = foods()[food]["cutoff_class"]
        over |= {g for (g, kind), cut in VARNEY_2017.items() if kind in {"", own_class} and not _fits(alone, g, cut)}
    return over


def _fits(items: list[list[tuple[str, float]]], group: str, cut: float) -> bool:
    loads = [sum(sum(figures()[food][name][0] for name in PARTS[group]) * g / 100 for food, g in one) for one in items]
    errors = sorted((sum(off(food, g, group) for food, g in one) for one in items), reverse=True)
    return (
        sum(loads) + BY_EYE * max(loads, default=0) <= cut + EXACT + 1e-9
        and sum(loads) + sum(errors[:2]) <= AT_MOST * cut + EXACT + 1e-9
    )

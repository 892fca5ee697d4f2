"""Made-up larders whose truth is known, and a recount of dinners from it and from the CSV rows alone.

Nothing of calmlarder is imported here: what a lot is, its dates and its grams are known because they were made up
here; what a food holds is read from the tables' own cells, parts of mixtures among them.
"""

import csv
import random
from collections.abc import Collection, Iterator, Mapping
from datetime import date, timedelta
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

TABLES = Path(__file__).parents[1] / "ingredient_tables"
TODAY = date(2026, 3, 11)
ALLERGENS = ("celery", "crustaceans", "eggs", "fish", "gluten", "lupin", "milk", "molluscs", "mustard", "nuts", "peanuts",
             "sesame", "soya", "sulphites")  # fmt: skip
DIETS = ("vegan", "vegetarian", "omnivore")
_COOKED = {"cooked", "boiled", "roasted"}
_MAINS = {
    "base": ("rice-white-cooked", "potato", "potato-boiled", "rice-noodles-dry", "pasta-gluten-free-dry",
             "polenta-dry", "quinoa-cooked", "tortilla-corn", "rice-white-dry", "bread-sourdough-spelt"),
    "protein": ("tofu-firm", "tempeh", "egg", "tofu-smoked", "chickpeas-canned", "salmon", "lentils-canned", "feta",
                "chicken-breast", "edamame", "prawns", "cod"),
    "vegetable": ("spinach", "carrot", "courgette", "broccoli", "pepper-red", "kale", "pak-choi", "tomato", "parsnip",
                  "cabbage-white", "aubergine", "mushroom-oyster", "green-beans", "lettuce", "cucumber"),
}  # fmt: skip

Row = dict[str, str]


class Made(NamedTuple):
    """One lot as it was made up: its line says no more and no less."""

    line: str
    food: str
    grams: int
    dates: tuple[tuple[str, date], ...]


class Case(NamedTuple):
    """A larder and who eats from it; `lots` by id."""

    lots: Mapping[str, Made]
    people: int
    diet: str
    avoid: tuple[str, ...]

    @property
    def lines(self) -> list[str]:
        return [made.line for made in self.lots.values()]


def cells(name: str) -> list[Row]:
    with (TABLES / name).open(encoding="utf-8-sig", newline="") as file:
        return [{key: (cell or "").strip() for key, cell in row.items()} for row in csv.DictReader(file)]


@cache
def foods() -> dict[str, Row]:
    return {row["id"]: row for row in cells("foods.csv")}


@cache
def parts() -> dict[str, dict[str, Fraction]]:
    found: dict[str, dict[str, Fraction]] = {}
    for row in cells("mixtures.csv"):
        found.setdefault(row["food"], {})[row["part"]] = Fraction(row["grams"])
    return found


@cache
def keeping() -> dict[tuple[str, str, str], tuple[int, bool]]:
    return {
        (row["food"], row["place"], row["state"]): (int(row["days"]), row["kind"] == "safety")
        for row in cells("keeping.csv")
    }


def larder(seed: int, size: int = 16) -> Case:
    """The same for the same seed: two dates on half of the lines, mixtures among them."""
    rng = random.Random(seed)
    usable = [one for one in foods().values() if one["minutes"]]
    chosen = [foods()[food] for role, n in (("base", 2), ("protein", 3), ("vegetable", 4))
              for food in rng.sample([one for one in _MAINS[role] if one in foods()], n)]  # fmt: skip
    mixed = [one for one in usable if one["id"] in parts()]
    chosen += rng.sample(mixed, 2)
    rest = [one for one in usable if one not in chosen]
    chosen += rng.sample(rest, size - len(chosen) - 1)
    chosen.append(rng.choice(chosen))  # a second lot of one food
    rng.shuffle(chosen)
    made = [_made(food, rng) for food in chosen]
    avoid = (ALLERGENS[seed % len(ALLERGENS)],) if seed % 3 else ()
    return Case(
        {f"{number}.1": one for number, one in enumerate(made, start=1)},
        people=1 + seed % 6, diet=rng.choice(DIETS), avoid=avoid,
    )  # fmt: skip


def _made(food: Row, rng: random.Random) -> Made:
    grams = max(5, round(float(food["portion_g"]) * rng.choice((0.5, 1, 2, 3, 5))))
    dates = _dates(food, rng)
    words = {"use-by": "use by", "best-before": "best before"}
    told = "".join(f", {words.get(kind, kind)} {on.isoformat()}" for kind, on in dates)
    return Made(f"{grams} g {food['name']}{told}, in the fridge", food["id"], grams, dates)


def _dates(food: Row, rng: random.Random) -> tuple[tuple[str, date], ...]:
    def day(least: int, most: int) -> date:
        return TODAY + timedelta(days=rng.randint(least, most))

    use_by, best = ("use-by", day(-3, 6)), ("best-before", day(-6, 9))
    since = ("made", day(-4, 0)) if food["state"] in _COOKED else ("opened", day(-6, 0))
    if rng.random() < 0.5:
        return tuple(rng.sample([use_by, best, since], 2))
    return (rng.choice([use_by, best, since]),) if rng.random() < 0.5 else ()


def last_safe(made: Made) -> date | None:
    """The first of all days after which it must not be eaten; all of it stands in the fridge."""
    food, days = foods()[made.food], []
    for kind, on in made.dates:
        if kind == "use-by":
            days.append(on)
        elif kind in {"opened", "made"}:
            state = "cooked" if kind == "made" and food["state"] in _COOKED else "opened"
            row = keeping().get((made.food, "fridge", state)) or keeping().get(
                (f"kind:{food['kind']}", "fridge", state)
            )
            if row is not None and row[1]:
                days.append(on + timedelta(days=row[0]))
    return min(days, default=None)


def held(food: str) -> set[str]:
    """Allergens of a food and of all that is in it."""
    row = foods().get(food)
    own = {word for word in (row["allergens"].split(";") if row else ()) if word}
    own |= {"gluten"} if row and row["gluten"] != "no" else set()
    return own.union(*(held(part) for part in parts().get(food, {})))


def diet(food: str) -> int:
    """The strictest eater who may have it, as a place in DIETS."""
    row = foods().get(food)
    return max([DIETS.index(row["diet"]) if row else 0, *(diet(part) for part in parts().get(food, {}))])


def recount(dinner: Mapping[str, Any], case: Case, bought: Collection[str | None] = ()) -> Iterator[tuple[str, str]]:
    """What is wrong with a dinner by the larder as it was made up: (what, words). What is `bought` is fresh."""
    used: dict[str, int] = {}
    for use in dinner["uses"]:
        fresh = Made(use["line"], use["food"], use["grams"], ())
        made = fresh if use["lot"] in bought else case.lots[use["lot"]]
        used[use["lot"]] = used.get(use["lot"], 0) + use["grams"]
        if use["food"] != made.food or use["line"] != made.line:
            yield "lot", f"{use['line']} is {made}"
        last = last_safe(made)
        if last is not None and last < TODAY:
            yield "date", f"{made.line} was safe until {last}"
        if held(made.food) & set(case.avoid):
            yield "allergen", f"{made.food} holds {held(made.food) & set(case.avoid)}"
        if diet(made.food) > DIETS.index(case.diet):
            yield "diet", f"{made.food} is not {case.diet}"
    for lot, grams in used.items():
        if lot not in bought and not 0 < grams <= case.lots[lot].grams:
            yield "amount", f"{grams} g of {case.lots[lot].line}"
    whole = sum(
        (Fraction(foods()[use["food"]]["protein_g"] or 0) * use["grams"] for use in dinner["uses"]), Fraction(0)
    )
    if abs(Fraction(str(dinner["per_person"]["protein_g"])) - whole / 100 / case.people) > Fraction(6, 100):
        yield "protein", f"{dinner['per_person']['protein_g']} g is {float(whole / 100 / case.people):.2f} g"

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
ALLERGENS = ("celery", "crustaceans", "eggs", "fish", "gluten", "lupin", "milk", "molluscs", "mustard", "nuts",
             "peanuts", "sesame", "soya", "sulphites")  # fmt: skip
DIETS = ("vegan", "vegetarian", "pescatarian", "omnivore")
_SEASONINGS = ("oil-olive", "soy-sauce", "lemon", "basil", "ginger", "parmesan")
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


@cache
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
    return _larder(random.Random(seed), seed, size, {"base": 2, "protein": 3, "vegetable": 4}, ())


def rich_larder(seed: int) -> Case:
    """A larder that most dinners could be cooked from: more of the mains, and what seasons and fries."""
    return _larder(random.Random(seed), seed, 28, {"base": 4, "protein": 6, "vegetable": 8}, _SEASONINGS)


def _larder(rng: random.Random, seed: int, size: int, mains: Mapping[str, int], always: Collection[str]) -> Case:
    usable = [one for one in foods().values() if one["minutes"]]
    chosen = [foods()[food] for role, n in mains.items()
              for food in rng.sample([one for one in _MAINS[role] if one in foods()], n)]  # fmt: skip
    chosen += [foods()[food] for food in always]
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


# The rule of limits, written down here once more: a load is likely, and at most with the two largest deviations of a
# plate; 30 % by eye and 2 g of the whole dish on the scale; 30 % of figures that were measured, 50 % of others.
_EYE, _SCALE_G, _MEASURED, _OTHER, _EXCESS = 0.30, 2.0, 0.30, 0.50, 0.08
_TO_GRAMS = 0.0051  # figures carry no more
_GROUPS = {
    "oligosaccharides": ("fructans", "gos"), "lactose": ("lactose",), "sorbitol": ("sorbitol",),
    "mannitol": ("mannitol",), "polyols": ("sorbitol", "mannitol"), "excess_fructose": ("excess",),
    "total": ("fructans", "gos", "sorbitol", "mannitol", "excess"),
}  # fmt: skip


@cache
def figures() -> dict[tuple[str, str], Row]:
    return {(row["food"], row["component"]): row for row in cells("fermentables.csv")}


@cache
def _has_rows(food: str) -> bool:
    return any(one == food for one, _ in figures())


def leaves(food: str, grams: float) -> list[tuple[str, float]]:
    """A mixture without a figure of its own is what is in it."""
    if food == "water":
        return []
    if _has_rows(food) or food not in parts():
        return [(food, grams)]
    whole = float(sum(parts()[food].values()))
    return [leaf for part, share in parts()[food].items() for leaf in leaves(part, grams * float(share) / whole)]


@cache
def figure(food: str, component: str) -> tuple[float, float]:
    """G in 100 g: typical, and how far it may be off."""
    if component == "excess":
        fructose, glucose = figures().get((food, "fructose")), figure(food, "glucose")[0]
        excess = max(0.0, figure(food, "fructose")[0] - glucose)
        if fructose and fructose["high"]:
            return excess, max(0.0, float(fructose["high"]) - glucose - excess)
        return excess, _EXCESS * figure(food, "fructose")[0]
    row = figures().get((food, component))
    if row is None:
        whole = float(sum(parts()[food].values()))
        inside = [(figure(part, component), float(g) / whole) for part, g in parts()[food].items() if part != "water"]
        return sum(t * share for (t, _), share in inside), sum(off * share for (_, off), share in inside)
    value, high = float(row["g_per_100g"]), float(row["high"] or 0)
    if not value:
        return 0.0, high / 2
    share = _MEASURED if row["basis"] in {"analysed", "published"} else _OTHER
    return value, max(high - value, share * value)


def over_limits(dinner: Mapping[str, Any], people: int) -> Iterator[tuple[str, str]]:
    """Limits of one food and of the sitting that a person's share passes."""
    items = [(use, food, g) for use in dinner["uses"] for food, g in leaves(use["food"], float(use["grams"]))]
    for limit in cells("caps.csv"):
        kinds = [kind for kind in limit["sittings"].split(";") if kind]
        if limit["profile"] != "elimination" or limit["scope"] == "day" or (kinds and "dinner" not in kinds):
            continue
        classes = [one for one in limit["applies_to"].split(";") if one]
        likely: dict[str, float] = {}
        off: dict[str, float] = {}
        for use, food, grams in items:
            if classes and foods()[food]["cutoff_class"] not in classes:
                continue
            told = [figure(food, one) for one in _GROUPS[limit["group"]]]
            typical, error = sum(t for t, _ in told), sum(c * c for _, c in told) ** 0.5
            key = food if limit["scope"] == "food" else use["food"]
            likely[key] = likely.get(key, 0.0) + typical * grams / 100 / people
            share = grams / use["grams"]
            by_eye = grams * ((_EYE * typical) ** 2 + error**2) ** 0.5
            weighed = grams * error + typical * _SCALE_G * share
            off[key] = off.get(key, 0.0) + (weighed if use["how"] == "weigh" else by_eye) / 100 / people
        sets = [[key] for key in likely] if limit["scope"] == "food" else [list(likely)]
        for keys in sets:
            load = sum(likely[key] for key in keys)
            most = load + sum(sorted((off[key] for key in keys), reverse=True)[:2])
            if load > float(limit["typical_g"]) + _TO_GRAMS or most > float(limit["at_most_g"]) + _TO_GRAMS:
                where = f"{limit['group']}:{limit['applies_to']} of {'+'.join(keys)}"
                yield "limit", f"{where}: {load:.4f}, at most {most:.4f}; {limit['typical_g']}, {limit['at_most_g']}"

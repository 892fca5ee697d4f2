"""Candidates for a swap: those that swaps.csv lists for a food, and near foods computed."""

import re
from collections.abc import Iterable, Iterator
from decimal import Decimal
from functools import cache

from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import Candidate, sane_grams
from calmlarder.swaps.work import might_do, nutrition, work
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food, Swap

# A listed swap starts at 72 points and loses 4 for each that stands before it in the file, 6 places at most: the
# cook's order counts, but what does more of the work or leaves more room can overtake. Ours, no source.
_FIRST, _STEP, _PLACES = 72, 4, 6


def listed(food: Food, grams: Decimal, tables: Tables) -> list[Candidate]:
    """The rows of `food` as candidates in file order; rows of one `part_of` make one."""
    swaps: dict[str, list[Swap]] = {}
    for place, row in enumerate(tables.swaps_of(food.id)):
        swaps.setdefault(row.part_of or f"row {place}", []).append(row)
    return [
        _listed_candidate(rows, grams, _FIRST - _STEP * min(place, _PLACES), tables)
        for place, rows in enumerate(swaps.values())
    ]


def _listed_candidate(rows: list[Swap], grams: Decimal, points: float, tables: Tables) -> Candidate:
    return Candidate(
        parts=tuple(Serving(tables.food_by_id[row.to], sane_grams(grams * row.ratio)) for row in rows),
        points=points,
        keeps=_said(row.keeps for row in rows),
        loses=_said(row.loses for row in rows),
        whens=tuple(row.when.partition(":")[0] for row in rows),
        when=rows[0].when if len(rows) == 1 else _each_when(rows, tables),
        caution=_said(row.caution for row in rows),
        source=_said(row.source for row in rows),
    )


def _said(texts: Iterable[str]) -> str:
    return "; ".join(dict.fromkeys(text for text in texts if text))


def _each_when(rows: list[Swap], tables: Tables) -> str:
    """One word where all parts go in alike, else when each goes in."""
    whens = {row.when for row in rows}
    if len(whens) == 1:
        return rows[0].when
    return "; ".join(f"{tables.food_by_id[row.to].name}: {row.when.replace(': ', ', ', 1)}" for row in rows)


MOST = 30  # candidates looked at; the rest is too far away to be of use
_LEAST_LIKENESS = 0.45
# Kinds of which one does for another in a dish. Cheeses, sauces, spices, fruits and cabbages differ too much in taste
# and bite: of those only what swaps.csv lists stands in. Common practice, no source.
_INTERCHANGE = frozenset({
    "pasta", "rice", "noodle", "grain", "bread", "wrap", "leaf", "salad-leaf", "root", "squash", "pepper", "pod",
    "nut", "seed", "milk", "plant-drink", "oil", "fish", "shellfish", "poultry", "meat", "egg", "tofu", "shoot",
})  # fmt: skip
_LOG_ALONE = "for the log"
_LEAST_PORTION = 0.5  # of the other's portion
_KIND = 0.4  # of the likeness, the rest is the work it does: ours, no source
_POINTS = 60  # of the likest: below the first that a cook listed
_STATE_WORDS = frozenset({
    "dry", "cooked", "boiled", "canned", "fried", "baked", "roasted", "frozen", "fresh", "microwaved", "young",
    "dried", "peeled", "light", "calcium", "semi", "skimmed",
})  # fmt: skip


def computed(food: Food, grams: Decimal, tables: Tables) -> list[Candidate]:
    """The likest foods, portion for portion; never the same thing in another state."""
    found = [
        (likeness(food, other), other)
        for other in tables.foods
        if _could(food, other) and _like(food, other, might_do(food, other)) >= _LEAST_LIKENESS
    ]
    near = sorted((pair for pair in found if pair[0] >= _LEAST_LIKENESS), key=lambda pair: (-pair[0], pair[1].id))
    return [_candidate(food, other, grams, like) for like, other in near[:MOST]]


def likeness(food: Food, other: Food) -> float:
    """0 to 1: kind, and the work it does in a dish as far as both are known."""
    return _like(food, other, work(food, [other]))


def _like(food: Food, other: Food, does: float) -> float:
    return _KIND * (food.kind == other.kind) + (1 - _KIND) * does


def _could(food: Food, other: Food) -> bool:
    """Only the same kind, of one in which things interchange, in much the same portion; nothing kept for the log."""
    if food.kind != other.kind or food.kind not in _INTERCHANGE or _LOG_ALONE in other.note:
        return False
    near = _LEAST_PORTION <= float(other.portion_g / food.portion_g) <= 1 / _LEAST_PORTION
    return near and food.roles[0] in other.roles and not same_thing(food.id, other.id) and bool(other.minutes)


def same_thing(one: str, other: str) -> bool:
    """`carrot`, `carrots-canned` and `carrot-red` are one thing; `rice-brown` and `rice-white` are two."""
    return all(first == second for first, second in zip(_bare(one), _bare(other), strict=False))


@cache
def _bare(food_id: str) -> tuple[str, ...]:
    """The words of an id without its state and plural."""
    words = tuple(word for word in re.sub(r"(?<=[^s])s(?=-|$)", "", food_id).split("-") if word not in _STATE_WORDS)
    return words or (food_id,)


def _candidate(food: Food, other: Food, grams: Decimal, like: float) -> Candidate:
    when = "any" if "raw" in other.minutes else "cooked"
    return Candidate(
        parts=(Serving(other, sane_grams(grams * other.portion_g / food.portion_g)),),
        points=_POINTS * like,
        keeps=", ".join(_kept(food, other)),
        loses=f"the taste of {food.name}",
        when=when,
        whens=(when,),
        caution="",
        source="computed from the tables; portion for portion",
    )


def _kept(food: Food, other: Food) -> Iterator[str]:
    yield f"its place as {other.kind}" if food.kind == other.kind else f"its part as {food.roles[0]}"
    if nutrition(food, other) > 0.8:
        yield "much the same nutrients"

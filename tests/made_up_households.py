"""Made-up households of two to five who differ: one dinner for all, every plate counted again by `random_larders`.

Run by hand: `python tests/made_up_households.py 0 200`, or in parts; times: `benchmarks/at_table.py`. The recount reads
the CSV cells and imports nothing of the program's limits; limits of one's own are written down here once more.
"""

import random
import sys
from collections.abc import Iterator, Mapping
from datetime import date
from typing import Any, NamedTuple

from calmlarder.checks.dinner import verify
from calmlarder.compose.compose import compose_at_table
from calmlarder.compose.request import DinnerRequest
from calmlarder.household.table import at_table
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.intake.own_profile import own_profile
from calmlarder.intake.profile import Profile, profile_named
from calmlarder.intake.table import Eater
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from random_larders import TODAY, diet, figure, held, larder, leaves

_DIETS = ("vegan", "vegetarian", "pescatarian", "omnivore")
_OWN = {"fructans": (0.25, 0.5, 1.0), "gos": (0.5, 1.0, 2.0), "lactose": (3.0, 6.0), "sorbitol": (0.5, 1.0),
        "mannitol": (0.5, 1.0), "excess_fructose": (1.0, 2.0)}  # fmt: skip


def eaters_of(seed: int, tables: Tables) -> tuple[Eater, ...]:
    rng = random.Random(f"household {seed}")
    return tuple(_eater(number, rng, tables) for number in range(rng.randint(2, 5)))


def _eater(number: int, rng: random.Random, tables: Tables) -> Eater:
    elimination = profile_named("elimination", tables)
    kind = rng.choice(("elimination", "elimination", "careful", "roomy", "own", "own", "none"))
    profile = profile_named(kind, tables) if kind not in {"own", "none"} else elimination
    if kind == "none":
        profile = Profile(name="none", food_caps=(), sitting_caps=())
    if kind == "own":
        chosen = rng.sample(sorted(_OWN), rng.randint(1, 3))
        owns = [
            OwnLimit(component=one, grams=rng.choice(_OWN[one]), on=date(2026, 1, 1), said_by="d") for one in chosen
        ]  # type: ignore[arg-type]
        profile = own_profile(elimination, owns, rng.random() < 0.3)
    protein = rng.choice((12.0, 20.0, 25.0))
    return Eater(
        who=f"p{number}", profile=profile, diet=rng.choices(_DIETS, (2, 3, 1, 3))[0],  # type: ignore[arg-type]
        avoid=tuple(rng.sample(("milk", "nuts", "eggs", "fish", "sesame", "gluten"), rng.choice((0, 0, 1)))),
        protein_g=protein, protein_floor_g=min(12.0, protein), appetite=rng.choice((0.6, 1.0, 1.0, 1.3)),
        is_guest=rng.random() < 0.2,
    )  # fmt: skip


def request_for(eaters: tuple[Eater, ...], tables: Tables) -> DinnerRequest:
    plain = DinnerRequest(today=TODAY, profile=profile_named("elimination", tables), seconds=60.0)
    return at_table(plain, eaters)


def lots_of(seed: int, tables: Tables) -> list[Lot]:
    """Two made-up larders, several times as much of everything: most tables find a dinner in them."""
    reader = LarderReader(tables, TODAY)
    lines = [made.line for number in (seed, seed + 1000) for made in larder(number, 18).lots.values()]
    readings = reader.read_all(lines, "made up")
    found = [one.lot for one in readings if one.lot is not None]
    grams = ("grams", "grams_low", "grams_high")
    return [
        lot.model_copy(update={"id": str(number), **{name: 4 * getattr(lot, name) for name in grams}})
        for number, lot in enumerate(found)
    ]


def wrong_plates(dinner: Mapping[str, Any], eaters: tuple[Eater, ...]) -> Iterator[str]:
    """Likely loads of each plate against the person's own limit of each component, and allergens of anybody."""
    for part in (*dinner["uses"], *dinner.get("apart", ())):
        for eater in eaters:
            if held(part["food"]) & set(eater.avoid):
                yield f"{part['food']} holds an allergen of {eater.who}"
    for eater in eaters:
        plate = [(use["food"], use["grams"] * _share(eater, eaters)) for use in dinner["uses"]]
        for part in dinner.get("apart", ()):
            if eater.who in part["for"]:
                those = tuple(one for one in eaters if one.who in part["for"])
                plate.append((part["food"], part["grams"] * _share(eater, those)))
        for food, _ in plate:
            if diet(food) > _DIETS.index(eater.diet):
                yield f"{food} is not for {eater.who}"
        brought = dict.fromkeys(("fructans", "gos", "lactose", "sorbitol", "mannitol", "excess"), 0.0)
        for food, grams in plate:
            for leaf, inside in leaves(food, grams):
                for component in brought:
                    brought[component] += figure(leaf, component)[0] * inside / 100
        yield from _over(eater, brought)


def _over(eater: Eater, brought: Mapping[str, float]) -> Iterator[str]:
    """Of the published cut-offs (Varney et al. 2017) what any sitting of elimination keeps to, and own limits."""
    if eater.profile.name in {"none", "roomy"}:
        return
    owns = {one.component: one.grams for one in eater.profile.own_limits}
    polyols = {"sorbitol", "mannitol"}
    most = {
        "fructans": owns.get("fructans", 0.5), "gos": owns.get("gos", 0.5), "lactose": owns.get("lactose", 1.0),
        "excess": owns.get("excess_fructose", 0.4), "sorbitol": owns.get("sorbitol", 0.4),
        "mannitol": owns.get("mannitol", 0.4),
    }  # fmt: skip
    for component, limit in most.items():
        if brought[component] > limit + 0.0051:
            yield f"{eater.who} gets {brought[component]:.3f} g {component}, the limit is {limit} g"
    if not polyols.intersection(owns) and brought["sorbitol"] + brought["mannitol"] > 0.4051:
        yield f"{eater.who} gets too much of polyols"
    if not {"fructans", "gos"}.intersection(owns) and brought["fructans"] + brought["gos"] > 0.5051:
        yield f"{eater.who} gets too much of fructans and GOS"


def _share(eater: Eater, those: tuple[Eater, ...]) -> float:
    return eater.appetite / sum(one.appetite for one in those)


def faults_of(dinner: Any, request: DinnerRequest, lots: list[Lot]) -> tuple[str, ...]:
    """By the program's own check."""
    plain = {**request.model_dump(mode="json"), **request.profile.plain, "table": [one.plain for one in request.table]}
    kept = [lot.model_dump(mode="json") for lot in lots]
    return verify(dinner_object(dinner), plain, kept, [shipped("ingredient_tables")], shipped("recipes"))


def one_person(request: DinnerRequest, tables: Tables) -> DinnerRequest:
    """One person in elimination, under the diets and allergens of all."""
    profile = profile_named("elimination", tables)
    return DinnerRequest(today=TODAY, profile=profile, diet=request.diet, avoid=request.avoid, seconds=60.0)


class Case(NamedTuple):
    """One household: how many dinners, parts served apart and faults."""

    seed: int
    dinners: int
    parts: int
    wrong: tuple[str, ...]


def case(seed: int, patterns: tuple[Pattern, ...], tables: Tables) -> Case:
    eaters, lots = eaters_of(seed, tables), lots_of(seed, tables)
    request = request_for(eaters, tables)
    found = compose_at_table(lots, request, patterns, tables)
    wrong = [
        fault
        for dinner in found.dinners
        for fault in (*wrong_plates(dinner_object(dinner), eaters), *faults_of(dinner, request, lots))
    ]
    parts = sum(len(dinner.apart) for dinner in found.dinners[:1])
    return Case(seed, len(found.dinners), parts, tuple(wrong))


def _by_hand(first: int, last: int) -> None:
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    cases: list[Case] = []
    for seed in range(first, last):
        one = case(seed, patterns, tables)
        cases.append(one)
        print(seed, one.dinners, one.parts, len(one.wrong), flush=True)
    fed = [one for one in cases if one.dinners]
    parted, wrong = sum(one.parts > 0 for one in fed), [f"{one.seed}: {w}" for one in cases for w in one.wrong]
    print(f"{len(cases)} households, {len(fed)} dinners, {parted} with parts served apart, {len(wrong)} faults")
    print("\n".join(wrong[:20]))


if __name__ == "__main__":
    _by_hand(*(int(number) for number in (sys.argv[1:3] or ("0", "200"))))

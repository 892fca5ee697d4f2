"""A share that comes to its limit exactly is not over it, by however many people the dish is divided.

Worked out by hand in fractions; the figures are made up so that they come out even. The rule, likely up to the limit
and at most up to 1.6 times it, each to 5 mg, is ours; what may be off by eye is 30 %.
"""

from fractions import Fraction
from typing import Any

import pytest

from calmlarder.checks.limits import limits_of
from calmlarder.checks.loads import Part, plate_of, sum_of, sure_of, whole_grams
from calmlarder.checks.shown_loads import _near_faults
from calmlarder.checks.within_limits import limit_faults, protein_faults
from calmlarder.tables.places import shipped

NONE = {"g_per_100g": "0", "high": "", "basis": "analysed", "source": "made up"}
COMPONENTS = ("fructans", "gos", "lactose", "fructose", "glucose", "sorbitol", "mannitol")
REQUEST = {"tolerance": {"eye_percent": 30, "scale_grams": 2}, "protein_floor_g": 20}
# Grams of each of four foods in the whole dish: 300 g and 700 g in all, so that each person has 100 g.
DISHES = {3: ((53, 218, 15, 14), (20, 30, 230, 20)), 7: ((348, 283, 47, 22), (312, 159, 14, 215))}
ALL = [(people, grams) for people, dishes in DISHES.items() for grams in dishes]


def dish(people: int, grams: tuple[int, ...]) -> dict[str, Any]:
    uses = [{"food": f"food-{number}", "grams": one, "how": "weigh"} for number, one in enumerate(grams)]
    return {"people": people, "uses": uses}


def read(gos: str, protein: str = "20") -> tuple[dict[str, Any], dict[tuple[str, ...], Any]]:
    """Four foods that hold so many g of GOS and of protein in 100 g."""
    names = [f"food-{number}" for number in range(4)]
    foods = {name: {"id": name, "cutoff_class": "other", "protein_g": protein, "lysine_mg": ""} for name in names}
    held = {(name, one): NONE for name in names for one in COMPONENTS}
    return foods, held | {(name, "gos"): {**NONE, "g_per_100g": gos} for name in names}


def faults(people: int, grams: tuple[int, ...], gos: str, request: dict[str, Any]) -> list[str]:
    """By the sitting's limit of 0.50 g for what is likely; at most is another test's matter."""
    limits = [
        one._replace(most=None)
        for one in limits_of([shipped("ingredient_tables")], "elimination", "dinner")
        if one.group == "oligosaccharides" and one.scope == "sitting"
    ]
    assert [one.typical for one in limits] == [Fraction("0.5")]
    return limit_faults(plate_of(dish(people, grams), {}), limits, people, request, read(gos))


@pytest.mark.parametrize(("people", "grams"), ALL)
def test_a_likely_load_at_the_limit_holds_and_one_above_it_does_not(people: int, grams: tuple[int, ...]) -> None:
    """100 g a person of 0.505 g in 100 g are 0.505 g, the limit and its 5 mg."""
    assert faults(people, grams, "0.505", REQUEST) == []
    assert faults(people, grams, "0.5050000001", REQUEST) != []


@pytest.mark.parametrize(("people", "grams"), ALL)
def test_protein_at_the_floor_holds_and_protein_below_it_does_not(people: int, grams: tuple[int, ...]) -> None:
    plate = plate_of(dish(people, grams), {})
    assert protein_faults(dish(people, grams), plate, REQUEST, read("0")[0]) == []
    assert protein_faults(dish(people, grams), plate, REQUEST, read("0", "19.9999999999")[0]) != []


@pytest.mark.parametrize(("people", "grams"), ALL)
def test_what_is_counted_before_leaves_exactly_the_rest(people: int, grams: tuple[int, ...]) -> None:
    """Two thirds of 300 mg are left after one of three hours, so 305 mg may come; fading is in a straight line."""
    load = {"item": "bread", "food": "bread", "cutoff_class": "core", "group": "oligosaccharides",
            "likely_ug": 300_000, "off_ug": 0}  # fmt: skip
    request = {
        **REQUEST,
        "stacking": {"at": "2026-03-11T18:00", "window_hours": 3, "fade": True, "who": ["me"]},
        "eaten": [{"at": "2026-03-11T17:00", "who": "me", "loads": [load]}],
    }
    assert faults(people, grams, "0.305", request) == []
    assert faults(people, grams, "0.3050000001", request) != []


@pytest.mark.parametrize(("people", "grams"), ALL)
def test_nine_tenths_of_its_own_limit_is_near_and_less_is_not(people: int, grams: tuple[int, ...]) -> None:
    """0.18 g of the 0.20 g that one other food may bring (Varney et al. 2017), in four lots of it."""
    uses = [{"food": "food-0", "grams": one, "how": "weigh"} for one in grams]
    limits = [
        one for one in limits_of([shipped("ingredient_tables")], "elimination", "dinner")
        if one.scope == "food" and "other" in one.classes and one.group == "oligosaccharides"
    ]  # fmt: skip
    assert [one.typical for one in limits] == [Fraction("0.2")]

    def found(gos: str, named: list[dict[str, str]]) -> list[str]:
        figures, sure = read(gos), sure_of(REQUEST["tolerance"])
        return _near_faults(
            named,
            plate_of({"uses": uses}, {}),
            limits,
            lambda part, limit: sum_of(part, limit, figures, people, sure).likely,
        )

    assert found("0.18", []) == [f"food-0 is near its own limit of {limits[0].key} and not named"]
    assert found("0.18", [{"food": "food-0", "group": "oligosaccharides"}]) == []
    assert found("0.1799999999", []) == []


def test_what_is_rounded_is_rounded_in_the_whole_of_an_item_with_its_water() -> None:
    """270 g of a drink of which a tenth is walnuts beside 26 g of peanut butter; the water counts as no food."""
    plate = [
        Part("walnut-drink", "walnuts", Fraction(27), False, Fraction(1, 10)),
        Part("walnut-drink", "sugar", Fraction(27, 2), False, Fraction(1, 20)),
        Part("peanut-butter", "peanut-butter", Fraction(26), True, Fraction(1)),
    ]
    assert whole_grams(plate) == 296

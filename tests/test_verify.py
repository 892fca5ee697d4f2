"""The independent check can fail: each spoilt dinner is found out."""

import copy
import re
from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.compose.compose import compose
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.places import shipped

LINES = [
    "spinach 200g, use by today",
    "firm tofu 280g, use by tomorrow",
    "cooked rice 350g, made today",
    "carrots x3",
    "brown onion x2",
    "cheddar 200g",
    "rapeseed oil",
    "soy sauce",
]


@pytest.fixture
def case(tables, patterns, lots_of, wanting):  # type: ignore[no-untyped-def]
    lots = lots_of(LINES)
    wanted = wanting(diet="vegan")
    dinner = dinner_object(compose(lots, wanted, patterns, tables).dinners[0])
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    return dinner, request, [lot.model_dump(mode="json") for lot in lots]


def faults(dinner: dict[str, Any], request: dict[str, Any], lots: list[dict[str, Any]]) -> tuple[str, ...]:
    return verify(dinner, request, lots, [shipped("ingredient_tables")], shipped("recipes"))


def use(dinner: dict[str, Any], food: str) -> dict[str, Any]:
    return next(one for one in dinner["uses"] if one["food"] == food)


def too_much(dinner: dict[str, Any], *_: Any) -> None:
    use(dinner, "spinach")["grams"] = 250


def over_the_cap(dinner: dict[str, Any], request: dict[str, Any], lots: list[dict[str, Any]]) -> None:
    use(dinner, "spinach")["grams"] = 190
    use(dinner, "spinach")["how"] = "eye"


def onion(dinner: dict[str, Any], *_: Any) -> None:
    use(dinner, "spinach").update(food="onion-brown", lot="5.1", line="brown onion x2", grams=60)


def not_vegan(dinner: dict[str, Any], *_: Any) -> None:
    use(dinner, "tofu-firm").update(food="cheddar", lot="6.1", line="cheddar 200g", grams=100)


def too_little_protein(dinner: dict[str, Any], *_: Any) -> None:
    use(dinner, "tofu-firm")["grams"] = 50


def floor_raised(dinner: dict[str, Any], request: dict[str, Any], *_: Any) -> None:
    request["protein_floor_g"] = 60


def left_out(dinner: dict[str, Any], request: dict[str, Any], *_: Any) -> None:
    request["without"] = ["spinach"]


def allergen(dinner: dict[str, Any], request: dict[str, Any], *_: Any) -> None:
    request["avoid"] = ["soya"]


def unsafe(dinner: dict[str, Any], request: dict[str, Any], lots: list[dict[str, Any]]) -> None:
    for lot in lots:
        if lot["food"] == "tofu-firm":
            lot["dates"] = [{"kind": "use-by", "on": "2026-03-10"}]


def not_asked(dinner: dict[str, Any], request: dict[str, Any], lots: list[dict[str, Any]]) -> None:
    for lot in lots:
        lot["owner"] = "robin"


def too_slow(dinner: dict[str, Any], request: dict[str, Any], *_: Any) -> None:
    request["minutes"] = 5


def prettier_numbers(dinner: dict[str, Any], *_: Any) -> None:
    dinner["per_person"]["at_most_g"]["oligosaccharides"] = 0.01


def two_hands_at_once(dinner: dict[str, Any], *_: Any) -> None:
    hands = [moment for moment in dinner["timeline"] if moment["hands_on"] and moment["minutes"]]
    hands[1]["start_min"] = hands[0]["start_min"]


def quicker_than_it_is(dinner: dict[str, Any], *_: Any) -> None:
    dinner["minutes"] -= 5


def forgotten_in_the_timeline(dinner: dict[str, Any], *_: Any) -> None:
    next(moment for moment in dinner["timeline"] if "spinach" in moment["adds"])["adds"].remove("spinach")


def twice_in_the_timeline(dinner: dict[str, Any], *_: Any) -> None:
    dinner["timeline"][-1]["adds"].append("spinach")


def forgotten_in_the_steps(dinner: dict[str, Any], *_: Any) -> None:
    dinner["steps"] = [step.replace(" g ", " ") for step in dinner["steps"]]


def another_order(dinner: dict[str, Any], *_: Any) -> None:
    first, *rest = dinner["steps"]
    dinner["steps"] = [first, *reversed(rest)]


def other_minutes_in_a_step(dinner: dict[str, Any], *_: Any) -> None:
    step = next(number for number, words in enumerate(dinner["steps"]) if "minutes" in words)
    dinner["steps"][step] = re.sub(r"\d+(?= minutes)", "2", dinner["steps"][step], count=1)


def too_short_on_the_heat(dinner: dict[str, Any], *_: Any) -> None:
    moment = next(moment for moment in dinner["timeline"] if "tofu-firm" in moment["adds"])
    moment["minutes"] = 2


def other_words_in_the_timeline(dinner: dict[str, Any], *_: Any) -> None:
    next(moment for moment in dinner["timeline"] if "tofu-firm" in moment["adds"])["what"] = "set out firm tofu"


def a_step_left_out(dinner: dict[str, Any], *_: Any) -> None:
    dinner["steps"].pop(0)


def wrong_slot(dinner: dict[str, Any], *_: Any) -> None:
    use(dinner, "spinach")["slot"] = "protein"


def test_the_dinner_itself_passes(case) -> None:  # type: ignore[no-untyped-def]
    assert faults(*case) == ()


@pytest.mark.parametrize(
    "spoil",
    [too_much, over_the_cap, onion, not_vegan, too_little_protein, floor_raised, left_out, allergen, unsafe, not_asked,
     too_slow, prettier_numbers, wrong_slot, two_hands_at_once, quicker_than_it_is,
     other_minutes_in_a_step, too_short_on_the_heat, other_words_in_the_timeline, a_step_left_out,
     forgotten_in_the_timeline, twice_in_the_timeline, forgotten_in_the_steps, another_order],
)  # fmt: skip
def test_spoilt_dinners_are_found_out(spoil: Callable[..., None], case) -> None:  # type: ignore[no-untyped-def]
    spoilt = copy.deepcopy(case)
    spoil(*spoilt)
    assert faults(*spoilt)

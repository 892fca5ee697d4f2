"""A dinner reads as one a cook would make."""

import re
from collections.abc import Callable, Sequence
from typing import Any

import pytest

from calmlarder.compose.compose import Composed, best_dinners, compose
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import REFERENCE, Pattern, slot_names
from calmlarder.tables.book import Tables
from larders import larder_lines

Cook = Callable[..., Composed]


@pytest.fixture
def cook(tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]], wanting) -> Cook:  # type: ignore[no-untyped-def]
    def composed(lines: Sequence[str], **values: object) -> Composed:
        wanted: DinnerRequest = wanting(**values)
        return compose(lots_of(lines), wanted, patterns, tables)

    return composed


@pytest.fixture(scope="module")
def any_dinners(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Any
) -> list[Dinner]:
    """Dinners of twenty random larders."""
    larders = [lots_of(larder_lines(tables, 24, seed)) for seed in range(20)]
    return [dinner for lots in larders for dinner in best_dinners(lots, wanting(), patterns, tables)[1]]


BASICS = ["rapeseed oil", "soy sauce", "ginger", "lime", "cooked rice 400g, made today", "potatoes 1kg"]


def test_the_most_urgent_food_is_used(cook: Cook) -> None:
    dinner = cook([*BASICS, "firm tofu 300g", "spinach 200g, use by today", "kale 200g, use by 2026-03-20"]).dinners[0]
    foods = {use.food for use in dinner.uses}
    assert "spinach" in foods
    assert next(use.grams for use in dinner.uses if use.food == "spinach") >= 70


def test_two_onions_are_never_the_answer(cook: Cook) -> None:
    composed = cook(
        [*BASICS, "firm tofu 300g", "brown onion x2, use by today", "garlic 1 bulb, use by today", "carrots x3"]
    )
    assert {use.food for use in composed.dinners[0].uses}.isdisjoint({"onion-brown", "garlic"})


def test_weighing_is_asked_for_only_what_needs_it(cook: Cook) -> None:
    composed = cook([*BASICS, "firm tofu 300g", "broccoli 300g, use by today", "kale 200g, use by today"], protein_g=15)
    for use in composed.dinners[0].uses:
        if use.how == "weigh":
            assert use.food not in {"rice-white-cooked", "oil-rapeseed"}


def test_amounts_are_those_of_a_plate(any_dinners: list[Dinner], tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    slots = {pattern.id: pattern.slots for pattern in patterns}
    assert len(any_dinners) >= 10
    for dinner in any_dinners:
        for name, slot in slots[dinner.pattern].items():
            uses = [use for use in dinner.uses if use.slot == name and use.household not in {"a pinch", "a coat"}]
            portions = sum(use.grams / float(tables.food_by_id[use.food].portion_g) for use in uses)
            assert len(uses) <= slot.items[1]
            last = slot.role == "protein" and any(use.days_left in {0, 1, 2} for use in uses)
            for use in uses:  # of dried herbs half a gram is usual, and a gram the least that is dealt out
                usual = float(tables.food_by_id[use.food].portion_g)
                portions -= max(0.0, 1 - usual) / usual
            assert portions <= (max(2.1, slot.portions[2]) if last else slot.portions[2]) * 1.01
            if slot.items[0] and slot.role in {"base", "protein"}:
                least = min(0.5, slot.portions[0]) if slot.role == "base" else slot.portions[0]
                assert portions >= 0.99 * least


def test_a_dish_keeps_to_one_flavour_family(any_dinners: list[Dinner], tables: Tables) -> None:
    for dinner in any_dinners:
        assert all(tables.food_by_id[use.food].fit(dinner.family) for use in dinner.uses)  # type: ignore[arg-type]


def test_nothing_is_eaten_raw_that_must_be_cooked(tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    must = {"potato", "aubergine", "chicken-breast", "egg", "rice-white-dry", "lentils-red-dry", "okra", "bean-sprouts",
            "kidney-beans-dry", "cassava", "flour-gram"}  # fmt: skip
    for food in must:
        assert "raw" not in tables.food_by_id[food].minutes
    for pattern in patterns:
        for slot in pattern.slots.values():
            if slot.method == "raw":
                assert not any(slot.takes(tables.food_by_id[food]) for food in must)


def test_steps_name_every_food_and_leave_no_braces(any_dinners: list[Dinner]) -> None:
    for dinner in any_dinners:
        text = " ".join(dinner.steps)
        assert "{" not in text + dinner.title
        for use in dinner.uses:
            no_grams = use.household in {"a pinch", "a coat"}
            amount = f"{use.household} of" if no_grams else f"{use.grams} g"
            name = re.escape(use.name)
            counted = rf"{amount} {name}|[\d½] {name.removesuffix('s')}s? \({amount}\)"  # 2 eggs (110 g), 1 egg
            counted += rf"|tb?sp {name} \({amount}\)"  # half of 1½ tsp chilli oil (6 g)
            assert re.search(counted, text), (dinner.pattern, use.name)


def test_no_step_that_holds_a_needed_food_falls_away_with_one_that_may_be_missing(
    patterns: tuple[Pattern, ...],
) -> None:
    """Fried rice without ginger once lost the step that fries its vegetables, polenta the one that serves it."""
    for pattern in patterns:
        needed = {name for name, slot in pattern.slots.items() if slot.items[0]}
        for step in pattern.steps:
            references = [found for found in REFERENCE.finditer(step.words) if not found[1]]
            names = [set(slot_names(found)) for found in references]
            clauses = [clause.span() for clause in re.finditer(r"\[[^\]]*\]", step.words)]  # these fall away alone
            sure = [
                bool(found[3])
                or any(start < found.start() < end for start, end in clauses)
                or bool(named & needed)
                or any(set(group) <= named for group in pattern.one_of)
                or all(pattern.slots[name].role == "fat" for name in named)  # oil is taken for granted
                for found, named in zip(references, names, strict=True)
            ]
            assert all(sure) or not any(named & needed for named in names), (pattern.id, step.words)


def test_beans_that_need_a_night_are_not_for_tonight(cook: Cook) -> None:
    composed = cook([*BASICS, "firm tofu 300g", "dry kidney beans 500g", "carrots x3"])
    assert any("not for tonight" in excluded.why for excluded in composed.excluded)


def test_no_cheddar_on_a_mezze_plate_and_no_mint_sauce_on_jacket_potatoes(
    patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    """Each is another kitchen's, or another meat's; recalled cookery."""
    places = {(pattern.id, name): slot for pattern in patterns for name, slot in pattern.slots.items()}
    foods = tables.food_by_id
    assert not places["mezze-plate", "cold"].takes(foods["red-leicester"])
    assert places["mezze-plate", "cold"].takes(foods["feta"])
    assert not places["baked-potato", "sauce"].takes(foods["mint-sauce"])
    assert not places["rice-porridge", "vegetable"].takes(foods["cabbage-red"])
    assert places["grain-and-nuts", "protein"].takes(foods["tofu-firm"])  # where no sauce is there for a stir-fry


def test_beans_that_soak_are_to_be_boiled_by_tomorrow(cook: Cook) -> None:
    """They sour in their water; ten minutes at a rolling boil for kidney beans (recalled)."""
    composed = cook([*BASICS, "firm tofu 300g", "rajma soaked since morning", "carrots x3"])
    assert any("today or tomorrow, boil it hard in fresh water for ten minutes" in one.why for one in composed.excluded)


def test_a_pack_in_its_last_days_goes_whole_or_the_rest_is_spoken_of(cook: Cook) -> None:
    """190 g of cod are no more than what people eat; of 400 g, 210 at most are served, and the rest is cooked today.

    Leftovers chilled soon and eaten within two days: UK Food Standards Agency.
    """
    there = ["potatoes 1kg", "green beans 300g", "lemon", "butter", "parsley"]
    whole = cook([*there, "cod fillets 190g, use by today"]).dinners[0]
    (cod,) = [use for use in whole.uses if use.food == "cod"]
    assert cod.grams == 190
    assert not any("is left" in words for words in whole.cautions)
    more = cook([*there, "cod fillets 400g, use by today"]).dinners[0]
    (cod,) = [use for use in more.uses if use.food == "cod"]
    assert any(f"{400 - cod.grams} g is left, and today is its last day" in words for words in more.cautions)
    later = cook([*there, "cod fillets 400g, use by 2026-03-20"]).dinners[0]
    assert not any("is left" in words for words in later.cautions)


def test_used_up_is_said_of_what_was_known_to_be_there(cook: Cook) -> None:
    """200 g of spinach are gone; how much a bunch of chard is nobody knows, and a rest of green beans stays."""
    lines = [*BASICS, "firm tofu 300g", "spinach 200g, use by today", "bunch of chard, use by today"]
    rescued = cook(lines).dinners[0].rescued
    assert "bunch of chard, use by today" not in rescued.lots_finished
    used = {use.line: use.grams for use in cook(lines).dinners[0].uses}
    assert ("spinach 200g, use by today" in rescued.lots_finished) == (used.get("spinach 200g, use by today") == 200)
    alone = cook([*BASICS, "firm tofu 140g, use by today", "carrots 120g"]).dinners[0].rescued
    assert "firm tofu 140g, use by today" in alone.lots_finished


def test_a_pack_is_of_the_size_that_was_typed(cook: Cook) -> None:
    """A usual block of tofu has 280 g; these packs have 200 g."""
    there = [*BASICS, "carrots x4", "spinach 200g"]
    (typed,) = [use for use in cook([*there, "firm tofu 2 x 200g"]).dinners[0].uses if use.food == "tofu-firm"]
    assert "pack" in str(typed.household)
    (usual,) = [use for use in cook([*there, "firm tofu, 2 blocks"]).dinners[0].uses if use.food == "tofu-firm"]
    assert "block" in str(usual.household)


def test_chops_and_fillets_go_whole(cook: Cook) -> None:
    """Of four chops of 100 g one, two, three or all are cooked."""
    there = ["potatoes 1kg", "green beans 300g", "lemon", "butter", "rosemary"]
    for people in (1, 2, 3):
        (dinner,) = cook([*there, "lamb chops 4"], people=people).dinners
        (chops,) = [use for use in dinner.uses if use.food == "lamb-chops"]
        assert chops.grams % 100 == 0

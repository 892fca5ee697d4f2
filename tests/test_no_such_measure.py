"""Measures name what a cook can count, and rice cakes simmer until they are soft. Common practice, no source."""

from collections.abc import Callable, Sequence

from calmlarder.compose.compose import compose
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure

Lots = Callable[[Sequence[str]], list[Lot]]


def test_no_piece_of_what_comes_in_none(tables: Tables) -> None:
    for food, grams, measure in (("yoghurt-lactose-free", 135, "cup"), ("ginger-pickled", 24, "tbsp")):
        said = in_household_measure(tables.food_by_id[food], grams, tables, "nearest")
        assert said is not None
        assert measure in said, said


def test_spaghetti_fills_no_cup_and_grated_cheese_has_no_slices(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Lots, wanting: Callable[..., DinnerRequest]
) -> None:
    warm = [one for one in patterns if one.id == "pasta"]
    rest = ["cherry tomatoes 300g", "courgette", "basil", "olive oil", "lemon"]

    def measures(*lines: str) -> dict[str, str | None]:
        dinner = compose(
            lots_of([*lines, *rest]), wanting(people=3, protein_floor_g=5, seconds=60), warm, tables
        ).dinners[0]
        return {use.food: use.household for use in dinner.uses}

    long = measures("gluten-free spaghetti 500g", "grated cheddar 200g")
    assert "cup" not in (long["pasta-gluten-free-dry"] or "")
    assert "cheddar" in long
    assert "slice" not in (long["cheddar"] or "")
    assert "cup" in (measures("gluten-free penne 500g", "cheddar 200g")["pasta-gluten-free-dry"] or "")


def test_ham_that_must_be_eaten_is_laid_on_eggs(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Lots, wanting: Callable[..., DinnerRequest]
) -> None:
    lines = ["eggs x4", "ham 120g, use by today", "spinach 100g", "butter"]
    beside = (["gluten-free bread"], ["boiled potatoes 400g, made today"], ["potatoes 1kg"])
    for name in ("eggs-and-greens", "frittata", "omelette-supper"):
        warm = [one for one in patterns if one.id == name]
        base = beside[("eggs-and-greens", "frittata", "omelette-supper").index(name)]
        dinner = compose(lots_of([*lines, *base]), wanting(people=1, seconds=60), warm, tables).dinners[0]
        assert "ham" in {use.food for use in dinner.uses}, name
        assert "ham" in dinner.title, dinner.title


def test_korean_rice_cakes_simmer_until_soft(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Lots, wanting: Callable[..., DinnerRequest]
) -> None:
    lines = ["tteok 1lb", "firm tofu 280g", "courgette", "carrots x2", "soy sauce", "fresh ginger", "sesame oil"]
    warm = [one for one in patterns if one.id == "noodle-bowl"]
    dinner = compose(lots_of(lines), wanting(people=2, seconds=60), warm, tables).dinners[0]
    steps = " ".join(dinner.steps).lower()
    assert "rice cakes for about 5 minutes until soft all through" in steps, steps
    assert "strands" not in steps
    assert "bring a pot of" in steps


def test_smoked_haddock_goes_into_a_hash(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Lots, wanting: Callable[..., DinnerRequest]
) -> None:
    lines = ["smoked haddock 250g, use by today", "potatoes 1kg", "eggs x6", "carrots x4", "butter", "parsley"]
    warm = [one for one in patterns if one.id == "hash"]
    dinner = compose(lots_of(lines), wanting(people=2, seconds=60), warm, tables).dinners[0]
    assert "haddock-smoked" in {use.food for use in dinner.uses}
    assert any("smoked haddock" in step and "on top, cover" in step for step in dinner.steps), dinner.steps


def test_the_water_of_greens_is_gone_before_eggs_go_in(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Lots, wanting: Callable[..., DinnerRequest]
) -> None:
    lines = ["eggs x4", "spinach 200g", "gluten-free bread", "butter", "paprika"]
    warm = [one for one in patterns if one.id == "eggs-and-greens"]
    steps = " ".join(compose(lots_of(lines), wanting(people=2, seconds=60), warm, tables).dinners[0].steps)
    assert 0 < steps.index("let the water boil off") < steps.index("crack in")

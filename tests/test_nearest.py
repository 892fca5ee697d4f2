"""The nearest dinner: against SciPy's MILP solver, the published cut-offs, and the tables read anew from their files.

Cut-offs: Varney et al. 2017 (J Gastroenterol Hepatol 32 Suppl 1:53-61); total of a sitting: Halmos et al. 2014
(Gastroenterology 146:67-75). Allergens: Regulation (EU) No 1169/2011, Annex II.
"""

import copy
import json
from collections import Counter
from collections.abc import Callable, Sequence
from typing import Any

import pytest

from by_hand import EXACT, SITTING, VARNEY_2017, foods, known, leaves, likely
from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import Composed, compose
from calmlarder.compose.least_given import least_given
from calmlarder.compose.market import Market
from calmlarder.compose.near_search import tightened
from calmlarder.compose.nearest import giving_rules, near_search
from calmlarder.compose.problem import pattern_problem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.solve import upper_bound
from calmlarder.compose.stop import Stop
from calmlarder.compose.what_gives import Nearest
from calmlarder.intake.limit import limit_of
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from calmlarder.tables.vocabulary import Allergen, Diet
from how_much import paired, some
from larders import larder_lines
from milp_twin import Giving, best_score
from test_fridges import FRIDGES, golden, propose, read

LotsOf = Callable[[Sequence[str]], list[Lot]]
Wanting = Callable[..., DinnerRequest]
TOLERANCE = 100  # a hundredth of a point: HiGHS works in floating point
NONE = [path for path in FRIDGES if golden()[path.stem]["pattern"] == "none"]
ANNEX_II = ("gluten", "crustaceans", "eggs", "fish", "peanuts", "soya", "milk", "nuts", "celery", "mustard", "sesame",
            "sulphites", "lupin", "molluscs")  # fmt: skip
RICE_AND_CARROTS = ["cooked rice 800g, made today", "carrots x8", "rapeseed oil", "soy sauce"]


def faults(near: Nearest, wanted: DinnerRequest, lots: list[Lot], **changed: Any) -> tuple[str, ...]:
    return verify(
        changed.get("dinner", dinner_object(near.dinner)),
        {
            **wanted.model_dump(mode="json"),
            "profile": wanted.profile.name,
            "gives": changed.get("gives", [give.model_dump(mode="json") for give in near.gives]),
            **changed.get("request", {}),
        },
        [lot.model_dump(mode="json") for lot in lots],
        [shipped("ingredient_tables")],
        shipped("recipes"),
    )


def found(composed: Composed) -> Nearest:
    assert not composed.dinners
    assert composed.nearest is not None
    return composed.nearest


def what(near: Nearest) -> list[str]:
    return [give.what for give in near.gives]


@pytest.mark.parametrize("buys", [1, 3])
@pytest.mark.parametrize("seed", some((2, 0, 4, 1, 3, 5), 2))
def test_the_best_of_what_gives_is_that_of_scipy(
    seed: int, buys: int, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lines = larder_lines(tables, 10 + seed % 4, seed)
    lots = lots_of([f"{line} (robin's)" if place % 4 == seed % 4 else line for place, line in enumerate(lines)])
    minutes = (None, 12, 20)[seed % 3]
    wanted = wanting(people=1 + seed % 2, protein_floor_g=(20, 35, 55, 75)[seed % 4], minutes=minutes)
    # The first three patterns from a place on that hold anything for this larder.
    looked_at = next(
        found
        for first in range(seed, seed + len(patterns))
        for chosen in [[patterns[(first + step * 7) % len(patterns)] for step in range(3)]]
        for found in [near_search(lots, wanted, chosen, tables, buys)]
        if any(problem.fillable for problem in found.problems)
    )
    problems = [problem for problem in looked_at.problems if problem.fillable]
    ours = looked_at.best(giving_rules(minutes, buys), [], Stop())
    theirs = best_score(problems, Giving(minutes, buys))
    assert ours.certain
    assert (ours.plan is not None) == (theirs.score is not None)
    if ours.plan is not None:
        assert ours.plan.score == pytest.approx(theirs.score, abs=TOLERANCE)
    for problem in problems:
        each = best_score([problem], Giving(minutes, buys)).score
        for narrower in (problem, tightened(problem)):
            given = least_given(narrower, minutes, buys)
            if each is not None:
                assert given is not None
                assert each <= upper_bound(narrower) - given + TOLERANCE
                assert best_score([narrower], Giving(minutes, buys)).score == pytest.approx(each, abs=TOLERANCE)


@pytest.mark.parametrize("path", some(NONE[:4], 4), ids=lambda path: path.stem)
def test_the_short_list_to_buy_is_that_of_looking_at_every_food(
    path: Any, tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    lots, wanted = read(path, tables)
    market = Market(wanted, tables, len(lots))
    things = [thing for ware in market.wares if (thing := market.offered(ware)) is not None]
    names = Counter(row.food for row in tables.names)
    slots = [(pattern, slot) for pattern in patterns for slot in pattern.slots.values() if slot.role == "protein"]
    alone_of = {
        thing.food.id: limit_of(thing.food, wanted.limits, tables, wanted.tolerance).grams_eye for thing in things
    }
    for pattern, slot in slots:
        ranked = []
        for thing in things:
            food, portion = thing.food, float(thing.food.portion_g)
            if not slot.takes(food) or not any(food.fit(family) for family in pattern.flavours):
                continue
            portions = slot.portions[1]
            alone = alone_of[food.id]
            portions = portions if alone is None else min(portions, alone / portion)
            if portions >= 0.4 * min(1, slot.portions[1]):
                protein = min(float(food.protein_g or 0) * portion / 100 * portions, 0.75 * wanted.protein_g)
                # Within 4 g of protein (ours) the food that goes by more names, so the commoner one, comes first.
                ranked.append((-(protein // 4), -names[food.id], food.id, food.kind))
        best = {kind: min(one for one in ranked if one[3] == kind)[:3] for kind in {one[3] for one in ranked}}
        listed = {thing.food.id for thing in market.shortlist(pattern_problem(pattern, [], wanted, {}))}
        assert listed >= {food for *_, food in sorted(best.values())[:3]}


def short_by_a_hair(number: str, tables: Tables) -> tuple[list[Lot], DinnerRequest]:
    """A fridge with a protein floor that is a gram or two above what can be had of it."""
    lots, wanted = read(next(path for path in FRIDGES if path.stem.startswith(number)), tables)
    return lots, wanted.model_copy(update={"protein_floor_g": {"29": 21, "43": 20}[number], "seconds": 600.0})


@pytest.mark.parametrize("number", ["29", "43"])
def test_short_by_a_hair_gives_a_hair(number: str, tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    lots, wanted = short_by_a_hair(number, tables)
    near = found(compose(lots, wanted, patterns, tables))
    assert near.proven
    assert len(near.gives) == 1
    give = near.gives[0]
    assert give.what == "buy" or (give.what == "protein" and give.by <= 2)
    assert faults(near, wanted, lots) == ()


@pytest.mark.parametrize("path", NONE, ids=lambda path: path.stem)
def test_no_published_cutoff_is_passed(path: Any, tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    lots, wanted = read(path, tables)
    composed = propose(path, tables, patterns)
    assert (composed.nearest is None) == composed.nothing_near
    if composed.nearest is None:
        return
    assert faults(composed.nearest, wanted, lots) == ()
    assert composed.nearest.dinner.proven is False
    dinner = composed.nearest.dinner
    share = [leaf for use in dinner.uses for leaf in leaves(use.food, use.grams / dinner.people)]
    for group, limit in SITTING.items():
        assert sum(likely(*one)[group] for one in share) <= limit + EXACT, group
    for (group, kind), cut in VARNEY_2017.items():
        for food in {food for food, _ in share if kind in {"", foods()[food]["cutoff_class"]}}:
            assert sum(likely(*one)[group] for one in share if one[0] == food) <= cut + EXACT, (food, group)


def test_staples_alone_want_three_things_and_make_a_whole_dinner(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots, wanted = lots_of(["rapeseed oil", "soy sauce", "ground cumin"]), wanting()
    near = found(compose(lots, wanted, patterns, tables))
    assert what(near) == ["buy"] * 3
    assert near.dinner.people == wanted.people
    assert (near.dinner.per_person.energy_kcal or 0) >= 380
    assert faults(near, wanted, lots) == ()


def test_more_protein_than_any_plate_holds_has_nothing_near(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    wanted = wanting(diet="vegan", protein_g=100.0, protein_floor_g=100.0)
    composed = compose(lots_of(["rapeseed oil", "soy sauce", "ground cumin"]), wanted, patterns, tables)
    assert composed.nearest is None
    assert composed.nothing_near


def test_one_thing_to_buy_makes_a_dinner(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots, wanted = lots_of(RICE_AND_CARROTS), wanting()
    near = found(compose(lots, wanted, patterns, tables))
    assert what(near) == ["buy"]
    assert near.proven
    bought = [use for use in near.dinner.uses if use.line == near.gives[0].line]
    assert [use.grams for use in bought] == [near.gives[0].by]
    assert near.dinner.per_person.protein_g >= 20
    assert faults(near, wanted, lots) == ()


def test_a_plate_of_salt_and_pepper_says_what_would_season_it(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    def told(wanted: DinnerRequest, *beside: str) -> list[str]:
        near = found(compose(lots_of(["rice 1kg", "carrots 500g", "oil", *beside]), wanted, patterns, tables))
        return [one for one in near.dinner.cautions if one.startswith("So far it tastes of salt and pepper alone")]

    (bare,) = told(wanting())
    assert "if you have or buy them" in bare
    assert "soy" not in " ".join(told(wanting(avoid=("soya", "gluten"))))
    assert told(wanting(), "soy sauce", "fresh ginger", "lemon", "chives", "mustard", "cumin", "oregano") == []


def test_a_vegetable_to_buy_is_one_that_shops_have(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    """Common practice, no source."""
    frittata = next(one for one in patterns if one.id == "frittata")
    wanted = wanting(diet="vegetarian")
    listed = {thing.food.id for thing in Market(wanted, tables, 0).shortlist(pattern_problem(frittata, [], wanted, {}))}
    greens = {food for food in listed if "vegetable" in tables.food_by_id[food].roles}
    assert greens
    assert not {food for food in greens if tables.food_by_id[food].kind in {"squash", "shoot", "mushroom"}}


def test_what_is_somebodys_is_asked_for_before_buying(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots, wanted = lots_of([*RICE_AND_CARROTS, "firm tofu 400g (robin's)"]), wanting()
    near = found(compose(lots, wanted, patterns, tables))
    assert what(near) == ["shared"]
    assert "robin" in near.gives[0].sentence
    assert faults(near, wanted, lots) == ()
    assert any("somebody else's" in fault for fault in faults(near, wanted, lots, gives=[]))


def test_who_shops_for_more_than_one_thing_serves_everybody(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(["cooked rice 260g, made today", "carrots x1", "firm tofu 200g", "rapeseed oil", "soy sauce"])
    wanted = wanting(people=3)
    near = found(compose(lots, wanted, patterns, tables))
    assert set(what(near)) == {"buy"}
    assert 2 <= len(near.gives) <= 3
    assert near.dinner.people == 3
    assert faults(near, wanted, lots) == ()


def test_who_shops_for_several_things_brings_protein(
    lots_of: LotsOf, wanting: Wanting, tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    """Nuts at home make no dinner of pasta and spinach. Most of what is aimed at: common practice, no source."""
    wanted = wanting(people=1, diet="omnivore", protein_g=20, protein_floor_g=12, seconds=60)
    near = found(compose(lots_of(["cashews", "coffee creamer", "apple sauce cups"]), wanted, patterns, tables))
    assert near.dinner.per_person.protein_g >= 16


def test_minutes_give_by_what_the_timeline_takes(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots, wanted = lots_of([*RICE_AND_CARROTS, "firm tofu 400g"]), wanting(minutes=5)
    near = found(compose(lots, wanted, patterns, tables))
    late = next(give for give in near.gives if give.what == "minutes")
    assert near.dinner.minutes == 5 + late.by
    assert faults(near, wanted, lots) == ()


@pytest.mark.parametrize(("avoid", "diet"), paired(ANNEX_II, ("vegan", "vegetarian")))
def test_allergens_and_diet_never_give(
    avoid: Allergen, diet: Diet, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(["cooked rice 400g, made today", "carrots x4", "rapeseed oil", "eggs x1", "chicken breast 300g"])
    wanted = wanting(avoid=(avoid,), diet=diet)
    composed = compose(lots, wanted, patterns, tables)
    near = composed.nearest
    used = {use.food for use in near.dinner.uses} if near else set()
    for food in used:
        assert avoid not in foods()[food]["allergens"].split(";")
        assert avoid != "gluten" or foods()[food]["gluten"] == "no"
        assert foods()[food]["diet"] in {"vegan", diet}
    assert near is None or faults(near, wanted, lots) == ()
    assert near or composed.dinners or avoid == "soya"  # else tofu or tempeh can be bought


def test_what_is_past_its_use_by_is_never_used(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of([*RICE_AND_CARROTS, "chicken breast 400g, use by yesterday", "mouldy cheddar 200g"])
    near = found(compose(lots, wanting(), patterns, tables))
    lines = {use.line for use in near.dinner.uses}
    assert not any("yesterday" in line or "mouldy" in line for line in lines)


def test_unknown_figures_and_food_left_out_are_not_bought(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    without: tuple[str, ...] = ()
    for _ in range(4):
        near = found(compose(lots_of(RICE_AND_CARROTS), wanting(without=without), patterns, tables))
        bought = next(give.food for give in near.gives if give.what == "buy")
        assert bought is not None
        assert known(bought)
        assert bought not in without
        without = (*without, bought)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda gives: gives.clear(),
        lambda gives: gives[0].update(what="caps"),
        lambda gives: gives[0].update(by=gives[0]["by"] - 5),
        lambda gives: gives[0].update(by=0),
        lambda gives: gives.append(copy.deepcopy(gives[0])),
        lambda gives: gives.append({"what": "people", "by": 1}),
    ],
)
def test_the_check_finds_gives_that_do_not_hold(
    spoil: Callable[[list[dict[str, Any]]], None],
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting,
) -> None:  # fmt: skip
    lots, wanted = lots_of(RICE_AND_CARROTS), wanting(people=2)
    near = found(compose(lots, wanted, patterns, tables))
    gives = [give.model_dump(mode="json") for give in near.gives]
    assert faults(near, wanted, lots, gives=gives) == ()
    spoil(gives)
    assert faults(near, wanted, lots, gives=gives) != ()


def test_less_protein_than_said_is_found_out(tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    lots, wanted = short_by_a_hair("29", tables)
    near = found(compose(lots, wanted, patterns, tables))
    gives = [{**give.model_dump(mode="json"), "by": give.by - 0.2} for give in near.gives]
    assert any("protein" in fault for fault in faults(near, wanted, lots, gives=gives))


def test_the_command_says_it_and_still_ends_with_3(tmp_path: Any, capsys: pytest.CaptureFixture[str]) -> None:
    larder = tmp_path / "larder.txt"
    larder.write_text("\n".join(RICE_AND_CARROTS), encoding="utf-8")
    asked = ["tonight", "--larder", str(larder), "--today", "2026-03-11"]
    assert main([*asked, "--json"]) == 3
    told = json.loads(capsys.readouterr().out)
    assert told["status"] == "none"
    assert told["dinners"] == []
    assert set(told["nearest"]) == {"gives", "proven", "dinner"}
    assert {"what", "by", "sentence"} <= set(told["nearest"]["gives"][0])
    assert main(asked) == 3
    text = " ".join(capsys.readouterr().out.split())
    assert f"Nearest: {told['nearest']['dinner']['title']}, if you {told['nearest']['gives'][0]['sentence']}." in text
    assert "No dinner needs less to give" in text
    larder.write_text("\n".join([*RICE_AND_CARROTS, "firm tofu 400g"]), encoding="utf-8")
    assert main([*asked, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["nearest"] is None
    larder.write_text("rapeseed oil\nsoy sauce\n", encoding="utf-8")
    assert main([*asked, "--diet", "vegan", "--protein", "100", "--protein-floor", "100"]) == 3
    assert "Nothing is near" in capsys.readouterr().out


def test_no_time_left_is_not_called_nothing_near(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    composed = compose(lots_of(RICE_AND_CARROTS), wanting(seconds=0.001), patterns, tables)
    assert not composed.nothing_near  # the nearest has two seconds of its own, at the least


def test_where_no_limit_alone_is_in_the_way_the_cook_hears_what_would_help(
    lots_of: LotsOf, wanting: Wanting, tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    """Wheat, mushrooms and beans bring too much, and with any amount of them 60 g of protein would not be there.

    Fructans of wheat, mannitol of button mushrooms, GOS of beans: Varney et al. 2017, by way of the tables.
    """
    lots = lots_of(["dry wheat pasta 200g", "kidney beans tin", "mushrooms 400g", "oregano", "rapeseed oil", "lemon"])
    wanted = wanting(diet="vegan", protein_g=60.0, protein_floor_g=60.0, seconds=20)
    composed = compose(lots, wanted, patterns, tables)
    assert not composed.dinners
    assert any("firm tofu or tempeh" in words and "would help" in words for words in composed.obstacles)
    assert not any("several kinds" in words for words in composed.obstacles)

"""What is disliked, more of the same, a kind of dish, and lysine: against SciPy's HiGHS, and the check."""

import json
import re
import tomllib
from collections.abc import Callable, Sequence
from decimal import Decimal
from pathlib import Path

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import compose, pattern_problems
from calmlarder.compose.dinner import liked
from calmlarder.compose.request import PROTEIN_FLOOR_G, PROTEIN_TARGET_G, DinnerRequest, Liked
from calmlarder.compose.search import search
from calmlarder.compose.solve import upper_bound
from calmlarder.larder.lot import Lot
from calmlarder.patterns.asked_dish import dish_named
from calmlarder.patterns.kinds import DishKind, kind_faults, shipped_kinds
from calmlarder.patterns.pattern import Pattern
from calmlarder.problems import CannotGoOn
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from larders import larder_lines
from milp_twin import best_score

LotsOf = Callable[[Sequence[str]], list[Lot]]
Wanting = Callable[..., DinnerRequest]
LINES = ["firm tofu 280g", "eggs x6", "cooked rice 600g, made today", "potatoes 1kg", "spinach 200g", "carrots 400g",
         "rapeseed oil", "soy sauce"]  # fmt: skip


@pytest.mark.parametrize("seed", range(6))
def test_same_best_score_with_likes_and_lysine(
    seed: int, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(larder_lines(tables, 14 + seed % 5, seed))
    chosen = [patterns[(seed + step * 7) % len(patterns)] for step in range(5)]
    held = [lot.food for lot in lots]
    like = Liked(pattern=chosen[0].id, family=chosen[0].flavours[0], mains=tuple(held[:4]))
    wanted = wanting(
        protein_g=12,
        disliked=tuple(held[seed % 2 :: 2]),
        like=like if seed % 3 else None,
        lysine_mg=(0, 400, 900)[seed % 3],
    )
    problems = [p for p in pattern_problems(lots, wanted, chosen, tables) if p.fillable]
    if not problems:
        assert not search(problems, 1, 20).plans
        return
    ours, theirs = search(problems, 1, 20), best_score(problems)
    assert bool(ours.plans) == (theirs.score is not None)
    for plan in ours.plans:
        assert plan.score == pytest.approx(theirs.score, abs=100)
        assert plan.score <= upper_bound(plan.problem)


def foods(wanted: DinnerRequest, lots: list[Lot], patterns: tuple[Pattern, ...], tables: Tables) -> set[str]:
    (dinner,) = compose(lots, wanted, patterns, tables).dinners
    return {use.food for use in dinner.uses}


def test_what_is_disliked_stays_away_unless_nothing_else_will_do(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(LINES)
    usual = foods(wanting(), lots, patterns, tables)
    protein = "tofu-firm" if "tofu-firm" in usual else "egg"
    assert protein not in foods(wanting(disliked=(protein,)), lots, patterns, tables)
    alone = [lot for lot in lots if lot.food not in {"tofu-firm", "egg"} or lot.food == protein]
    assert protein in foods(wanting(disliked=(protein,)), alone, patterns, tables)


def test_more_like_it_is_near_and_not_the_same(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(LINES)
    slots = {pattern.id: pattern.slots for pattern in patterns}
    for first in compose(lots, wanting(count=3), patterns, tables).dinners:
        like = liked(first, slots[first.pattern])
        (other,) = compose(lots, wanting(like=like), patterns, tables).dinners
        again = liked(other, slots[other.pattern])
        assert (again.pattern, set(again.mains)) != (like.pattern, set(like.mains))
        shared = set(again.mains) & set(like.mains)
        assert shared
        assert again.family == like.family or again.pattern == like.pattern or len(shared) > 1


def test_the_lysine_floor_holds_by_the_tables_own_figures(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    """USDA FoodData Central gives lysine per 100 g, as the tables hold it."""
    lots = lots_of(LINES)
    wanted = wanting(people=2, lysine_mg=1500)
    (dinner,) = compose(lots, wanted, patterns, tables).dinners
    by_hand = sum(
        ((tables.food_by_id[use.food].lysine_mg or Decimal(0)) * use.grams for use in dinner.uses), Decimal(0)
    )
    assert by_hand / 100 / 2 >= 1500
    told, plain = dinner_object(dinner), [lot.model_dump(mode="json") for lot in lots]
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    where = [shipped("ingredient_tables")], shipped("recipes")
    assert verify(told, request, plain, *where) == ()
    assert any("lysine" in fault for fault in verify(told, {**request, "lysine_mg": 4900}, plain, *where))
    nothing = compose(lots, wanting(lysine_mg=5000), patterns, tables)
    assert any("lysine" in words for words in nothing.obstacles)


# A fridge (of tests/fridges, or of a pattern in pattern_fridges.toml), a kind of dish it gives, and what makes it one:
# a kind of food, or a word of its steps. Recalled cookery.
OF_A_KIND = (
    ("soup", "17-noodle-soup-weather", "", r"soup|ladle|bowl"),
    ("soup", "49-miso-soup", "", r"soup|ladle|bowl"),
    ("stew", "05-end-of-month", "", r"simmer|braise|bubble"),
    ("curry", "08-couple-curry", "spice paste", ""),
    ("salad", "02-sad-salad-drawer", "", r"dress|toss|stir together|turn"),
    ("pasta", "04-only-tins", "pasta", ""),
    ("noodles", "49-miso-soup", "noodle", ""),
    ("rice dish", "21-prawn-fried-rice", "rice", ""),
    ("grain dish", "12-polenta-greens", "grain", ""),
    ("stir-fry", "01-weeknight-tofu", "", r"\bfry|\btoss|\bstir"),
    ("eggs", "06-after-holiday", "egg", ""),
    ("omelette", "13-omelette-for-one", "egg", r"\bset\b|flip|turn"),
    ("pie", "fish-pie", "potato", r"mash"),
    ("bake", "35-cheese-drawer", "", r"\bbake|oven"),
    ("oven tray", "20-greek-salad", "", r"oven|roast"),
    ("roast", "57-weekend-cook", "", r"oven|roast"),
    ("sandwich or toast", "52-gluten-house", "bread wrap", ""),
    ("wraps or tacos", "11-mexican-night", "wrap", ""),
    ("pancakes", "45-buckwheat", "flour", r"batter"),
    ("patties", "meat-patties", "", r"patt|shape|form"),
    ("potatoes", "38-tuna-jacket", "potato", ""),
    ("fry-up", "51-cold-snap", "potato", r"\bfry"),
    ("bowl", "30-korean-ish", "rice grain noodle", ""),
    ("plain supper", "16-steak-and-chips", "meat fish poultry cheese tofu egg", ""),
    ("cold plate", "mezze-plate", "", r"plate|lay|arrange"),
    ("porridge", "rice-porridge", "rice grain", r"stir|thick|simmer"),
    ("muesli or cereal", "muesli", "grain", ""),
    ("yoghurt or pudding", "yoghurt-bowl", "yoghurt seed cheese", ""),
    ("shake", "fruit-shake", "fruit nut-butter", r"blend"),
    ("lunch box", "rice-balls", "", r"box|pack|carry"),
    ("bite", "edamame-bowl", "soya", ""),
)


@pytest.mark.parametrize(("kind", "fridge", "of", "word"), OF_A_KIND)
def test_a_kind_of_dish_gives_dinners_of_that_kind_alone(
    kind: str, fridge: str, of: str, word: str,
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting,
) -> None:  # fmt: skip
    """The check agrees by the words of the pattern's file, and finds fault where another dish was asked for."""
    path = Path(__file__).parent / "fridges" / f"{fridge}.txt"
    fridges = tomllib.loads((Path(__file__).parent / "pattern_fridges.toml").read_text(encoding="utf-8"))
    text = path.read_text(encoding="utf-8") if path.exists() else ""
    lots = lots_of(text.splitlines() if text else fridges[fridge])
    sitting = "dinner" if text else next(one for one in patterns if one.id == fridge).sittings[0]
    diet = found[1] if (found := re.search(r"^# diet: (\w+)", text, flags=re.MULTILINE)) else "omnivore"
    dish = dish_named(kind, patterns, shipped_kinds())
    aim = {"protein_g": PROTEIN_TARGET_G[sitting], "protein_floor_g": PROTEIN_FLOOR_G[sitting]}
    wanted = wanting(sitting=sitting, diet=diet, dish=dish, count=2, **aim)
    composed = compose(lots, wanted, patterns, tables)
    assert composed.dinners, composed.obstacles
    kinds = {pattern.id: pattern.kind for pattern in patterns}
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain = [lot.model_dump(mode="json") for lot in lots]
    where = [shipped("ingredient_tables")], shipped("recipes")
    for dinner in composed.dinners:
        assert kind in kinds[dinner.pattern]
        assert not of or {tables.food_by_id[use.food].kind for use in dinner.uses} & set(of.split()), dinner.title
        assert re.search(word, " ".join((dinner.title, *dinner.steps)).casefold()), dinner.title
        told = dinner_object(dinner)
        assert verify(told, request, plain, *where) == ()
        other = next(one.name for one in shipped_kinds() if one.name not in kinds[dinner.pattern])
        asked = {**request, "dish": {**request["dish"], "name": other}}
        assert any("was asked for" in fault for fault in verify(told, asked, plain, *where))


def test_every_kind_is_tried_but_boxes_which_no_line_is() -> None:
    kinds = {kind.name for kind in shipped_kinds()}
    assert {row[0] for row in OF_A_KIND} == kinds - {"leftovers"}


def test_where_the_dish_is_not_possible_it_says_what_is_missing_what_is_near_and_what_else_there_is(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    """No pasta without pasta: recalled cookery."""
    dish = dish_named("pasta", patterns, shipped_kinds())
    composed = compose(lots_of(LINES), wanting(dish=dish), patterns, tables)
    assert not composed.dinners
    assert composed.obstacles[0] == "no pasta without pasta"
    assert composed.nearest is not None
    assert composed.nearest.dinner.pattern in dish.patterns
    assert any(give.what == "buy" and "pasta" in give.sentence for give in composed.nearest.gives)
    assert composed.instead
    assert not {dinner.pattern for dinner in composed.instead} & set(dish.patterns)
    pie = dish_named("fish pie", patterns, shipped_kinds())
    assert "fish or shellfish" in compose(lots_of(LINES), wanting(dish=pie), patterns, tables).obstacles[0]
    shake = dish_named("shake", patterns, shipped_kinds())
    assert compose(lots_of(LINES), wanting(dish=shake), patterns, tables).obstacles == (
        "a shake: made here for another meal, shake",
    )


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("Soups", "soup"), ("a soup", "soup"), ("soop", "soup"), ("broth", "soup"), ("curries", "curry"),
        ("stir fry", "stir-fry"), ("stirfry", "stir-fry"), ("omlette", "omelette"), ("taco", "wraps or tacos"),
        ("fried rice", "fried rice"), ("risoto", "risotto"), ("dal", "dal"), ("egg-fried-rice", "egg fried rice"),
        ("shepherds pie", "shepherd's pie"), ("rösti", "rosti"),
        # neither a kind nor a dish of ours, or several
        ("something soupy", None), ("chicken", None), ("beef", None), ("pi", None), ("with", None), ("", None),
        ("pasty", None),
    ],
)  # fmt: skip
def test_a_dish_is_found_by_its_word(typed: str, name: str | None, patterns: tuple[Pattern, ...]) -> None:
    """Plurals, articles and a slip of spelling are read; what is no dish is told, with the kinds (recalled cookery)."""
    if name is not None:
        assert dish_named(typed, patterns, shipped_kinds()).name == name
        return
    with pytest.raises(CannotGoOn, match="soup, stew, curry" if typed != "pasty" else "patties or pasta"):
        dish_named(typed, patterns, shipped_kinds())


def test_a_pattern_of_no_kind_and_a_kind_nobody_knows_are_named(patterns: tuple[Pattern, ...]) -> None:
    kinds = (*shipped_kinds(), DishKind(name="fondue", said="a fondue", words=("broth",)))
    bare = patterns[0].model_copy(update={"kind": ()})
    odd = patterns[1].model_copy(update={"kind": ("brunch",)})
    told = "\n".join(map(str, kind_faults((bare, odd, *patterns[2:]), kinds)))
    assert f"{bare.id}.toml: says no kind of dish" in told
    assert f"{odd.id}.toml: `brunch` is no kind of dish" in told
    assert "no pattern is of the kind `fondue`" in told
    assert "`broth` stands for soup and fondue" in told
    assert not list(kind_faults(patterns, shipped_kinds()))


def test_a_dish_on_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["demo", "--today", "2026-03-11", "--dish", "soups", "--count", "2", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["dish"] == "soup"
    assert len(told["dinners"]) == 2
    soups = {"coconut-noodle-soup", "noodle-soup", "minestra", "vegetable-soup", "potato-soup"}
    assert {one["pattern"] for one in told["dinners"]} <= soups
    assert main(["demo", "--dish", "something soupy"]) == 2
    assert "soup, stew, curry" in capsys.readouterr().err


def test_on_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["demo", "--today", "2026-03-11", "--dislike", "firm tofu", "--lysine", "1000"]) == 0
    assert "g  firm tofu" not in capsys.readouterr().out
    assert main(["demo", "--lysine", "-1"]) == 2
    assert "--lysine" in capsys.readouterr().err

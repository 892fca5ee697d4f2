"""A pattern's sentences after what fills them. What cooks said of thirty dinners; common practice, no source."""

import re
from collections.abc import Callable, Sequence

import pytest

from calmlarder.kitchen.filling import Filling, is_salted, sign_of
from calmlarder.kitchen.finer import finer
from calmlarder.kitchen.made_ready import Told, made_ready
from calmlarder.kitchen.timeline import told_twice
from calmlarder.kitchen.toasting import toasted
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

DRESSING = "Stir soy sauce with lime and hot water, spoon by spoon, until it pours, for a dressing."
ALONE = "Stir soy sauce with hot water, spoon by spoon, until it pours, for a dressing."


def thing(tables: Tables, food: str, slot: str = "sauce", line: str = "") -> Filling:
    found = tables.food_by_id[food]
    return Filling(slot, found, 60, "eye", None, "", found.minutes.get("stir-fry", 0) or 0, salted=is_salted(line))


@pytest.mark.parametrize(
    ("place", "food", "line", "said", "expected"),
    [
        ("bowl", "soy-sauce", "", DRESSING, "Stir soy sauce with lime for a dressing."),
        (
            "bowl", "soy-sauce", "", "Stir soy sauce and a spoon of hot water to a dressing.",
            "Stir soy sauce with a spoon of hot water and a grind of pepper to a dressing.",
        ),
        ("bowl", "soy-sauce", "", ALONE, "Stir soy sauce with a grind of pepper for a dressing."),
        ("bowl", "tahini", "", DRESSING, DRESSING),
        ("pan", "okra", "", "Add okra to the pan with a splash of water, cover, and cook until tender.",
         "Add okra to the pan, and cook until tender."),
        ("pan", "mackerel", "salted mackerel 300g", "Fry it with a pinch of salt until golden.",
         "Fry it until golden."),
        ("pan", "feta", "", "Add feta to the pan with a pinch of salt and pepper, and fry.",
         "Add feta to the pan with pepper, and fry."),
        ("pan", "feta", "", "Add feta with a pinch of salt.", "Add feta."),
        ("pan", "fish-dried", "tuyo 5", "Add tuyo with a pinch of salt.", "Add tuyo."),
        ("pan", "fish-herring", "2 kippers", "Season it with salt and pepper, and fry.",
         "Season it with pepper, and fry."),
        ("pan", "butter", "salted butter", "Season it with salt and pepper, and fry in butter.",
         "Season it with salt and pepper, and fry in butter."),
        ("pan", "peanut-butter", "", "Stir in 60 g peanut butter with a splash of water, and bubble for a minute.",
         "Stir in 60 g peanut butter, loosened with 100 ml of hot water, and bubble for a minute."),
        ("bowl", "lemon", "", "Stir lemon with a spoon of hot water to a dressing.",
         "Stir lemon with a few drops of oil, a pinch of salt and a grind of pepper to a dressing."),
        ("pan", "mackerel", "mackerel salted 300g", "Season it with salt and pepper, and fry.",
         "Season it with pepper, and fry."),
    ],
)  # fmt: skip
def test_words_after_the_food(tables: Tables, place: str, food: str, line: str, said: str, expected: str) -> None:
    assert finer(said, place, [thing(tables, food, line=line)]) == expected  # type: ignore[arg-type]


def test_what_a_line_says_of_salt_and_shells(tables: Tables) -> None:
    assert is_salted("salted mackerel 2 fillets")
    assert not is_salted("unsalted peanuts")
    assert not is_salted("mackerel fillets")
    walnuts = tables.food_by_id["walnuts"]
    told = made_ready("roughly chopped", walnuts, Told("walnuts in shell 500g"), mashed=False)
    assert told == "cracked and shelled, roughly chopped"


def steps_of(patterns: Sequence[Pattern], tables: Tables, main: str, *beside: str) -> list[str]:
    pattern = next(one for one in patterns if one.id == "rice-bowl")
    rice = thing(tables, "rice-basmati-dry", "base")._replace(minutes=12)
    fillings = [rice, thing(tables, main, "protein"), thing(tables, "soy-sauce")]
    fillings += [thing(tables, food, "vegetable") for food in beside]
    return list(told_twice(pattern, fillings)[0])


def test_eggs_are_fried_when_the_rest_is_done(tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    """Tofu is lifted out and waits; an egg does not."""

    def place(steps: Sequence[str], name: str) -> int:
        return next(
            n for n, step in enumerate(steps) if name in step and re.search("fry|brown|crack", step, re.IGNORECASE)
        )

    tofu, egg = (steps_of(patterns, tables, main, "pak-choi") for main in ("tofu-firm", "egg"))
    assert place(tofu, "tofu") < place(tofu, "pak choi")
    assert place(egg, "pak choi") <= place(egg, "crack in")
    assert not any("lift out" in step for step in egg)


def test_nothing_is_lifted_out_where_nothing_else_needs_the_pan(tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    assert any("lift out" in step for step in steps_of(patterns, tables, "tofu-firm", "pak-choi"))
    assert not any("lift out" in step for step in steps_of(patterns, tables, "tofu-firm"))


def test_soaked_salt_cod_is_not_reckoned_dry(tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]]) -> None:
    """It has taken up water: nearer to raw cod (USDA SR28 15015, 17.8 g) than to dried (15018, 62.8 g)."""
    (lot,) = lots_of(["soaked salt cod 300g"])
    protein = tables.food_by_id[lot.food].protein_g
    assert protein is not None
    assert 17.8 < float(protein) < 30


def test_raw_peanuts_are_toasted_and_frozen_cassava_is_not_cut(tables: Tables) -> None:
    peanuts, cassava = tables.food_by_id["peanuts"], tables.food_by_id["cassava"]
    told = made_ready("roughly chopped", peanuts, Told("peanuts raw 500g"), mashed=False)
    assert told == "toasted in a dry pan until golden, roughly chopped"
    assert made_ready("roughly chopped", peanuts, Told("salted peanuts"), mashed=False) == "roughly chopped"
    assert made_ready("cut in 2 cm cubes", cassava, Told("frozen yuca", from_freezer=True), mashed=False) == ""
    carrot = tables.food_by_id["carrot"]
    jarred = made_ready("peeled, sliced thin", carrot, Told("carrots in a jar"), mashed=False)
    assert jarred == "drained and rinsed, sliced thin"
    assert made_ready("cut in 2 cm cubes", cassava, Told("yuca 1kg"), mashed=False) == "cut in 2 cm cubes"


@pytest.mark.parametrize(
    ("pattern", "food", "line", "grams", "told"),
    [
        ("polenta", "walnuts", "walnuts", 20, "toasted in a dry pan until golden, roughly chopped"),
        ("polenta", "walnuts", "toasted walnuts", 20, "roughly chopped"),
        ("polenta", "walnuts", "walnuts", 5, "roughly chopped"),
        ("porridge", "walnuts", "walnuts", 20, "roughly chopped"),
    ],
)
def test_raw_nuts_over_a_hot_dinner_are_toasted(
    patterns: Sequence[Pattern], tables: Tables, pattern: str, food: str, line: str, grams: int, told: str
) -> None:
    """Recalled cookery."""
    dish = next(one for one in patterns if one.id == pattern)
    assert toasted("roughly chopped", tables.food_by_id[food], "topping", line, grams, dish) == told


@pytest.mark.parametrize(("food", "most"), [("cod", 12), ("plaice", 10), ("trout", 12), ("salmon", 15)])
def test_fillets_bake_no_longer_than_cooks_say(tables: Tables, food: str, most: int) -> None:
    """Thin white fillets 10 to 12 minutes at 200 °C, thick salmon 12 to 15 (recalled cookery)."""
    assert 8 <= tables.food_by_id[food].minutes["roast"] <= most


@pytest.mark.parametrize("root", ["parsnip", "swede", "turnip", "celeriac", "beetroot"])
def test_roots_that_roast_long_are_cut_thick(tables: Tables, root: str) -> None:
    """Cubes of a centimetre are black in 35 minutes at 200 °C: recalled cookery."""
    food = tables.food_by_id[root]
    assert food.minutes["roast"] >= 35
    assert food.prep_for("roast") == "peeled, in thick pieces"
    assert food.prep_for("boil") == "peeled, in 1 cm pieces"


@pytest.mark.parametrize(
    ("food", "line", "prep", "told"),
    [
        ("venison", "venison mince 400g", "in strips", ""),
        ("venison", "elk backstrap 700g", "patted dry", "cut across in slices of 2 cm, patted dry"),
        ("bread-white", "bread, 5 slices", "sliced", ""),
        ("bread-wholemeal", "bread heels", "sliced", ""),
        ("butternut-squash", "precut butternut 12oz", "peeled, in 2 cm cubes", ""),
        ("jackfruit-young", "young jackfruit, 2 tins", "rinsed", "drained and rinsed"),
        ("salt-cod-soaked", "salt cod soaking since morning", "in portions",
         "drained, simmered 8 minutes in fresh water, flaked"),
    ],
)  # fmt: skip
def test_what_its_line_says_is_done_is_not_done_again(
    tables: Tables, food: str, line: str, prep: str, told: str
) -> None:
    """Recalled cookery."""
    assert made_ready(prep, tables.food_by_id[food], Told(line), mashed=False) == told


def test_minced_venison_is_cooked_through(tables: Tables) -> None:
    """Mince has its outside inside (Food Standards Agency on burgers: recalled)."""
    venison = tables.food_by_id["venison"]
    assert sign_of("all sides are browned", venison, "venison mince 400g").endswith("no pink is left")
    assert sign_of("all sides are browned", venison, "venison steaks 2") == "all sides are browned"


@pytest.mark.parametrize("lean", ["venison", "beef-steak"])
def test_lean_meat_does_not_roast_for_long_in_strips(tables: Tables, lean: str) -> None:
    """Strips are leather after a quarter of an hour at 210 °C: recalled cookery."""
    food = tables.food_by_id[lean]
    assert food.minutes["roast"] <= 15
    assert food.prep_for("roast") == "in slices of 3 cm"


def test_neck_of_lamb_is_cut_up_and_covered_as_what_is_diced(tables: Tables) -> None:
    """A tough cut dries out in the open: recalled cookery."""
    told = made_ready("whole", tables.food_by_id["lamb-roast"], Told("lamb neck 600g"), mashed=False)
    assert told == "large pieces halved"


def test_duck_fries_on_its_skin_first(tables: Tables) -> None:
    """Recalled cookery."""
    duck = thing(tables, "duck", "protein")._replace(prep="skin scored, patted dry")
    assert "skin side down first, turning once, until browned" in finer("Fry it in oil until browned.", "pan", [duck])

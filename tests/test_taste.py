"""Rules of taste: a tiny fridge in, a dinner out. What cooks said of thirty dinners; common practice, no source."""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.taste import says_garlic
from calmlarder.kitchen.filling import short_name
from calmlarder.kitchen.made_ready import Told, made_ready
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure

Cook = Callable[..., Dinner | None]


@pytest.fixture
def cook(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Cook:
    """The best dinner of a fridge, from one pattern where it is named."""

    def dinner(lines: Sequence[str], pattern: str | None = None, people: int = 2) -> Dinner | None:
        chosen = [one for one in patterns if pattern in (None, one.id)]
        wanted = wanting(people=people, seconds=60, protein_floor_g=8)
        _, dinners = best_dinners(lots_of(lines), wanted, chosen, tables)
        return dinners[0] if dinners else None

    return dinner


def foods(dinner: Dinner | None) -> set[str]:
    assert dinner is not None
    return {use.food for use in dinner.uses}


WARM = ["potatoes 1kg", "firm tofu 400g", "carrots x4", "cucumber", "spinach 200g"]


def test_no_tahini_dressing_without_something_sour(cook: Cook) -> None:
    assert cook([*WARM, "tahini"], "warm-salad") is None
    assert "tahini" in foods(cook([*WARM, "tahini", "lemon"], "warm-salad"))


def test_a_bag_of_leaves_on_its_last_day_lies_beside_the_ragu(cook: Cook) -> None:
    """And bacon makes no stew where there are eggs; recalled cookery."""
    ragu = ["gluten-free penne 500g", "beef mince 400g", "passata 500g", "parmesan", "lettuce use by today"]
    assert "lettuce" in foods(cook(ragu, "ragu"))
    assert cook(["potatoes 1kg", "bacon 200g", "spinach 200g", "tomatoes x4"], "tomato-stew") is None


def test_a_peanut_dressing_has_its_chilli_and_its_sugar(cook: Cook) -> None:
    """As a cook of Java makes it; recalled cookery."""
    lines = ["rice noodles 300g", "firm tofu 400g", "carrots x4", "peanut butter", "soy sauce", "lime", "maple syrup",
             "chilli flakes"]  # fmt: skip
    assert {"maple-syrup", "chilli-flakes"} <= foods(cook(lines, "peanut-sauce-plate"))


def test_adobo_of_belly_has_an_egg_beside_it_and_its_aubergine_in_the_sauce(cook: Cook) -> None:
    """Recalled cookery."""
    lines = ["white rice 1kg", "pork belly 400g", "aubergine", "eggs x4", "soy sauce", "white vinegar", "bay leaves"]
    assert {"aubergine", "egg"} <= foods(cook(lines, "adobo"))


def test_two_thighs_each_and_none_is_left_over(cook: Cook) -> None:
    """Four among two: nobody is given one and a half. Common practice, no source."""
    dinner = cook(["potatoes 1kg", "chicken thighs 400g", "carrots x4", "broccoli", "olive oil", "lemon", "thyme"])
    assert dinner is not None
    assert next(use.grams for use in dinner.uses if use.food == "chicken-thigh") in {200, 400}


def test_two_sorts_of_fish_on_one_row_are_told_as_fish(cook: Cook) -> None:
    """A hake and a rohu are no haddock; recalled cookery."""
    lines = ["hake 150g, use by today", "rui fish 150g, use by today", "cooked rice 600g, made today", "aubergine",
             "spinach 200g", "turmeric", "fresh ginger", "coriander"]  # fmt: skip
    dinner = cook(lines)
    assert dinner is not None
    assert "fish" in dinner.title
    assert "haddock" not in dinner.title


@pytest.mark.parametrize(
    ("lines", "dish", "with_it", "without"),
    [
        # Nothing that fills is at home: a salad with what is ready, a pan with its cheese. Recalled cookery.
        (["smoked mackerel 200g", "feta 200g", "lettuce 150g", "red pepper", "fennel", "lemon", "mustard"],
         "salad-plate", {"mackerel-smoked", "lettuce"}, set()),
        (["lamb mince 300g", "aubergine", "feta 200g", "mint", "parsley", "tomato puree", "labneh"],
         "pan-supper", {"lamb-mince", "aubergine", "feta"}, set()),
        # Maize of the Punjab is stirred to a mash, never drained; recalled cookery.
        (["paneer 250g", "spinach 400g", "polenta 500g", "fresh ginger", "green chilli", "coriander", "ghee"],
         "maize-and-greens", {"paneer", "spinach"}, set()),
        # Mussels on their day come before eggs, and steam with nothing in the pot; recalled cookery.
        (["mussels 1kg, use by today", "potatoes 1kg", "watercress", "eggs x6", "white wine 300ml"],
         "steamed-shellfish", {"mussels", "watercress"}, set()),
        # Two lines of eggs are one omelette; recalled cookery.
        (["eggs x3", "2 eggs, use by tomorrow", "spinach 200g", "courgette", "edam 100g", "butter"],
         "roots-frittata", {"egg", "spinach"}, set()),
        # Bacon on its last day goes into the frittata, cheese or no cheese; recalled cookery.
        (["eggs x4", "bacon 150g, use by tomorrow", "parsnip, use by tomorrow", "cabbage", "cheddar 100g", "butter"],
         "roots-frittata", {"bacon", "cheddar"}, set()),
        # Fish with potatoes is no soup; cream goes into the juices of the pan. Recalled cookery.
        (["cod 300g, use by today", "potatoes 1kg", "carrots x3", "spinach 200g", "parsley", "butter"],
         None, {"cod", "potato"}, {"vegetable-soup"}),
        # Salted herring lies beside buckwheat and roots as beside potatoes; recalled cookery.
        (["herring in oil 200g", "buckwheat 500g", "carrots x4", "parsley root x3", "gherkins x5", "dill"],
         "kasha", {"herring-pickled", "carrot"}, set()),
        # Squash goes into a hash as roots do; recalled cookery.
        (["potatoes 1kg", "eggs x6", "butternut squash half, use by tomorrow", "chives", "butter"],
         None, {"egg", "butternut-squash"}, set()),
        # Walnuts are strewn over aubergines and fried cheese; recalled cookery.
        (["halloumi 250g", "pitta bread", "aubergines x2", "cucumber", "parsley", "walnuts 100g", "dried mint"],
         None, {"halloumi", "walnuts"}, set()),
        # Kidneys take mustard and no cheese; yellow cress and strawberry yoghurt no dinner. Recalled cookery.
        (["lamb kidneys x4, use by tomorrow", "potatoes 1kg", "carrots x4", "stilton 200g, use by tomorrow", "mustard",
          "watercress, yellow", "strawberry lactose-free yoghurt"], None, {"liver"}, set()),
    ],
)  # fmt: skip
def test_what_a_cook_makes_of_a_fridge(
    cook: Cook, lines: list[str], dish: str | None, with_it: set[str], without: set[str]
) -> None:
    dinner = cook(lines)
    assert dinner is not None
    assert dish in (None, dinner.pattern)
    assert with_it <= foods(dinner)
    assert dinner.pattern not in without
    assert "liver" not in with_it or not foods(dinner) & {"stilton", "watercress", "yoghurt-lactose-free"}


def test_potatoes_in_small_dice_where_minutes_are_few(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:
    """A centimetre and a half is boiled in ten minutes; common practice, no source."""
    mince = ["turkey mince 500g, use by tomorrow", "spinach 300g", "carrots x4", "paprika"]
    _, dinners = best_dinners(
        lots_of(["potatoes 2kg", "white bread", *mince]), wanting(people=3, minutes=20), patterns, tables
    )
    assert "potato" in foods(dinners[0])
    assert dinners[0].minutes <= 20


CHOWDER = ["potatoes 1kg", "smoked tofu 400g", "carrots x4", "soya drink (from soya protein) 1 litre"]


def test_no_chowder_of_salted_water(cook: Cook) -> None:
    assert cook(CHOWDER, "chowder") is None
    assert "nutritional-yeast" in foods(cook([*CHOWDER, "nutritional yeast"], "chowder"))


def test_seasons_with_what_is_there(cook: Cook) -> None:
    dinner = cook(["dry white rice 1kg", "firm tofu 400g", "pak choi x3", "soy sauce", "sesame oil", "fresh ginger",
                   "sesame seeds", "lime"])  # fmt: skip
    assert len(foods(dinner) & {"soy-sauce", "oil-sesame", "ginger", "lime"}) >= 3


@pytest.mark.parametrize("people", [1, 2, 4])
def test_soy_sauce_beside_peanut_butter_is_enough_to_taste(cook: Cook, people: int) -> None:
    """A teaspoon and a half each at the least; the more common tablespoon has about 0.9 g of sodium (USDA SR 28)."""
    lines = [
        "dry rice noodles 500g",
        "firm tofu 600g",
        "pak choi x6",
        "peanut butter",
        "tamari",
        "lime x3",
        "carrots x6",
    ]
    dinner = cook(lines, "noodle-bowl", people)
    assert dinner is not None
    assert {use.food: use.grams for use in dinner.uses}["tamari"] >= 8 * people


def test_tacos_of_two_tortillas_each_before_rice(cook: Cook) -> None:
    """A Mexican larder with rice beside its tortillas."""
    lines = [
        "beef mince 450g, use by tomorrow", "8 corn tortillas", "cheddar 120g", "tomatoes x2", "lettuce", "lime", "oil",
        "ground cumin", "paprika", "dry white rice 1kg", "carrots x4", "courgette",
    ]  # fmt: skip
    dinner = cook(lines, people=4)
    assert dinner is not None
    assert dinner.pattern == "tacos"
    assert {use.food: use.grams for use in dinner.uses}["tortilla-corn"] >= 200


def test_fish_fingers_lie_beside_and_are_stirred_into_nothing(cook: Cook) -> None:
    """In their coating they go soft in a hash, a stew or a dressing; common practice, no source."""
    lines = ["potatoes 1kg", "fish fingers 10", "carrots x4", "parsnips x2", "tinned tomatoes", "mustard", "paprika"]
    assert all(cook(lines, pattern) is None for pattern in ("hash", "paprika-stew", "warm-salad", "patties"))
    assert "fish-fingers" in foods(cook(lines))


def test_eggs_bind_no_tomatoes_with_pasta(cook: Cook) -> None:
    """They curdle in the juice; common practice, no source."""
    lines = ["gluten-free pasta 500g", "eggs x6", "parmesan", "tomatoes x4", "courgette", "parsley", "olive oil"]
    assert not {"tomato"} & foods(cook(lines, "pasta-with-egg"))


def test_garlic_in_the_name_only_where_nothing_else_seasons(cook: Cook) -> None:
    lines = ["dry white rice 1kg", "firm tofu 400g", "pak choi x3", "sweet chilli sauce", "fresh ginger", "lime"]
    assert "sweet-chilli-sauce" not in foods(cook([*lines, "soy sauce"]))


def test_what_says_garlic(tables: Tables) -> None:
    says = {"gochujang": True, "sweet-chilli-sauce": True, "pesto-no-garlic": False, "oil-garlic": False,
            "spring-onion-green": False, "stock-plain": False, "stock-onion": True}  # fmt: skip
    assert {food: says_garlic(tables.food_by_id[food]) for food in says} == says


@pytest.mark.parametrize("food", ["kale", "courgette", "tomatillo", "squash-yellow", "aubergine", "chard", "broccoli"])
def test_what_is_cooked_is_not_offered_raw(tables: Tables, food: str) -> None:
    assert "raw" not in tables.food_by_id[food].minutes


def test_soft_tomatoes_are_cooked(cook: Cook) -> None:
    lines = ["potatoes 1kg", "eggs x6", "feta 200g", "lettuce", "cucumber", "olives", "lemon", "oregano"]
    firm = cook([*lines, "tomatoes x4"], "greek-salad-plate")
    soft = cook([*lines, "tomatoes x4, soft"], "greek-salad-plate")
    assert "tomato" in foods(firm)
    assert "tomato" not in foods(soft)


def test_two_proteins_at_most(cook: Cook) -> None:
    dinner = cook(["dry rice noodles 500g", "firm tofu 120g, use by tomorrow", "salmon fillet 120g, use by tomorrow",
                   "eggs x4", "edamame 100g, use by tomorrow", "pak choi x3", "miso paste", "fresh ginger"],
                  "miso-noodle-soup")  # fmt: skip
    assert len(foods(dinner) & {"tofu-firm", "salmon", "egg", "edamame"}) <= 2


def test_the_fish_on_its_last_day_before_eggs_that_keep(cook: Cook) -> None:
    dinner = cook(["potatoes 1kg", "cod fillet 260g, use by today", "eggs x6", "green beans 200g", "lemon", "dill",
                   "mayonnaise", "spinach 200g, use by tomorrow"])  # fmt: skip
    assert "cod" in foods(dinner)


def test_a_pinch_of_asafoetida_and_little_milk_in_mash(cook: Cook) -> None:
    dal = cook(["basmati rice 1kg", "tinned lentils x3", "spinach 400g", "carrots x4", "asafoetida", "turmeric",
                "fresh ginger", "lemon"], "dal", people=4)  # fmt: skip
    assert dal is not None
    assert all(use.grams <= 1 for use in dal.uses if use.food == "asafoetida")
    pie = cook(["potatoes 2kg", "beef mince 500g", "carrots x4", "lactose-free milk 1 litre", "tinned tomatoes",
                "thyme"], "topped-pie", people=4)  # fmt: skip
    assert pie is not None
    assert pie.title.startswith("Cottage pie with carrots")
    assert all(use.grams <= 45 * 4 for use in pie.uses if use.food == "milk-lactose-free")
    assert any("peeled" in step for step in pie.steps)


def test_frozen_fish_is_thawed_and_greens_share_a_pot(cook: Cook) -> None:
    dinner = cook(["potatoes 1kg", "salmon fillets 300g, frozen", "green beans 200g", "carrots x4", "lemon", "dill"],
                  "fish-and-potatoes")  # fmt: skip
    assert dinner is not None
    text = " ".join(dinner.steps)
    assert "salmon fillet thawed" in text
    assert any("thaw before you start" in caution for caution in dinner.cautions)
    assert text.count("Bring a pot of salted water to the boil") <= 2


def test_made_ready_after_what_the_line_says(tables: Tables) -> None:
    cheddar, potato, broccoli = (tables.food_by_id[food] for food in ("cheddar", "potato", "broccoli"))
    assert made_ready("grated", cheddar, Told("grated mozzarella 200g"), False) == ""
    assert made_ready("grated", cheddar, Told("cheddar 200g"), False) == "grated"
    cut = "scrubbed, cut in 4 cm pieces"
    assert made_ready(cut, potato, Told("potatoes"), True) == "peeled, cut in 4 cm pieces"
    assert made_ready(cut, potato, Told("baby potatoes 750g"), True) == "scrubbed, large ones halved"
    sprouting = made_ready(cut, potato, Told("potatoes", "sprouting"), False)
    assert sprouting == "peeled, eyes and sprouts cut out, cut in 4 cm pieces"
    assert made_ready("in florets", broccoli, Told("purple sprouting broccoli", "sprouting"), False) == "in florets"
    parsley, parsnip, sprouts = (tables.food_by_id[food] for food in ("parsley", "parsnip", "bean-sprouts"))
    assert made_ready("chopped", parsley, Told("parsley", "yellowing"), False) == "picked over, bad leaves out, chopped"
    assert made_ready("chopped", parsley, Told("parsley", "limp"), False) == "chopped"
    assert made_ready("peeled", parsnip, Told("parsnips", "brown"), False) == "trimmed of what is bad, peeled"
    assert made_ready("rinsed", sprouts, Told("beansprouts", "brown"), False) == "picked over, bad ones out, rinsed"
    assert short_name("gochujang with garlic") == "gochujang"


def test_measures_a_cook_has(tables: Tables) -> None:
    def said(food: str, grams: int) -> str | None:
        return in_household_measure(tables.food_by_id[food], grams, tables, "nearest")

    assert said("paprika-smoked", 2) == "about 1 tsp"
    assert said("tomato-canned", 400) == "about 1 tin"
    # 100 g a piece of cooked chicken, 160 g a breast (measures.csv): only the breast has a shape to count.
    assert [said("chicken-cooked", grams) for grams in (50, 100, 125, 200)] == [
        "about half of a piece", "about 1 piece", "about 1 piece", "about 2 pieces",
    ]  # fmt: skip
    assert said("chicken-breast", 160) == "about 1"
    # 15 g a floret (ingredient_tables/measures.csv): nobody looks for half of one.
    assert [said("broccoli", grams) for grams in (15, 112, 157, 165)] == [
        f"about {count} floret{'s' * (count > 1)}" for count in (1, 7, 10, 11)
    ]


def test_plain_tofu_is_not_left_plain(cook: Cook) -> None:
    """With soy sauce in the larder tofu is never dinner with a squeeze of lemon alone."""
    larder = ["potatoes 1kg", "dry white rice 1kg", "firm tofu 400g", "spinach 200g, use by tomorrow", "lemon",
              "soya drink (from soya protein) 1 litre", "parsley", "soy sauce"]  # fmt: skip
    assert foods(cook(larder)) & {"soy-sauce"}


def test_cinnamon_alone_spices_no_dinner(cook: Cook) -> None:
    larder = ["potatoes 1kg", "firm tofu 400g", "aubergine", "chard 300g", "lemon", "tahini"]
    assert "cinnamon" not in foods(cook([*larder, "ground cinnamon"]))


def test_hake_is_called_hake(cook: Cook) -> None:
    larder = ["potatoes 1kg", "hake fillets 300g, use by tomorrow", "green beans 200g", "lemon", "parsley", "olive oil"]
    dinner = cook(larder)
    assert dinner is not None
    assert "hake" in dinner.title.lower()
    assert "haddock" not in " ".join([dinner.title, *dinner.steps]).lower()


@pytest.mark.parametrize("line", ["new potatoes 750g", "potatoes 2kg, sprouting"])
def test_small_or_sprouting_potatoes_are_no_jackets(cook: Cook, line: str) -> None:
    rest = ["cheddar 200g", "tomatoes x4", "lettuce", "butter", "mustard"]
    assert cook([line, *rest], "microwave-potato") is None
    assert cook(["potatoes 2kg", *rest], "microwave-potato") is not None


def test_eggs_are_not_cooked_among_mince(cook: Cook) -> None:
    larder = ["gluten-free wraps x6", "turkey mince 150g, use by today", "eggs x6", "lettuce", "tomatoes x3",
              "green pepper", "cumin", "limes 2", "mayonnaise"]  # fmt: skip
    assert not {"turkey-mince", "egg"} <= foods(cook(larder, "wraps"))


def test_what_is_too_much_for_one_pan_is_told_for_two_in_steps_and_timeline(cook: Cook) -> None:
    larder = ["potatoes 2kg", "bacon 225g", "eggs x12", "green beans 600g", "butter", "thyme"]
    for people, pans in ((1, "in a wide pan"), (5, "in two wide pans")):
        dinner = cook(larder, "hash", people=people)
        assert dinner is not None
        assert any(pans in step for step in dinner.steps)
        assert any(pans in moment.what for moment in dinner.timeline.moments)


def test_what_rounds_a_dish_off_and_is_there_goes_in(cook: Cook) -> None:
    mash = ["potatoes 1kg", "kale 300g", "eggs x6", "butter", "lemon", "lactose free sour cream 200g"]
    assert "sour-cream-lactose-free" in foods(cook(mash, "colcannon"))  # and no lemon over eggs and mash
    polenta = ["polenta 500g", "firm tofu 400g", "spinach 200g", "carrots x4", "tin of tomatoes", "oregano"]
    assert "tomato-canned" in foods(cook(polenta, "polenta"))

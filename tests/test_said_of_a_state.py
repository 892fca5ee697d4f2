"""What cooks say of a thing that goes, and what keeps it: varieties of rice, pouches, cuts on the bone, cut fruit.

The lines are ours; what a cook would say of each is common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)


def lot_of(tables: Tables, line: str) -> Lot:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    assert len(reading.lots) == 1, line
    return reading.lots[0]


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("sona masuri rice 2kg", "rice-white-dry"),
        ("jeerakasala rice 1 kg", "rice-white-dry"),
        ("matta rice 1kg", "rice-brown-dry"),
        ("red rice 2kg", "rice-brown-dry"),
        ("leftover sona masuri rice", "rice-white-cooked"),
        ("green chiles can", "chilli-poblano"),
        ("red poha 500g", "rice-flaked"),
        ("paprika 3", "pepper-yellow"),
        ("2 paprika", "pepper-yellow"),
        ("paprika", "paprika"),
        ("1 tsp paprika", "paprika"),
        ("paprika 40g", "paprika"),
        ("smoked paprika jar", "paprika"),
        ("chicken laps 4", "chicken-drumsticks"),
        ("chicken maryland x2", "chicken-drumsticks"),
        ("chicken pieces 1kg", "chicken-drumsticks"),
        ("chicken curry cut 500g", "chicken-drumsticks"),
    ],
)
def test_a_staple_is_the_one_that_is_named(tables: Tables, line: str, food: str) -> None:
    """Raw rice is no cooked rice, red rice no wild rice, what is on the bone no breast."""
    assert lot_of(tables, line).food == food


@pytest.mark.parametrize(
    "line",
    [
        "courgette going", "peppers (going)", "tomatoes going fast", "spinach looking rough", "salad bag wet",
        "cucumber ropey", "spinach hanging on", "milk on the turn", "yoghurt past it", "carrots a bit sad",
    ],
)  # fmt: skip
def test_what_goes_is_for_tonight(tables: Tables, line: str) -> None:
    lot = lot_of(tables, line)
    assert lot.days_left == 1
    assert not lot.to_bin


@pytest.mark.parametrize("line", ["lettuce manky", "cheese hairy"])
def test_what_has_gone_is_not_for_eating(tables: Tables, line: str) -> None:
    assert is_gone_or_off(LarderReader(tables, TODAY), line)


@pytest.mark.parametrize("line", ["wet garlic", "lettuce in a wet towel", "bananas not going", "potatoes 2kg"])
def test_what_only_looks_like_such_a_word(tables: Tables, line: str) -> None:
    assert lot_of(tables, line).condition is None


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("half an avocado", 2), ("half melon", 2), ("1/2 peach", 2), ("wedge of watermelon", 2),
        ("half a butternut squash", 4), ("half a cut squash", 4), ("1 butternut squash", None),
        ("2 avocados", 8), ("half a punnet of strawberries", 6), ("quinoa pouch 250g", None),
        ("cooked quinoa 250g", 2), ("half a pouch of cooked rice", 1),
    ],
)  # fmt: skip
def test_what_is_cut_goes_fast_and_what_is_sealed_keeps(tables: Tables, line: str, days: int | None) -> None:
    """Days of ingredient_tables/keeping.csv: cut fruit and avocado two, squash four; a sealed pouch has no day."""
    assert lot_of(tables, line).days_left == days


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("granola w almonds", "granola"),
        ("mediterranean style tofu", "tofu-firm"),
        ("beets tops still on", "beetroot"),
        ("carrots, tops still on", "carrot"),
        ("bread gluten free", "bread-gluten-free"),
        ("bread, gf", "bread-gluten-free"),
        ("vegan shreds", "vegan-cheese"),
        ("vegan quark", "soya-yoghurt"),
    ],
)
def test_what_changes_nothing_is_passed_over(tables: Tables, line: str, food: str) -> None:
    assert lot_of(tables, line).food == food


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("beans (for others)", "somebody else"), ("milk (for someone else)", "somebody else"), ("ham (amma)", "mum"),
        ("tom's beans", "tom"), ("cheese (my sister)", "sister"), ("yoghurt (guest)", "guest"),
    ],
)  # fmt: skip
def test_what_is_somebody_elses_is_set_aside_unasked(tables: Tables, line: str, owner: str) -> None:
    lot = lot_of(tables, line)
    assert lot.owner == owner
    assert not lot.owner_agrees


def test_a_marinade_is_asked_about(tables: Tables) -> None:
    """Onion and garlic are in most of them."""
    reading = LarderReader(tables, TODAY).read("marinated chicken thighs", "line 1")
    assert reading is not None
    assert reading.to_answer is not None
    assert "garlic" in reading.to_answer.question
    assert reading.to_answer.choices == ("chicken thighs",)


@pytest.mark.parametrize("line", ["vegan cream", "vegan burrata", "vegan bits", "vegan slices"])
def test_a_question_about_what_is_vegan_offers_what_stands_in(tables: Tables, line: str) -> None:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    offered = [tables.food_by_id[one.food] for one in reading.candidates]
    assert offered
    assert all(food.diet != "omnivore" and food.kind not in {"chocolate", "sauce"} for food in offered)
    assert not any("chocolate" in food.name for food in offered)


def test_the_words_of_a_seasoning_still_ask(tables: Tables) -> None:
    reading = LarderReader(tables, TODAY).read("harissa style chicken thighs", "line 1")
    assert reading is not None
    assert not reading.lots


@pytest.mark.parametrize(
    ("line", "bin_it"),
    [
        ("lettuce bag, brown and wet", True),
        ("spinach wet & brown", True),
        ("salad bag, wet", False),
        ("cilantro 1/2 bunch dark and wet", True),
    ],
)
def test_leaves_that_are_brown_and_wet_are_not_added(tables: Tables, line: str, bin_it: bool) -> None:
    assert is_gone_or_off(LarderReader(tables, TODAY), line) is bin_it


@pytest.mark.parametrize("line", ["beef slices 250g defrosted, use today", "sliced beef 300g"])
def test_slices_that_nobody_calls_cooked_are_raw(tables: Tables, line: str) -> None:
    """Cooked through, a slice that was cooked before is safe; warmed, a raw one is not."""
    assert lot_of(tables, line).food == "beef-steak"
    assert lot_of(tables, "deli beef slices 100g").food == "beef-cooked"


@pytest.mark.parametrize(
    ("line", "food", "grams", "days"),
    [
        ("leftover asparagus from yesterday", "asparagus", 200, 1),
        ("roast courgette", "courgette", 200, 2),
        ("boiled cabbage", "cabbage-white", 200, 2),
        ("leftover lettuce from yesterday", "lettuce", 150, 1),
        ("leftover brie from sunday", "brie", 200, 7),
        ("leftover chinese cabbage", "cabbage-chinese", 200, 2),
        ("leftover red onion", "onion-red", 110, 4),
        ("half a tomato", "tomato", 50, 3),
        ("sliced cucumber", "cucumber", 300, 3),
        ("tin of strawberries", "strawberries-canned", 180, None),
        ("tin of cashews", "cashews", 240, None),
        ("celery, about 4 ribs left", "celery", 160, 10),
    ],
)
def test_what_is_left_or_cooked_of_a_food_is_that_food(
    line: str, food: str, grams: float, days: int | None, tables: Tables
) -> None:
    lot = lot_of(tables, line)
    assert (lot.food, lot.grams, lot.days_left) == (food, grams, days)


def test_half_and_half_is_no_half(tables: Tables) -> None:
    reading = LarderReader(tables, TODAY).read("half and half, eggs", "line 1")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == ["half-and-half", "egg"]


@pytest.mark.parametrize(
    ("line", "food", "owner"),
    [
        ("tofu half block soft", "tofu-silken", None),
        ("dried apricots (frozen)", "apricot-dried", None),
        ("kerry milk 2l", "milk", None),
        ("milk (tom)", "milk", "tom"),
        ("hummus - tom", "hummus", "tom"),
        ("4 toms", "tomato", None),
        ("arroz cocido de anoche", "rice-white-cooked", None),
        ("aguacate duro 2", "avocado", None),
        ("karotten gebraten", "carrot-microwaved", None),
        ("roti 4 kal ki", "chapati", None),
        ("pollo deshebrado 300g", "chicken-cooked", None),
        ("macaroni pie", "macaroni-cheese", None),
    ],
)
def test_words_beside_a_food(line: str, food: str, owner: str | None, tables: Tables) -> None:
    lot = lot_of(tables, line)
    assert (lot.food, lot.owner) == (food, owner)


def test_a_gourd_is_nobodys(tables: Tables) -> None:
    reading = LarderReader(tables, TODAY).read("ivy gourd, broccoli", "line 1")
    assert reading is not None
    assert [(lot.food, lot.owner) for lot in reading.lots] == [("ivy-gourd", None), ("broccoli", None)]


@pytest.mark.parametrize(
    ("line", "grams"),
    [("piece of edam", 100), ("tin of paprika", 50), ("tin of cocoa", 250), ("half tub soured cream", 150)],
)
def test_packs_weigh_what_such_packs_do(line: str, grams: float, tables: Tables) -> None:
    """By common practice, no source."""
    assert lot_of(tables, line).grams == grams


def test_open_for_about_a_week(tables: Tables) -> None:
    """Pesto keeps seven days once open (keeping.csv)."""
    assert lot_of(tables, "pesto, been open a week or so").days_left == 0
    assert lot_of(tables, "opened about 5 days ago, pesto").days_left == 2


@pytest.mark.parametrize(
    ("line", "food", "days"),
    [
        ("mince from the butcher, yesterday", "beef-mince", 2),
        ("chicken from the butcher yesterday", "chicken-breast", 1),
        ("chicken from somewhere on monday", "chicken-breast", 0),
        ("chicken from yesterday", "chicken-breast", 1),
        ("chicken from last night", "chicken-cooked", 1),
        ("leftover chicken from yesterday", "chicken-cooked", 1),
        ("cod fillets, from this morning", "cod", 2),
        ("cod fillets from last night", "cod", 1),
        ("chicken drumsticks 10, in the fridge since last night", "chicken-drumsticks", 1),
        ("chicken drumsticks 10, from the freezer, in the fridge since last night", "chicken-drumsticks", 0),
        ("bonito fillets, from this morning", "mackerel", 2),
        ("mackerel from yesterday", "mackerel", 1),
        ("lamb chops from yesterday", "lamb-chops", 2),
        ("haddock, yesterday's", "fish-white", 1),
        ("baked cod from yesterday", "fish-white-cooked", 1),
    ],
)
def test_what_came_from_a_shop_is_raw(line: str, food: str, days: int, tables: Tables) -> None:
    """A day alone is when it was bought: raw flesh taken for cooked would not be cooked."""
    lot = lot_of(tables, line)
    assert (lot.food, lot.days_left) == (food, days)


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("a third of a 1kg bag of rice", "rice-white-dry", 333.3),
        ("quarter of 1kg rice", "rice-white-dry", 250),
        ("half of 2 litres milk", "milk", 1000),
        ("half a 4 pint milk", "milk", 1136),
        ("milk, about two thirds of a litre", "milk", 666.7),
        ("flour, most of 1kg", "flour-wheat-white", 750),
        ("half of 6 eggs", "egg", 165),
        ("1 1/2 lb mince", "beef-mince", 680.4),
        ("half a dozen eggs", "egg", 330),
        ("chorizo ring half", "chorizo", 112.5),
    ],
)
def test_a_share_of_so_much(line: str, food: str, grams: float, tables: Tables) -> None:
    lot = lot_of(tables, line)
    assert (lot.food, lot.grams) == (food, grams)


@pytest.mark.parametrize("line", ["tin of mango", "cooked mango"])
def test_mango_is_never_green_mango_in_silence(line: str, tables: Tables) -> None:
    """A ripe one holds fructose beyond its glucose, a green one little (fermentables.csv)."""
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    assert not reading.lots
    assert reading.candidates[0].food == "mango"


@pytest.mark.parametrize("line", ["carrots, dal with onion"])
def test_what_holds_onion_is_not_lost_behind_a_comma(line: str, tables: Tables) -> None:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    assert not reading.lots
    assert "dal-cooked" in {candidate.food for candidate in reading.candidates}


def test_pork_and_beans_are_no_raw_pork(tables: Tables) -> None:
    assert lot_of(tables, "pork and beans tin").food == "chilli-con-carne"

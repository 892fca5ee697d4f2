"""A recipe brought under the caps, held against the cut-offs of Varney et al. 2017 (doi:10.1111/jgh.13698).

Loads are worked out anew from the CSV files by `test_swaps.passed`, which calls nothing of the program.
"""

import copy
from collections.abc import Callable, Sequence
from decimal import Decimal
from typing import Any

import pytest

from adapt_twin import line, made_up_recipe
from by_hand import foods, passed
from calmlarder.adapt.adapt import adapt
from calmlarder.adapt.changed_lines import Page, changed_recipe, parts_of
from calmlarder.adapt.line_words import own_words
from calmlarder.adapt.model import Adapted, Amount, Eaters
from calmlarder.adapt.written import written
from calmlarder.checks.adapted import verify
from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.recipe import IngredientRead, Recipe
from calmlarder.intake.profile import Profile, profile_named
from calmlarder.render.adapt_json import adapt_object
from calmlarder.render.adapt_text import Run, adapt_text
from calmlarder.render.style import Style
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

OMNIVORE = {"profile": "elimination", "diet": "omnivore", "avoid": []}
CURRY = [
    line("brown onions", "onion-brown", 300, weighed=False),
    line("garlic", "garlic", 9, weighed=False),
    line("chickpeas", "chickpeas-canned", 240),
    line("carrots", "carrot", 160),
    line("tomatoes", "tomato", 400),
]
UNKNOWN = IngredientRead(text="a knob of zorb", outcome="unknown")


@pytest.fixture
def adapted(tables: Tables) -> Callable[..., Adapted]:
    def run(reads: Sequence[IngredientRead], serves: int = 4, profile: str = "elimination", **eaters: Any) -> Adapted:
        return adapt(reads, serves, Eaters(profile=profile_named(profile, tables), **eaters), tables)

    return run


def faults(reads: Sequence[IngredientRead], answer: Adapted, request: dict[str, Any] | None = None) -> tuple[str, ...]:
    return verify(adapt_object("", reads, answer, None), request or OMNIVORE, [shipped("ingredient_tables")])


def plate(reads: Sequence[IngredientRead], answer: Adapted) -> list[tuple[str, float]]:
    """One serving after the changes; 130/100 of it is what `passed` takes for the worst case of each."""
    assert answer.after is not None
    changed = {change.place: change.to for change in answer.changes if change.place is not None}
    amounts: list[Amount] = []
    for place, read in enumerate(reads):
        amounts += changed.get(place, (answer.amounts[place],)) if read.outcome == "read" else ()
    return [(one.food, float(one.most) / 1.3 / answer.after.serves) for one in amounts]


def test_a_curry_is_brought_under(adapted: Callable[..., Adapted]) -> None:
    answer = adapted(CURRY)
    assert answer.status == "adapted"
    assert "oligosaccharides:fresh;other" in answer.passed
    assert passed([(read.food or "", (read.grams or 0) / 4) for read in CURRY]) >= {"oligosaccharides"}
    assert passed(plate(CURRY, answer)) <= {"total"}  # `total` holds for the planned amounts, verified below
    assert faults(CURRY, answer) == ()
    changes = {change.ingredient: change for change in answer.changes}
    assert changes["300 g brown onions"].change == "swap"
    assert "160 g carrots" not in changes
    assert "likely 1.58 g of fructans + GOS" in changes["300 g brown onions"].why


def test_what_fits_is_left_alone(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), line("firm tofu", "tofu-firm", 400), line("rice", "rice-white-dry", 300)]
    answer = adapted(reads)
    assert (answer.status, answer.changes, answer.passed) == ("fits", (), ())
    assert answer.after == answer.before
    assert faults(reads, answer) == ()


def test_nothing_can_be_read(adapted: Callable[..., Adapted]) -> None:
    answer = adapted([UNKNOWN, UNKNOWN])
    assert (answer.status, answer.holds, answer.after) == ("nothing_read", False, None)
    assert len(answer.unread) == 2


@pytest.mark.parametrize(
    "strange",
    [
        UNKNOWN,
        IngredientRead(text="an onion or so", outcome="ask", choices=("brown onion", "red onion")),
        IngredientRead(text="garlic", outcome="read", food="garlic"),  # it does not say how much
    ],
)
def test_what_is_not_counted_is_named_and_never_fine(adapted: Callable[..., Adapted], strange: IngredientRead) -> None:
    reads = [line("carrots", "carrot", 300), strange]
    answer = adapted(reads)
    assert (answer.status, answer.known) == ("fits", False)
    assert [one.text for one in answer.unread] == [strange.text]
    assert faults(reads, answer) == ()


def test_a_food_of_unknown_figures_is_not_counted(tables: Tables, adapted: Callable[..., Adapted]) -> None:
    food = next(food for food in tables.foods if tables.unknown_of(food.id))
    answer = adapted([line("carrots", "carrot", 300), line(food.name, food.id, 10)])
    assert (answer.status, answer.known) == ("fits", False)
    assert "no figure is known" in answer.unread[0].why


def test_headings_and_water_bring_nothing(adapted: Callable[..., Adapted]) -> None:
    reads = [
        IngredientRead(text="For the sauce", outcome="heading"),
        IngredientRead(text="water", outcome="nothing"),
        line("carrots", "carrot", 300),
    ]
    assert adapted(reads).status == "fits"


def test_the_last_gram_under_a_cap_fits_and_the_next_does_not(tables: Tables, adapted: Callable[..., Adapted]) -> None:
    """Mannitol of button mushrooms against the 0.20 g of Varney et al. 2017; figures carry 0.005 g; weighed."""
    row = tables.fermentables_of("mushroom-button")["mannitol"]
    assert row.basis in {"analysed", "published"}  # so that at most, 1.3 times, passes 1.6 times the limit no earlier
    most = int(Decimal("20.5") / row.g_per_100g)
    assert "mannitol" not in adapted([line("mushrooms", "mushroom-button", most)], serves=1).passed
    assert "mannitol" in adapted([line("mushrooms", "mushroom-button", most + 1)], serves=1).passed
    assert "mannitol" not in adapted([line("mushrooms", "mushroom-button", most * 3)], serves=3).passed


def test_lines_of_one_food_count_together(adapted: Callable[..., Adapted]) -> None:
    half = line("brown onion", "onion-brown", 5, weighed=False)
    assert not adapted([half], serves=1).passed
    assert adapted([half] * 4, serves=1).passed


def test_a_smaller_amount_where_that_is_enough(adapted: Callable[..., Adapted]) -> None:
    answer = adapted([line("rice", "rice-white-dry", 150), line("broccoli", "broccoli", 290)], serves=2)
    assert answer.status in {"fits", "adapted"}
    assert all(change.change in {"less", "swap", "serving"} for change in answer.changes)


def test_diet_and_allergens_must_be_met_where_nothing_is_passed(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), line("butter", "butter", 30), line("chicken", "chicken-breast", 400)]
    request = {"profile": "elimination", "diet": "vegan", "avoid": ["milk"]}
    answer = adapted(reads, diet="vegan", avoid=("milk",))
    assert answer.status == "adapted"
    assert {change.ingredient for change in answer.changes} >= {"30 g butter", "400 g chicken"}
    for change in answer.changes:
        for amount in change.to:
            assert foods()[amount.food]["diet"] == "vegan"
            assert "milk" not in foods()[amount.food]["allergens"]
    assert faults(reads, answer, request) == ()


def test_a_breach_without_an_amount_is_left_out(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), IngredientRead(text="honey to taste", outcome="read", food="honey")]
    answer = adapted(reads, diet="vegan")
    assert [(change.ingredient, change.change) for change in answer.changes] == [("honey to taste", "out")]
    assert (answer.status, answer.unread) == ("adapted", ())


def test_the_recipes_own_or_comes_first(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), line("butter or oil", "butter", 30, alternatives=("oil-olive",))]
    (change,) = adapted(reads, diet="vegan").changes
    assert [amount.food for amount in change.to] == ["oil-olive"]
    assert change.lines == ("2 tbsp olive oil",)


def test_the_recipes_own_or_without_an_amount(adapted: Callable[..., Adapted]) -> None:
    fat = IngredientRead(
        text="butter or olive oil, for frying", outcome="read", food="butter", alternatives=("oil-olive",)
    )
    reads = [line("carrots", "carrot", 300), fat]
    answer = adapted(reads, diet="vegan")
    assert [(change.change, change.lines) for change in answer.changes] == [("swap", ("olive oil, for frying",))]
    assert faults(reads, answer, {**OMNIVORE, "diet": "vegan"}) == ()


def test_what_is_optional_goes_first(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), line("avocado", "avocado", 400, optional=True)]
    (change,) = adapted(reads, serves=2).changes
    assert change.change == "out"


def test_what_is_optional_stays_where_it_comes_free_of_lactose(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), line("milk", "milk", 400, optional=True)]
    (change,) = adapted(reads, serves=2).changes
    assert change.change == "swap"
    assert "lactose-free" in change.lines[0]


def test_what_would_take_most_of_the_dish_away_cannot_be(adapted: Callable[..., Adapted]) -> None:
    alone = [IngredientRead(text="chicken, whatever there is", outcome="read", food="chicken-breast")]
    answer = adapted(alone, diet="vegan")
    assert (answer.status, answer.holds, answer.after, answer.changes) == ("cannot", False, None, ())
    assert faults(alone, answer) == ()


def test_caps_that_nothing_keeps_under(tables: Tables) -> None:
    """A made-up profile of a thousandth of a gram: of a dinner of potatoes and carrots nothing would be left."""
    caps = profile_named("elimination", tables).sitting_caps
    tiny = Profile(name="tiny", food_caps=(), sitting_caps=tuple(
        cap.model_copy(update={"typical_g": Decimal("0.001"), "at_most_g": Decimal("0.001")}) for cap in caps
    ))  # fmt: skip
    reads = [line("tomatoes", "tomato", 900), line("broccoli", "broccoli", 900), line("carrots", "carrot", 900)]
    answer = adapt(reads, 1, Eaters(profile=tiny), tables)
    assert (answer.status, answer.holds, answer.after) == ("cannot", False, None)
    assert answer.passed


@pytest.mark.parametrize("seed", range(6))
def test_random_recipes_pass_the_check_and_stay_when_adapted_again(
    seed: int, tables: Tables, adapted: Callable[..., Adapted]
) -> None:
    serves = 1 + seed % 5
    reads = made_up_recipe(tables, 6 + seed % 8, serves, 500 + seed)
    answer = adapted(reads, serves)
    assert faults(reads, answer) == ()
    assert adapted(reads, serves) == answer
    if not answer.holds or answer.after is None:
        return
    changed = {change.place: change.to for change in answer.changes if change.place is not None}
    again: list[IngredientRead] = []
    for place in range(len(reads)):
        again += [
            line(one.food, one.food, float(one.grams), one.weighed, grams_high=float(one.high))
            for one in changed.get(place, (answer.amounts[place],))
        ]
    assert adapted(again, answer.after.serves).status == "fits"


@pytest.mark.long
@pytest.mark.parametrize("size", [120])
def test_hundreds_of_ingredients_are_answered(size: int, tables: Tables, adapted: Callable[..., Adapted]) -> None:
    """Five hundred in tests/long."""
    reads = made_up_recipe(tables, size, 1, 7)
    answer = adapted(reads, 40)
    assert faults(reads, answer) == ()


@pytest.mark.parametrize(
    ("food", "grams", "line_written"),
    [
        ("oil-garlic", 27.4, "2 tbsp garlic-infused oil"),
        ("leek-green", 297, "295 g leek greens"),
        ("chives", 4, "4 g chives"),
        ("asafoetida", 0.3, "1 pinch asafoetida"),
        ("vinegar-rice", 12, "2 1/2 tsp rice vinegar"),
        ("maple-syrup", 10, "1 1/2 tsp maple syrup"),
        ("egg", 210, "4 eggs"),
    ],
)
def test_lines_as_a_cook_writes_them(food: str, grams: float, line_written: str, tables: Tables) -> None:
    one = written(tables.food_by_id[food], Decimal(str(grams)), tables)
    assert one.line == line_written
    assert abs(float(one.amount.grams) - grams) <= 0.3 * grams


def test_two_foods_of_one_line_are_counted_and_written_apart(tables: Tables, adapted: Callable[..., Adapted]) -> None:
    garlic = line("garlic", "garlic", 20)
    both = line("carrots", "carrot", 300, also=(garlic,)).model_copy(update={"text": "300 g carrots and 20 g garlic"})
    recipe = Recipe(
        title="Two", serves=2, ingredients=(both.text, "200 g rice"), steps=("Fry.",), form="text", source=""
    )
    parts = parts_of([both, line("rice", "rice-white-dry", 200)])
    assert [(part.line, part.read.food) for part in parts] == [(0, "carrot"), (0, "garlic"), (1, "rice-white-dry")]
    answer = adapted([part.read for part in parts], serves=2)
    assert [change.ingredient for change in answer.changes] == ["20 g garlic"]
    changed = changed_recipe(Page(recipe, parts, answer), "markdown", tables)
    assert changed is not None
    assert "- 300 g carrots\n" in changed
    assert "and 20 g garlic" not in changed
    assert answer.changes[0].lines[0] in changed


def understated(answer: dict[str, Any]) -> None:
    answer["after"]["at_most_g"]["oligosaccharides"] /= 2


def unchanged(answer: dict[str, Any]) -> None:
    answer["changes"] = []


def more(answer: dict[str, Any]) -> None:
    answer["ingredients"][4]["grams"] *= 40


def back_to_garlic(answer: dict[str, Any]) -> None:
    answer["changes"][0]["to"][0]["food"] = "garlic"


def silent(answer: dict[str, Any]) -> None:
    answer["unread"] = []


def said_to_hold_for_all(answer: dict[str, Any]) -> None:
    answer["status"] = "adapted"


@pytest.mark.parametrize("spoil", [understated, unchanged, more, back_to_garlic, silent, said_to_hold_for_all])
def test_the_check_finds_what_is_wrong(
    spoil: Callable[[dict[str, Any]], None], adapted: Callable[..., Adapted]
) -> None:
    reads = [*CURRY, UNKNOWN]
    answer = adapt_object("", reads, adapted(reads), None)
    folders = [shipped("ingredient_tables")]
    assert verify(answer, OMNIVORE, folders) == ()
    wrong = copy.deepcopy(answer)
    spoil(wrong)
    assert verify(wrong, OMNIVORE, folders)


def test_the_text_fits_eighty_columns(tables: Tables, adapted: Callable[..., Adapted]) -> None:
    reads = [*CURRY, UNKNOWN]
    text = adapt_text(Run("Grandmother's curry", reads, adapted(reads), "1 carrot\n"), tables, Style(False, True, 80))
    assert max(map(len, text.splitlines())) <= 80
    assert "a knob of zorb: the tables know no food of that name." in text
    assert "5 of 6 lines counted: not known whether this recipe fits" in " ".join(text.split())


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        ("2 tsp onion and garlic powder", {"onion-powder", "garlic-powder"}),
        ("1 tsp each onion powder and garlic powder", {"onion-powder", "garlic-powder"}),
        ("1 onion and garlic powder", set()),  # an onion, or a powder: it is asked
        ("200 g carrots and potatoes", {"carrot", "potato"}),
    ],
)
def test_a_line_of_two_foods_loses_none(
    text: str, foods: set[str], tables: Tables, adapted: Callable[..., Adapted]
) -> None:
    """Each is counted, or named as not counted."""
    parts = parts_of([LineReader(tables).read(text), line("rice", "rice-white-dry", 100)])
    answer = adapted([part.read for part in parts])
    unread = {one.place for one in answer.unread}
    assert {part.read.food for place, part in enumerate(parts[:-1]) if part.read.food} == foods
    for place, part in enumerate(parts):
        assert (place in answer.amounts and part.read.food) or place in unread
    assert (answer.known and answer.status == "fits") == (text.startswith("200 g") and not answer.changes)


def test_a_swap_without_an_amount_is_checked_against_diet_and_allergens(adapted: Callable[..., Adapted]) -> None:
    butter = IngredientRead(text="butter or olive oil", outcome="read", food="butter", alternatives=("oil-olive",))
    reads = [line("carrots", "carrot", 100), butter]
    request = {**OMNIVORE, "diet": "vegan"}
    answer = adapted(reads, diet="vegan")
    assert [change.unmeasured for change in answer.changes] == [("oil-olive",)]
    told = adapt_object("", reads, answer, None)
    assert told["changes"][0]["to"] == [{"food": "oil-olive", "grams": None, "grams_high": None, "weighed": False}]
    assert faults(reads, answer, request) == ()
    for other, said in (("butter", "butter is not vegan"), ("onion-brown", "brings oligosaccharides")):
        worse = copy.deepcopy(told)
        worse["changes"][0]["to"][0]["food"] = other
        assert any(said in fault for fault in verify(worse, request, [shipped("ingredient_tables")])), other


@pytest.mark.parametrize(
    ("text", "food", "grams", "words"),
    [
        ("250 g self-raising flour", "flour-wheat-white", 250, "self-raising flour"),
        ("320 g ready-rolled puff pastry", "pastry-puff", 320, "ready-rolled puff pastry"),
        ("2 x 400 g tins chickpeas, drained", "chickpeas-canned", 480, "canned chickpeas, drained and rinsed"),
        ("300 g pumpkin", "pumpkin", 210, "pumpkin"),  # read without its skin: the words would mean another weight
        ("200 g butter or oil", "butter", 200, "butter"),
        ("1 large ripe avocado", "avocado", 130, "ripe avocado"),
        ("1 avocado, ripe", "avocado", 130, "avocado, ripe"),
        ("1 (13.5 oz) can full-fat coconut milk", "coconut-milk", 260, "full-fat coconut milk"),
    ],
)
def test_a_smaller_amount_keeps_the_lines_own_words(
    text: str, food: str, grams: int, words: str, tables: Tables
) -> None:
    read = IngredientRead(text=text, outcome="read", food=food, grams=grams)
    assert own_words(read, tables.food_by_id[food], Decimal(grams), tables) == words


def test_garlic_under_its_limit_is_swapped_where_a_dish_is_changed_in_elimination(
    adapted: Callable[..., Adapted],
) -> None:
    """Garlic is swapped in elimination, not portioned: see the source of its rows in swaps.csv."""
    reads = [*CURRY[:1], line("garlic", "garlic", 4), *CURRY[2:]]
    assert {"300 g brown onions", "4 g garlic"} <= {
        change.ingredient for change in adapted(reads).changes if change.change == "swap"
    }


def test_a_swap_says_which_allergen_it_brings(adapted: Callable[..., Adapted]) -> None:
    reads = [line("carrots", "carrot", 300), line("chicken", "chicken-breast", 400)]
    (change,) = adapted(reads, diet="vegan").changes
    new = {one for amount in change.to for one in foods()[amount.food]["allergens"].split(";") if one}
    assert new, change
    assert all(one in change.why.partition("mind allergies: ")[2] for one in new)
    same = [line("carrots", "carrot", 300), line("milk", "milk", 400)]
    (change,) = adapted(same, serves=2).changes  # lactose-free milk brings nothing that milk did not
    assert [amount.food for amount in change.to] == ["milk-lactose-free"]
    assert "allergies" not in change.why

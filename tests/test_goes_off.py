"""What goes off today is used or named; what is named to buy is what a shop has. Common practice, no source."""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import compose
from calmlarder.compose.market import Market
from calmlarder.compose.offer import offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.shelf import shelves_of
from calmlarder.tables.book import Tables

LINES = ["potatoes 1kg", "smoked tofu 200g", "carrots x4", "lemon", "olive oil", "thyme"]


def test_what_is_on_its_last_day_and_stays_out_is_named(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    warm = [one for one in patterns if one.id == "tray-bake"]
    wanted = wanting(people=1, protein_floor_g=8, seconds=60)

    def said(line: str) -> list[str]:
        dinner = compose(lots_of([*LINES, line]), wanted, warm, tables).dinners[0]
        assert "rice" not in {use.name for use in dinner.uses}
        return [one for one in dinner.cautions if "today is its last day, and" in one]

    assert said("cooked white rice 200g, use by today") == [
        "Cooked white rice: today is its last day, and it is not in this dish: warm it once, until steaming hot, and "
        "have 180 g of it beside this (for all, within the limits), or throw it away."
    ]
    breads = ["white bread 60g, use by today", "white bread rolls 60g, use by today"]
    assert all("have 35 g of it beside this" in said(one)[0] for one in breads)
    together = compose(lots_of([*LINES, *breads]), wanted, warm, tables).dinners[0]
    assert sum("beside this" in one for one in together.cautions) == 1  # of both no limit would hold
    two_fish = ["salmon fillet 240g, use by today", "cod fillet 300g, use by today"]
    fish = compose(lots_of([*LINES, *two_fish]), wanted, warm, tables).dinners[0]
    assert [one for one in fish.cautions if "freeze it tonight, or cook it tonight, chill it within two hours" in one]
    assert said("dry white rice 1kg") == []


def test_what_is_cooked_already_spares_some_of_the_dry(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Protein of dry and of cooked white rice: usda_sr28 20052 and 20045, 2.42 g cooked from each gram."""
    simmered = [one for one in patterns if one.id == "coconut-braise"]
    lines = ["cooked white rice 121g", "dry white rice 1kg", "firm tofu 400g", "spinach 300g", "coconut milk", "ginger"]
    dinner = compose(lots_of(lines), wanting(people=3, seconds=60), simmered, tables).dinners[0]
    assert "dry white rice" in {use.name for use in dinner.uses}
    told = [one for one in dinner.cautions if one.startswith("Cooked white rice (121 g) is there")]
    assert len(told) == 1
    assert told[0].endswith("boil 50 g less of the dry white rice.")
    assert not any("Left for the next days: cooked white rice" in one for one in dinner.cautions)


def test_what_is_left_out_on_its_last_day_says_so(
    tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    lines = ["carrot soup, shop one, use by today", "carrot soup, shop one", "kim's carrot soup, use by today"]
    _, left_out = offer(lots_of(lines), wanting(), tables)
    assert ["Today is its last day" in one.why for one in left_out] == [True, False, False]
    _, left_out = offer(lots_of(["carrot soup, shop one, use by tomorrow"]), wanting(), tables)
    assert left_out[0].why.endswith("Its last day is tomorrow: freeze it or give it away by then")


def test_what_is_past_its_day_and_in_no_dish_is_named(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Mangetout keeps three days once opened (keeping.csv); past that it is looked at and cooked."""
    warm = [one for one in patterns if one.id == "eggs-and-fish"]
    lines = ["4 eggs", "ham 125g", "potatoes 1kg", "spinach 200g", "butter", "mange tout opened saturday"]
    composed = compose(lots_of(lines), wanting(protein_floor_g=5, seconds=60), warm, tables)
    (dinner,) = composed.dinners
    assert "mangetout" not in {use.food for use in dinner.uses}
    assert [one for one in dinner.cautions if one.startswith("Mange tout, past its day (opened 2026-03-07; keeps")]


@pytest.mark.long
def test_a_bunch_whose_greens_go_in_is_not_left_out(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    lines = ["firm tofu 280g", "dry white rice", "carrots x3", "soy sauce", "ginger", "spring onions bunch", "2 onions"]
    wok = [one for one in patterns if one.id == "stir-fry"]
    composed = compose(lots_of(lines), wanting(seconds=60), wok, tables)
    assert any(use.food == "spring-onion-green" for use in composed.dinners[0].uses)
    assert [one.line for one in composed.excluded] == ["2 onions"]


def test_nothing_odd_and_no_wheat_is_named_to_buy(tables: Tables, wanting: Callable[..., DinnerRequest]) -> None:
    sold = {ware.food.id: ware.food for ware in Market(wanting(diet="vegan"), tables, 0).wares}
    assert "tofu-firm" in sold
    assert "rice-white-dry" in sold
    assert not {"tempeh", "seitan", "vegan-cheese"} & set(sold)
    assert not [food.id for food in sold.values() if food.gluten == "yes" and {"base", "protein"} & set(food.roles)]
    without_soya = {ware.food.kind for ware in Market(wanting(diet="vegan", avoid=("soya",)), tables, 0).wares}
    assert "tempeh" in without_soya  # left to what the reader may eat


@pytest.mark.parametrize(("line", "food"), [("toasted sesame oil", "oil-sesame"), ("chilli oil", "chilli-oil")])
def test_what_burns_is_no_fat_to_fry_in(
    line: str, food: str, tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """It goes over at the end; common practice, no source."""
    lines = ["firm tofu 280g", "dry white rice", "carrots x3", "pak choi 200g", "soy sauce", "ginger"]
    wok = [one for one in patterns if one.id == "stir-fry"]
    dinner = compose(lots_of([*lines, line]), wanting(seconds=60), wok, tables).dinners[0]
    assert [use.slot for use in dinner.uses if use.food == food] == ["sesame"]
    assert dinner.taken_for_granted


def test_what_goes_off_next_is_named_as_the_cook_calls_it(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    warm = [one for one in patterns if one.id == "tray-bake"]

    def said(line: str) -> list[str]:
        dinner = compose(lots_of([*LINES, line]), wanting(protein_floor_g=8, seconds=60), warm, tables).dinners[0]
        return [one for one in dinner.cautions if one.startswith("Goes off")]

    assert said("mussels 500g, use by tomorrow") == ["Goes off next: mussels (tomorrow is the last day). Plan it in."]
    assert said("mussels 500g (frozen)") == []
    assert said("button mushrooms 250g, use by tomorrow") == [
        "Goes off, and a usual amount passes the limits: button mushrooms (tomorrow is the last day). For somebody "
        "else's plate, or the freezer."
    ]
    assert said("fresh parsley 60g, use by tomorrow") == []


def test_what_a_dish_leaves_of_a_lot_that_goes_off_is_named_too(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Of half a kilo of paneer a dish for two takes some, and tomorrow the rest is past its day."""
    warm = [one for one in patterns if one.id == "spiced-greens"]
    lines = ["basmati rice 1kg", "paneer 500g, use by tomorrow", "tomatoes 4", "cumin seed", "ginger", "oil"]
    wanted = wanting(people=2, diet="vegetarian", protein_floor_g=8, seconds=60)

    def said(*more: str) -> list[str]:
        dinner = compose(lots_of([*lines, *more]), wanted, warm, tables).dinners[0]
        return [one for one in dinner.cautions if "last day" in one]

    [paneer] = said("carrots 500g")
    assert paneer.startswith("Goes off next: the rest of the paneer (")
    assert paneer.endswith(" g, tomorrow is the last day). Plan it in, or freeze the paneer today.")
    both = said("spinach 900g, use by today")
    assert any("of the spinach is left, and today is its last day: freeze it tonight" in one for one in both)
    two_bags = said("spinach 900g, opened today", "spinach 200g, use by tomorrow", "courgette 2")
    assert sum("spinach" in one for one in two_bags) <= 1


def test_a_plan_counts_a_lot_in_the_steps_that_its_dishes_take(
    tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    """Two fillets are two: counted in fives of grams they were eaten twice over."""
    lots, wanted = lots_of(["240 g salmon fillet, use by tomorrow", "carrots 500g", "eggs x6"]), wanting()
    offered, _ = offer(lots, wanted, tables)
    shelves = shelves_of(lots, wanted.today, False, tables)
    assert [one.unit for one in shelves] == [one.unit_grams for one in offered]
    assert (shelves[0].unit, shelves[0].units) == (120, 2)


def test_mussels_are_cooked_or_thrown_away_and_never_frozen_alive(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Shellfish sold alive are cooked the day they are bought for; dead ones are thrown away (UK FSA, recalled)."""
    live = "mussels in their shells 1kg, use by today"
    warm = [one for one in patterns if one.id == "tray-bake"]
    dinner = compose(lots_of([*LINES, live]), wanting(protein_floor_g=5, seconds=60), warm, tables).dinners[0]
    said = [one for one in dinner.cautions if one.startswith("Mussels")]
    assert any("cook it tonight" in one and "or throw it away" in one for one in said), said
    assert not any("freeze" in one for one in said)
    assert freeze_today(lots_of([live]), tables) == ()


def test_mussels_on_their_last_day_are_steamed_in_wine(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """In wine with butter, parsley and lemon, and potatoes or bread beside them: common practice, no source."""
    lines = ["2 mackerel", "mussels in their shells 1kg, use by today", "butter", "lemon", "parsley", "fennel",
             "white wine 350ml"]  # fmt: skip
    for base in ("new potatoes 500g", "gluten-free bread"):
        dinner = compose(lots_of([*lines, base]), wanting(people=2, seconds=60), patterns, tables).dinners[0]
        foods = {use.food for use in dinner.uses}
        assert {"mussels", "wine-white"} <= foods, foods
        assert any("cover, and steam" in step and "until every shell is open" in step for step in dinner.steps)


def test_raw_shellfish_past_its_day_is_not_served(
    tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    """Whatever the label calls the day; frozen ones may be cooked, and cheese is looked at."""
    lines = [
        "raw prawns 180g bb 10/3",
        "raw prawns 180g bb 12/3",
        "frozen raw prawns 180g bb 10/3",
        "feta 200g bb 10/3",
    ]
    offered, left_out = offer(lots_of(lines), wanting(), tables)
    assert [one.lot.line for one in offered] == lines[1:]
    assert left_out[0].why.startswith("raw from the sea and past its day (best-before 2026-03-10)")


def test_what_is_fresh_and_stays_out_is_named_in_one_line(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """What goes first in front; dry rice, tins and what passes the limits are none of it."""
    wok = [one for one in patterns if one.id == "stir-fry"]
    lines = ["firm tofu 280g", "dry white rice", "carrots x3", "soy sauce", "ginger"]
    more = ["block of cheddar 300g", "rocket 80g", "2 onions", "tinned tomatoes"]
    dinner = compose(lots_of([*lines, *more]), wanting(seconds=60), wok, tables).dinners[0]
    left = [one for one in dinner.cautions if one.startswith("Left for")]
    assert left == ["Left for the next days: rocket and cheddar."]
    greens = compose(lots_of([*lines, "kale 600g"]), wanting(seconds=60), wok, tables).dinners[0]
    assert any(one.startswith("Left for the next days: the rest of the kale (") for one in greens.cautions)
    dinner = compose(lots_of(lines), wanting(seconds=60), wok, tables).dinners[0]
    assert not [one for one in dinner.cautions if one.startswith("Left for")]


def test_what_is_soft_or_brown_and_not_eaten_up_is_told(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Soft vegetables keep a day or two (common practice, no source); nobody freezes them, and bendy carrots wait."""
    bowl = [one for one in patterns if one.id == "noodle-bowl"]
    lines = ["rice noodles 400g", "firm tofu 300g", "spinach 200g", "ginger", "soy sauce", "carrots 3, bendy"]

    def said(line: str) -> str:
        dinner = compose(lots_of([*lines, line]), wanting(people=1, protein_floor_g=8, seconds=60), bowl, tables)
        return " ".join(one for one in dinner.dinners[0].cautions if one.startswith("Goes off"))

    rest = said("courgettes 2, going soft")
    assert "the rest of the courgette (" in rest
    assert "g, soft)" in rest
    assert "freeze the courgette" not in rest
    brown = said("half a cauliflower, bit brown")
    assert "a usual amount passes the limits: cauliflower (brown). For somebody else's plate" in brown
    assert "carrot" not in rest + brown


def test_stale_bread_is_not_cut_about(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Mouldy bread goes whole (UK Food Standards Agency: recalled); stale bread is toasted (common practice)."""
    toast = [one for one in patterns if one.id == "eggs-and-greens"]
    lines = ["eggs 6", "spinach 200g", "gluten free bread, bit stale", "cheddar"]
    dinner = compose(lots_of(lines), wanting(people=1, protein_floor_g=8, seconds=60), toast, tables).dinners[0]
    [said] = [one for one in dinner.cautions if "(stale)" in one]
    assert said.endswith("(stale): stale does no harm; what is mouldy goes in the bin, all of it.")


@pytest.mark.parametrize(("diet", "told"), [("vegetarian", True), ("omnivore", False)])
def test_who_eats_no_meat_is_told_of_animal_rennet(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest], diet: str, told: bool,
) -> None:  # fmt: skip
    """Parmigiano Reggiano is made with calf rennet by its specification (Regulation (EC) No 510/2006: recalled)."""
    pasta = [one for one in patterns if one.id == "pasta-with-egg"]
    lots = lots_of(["gluten free pasta 400g", "6 eggs", "spinach 200g", "olive oil", "parmesan 100g"])
    request = wanting(people=1, protein_floor_g=8, seconds=60, diet=diet, use=("parmesan",))
    dinner = compose(lots, request, pasta, tables).dinners[0]
    assert any("animal rennet" in one for one in dinner.cautions) is told


@pytest.mark.parametrize(("protein", "told"), [("chicken thighs 300g", 1), ("salmon 300g", 1), ("firm tofu 300g", 0)])
def test_after_what_is_raw_hands_board_and_knife_are_washed(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest], protein: str, told: int,
) -> None:  # fmt: skip
    """UK Food Standards Agency, avoiding cross-contamination (recalled)."""
    lots = lots_of(["rice 500g", protein, "spinach 200g", "carrots 300g", "soy sauce", "rapeseed oil"])
    dinner = compose(lots, wanting(people=1, seconds=60), patterns, tables).dinners[0]
    assert any(use.line == protein for use in dinner.uses)
    assert len([one for one in dinner.cautions if one.startswith("Wash hands, board and knife")]) == told


@pytest.mark.parametrize(
    ("line", "used"),
    [
        ("homemade garlic oil, dunno when", False),
        ("garlic oil homemade, opened", False),
        ("homemade garlic oil, use by friday", False),
        ("garlic oil homemade, made today", True),
    ],
)
def test_oil_that_was_infused_at_home_nobody_knows_when_is_left_out(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest], line: str, used: bool,
) -> None:  # fmt: skip
    """It can hold the poison of botulism (US Food and Drug Administration: recalled)."""
    lots = lots_of(["rice noodles 400g", "firm tofu 300g", "spinach 200g", "soy sauce", line])
    found = compose(lots, wanting(people=1, seconds=60), patterns, tables)
    assert any(use.line == line for use in found.dinners[0].uses) is used
    assert any("nobody says when: throw it away" in one.why for one in found.excluded) is not used


def test_of_a_dented_tin_it_is_told_when_it_goes(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Sharp dents and those on a seam, bulges and leaks (US Department of Agriculture on canned food: recalled)."""
    bowl = [one for one in patterns if one.id == "noodle-bowl"]
    for tin, told in (("tin of tuna, dented", True), ("tin of tuna", False)):
        lots = lots_of(["rice noodles 400g", "spinach 200g", "soy sauce", tin])
        dinner = compose(lots, wanting(people=1, protein_floor_g=8, seconds=60), bowl, tables).dinners[0]
        used = any(use.line == tin for use in dinner.uses)
        assert any("(dented): a shallow dent does no harm" in one for one in dinner.cautions) is (told and used)
        assert used


def test_a_mouldy_corner_is_told_of_where_the_cheese_is_kept(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """An inch around and below it is cut off hard cheese (US Department of Agriculture: recalled)."""
    bowl = [one for one in patterns if one.id == "noodle-bowl"]
    lines = ["rice noodles 400g", "firm tofu 300g", "spinach 200g", "soy sauce", "cheddar 200g, mouldy corner"]
    dinner = compose(lots_of(lines), wanting(people=1, protein_floor_g=8, seconds=60), bowl, tables).dinners[0]
    assert any(one.startswith("Cheddar (mouldy corner): cut off 2.5 cm") for one in dinner.cautions)

"""Steps that keep what no longer is: an old name beside the new one, a clove's work, a bread of its own.

Words as recipes have them; that a clove is bruised and lifted out, and that oil neither burns to bitterness at once
nor turns crisp: common kitchen practice, no source. Garlic bread holds wheat (USDA FoodData Central, breads).
"""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.step_clove_work import without_work_on_cloves
from calmlarder.adapt.step_left_over import without_what_is_left_over
from calmlarder.adapt.step_old_words import without_old_words
from calmlarder.adapt.step_shares import all_in_one_step, spoonfuls_alone

Adapt = Callable[..., dict[str, Any]]


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Add the mushroom [oyster mushrooms] caps and simmer.", "Add the oyster mushrooms and simmer."),
        ("Close with the bun [gluten-free rolls] lids.", "Close with the gluten-free roll lids."),
        ("Lift the rest of the pastry [the rest of the gluten-free puff pastry] over the pie.",
         "Lift the rest of the gluten-free puff pastry over the pie."),
        ("Pour the rest of the honey [the rest of the maple syrup]-garlic sauce into a pan.",
         "Pour the rest of the maple syrup sauce into a pan."),
        ("Add a spoonful of the sticky onions [leek greens].", "Add a spoonful of the leek greens."),
        ("Top with the cauliflower [broccoli and green beans] mash.", "Top with the mash."),
        ("Cook until the fresh mushrooms [oyster mushrooms] soften.", "Cook until the oyster mushrooms soften."),
        ("Tip in the onion [leek greens]-tomato masala.", "Tip in the leek-tomato masala."),
        ("Add the garlic [garlic-infused oil]-ginger paste.", "Add the garlic-infused oil and ginger paste."),
        ("In with the ginger and the four crushed cloves [4 tsp of the garlic-infused oil].",
         "In with the ginger and 4 tsp of the garlic-infused oil."),
        ("Put the washed pumpkin in a pot.", "Put the pumpkin in a pot."),
        ("Wipe the mushrooms [aubergine halves: about 15 minutes] clean.", "Wipe the aubergine halves clean."),
    ],
)  # fmt: skip
def test_an_old_name_makes_room_for_the_new_one(step: str, told: str) -> None:
    assert without_old_words([step]) == [told]


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Cook for 1 minute, taking care not to let the garlic [garlic-infused oil] colour or it will turn bitter.",
         "Cook for 1 minute."),
        ("Warm it, but do not let the garlic-infused oil burn. Add the wine.", "Warm it. Add the wine."),
        ("Stir. Do not let the garlic-infused oil brown or it will be bitter. Add the wine.", "Stir. Add the wine."),
        ("Add the garlic-infused oil and let it warm; let the garlic-infused oil turn pale gold.",
         "Add the garlic-infused oil and let it warm; warm it through for a moment."),
        ("Fry the ham. The garlic-infused oil has now imparted its flavour, so take it out with a spoon and discard.",
         "Fry the ham."),
    ],
)  # fmt: skip
def test_an_oil_neither_burns_nor_is_lifted_out(step: str, told: str) -> None:
    assert without_what_is_left_over(step) == told


def test_no_oil_is_squashed_with_a_blade() -> None:
    step = "Squash the garlic-infused oil with the blade of a knife, just to bruise them. Fry the garlic-infused oil."
    assert without_work_on_cloves([step]) == ["Fry the garlic-infused oil."]


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Add the garlic-infused oil and curry leaves and let the garlic-infused oil turn gold, not brown.",
         "Add the garlic-infused oil and curry leaves."),
        ("Mix it with salt. Set aside for 20 minutes so the garlic [1 tsp of the garlic-infused oil] mellows.",
         "Mix it with salt. Set aside for 20 minutes."),
        ("Fry the garlic-infused oil until fragrant.", "Fry the garlic-infused oil until fragrant."),
    ],
)  # fmt: skip
def test_an_oil_turns_neither_gold_nor_mellow(step: str, told: str) -> None:
    assert without_work_on_cloves([step]) == [told]


def test_a_label_of_a_step_keeps_its_word(adapt: Adapt) -> None:
    """Lactose of yoghurt: usda_sr28 01116."""
    found = adapt(
        "Carrot salad", "500 g carrots", "500 g yoghurt", "1 tbsp lemon juice",
        steps="1. Yoghurt: stir the lemon juice into the yoghurt.\n2. Carrots: grate, and turn in the yoghurt.",
    )  # fmt: skip
    assert "1. Yoghurt: stir" in found["recipe"]
    assert "lactose-free yoghurt" in found["recipe"]


def test_two_of_a_mixture_join_what_stays() -> None:
    step = (
        "Stir in the cumin [2 tsp of it], 1 1/4 tsp of the paprika, 1/2 tsp of the ground cumin, chilli flakes and "
        "paprika [1 tsp of it] and toast."
    )
    assert all_in_one_step(step) == "Stir in the cumin, chilli flakes and paprika and toast."


def test_a_spoonful_of_flour_takes_no_raising_agent_with_it() -> None:
    """What raises a cake goes in whole, whether or not its eggs curdle (common practice, no source)."""
    beaten = "Beat in the eggs, with a spoonful of the flour blend and 2 1/2 tsp of the baking powder if it curdles."
    told = spoonfuls_alone([beaten, "Fold in the flour blend, baking powder [1 tsp of it] and milk."])
    assert told[0] == "Beat in the eggs, with a spoonful of the flour blend if it curdles."
    assert told[1] == "Fold in the flour blend, baking powder and milk."
    assert spoonfuls_alone([beaten, "Bake."])[0] == beaten  # where nothing follows it, it stays


def test_garlic_bread_is_no_garlic_of_the_list(adapt: Adapt) -> None:
    found = adapt(
        "Bolognese", "2 cloves garlic, crushed", "500 g beef mince", "400 g tin chopped tomatoes",
        steps="1. Fry the garlic until crisp and golden, about 2 minutes. Add the beef mince and tomatoes and simmer "
        "for 40 minutes.\n2. Serve with garlic bread.", serves=4,
    )  # fmt: skip
    method = found["recipe"].partition("Method")[2]
    assert "garlic bread [not counted: a usual portion passes a limit]" in method
    assert "oil is crisp" not in method
    assert any("garlic bread (wheat or the like)" in one for one in found["warnings"] + found["remarks"])


def test_the_whole_beans_are_named_beside_the_mashed_and_an_amount_ends_with_its_sentence(adapt: Adapt) -> None:
    found = adapt(
        "Chilli", "2 (15-ounce) cans kidney beans, drained", "700 g beef mince", "3 large aubergines, in slices",
        steps="1. Heat the oven to gas 6. Brush the aubergine slices with oil and roast.\n"
        "2. Mash a third of the beans, then stir both the mashed and the whole beans into the mince.", serves=6,
    )  # fmt: skip
    method = found["recipe"].partition("Method")[2]
    assert "the mashed and the whole lentils" in method
    assert "the aubergine slices" in method


def test_what_a_heading_calls_a_part_and_what_is_pickled_keep_their_names(adapt: Adapt) -> None:
    """Fructans of onion: Muir et al. 2007 (doi:10.1021/jf070623x); lactose of sour cream: usda_sr28 01056."""
    found = adapt(
        "Bean tacos", "For the beans:", "1 tin black beans, drained", "1 white onion, diced", "For the avocado crema:",
        "1/2 cup sour cream", "1/4 ripe avocado", "To serve:", "8 corn tortillas", "pickled red onions, coriander",
        steps="1. Soften the onion in oil, and add the beans.\n2. Put everything for the crema in a blender.\n"
        "3. Fill the tortillas with the beans and the crema. Finish with pickled onions and coriander.",
    )  # fmt: skip
    assert "everything for the crema in a blender" in found["recipe"]
    assert "pickled leek" not in found["recipe"]


def test_of_a_mixture_the_kind_that_stays_bears_no_other_name(adapt: Adapt) -> None:
    """A litre of stock to 300 g of risotto rice: common practice; mannitol: Yao et al. 2014 (doi:10.1111/jhn.12127)."""
    found = adapt(
        "Mushroom barley", "300g pearl barley", "1.2 litres water", "40g butter",
        "400g mixed mushrooms (chestnut, oyster, shiitake), torn",
        steps="1. Simmer the barley in the water for 40 minutes.\n2. Fry the mushrooms in the butter.",
    )  # fmt: skip
    assert "shiitake)" not in found["recipe"]
    assert "less of the liquid" not in found["recipe"]

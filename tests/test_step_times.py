"""Steps take the minutes and the signs of what is in the pan now, not those of the food that it replaced.

Minutes and signs are those of steps.csv: common practice, no source.
"""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.step_figures import in_figures, in_its_words
from calmlarder.adapt.step_smoothed import smoothed
from calmlarder.cookbook.read import read_recipe

Adapt = Callable[..., dict[str, Any]]
_ALLIUMS = ("1 large onion, chopped", "3 cloves garlic, crushed", "2 tbsp olive oil", "600 g chicken thighs")


@pytest.mark.parametrize(
    ("written", "told"),
    [
        (
            "Heat the oil. Add the onion and cook for 8-10 minutes until soft and translucent. Add the chicken.",
            "Heat the oil. Add the leek greens and cook for 5 minutes until soft and bright green. Add the chicken.",
        ),
        (
            "Fry the onion in the oil until soft and clear, about 8 minutes. Add the chicken.",
            "Fry the leek greens in the oil until soft and bright green, about 5 minutes. Add the chicken.",
        ),
        (
            "Add the onion. Fry gently for 12 mins till golden. Add the chicken.",
            "Add the leek greens. Fry gently for 5 minutes till soft and bright green. Add the chicken.",
        ),
        # The minutes are the chicken's too.
        (
            "Cook the chicken and onion for 12 minutes until the onion is see-through.",
            "Cook the chicken and leek greens for 12 minutes until they are soft.",
        ),
        ("Fry the onion for 4 minutes.", "Fry the leek greens for 4 minutes."),
    ],
)
def test_greens_are_soft_sooner_than_onion(written: str, told: str, adapt: Adapt) -> None:
    assert told in adapt("Chicken pan", *_ALLIUMS, steps=f"1. {written}")["recipe"]


def test_other_mushrooms_release_no_water(adapt: Adapt) -> None:
    found = adapt(
        "Supper pan", "500 g chestnut mushrooms, sliced", "2 tbsp olive oil", "300 g basmati rice",
        steps="1. Fry the mushrooms in the oil for 10 minutes until they have released their water.",
    )["recipe"]  # fmt: skip
    assert "released" not in found
    assert "Fry the oyster mushrooms" in found
    assert "for 6 minutes until golden at the edges." in found


def test_dough_without_gluten_is_beaten_and_rises_less(adapt: Adapt) -> None:
    found = adapt(
        "Rolls", "500 g strong white bread flour", "7 g dried yeast", "1 tsp salt", "300 ml water",
        steps="1. Mix the flour, yeast and salt with the water.\n"
        "2. Turn out onto a floured surface and knead for 10 minutes until smooth and elastic. Leave for 1 hour until "
        "doubled in size.\n3. Knock back the dough, divide into 8 and bake for 20 minutes.",
    )["recipe"]  # fmt: skip
    assert "knead" not in found.lower()
    assert "2. Beat it in the bowl with a wooden spoon for 3 minutes" in found
    assert "until puffy and about a third larger." in found
    assert "3. Divide into 8 and bake" in found


def test_bread_is_brushed_where_a_clove_was_rubbed_on_it(adapt: Adapt) -> None:
    found = adapt(
        "Croutons", "4 slices sourdough bread", "2 cloves garlic, halved", "1 tbsp olive oil",
        steps="1. Rub the bread with the halved garlic, cut into cubes and bake for 10 minutes until crisp.",
    )["recipe"]  # fmt: skip
    assert "Brush the bread with a little of the garlic-infused oil, cut into cubes" in found


def test_a_paste_is_of_what_is_in_it_now(adapt: Adapt) -> None:
    found = adapt(
        "Chicken pan", *_ALLIUMS,
        steps="1. Blend the onion to paste.\n2. Fry the onion paste for 9 minutes until golden.\n3. Add the chicken.",
    )["recipe"]  # fmt: skip
    assert "2. Fry the leek paste for 5 minutes until soft and bright green." in found


def test_a_mix_that_brings_a_spice_of_the_list_is_told_in_one_word(adapt: Adapt) -> None:
    found = adapt(
        "Chilli", "900 g beef mince", "3 tbsp chili powder", "1 tbsp ground cumin", "1/2 tsp cayenne pepper",
        "800 g canned tomatoes", "Shredded cheddar, sour cream and sliced green onions, for topping",
        steps="1. Brown the beef. Stir in the chili powder, cumin and cayenne and toast for 1 minute.\n"
        "2. Pour in the tomatoes and simmer for 40 minutes. Serve with the toppings.", serves=6,
    )["recipe"]  # fmt: skip
    assert "Stir in the paprika, chilli flakes, cumin and cayenne and toast for 1 minute." in found
    assert "\n1/2 tsp cayenne pepper\n" in found
    assert "\nShredded cheddar, for topping\n" in found
    assert "radish" not in found  # who has the whole onion has its greens


def test_a_text_broken_at_its_margin_has_the_steps_of_its_writer() -> None:
    recipe = read_recipe(
        "Meatballs\nServes 4\n\nIngredients:\n- 500 g beef mince\n- 1 onion, grated\n- 2 tbsp butter\n\nMethod:\n"
        "Melt the butter in a wide and heavy pan and cook the onion over\nmedium heat until soft and clear, about 5\n"
        "minutes. Let cool.\n\nRoll into balls. Chill.\n\n[Gran never wrote down the cucumber salad.]\n"
    )
    assert recipe.steps == (
        "Melt the butter in a wide and heavy pan and cook the onion over medium heat until soft and clear, about 5 "
        "minutes. Let cool.",
        "Roll into balls. Chill.",
    )


@pytest.mark.parametrize(
    ("written", "told"),
    [
        (
            "2. Whisk the lactose-free milk, lemon juice [stirred together and left ten minutes first], eggs.",
            "2. Stir the lemon juice into the lactose-free milk and leave it ten minutes. Whisk the soured milk, eggs.",
        ),
        ("Fold in the mushrooms, oyster mushrooms and parmesan.", "Fold in the oyster mushrooms and parmesan."),
        (
            "Mash half of the beans [80 g of the beans and 145 g of the cooked quinoa: stir cooked quinoa in whole, "
            "mash the rest] with a fork. Add the cooked quinoa only at the end.",
            "Mash half of the beans with a fork. Add the cooked quinoa only at the end.",
        ),
    ],
)
def test_a_step_reads_like_one(written: str, told: str) -> None:
    assert smoothed(written, lambda between: False) == told


def test_dough_is_beaten_once_and_a_batter_has_the_eggs_of_the_list(adapt: Adapt) -> None:
    found = adapt(
        "Pizza", "300 g strong white bread flour", "1 egg", "200 ml water", "honey, for drizzling",
        steps="1. Mix the flour with the egg and water. Knead for 5 minutes, until smooth, and cover.\n"
        "2. Knead the dough briefly, split into two balls and roll out.",
    )["recipe"]  # fmt: skip
    assert "with the eggs and water." in found
    assert "to a smooth and sticky dough, and cover." in found
    assert "2. Split into two balls and roll out." in found
    assert "maple syrup, for drizzling\n" in found


def test_of_vegetables_the_list_says_what_they_are(adapt: Adapt) -> None:
    found = adapt(
        "Tray", "1 red onion, in wedges", "2 carrots, in chunks", "250 g couscous", "2 tbsp olive oil",
        steps="1. Fry the vegetables in the oil for 10 minutes.\n2. Pour 300 ml boiling water over the couscous and "
        "leave for 5 minutes.",
    )["recipe"]  # fmt: skip
    assert "1. Fry the vegetables in the oil for 10 minutes." in found
    assert "2. Boil the quinoa for about 15 minutes in plenty of water, and drain." in found


_PULSES = ("150 g dried Puy lentils", "2 carrots, diced", "800 ml vegetable stock", "400 g chopped tomatoes")


@pytest.mark.parametrize(
    ("lines", "written", "told"),
    [
        # Tins go in at the end, nothing else in the pot takes 45 minutes, and nothing drinks up the stock.
        (_PULSES, "Add the carrots, lentils, tomatoes and stock. Simmer for 45 minutes.",
         ("of the stock back, and add of it",
          "Simmer for 10 minutes, put in the lentils and simmer for 10 minutes more.")),
        (("200 g dried chickpeas, soaked overnight", "2 carrots, diced", "400 g chopped tomatoes"),
         "Boil the chickpeas in fresh water for 1 hour. Drain, keeping 250 ml of the cooking water.\n"
         "2. Add the tomatoes, carrots, chickpeas and reserved cooking water and simmer for 20 minutes.",
         ("nothing is soaked or boiled here", "and 250 ml water and simmer for 10 minutes, put in the chickpeas")),
        # A grain that only soaked is boiled, and what stood in the bowl with it is stirred in.
        (("200 g couscous", "250 ml vegetable stock", "50 g walnuts"),
         "Meanwhile put the couscous in a bowl with the walnuts, pour over the hot stock, leave for 5 minutes. Fluff.",
         ("Meanwhile boil the quinoa for about 15 minutes in the stock", "then stir in the walnuts. Fluff.")),
        # In a dish of an hour in the oven the quicker grain goes in for the end.
        (("200 g pearl barley", "600 g pumpkin, diced", "700 ml vegetable stock"),
         "Put the barley and pumpkin in a dish. Pour over the hot stock.\n2. Cover with foil and bake for 1 hour.",
         ("Put the pumpkin in a dish.", "Put in the risotto rice for the last 30 minutes of it.")),
        # A shorter time takes the place of the old one.
        (("200 g freekeh", "1 cucumber"),
         "Rinse the freekeh, put in a pan, bring to the boil and simmer for 25 minutes.",
         ("bring to the boil and simmer for 15 minutes.",)),
        # Some of the beans of one word stay.
        (("400 g tin black beans, drained", "400 g tin kidney beans, drained", "1 red pepper, sliced"),
         "Fry the pepper, season with salt and pepper and tip in the beans.",
         ("season with salt and pepper", "tip in the black beans and ")),
    ],
)  # fmt: skip
def test_what_takes_its_place_has_its_own_time_and_liquid(
    lines: tuple[str, ...], written: str, told: tuple[str, ...], adapt: Adapt
) -> None:
    found = adapt("Supper pot", *lines, steps=f"1. {written}", serves=6)["recipe"]
    for words in told:
        assert words in found
    assert "only for the last" not in found  # the sentence says it, no bracket has to


@pytest.mark.parametrize(
    ("told", "figures"),
    [
        ("Soften for ten minutes.", "Soften for 10 minutes."),
        ("Simmer for twenty to twenty-five minutes.", "Simmer for 20 to 25 minutes."),
        ("Bake for an hour.", "Bake for 1 hour."),
        ("Bake for another hour to an hour and a quarter.", "Bake for another 60–75 minutes."),
        ("Cook for 1½ hours.", "Cook for 90 minutes."),
        ("Cook for 2-2½ hours.", "Cook for 120–150 minutes."),
        ("Wait three quarters of an hour.", "Wait 45 minutes."),
        ("Cook for 45 minutes to 1 hour.", "Cook for 45 minutes to 1 hour."),
        ("Give it a minute.", "Give it a minute."),
    ],
)
def test_a_time_in_words_is_one_and_keeps_its_words(told: str, figures: str) -> None:
    """An hour is sixty minutes; words for times as recipes have them: recalled cookery."""
    found = in_figures(told)
    assert found.step == figures
    assert in_its_words(found.step, found.words) == told

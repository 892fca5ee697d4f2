"""Steps of an adapted recipe name each thing once, keep what is beside it, and keep how meat is known to be done.

What a cook does: common practice, no source.
"""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.step_named_once import LIST_ITEM, named_once, oil_shared_out, out_of_lists
from calmlarder.adapt.step_smoothed import not_charred, smoothed

Adapt = Callable[..., dict[str, Any]]


def _steps(found: dict[str, Any]) -> str:
    return str(found["recipe"]).split("Method")[1].split("\nNotes")[0]


@pytest.mark.parametrize(
    ("step", "told"),
    [
        (
            "Add 110 g of the leek greens, carrots, celery and 150 g of the leek greens and cook for 15 minutes.",
            "Add the leek greens, carrots and celery and cook for 15 minutes.",
        ),
        (
            "Stir the cumin, 1 pinch of the asafoetida, 0.5 g of the asafoetida and salt.",
            "Stir the cumin, the asafoetida and salt.",
        ),
        (
            "Whisk in 3 cups of the lactose-free whole milk, cream and 155 ml of the lactose-free milk, and cook.",
            "Whisk in the lactose-free milk and cream, and cook.",
        ),
        (
            "Toss the rhubarb and 150 g of the sugar with the sugar and cinnamon.",
            "Toss the rhubarb with the sugar and cinnamon.",
        ),
    ],
)
def test_one_thing_is_named_once(step: str, told: str) -> None:
    assert named_once([step]) == [told]


def test_fruit_and_its_sugar_are_told_apart_once() -> None:
    steps = [
        "Put the rhubarb and sugar in a dish.",
        "Scatter over the rhubarb and sugar and bake until the rhubarb and sugar are soft.",
    ]
    assert named_once(steps)[1] == "Scatter over the rhubarb and bake until the rhubarb is soft."


def test_oil_of_two_steps_is_shared_out() -> None:
    steps = oil_shared_out(["Mix the mince and garlic-infused oil.", "Fry.", "Warm the garlic-infused oil."])
    assert steps == [
        "Mix the mince and some of the garlic-infused oil.",
        "Fry.",
        "Warm the rest of the garlic-infused oil.",
    ]


def test_green_tops_are_not_charred() -> None:
    told = not_charred("Char the leek greens and ginger cut side down until blackened.")
    assert told == "Char the ginger cut side down until blackened; the leek greens stay out of it and go in next."


def test_a_bashed_clove_is_oil_that_is_warmed() -> None:
    assert (
        smoothed("Take the garlic-infused oil and sizzle it for a minute.", bool)
        == "Warm the garlic-infused oil for a minute."
    )


def test_what_shares_its_part_stays(adapt: Adapt) -> None:
    found = adapt(
        "Curry", "600 g chicken thighs", "1 tbsp grated ginger", "4 cloves of garlic, grated", "2 tbsp oil",
        steps="1. Rub the chicken with half the ginger and garlic.\n2. Fry the remaining ginger and garlic in the oil.",
    )  # fmt: skip
    first, second = (line for line in _steps(found).splitlines() if line[:2] in {"1.", "2."})
    assert "half the ginger and half of the garlic-infused oil" in first
    assert "ginger" in second


def test_how_meat_is_known_to_be_done_is_never_written_over(adapt: Adapt) -> None:
    found = adapt(
        "Beef wraps", "450 g ground beef", "1 onion, diced", "1 tbsp oil",
        steps="1. Cook the beef and onion until the beef is no longer pink and the onion is tender, 8 to 10 minutes.",
    )  # fmt: skip
    assert "the beef is no longer pink" in _steps(found)
    assert "8 to 10 minutes" in _steps(found)


def test_each_of_a_sentence_has_its_own_sign(adapt: Adapt) -> None:
    found = adapt(
        "Mushroom rice", "300 g chestnut mushrooms, sliced", "1 onion, chopped", "300 g risotto rice", "50 g butter",
        steps="1. Melt the butter, add the onion and cook for 10 minutes until soft and translucent, then add the "
        "mushrooms and cook for 6 minutes until they have released their liquid.",
    )  # fmt: skip
    assert "the leek greens and cook for 5 minutes until soft and bright green, then add" in _steps(found)


@pytest.mark.parametrize(
    ("line", "step", "told"),
    [
        ("1 tbsp honey", "Pour over the honey sauce.", "Pour over the maple syrup sauce."),
        ("1/2 red onion, thinly sliced", "Top with the pickled onions.", "pickled spring onion greens"),
        ("250 g dried lasagne sheets", "Cover with pasta sheets.", "Cover with gluten-free lasagne sheets."),
    ],
)
def test_no_old_name_stays_in_a_step(line: str, step: str, told: str, adapt: Adapt) -> None:
    mix = f"Mix the {line.split(',')[0].split()[-1]} and vinegar with salt. "
    found = adapt("A dish", line, "300 g chicken breast", "2 tbsp vinegar", steps=f"1. {mix}\n2. {step}")
    assert told in _steps(found)


def test_pastry_is_pressed_together_not_beaten(adapt: Adapt) -> None:
    found = adapt(
        "Tart", "400 g plain flour", "100 g butter", "3 eggs",
        steps="1. Rub the flour and butter to crumbs, add an egg, knead briefly and chill.\n"
        "2. Roll out the pastry and bake.",
    )  # fmt: skip
    told = _steps(found)
    assert "press it together to a smooth ball and chill" in told
    assert "Roll out the pastry between two sheets of baking paper" in told


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Put the cabbage, carrots and apple in a bowl.", "Put the cabbage and carrots in a bowl."),
        ("Put the cabbage, apple and carrots in a bowl.", "Put the cabbage and carrots in a bowl."),
        ("Put the apple and carrots in a bowl.", "Put the carrots in a bowl."),
        ("Add the apple and simmer for 20 minutes.", "Add the apple [left out] and simmer for 20 minutes."),
    ],
)
def test_what_is_left_out_of_a_list_is_gone_from_it(step: str, told: str) -> None:
    assert out_of_lists(step.replace("apple", f"{LIST_ITEM}apple [left out]{LIST_ITEM}")) == told


def test_vegetables_and_stock_are_two_things(adapt: Adapt) -> None:
    found = adapt(
        "Carrot soup", "800 g carrots", "4 garlic cloves, unpeeled", "800ml vegetable stock", "2 tbsp oil",
        steps="1. Roast the carrots and garlic in the oil for 40 minutes.\n"
        "2. Squeeze the garlic from its skins into a pan. Add the roasted vegetables and stock and blitz.",
    )  # fmt: skip
    assert "Add the roasted vegetables and stock and blitz." in _steps(found)
    assert "Stir the garlic-infused oil into a pan." in _steps(found)


def test_peppers_keep_their_time_beside_green_tops(adapt: Adapt) -> None:
    found = adapt(
        "Rice", "1 onion, chopped", "4 red peppers, in strips", "300 g rice", "2 tbsp oil",
        steps="1. Soften the onion and peppers in the oil for 10 minutes. Add the rice and 600 ml water and simmer.",
    )  # fmt: skip
    assert "for 10 minutes" in _steps(found)


def test_a_clove_that_is_thrown_away_leaves_no_half_sentence() -> None:
    told = smoothed("Fry the bacon with the garlic-infused oil until crisp, then discard the garlic-infused oil.", bool)
    assert told == "Fry the bacon with the garlic-infused oil until crisp."


def test_flour_of_another_line_keeps_its_name(adapt: Adapt) -> None:
    found = adapt(
        "Stew with dumplings", "1 kg stewing beef", "2 tbsp plain flour, seasoned", "150g self-raising flour",
        "75g suet", "500 ml water",
        steps="1. Dust the beef with the seasoned flour and simmer it in the water for 2 hours.\n"
        "2. Mix the self-raising flour and suet to a dough, shape into balls and cook for 25 minutes on top.", serves=3,
    )  # fmt: skip
    first = next(line for line in _steps(found).splitlines() if line.startswith("1."))
    assert "with the seasoned flour" in first
    assert "baking powder" not in first


def test_each_line_of_garlic_gives_its_own_oil(adapt: Adapt) -> None:
    found = adapt(
        "Kofta", "500g lamb mince", "2 garlic cloves, crushed", "1/2 garlic clove, finely grated",
        "200g lactose-free yoghurt",
        steps="1. Mix the lamb with the crushed garlic and grill for 10 minutes.\n"
        "2. Stir the grated garlic into the yoghurt.",
    )  # fmt: skip
    first, second = (line for line in _steps(found).splitlines() if line[:2] in {"1.", "2."})
    assert "2 tsp of the garlic-infused oil" in first
    assert "1/2 tsp of the garlic-infused oil" in second


def test_a_stew_keeps_its_time_beside_what_was_fried(adapt: Adapt) -> None:
    found = adapt(
        "Beef stew", "800g braising steak", "250g chestnut mushrooms", "30g butter", "600 ml red wine",
        steps="1. Simmer the beef in the wine for 2 hours.\n2. Fry the mushrooms in the butter. "
        "Add the mushrooms to the casserole and cook for 30 minutes more until the beef is tender.",
    )  # fmt: skip
    assert "30 minutes more until the beef is tender" in _steps(found)


def test_what_is_squeezed_or_pops_is_not_the_garlic(adapt: Adapt) -> None:
    found = adapt(
        "Dip", "1 cucumber, grated", "1 garlic clove, grated", "200g lactose-free yoghurt", "1 tsp mustard seeds",
        "2 tbsp oil",
        steps="1. Squeeze the water from the cucumber and stir into the yoghurt with the garlic.\n"
        "2. Fry the seeds in the oil; when they pop, pour them over.",
    )  # fmt: skip
    assert "[" not in _steps(found)


def test_a_short_time_is_told_once() -> None:
    told = smoothed("Add the spring onion greens [only a minute] for 30 seconds.", bool)
    assert told == "Add the spring onion greens for 30 seconds."


def test_the_gravy_takes_the_flour_of_its_own_heading(adapt: Adapt) -> None:
    found = adapt(
        "Batter and gravy", "140g plain flour", "4 eggs", "200ml lactose-free milk", "For the gravy", "1 tbsp butter",
        "1 tbsp plain flour", "400 ml water",
        steps="1. Whisk the flour, eggs and milk and bake for 30 minutes.\n"
        "2. For the gravy, melt the butter, stir in the flour and add the water.",
    )  # fmt: skip
    second = next(line for line in _steps(found).splitlines() if line.startswith("2."))
    assert "stir in 1 tbsp of the gluten-free plain flour" in second  # one flour for both, this much of it


def test_shares_parts_and_quantifiers_of_what_it_is_now(adapt: Adapt) -> None:
    """Half of a bunch stays a half, a tin's sauce goes with it, two onions are no longer both: recalled cookery."""
    steps = _steps(adapt(
        "Bean pan", "2 large onions, 1 grated and 1 sliced", "4 spring onions, chopped", "1 chipotle in adobo",
        "1 clove garlic, halved", "300 g rice", "2 tbsp oil", "500 g chicken thighs",
        steps="1. Rub a large dish with the cut garlic.\n2. Heat the oil and cook both onions for ten minutes until "
        "soft.\n3. Add the chipotle and its sauce and the chicken, and half of the spring onions. Cook for half "
        "an hour.\n4. Serve with the rice and the other half of the spring onions.",
    ))  # fmt: skip
    assert "both" not in steps
    assert "the leek greens for 5 minutes" in steps
    assert "its sauce" not in steps
    assert "half of the spring onion greens" in steps
    assert "the other half of the spring onion greens" in steps
    assert "Cook for half an hour." in steps


def test_of_fruit_and_its_sauce_the_fruit_is_meant_by_its_own_name(adapt: Adapt) -> None:
    steps = _steps(adapt(
        "Apple pork", "4 pork chops", "20 g applesauce", "1 apple, peeled and diced", "300 g rice",
        steps="1. Fry the chops. Stir in the applesauce.\n2. Add the apples and cook for 3 minutes.\n3. Boil the rice.",
    ))  # fmt: skip
    assert "Add the pineapple and cook" in steps

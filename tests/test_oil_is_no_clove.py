"""Steps of an adapted recipe that worked on cloves, or put things in late: as a cook reads them. Common practice."""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.step_clove_work import without_work_on_cloves
from calmlarder.adapt.step_left_over import without_what_is_left_over
from calmlarder.adapt.step_put_in_late import put_in_late
from calmlarder.cookbook.lines import LineReader
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]
_LATER = "Add the garlic-infused oil and fry for a minute."


@pytest.mark.parametrize(
    ("step", "now"),
    [
        ("Halve the garlic-infused oil and remove the green germ from each. Heat the oil.", "Heat the oil."),
        ("1. Peel the garlic-infused oil. Heat the pan.", "1. Heat the pan."),
        ("2. Halve the garlic-infused oil across.", "2. The garlic-infused oil is ready as it is."),
        ("Slice the garlic-infused oil [nothing to slice] thinly. Boil the rice.", "Boil the rice."),
        ("Peel and chop the garlic-infused oil and ginger.", "Peel and chop the ginger."),
        ("Slice the carrots, leek greens and garlic-infused oil. Heat.", "Slice the carrots and leek greens. Heat."),
        (
            "Peel the carrots and chop the garlic-infused oil, then heat the wok.",
            "Peel the carrots, then heat the wok.",
        ),
    ],
)
def test_nothing_is_done_to_an_oil(step: str, now: str) -> None:
    assert without_work_on_cloves([step, _LATER]) == [now, _LATER]


@pytest.mark.parametrize(
    "step",
    [
        "Take the garlic-infused oil into the pan and stir.",
        "Chop the garlic-infused oil and add it to the pan.",
        "Crush the garlic-infused oil to a paste with the salt.",
        "Peel the potatoes, add the rice and garlic-infused oil. Boil.",
    ],
)
def test_what_goes_in_stays(step: str) -> None:
    assert without_work_on_cloves([step, _LATER]) == [step, _LATER]
    assert without_work_on_cloves(["Halve the garlic-infused oil."]) == ["Halve the garlic-infused oil."]


def test_garlic_and_salt_in_a_processor_rub_no_meat() -> None:
    step = "Put the garlic-infused oil and salt in a food processor and process until fine."
    assert without_what_is_left_over(step) == step


def test_cloves_roasted_in_their_skins(adapt: Adapt) -> None:
    found = adapt(
        "Chicken with forty cloves of garlic", "1 chicken, about 1.8 kg", "40 cloves garlic, unpeeled",
        "400 g potatoes", "3 tbsp olive oil",
        steps="1. Tip the potatoes and garlic into a tin with the oil and the chicken and roast for 80 minutes.\n"
        "2. Squeeze the soft garlic out of its skins into the juices, scatter with salt and serve.",
    )  # fmt: skip
    assert [one["food"] for change in found["changes"] for one in change["to"]][:1] == ["oil-garlic"]
    assert "Stir the garlic-infused oil into the juices, scatter with salt and serve." in found["recipe"]
    assert "Tip the potatoes into a tin" in found["recipe"]


def test_greens_fried_for_minutes_before_the_oven_stay_in(adapt: Adapt) -> None:
    found = adapt(
        "Lamb casserole", "600 g lamb, diced", "2 onions, chopped", "2 tbsp olive oil", "400 ml water",
        steps="1. Brown the lamb in the oil and set aside. Add the onions to the pan and cook for 8 minutes. Return "
        "the lamb with the water, cover and cook in the oven for 1 hour.",
    )  # fmt: skip
    assert "only for the last" not in found["recipe"]
    stove = adapt(
        "Onion and potato soup", "1 onion, chopped", "500 g potatoes", "1 tbsp olive oil", "800 ml water",
        steps="1. Soften the onion in the oil, add the potatoes and water and simmer for 20 minutes.",
    )  # fmt: skip
    assert not any("in the oven" in change["why"] for change in stove["changes"])


def test_what_goes_in_late_stands_before_the_serving(adapt: Adapt) -> None:
    found = adapt(
        "Smoky pot", "500 g green split peas, rinsed", "3 carrots, diced", "2 litres water", "2 bay leaves",
        steps="1. Add the split peas, carrots, water and bay leaves to a pot and simmer for 50 minutes to 1 hour. Take "
        "out the bay leaves. Season and serve with salt.",
    )  # fmt: skip
    recipe = found["recipe"]
    assert "minutes to 1 hour" not in recipe
    for late in ("Put in the", "At the end stir in the"):
        assert late not in recipe or recipe.index(late) < recipe.index("Season and serve")
    assert " of it. Take out the bay leaves." in recipe
    step = "Stir in the rice and the chives [only at the end] and cook for 9 minutes. Season. Ladle into bowls."
    assert put_in_late(step).endswith("Season. At the end stir in the chives. Ladle into bowls.")


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("200g dried egg tagliatelle", "pasta-egg-dry"),
        ("250 g dried egg fettuccine", "pasta-egg-dry"),
        ("200 g fresh egg tagliatelle", "pasta-fresh"),
        ("350g egg tagliatelle", "pasta-egg-dry"),  # as sold in packets; wet it would be more of the same flour
        ("1 packet (30g) fajita seasoning mix", "taco-seasoning-onion"),
        ("2 tbsp biryani paste", "curry-paste"),
    ],
)
def test_what_a_packet_holds_is_read(line: str, food: str, tables: Tables) -> None:
    assert LineReader(tables).read(line).food == food

"""A stand-in's name written into a step's sentence, where the sentence bears it: English as a cook reads it."""

import pytest

from calmlarder.adapt.in_words import Around, short_name, written_in


@pytest.mark.parametrize(
    ("lead", "name", "behind", "now", "how", "is_oil", "written"),
    [
        ("Soften the ", "onion", ", carrots and celery.", "leek greens", "", False, "Soften the leek greens"),
        ("Cook until the ", "onion", " is soft.", "leek greens", "", False, "Cook until the leek greens are"),
        ("Add the chopped ", "garlic", " and fry.", "garlic-infused oil", "", True, "Add the garlic-infused oil"),
        ("Add ", "onion", " and fry.", "leek greens", ": only a minute", False, "Add leek greens [only a minute]"),
        ("Fry 3 of the ", "garlic cloves", ".", "15 ml of the oil", "", True, "Fry 15 ml of the oil"),
        ("Top with the ", "onion", " rings.", "leek greens", "", False, "Top with the leek greens"),
        (
            "Stir in the ",
            "beans",
            ", cover and let stand.",
            "peas and lentils",
            "",
            False,
            "Stir in the peas and lentils",
        ),
        ("Add the ", "beans", " and bay.", "chickpeas and potatoes", "", False, "Add the chickpeas, potatoes"),
        ("Fry until the ", "garlic", " is just turning brown.", "garlic-infused oil", "", True, "Fry until fragrant"),
    ],
)
def test_the_sentence_names_what_is_in_the_list(
    lead: str, name: str, behind: str, now: str, how: str, is_oil: bool, written: str
) -> None:
    new = written_in(Around(lead, name, behind), now, how, is_oil)
    assert new is not None
    assert new.text == written


@pytest.mark.parametrize(
    ("lead", "name", "behind"),
    [
        ("Stir in the ", "onion", " soup."),  # another thing
        ("Add 2 ", "onions", " and fry."),  # so many of another thing
        ("Fill each ", "aubergine", " with rice."),
        ("Slice the spring ", "onions", " and fry."),
        ("Drizzle with lime ", "crema", " and serve."),
    ],
)
def test_words_that_would_mislead_stay(lead: str, name: str, behind: str) -> None:
    assert written_in(Around(lead, name, behind), "leek greens", "", False) is None


def test_a_step_calls_a_food_by_its_short_name() -> None:
    assert short_name("canned chickpeas") == "chickpeas"
    assert short_name("stock without onion or garlic") == "stock"
    assert short_name("cooked quinoa") == "cooked quinoa"  # it is cooked first


def test_verbs_behind_a_name_begin_no_list() -> None:
    new = written_in(Around("Add the ", "paste", " and saute for 1 minute."), "ginger and oil", "", False)
    assert new is not None
    assert new.text == "Add the ginger and oil"

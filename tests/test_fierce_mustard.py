"""English mustard bites: a teaspoon (5 g) a person is much in a sauce, of a mild one more will do (recalled)."""

from collections.abc import Callable
from typing import Any

TEASPOON_G = 5
FRIDGE = ("pork chops 2", "potatoes 1kg", "carrots 4", "broccoli 300g", "double cream 200ml", "butter", "parsley")


def test_english_mustard_is_a_teaspoon_a_person_at_most(cook: Callable[..., Any]) -> None:
    def mustard(line: str) -> int:
        dinner = cook([line, *FRIDGE], "cabbage-braise")
        return sum(use.grams for use in dinner.uses if use.food == "mustard")

    assert 0 < mustard("english mustard") <= 2 * TEASPOON_G < mustard("wholegrain mustard")


def test_of_the_hottest_chillies_a_gram_a_person(cook: Callable[..., Any]) -> None:
    """One scotch bonnet is for a pot of six; recalled cookery."""
    dinner = cook(["6 scotch bonnets", "firm tofu 400g", "dry white rice 1kg", "pak choi 4", "soy sauce"], "stir-fry")
    assert 0 < sum(use.grams for use in dinner.uses if use.food == "chilli-habanero") <= 2

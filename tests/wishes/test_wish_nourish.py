"""Enough on each plate. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

import pytest

from by_hand import foods
from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import (
    ENERGY_ENOUGH_KCAL,
    ENERGY_TARGET_KCAL,
    FIBRE_TARGET_G,
    PROTEIN_ENOUGH_G,
    VEGETABLES_PLENTY_G,
    VEGETABLES_TARGET_G,
    DinnerRequest,
)
from calmlarder.compose.weights import (
    ENERGY_OVER,
    ENERGY_UNDER_TARGET,
    FIBRE_UNDER_TARGET,
    PROTEIN_OVER,
    PROTEIN_UNDER_TARGET,
    VEGETABLES_UNDER_PLENTY,
    VEGETABLES_UNDER_TARGET,
)
from calmlarder.compose.wishes.nourish import NotTooMuch, Nourishing
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def test_what_is_short_of_each_target_costs(pan: Callable[..., Tiny]) -> None:
    """Added up from the cells of foods.csv: g of protein and fibre, tens of kcal, tens of g of vegetables.

    firm tofu 500g
    carrots 500g
    """

    def by_hand(tofu: int, carrot: int, protein_g: float) -> float:
        def brings(column: str) -> float:
            return sum(float(foods()[food][column]) * g / 100 for food, g in (("tofu-firm", tofu), ("carrot", carrot)))

        of_carrot = float(foods()["carrot"]["protein_g"]) * carrot / 100
        assert of_carrot < 6  # so much of what is no protein food counts
        return -(
            PROTEIN_UNDER_TARGET * max(0, protein_g - brings("protein_g"))
            + ENERGY_UNDER_TARGET * max(0, ENERGY_TARGET_KCAL["dinner"] - brings("energy_kcal")) / 10
            + FIBRE_UNDER_TARGET * max(0, FIBRE_TARGET_G["dinner"] - brings("fibre_g"))
            + (VEGETABLES_UNDER_TARGET - VEGETABLES_UNDER_PLENTY) * max(0, VEGETABLES_TARGET_G["dinner"] - carrot) / 10
            + VEGETABLES_UNDER_PLENTY * max(0, VEGETABLES_PLENTY_G["dinner"] - carrot) / 10
        )

    for tofu, carrot in ((80, 80), (200, 80), (200, 110), (200, 120)):
        for protein_g in (5.0, 40.0):
            told = pan(protein_g=protein_g).points(Nourishing(), {"tofu-firm": tofu, "carrot": carrot})
            assert told == pytest.approx(by_hand(tofu, carrot, protein_g), abs=1)


def test_a_portion_of_tomatoes_in_a_sauce_counts_among_the_vegetables(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """80 g of tinned tomatoes are a portion (UK National Health Service, 5 A Day, recalled); more are no second."""
    saucy = PAN.slots["sauce"].model_copy(update={"kinds": ("tomato",), "method": "boil"})
    pattern = PAN.model_copy(update={"slots": {**PAN.slots, "sauce": saucy}})
    lots = lots_of(["firm tofu 500g", "carrots 500g", "tinned tomatoes 400g"])
    dish = Tiny(pattern_problems(lots, wanting(protein_g=5.0), [pattern], tables)[0])

    def points(tomatoes: int) -> float:
        return dish.points(Nourishing(), {"tofu-firm": 200, "carrot": 40, "tomato-canned": tomatoes})

    row = foods()["tomato-canned"]
    each = ENERGY_UNDER_TARGET * float(row["energy_kcal"]) / 1000 + FIBRE_UNDER_TARGET * float(row["fibre_g"]) / 100
    assert points(80) - points(60) == pytest.approx(20 * (each + VEGETABLES_UNDER_TARGET / 10), abs=0.5)
    assert points(120) - points(80) == pytest.approx(40 * each, abs=0.5)


def test_what_is_more_than_one_eats_costs(pan: Callable[..., Tiny]) -> None:
    """Added up from the cells of foods.csv; a plate that fills costs nothing.

    firm tofu 900g
    eggs x12
    """
    tofu, egg = foods()["tofu-firm"], foods()["egg"]

    def brings(column: str) -> float:
        return float(tofu[column]) * 260 / 100 + float(egg[column]) * 220 / 100

    energy = max(0, brings("energy_kcal") - ENERGY_ENOUGH_KCAL["dinner"])
    protein = max(0, brings("protein_g") - PROTEIN_ENOUGH_G["dinner"])
    assert protein > 5
    much = pan().points(NotTooMuch(), {"tofu-firm": 260, "egg": 220})
    assert much == pytest.approx(-ENERGY_OVER * energy / 10 - PROTEIN_OVER * protein, abs=0.2)
    assert pan().points(NotTooMuch(), {"tofu-firm": 130}) == 0

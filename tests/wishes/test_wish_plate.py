"""A real plate. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

import pytest

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import ITEM_EXTRA, ITEM_MISSING, SMALL_ITEM_EXTRA, SMALL_ITEM_MISSING
from calmlarder.compose.wishes.plate import UsualItems, UsualPortions
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def test_the_usual_number_of_things(pan: Callable[..., Tiny]) -> None:
    """Each slot of the pan usually holds one thing; a base, a salad and three that season are missing here.

    firm tofu 280g
    carrots 300g
    kale 200g
    """
    one = pan().points(UsualItems(), {"tofu-firm": 80, "carrot": 80})
    two = pan().points(UsualItems(), {"tofu-firm": 80, "carrot": 80, "kale": 70})
    assert one == -2 * ITEM_MISSING - 3 * SMALL_ITEM_MISSING
    assert two == one - ITEM_EXTRA


def test_a_second_spice_costs_little(pan: Callable[..., Tiny]) -> None:
    """One is usual in the pan.

    firm tofu 280g
    oregano
    dried thyme
    """
    one = pan().points(UsualItems(), {"tofu-firm": 80, "oregano": 1})
    assert pan().points(UsualItems(), {"tofu-firm": 80, "oregano": 1, "thyme-dried": 1}) == one - SMALL_ITEM_EXTRA


def test_the_usual_amounts(pan: Callable[..., Tiny]) -> None:
    """A portion of firm tofu is 130 g.

    firm tofu 500g
    """
    usual = pan().points(UsualPortions(), {"tofu-firm": 130})
    assert pan().points(UsualPortions(), {"tofu-firm": 195}) < pan().points(UsualPortions(), {"tofu-firm": 150}) < usual
    assert abs(usual) < 0.1  # portions are counted in ten-thousandths for each 5 g


def test_more_vegetables_than_usual_are_a_good_plate(pan: Callable[..., Tiny]) -> None:
    """A portion and a half of carrots costs less than a point, where as much tofu costs twenty.

    firm tofu 500g
    carrots 500g
    """
    usual = pan().points(UsualPortions(), {"tofu-firm": 130, "carrot": 80})
    assert usual - pan().points(UsualPortions(), {"tofu-firm": 130, "carrot": 120}) < 5
    assert usual - pan().points(UsualPortions(), {"tofu-firm": 195, "carrot": 80}) > 20


def test_one_spice_of_three_has_its_share_alone(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """Two portions of three spices are usual: a teaspoon of one is no shortage, as the others are priced as missing."""
    spice = PAN.slots["spice"].model_copy(update={"portions": (0.5, 2.0, 4.0), "items": (0, 3), "usual_items": 3})
    spiced = PAN.model_copy(update={"slots": {**PAN.slots, "spice": spice}})
    lots = lots_of(["firm tofu 500g", "oregano", "dried thyme"])
    pan = Tiny(pattern_problems(lots, wanting(), [spiced], tables)[0])
    without, one = ({"tofu-firm": 130, **more} for more in ({}, {"oregano": 1}))
    assert pan.points(UsualPortions(), one) == pytest.approx(pan.points(UsualPortions(), without), abs=1)
    few = PAN.model_copy(update={"slots": {**PAN.slots, "spice": spice.model_copy(update={"usual_items": 1})}})
    alone = Tiny(pattern_problems(lots, wanting(), [few], tables)[0])
    assert alone.points(UsualPortions(), one) < alone.points(UsualPortions(), without) - 2  # of one, two portions

"""Rice cooked with tomatoes in one pot rests off the heat, and a heap of leaves is wilted beside it.

Five minutes under the lid: common practice, no source.
"""

from collections.abc import Callable
from typing import Any

REST_MINUTES = 5
FRIDGE = ("white rice 1kg", "tomatoes 400g", "eggs 6", "olive oil", "paprika", "parsley", "kale 300g", "carrots 4")


def test_the_rice_rests_and_the_leaves_stay_out_of_its_pot(cook: Callable[..., Any]) -> None:
    dinner = cook(FRIDGE, "tomato-rice")
    moments = dinner.timeline.moments
    (rest,) = (one for one in moments if "off the heat" in one.what)
    assert rest.minutes == REST_MINUTES
    (boiled,) = (one for one in moments if "rice-white-dry" in one.adds)
    assert rest.start_min >= boiled.start_min + boiled.minutes
    assert "kale" not in boiled.adds
    kale = [one for one in moments if "kale" in one.adds]
    assert all("pan" in one.what for one in kale)
    assert kale

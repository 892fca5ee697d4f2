"""Few things on the scale. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from dataclasses import replace

from calmlarder.compose.rules.minutes import SlowestFood
from calmlarder.compose.weights import LATE_MINUTE, MINUTE, REST_IN_A_PACK, THAWING, WEIGHING
from calmlarder.compose.wishes.effort import FewThawed, FewWeighings, LittleTime, WholePacks
from tiny import Tiny


def test_each_weighing_costs(pan: Callable[..., Tiny]) -> None:
    """Two may be weighed.

    firm tofu 280g
    carrots 300g
    """
    both = {"tofu-firm": 80, "carrot": 80}
    assert pan().points(FewWeighings(), both) == 0
    assert pan().points(FewWeighings(), both, weighed=["tofu-firm"]) == -WEIGHING


def test_each_minute_costs(pan: Callable[..., Tiny]) -> None:
    """As long as the slowest takes.

    firm tofu 280g
    """
    minutes = pan().problem.options[0].minutes
    assert pan().points(LittleTime(), {"tofu-firm": 80}, rules=[SlowestFood()]) == -MINUTE * minutes


def test_minutes_beyond_an_evening_cost_more(pan: Callable[..., Tiny]) -> None:
    """A pattern of half an hour, and eight minutes of frying: three are over 35.

    firm tofu 280g
    """
    there = pan().problem
    slow = Tiny(replace(there, pattern=there.pattern.model_copy(update={"minutes": 30})))
    minutes = there.options[0].minutes
    late = slow.points(LittleTime(), {"tofu-firm": 80}, rules=[SlowestFood()])
    assert late == -MINUTE * minutes - LATE_MINUTE * (minutes + 30 - 35)


def test_what_thaws_first_costs(pan: Callable[..., Tiny]) -> None:
    """A fresh thing costs nothing.

    firm tofu 280g
    cod fillet 300g, in the freezer
    """
    assert pan().points(FewThawed(), {"tofu-firm": 80}) == 0
    assert pan().points(FewThawed(), {"cod": 150}) == -THAWING


def test_a_spoonful_left_in_a_tin_costs(pan: Callable[..., Tiny]) -> None:
    """A tin holds 110 g; an open packet of salmon may keep its rest.

    tinned tuna
    salmon fillets 300g
    """
    assert pan().points(WholePacks(), {"tuna-canned": 90}) == -REST_IN_A_PACK
    assert pan().points(WholePacks(), {"tuna-canned": 110}) == 0
    assert pan().points(WholePacks(), {"salmon": 150}) == 0


def test_a_tenth_left_of_a_pack_costs(pan: Callable[..., Tiny]) -> None:
    """All of it, or so much that the rest is a meal; a whole pack that no dish takes is not meant.

    tempeh 150g
    firm tofu 2kg
    """
    assert pan().points(WholePacks(), {"tempeh": 130}) == -REST_IN_A_PACK
    assert pan().points(WholePacks(), {"tempeh": 150}) == 0
    assert pan().points(WholePacks(), {"tempeh": 60}) == 0
    assert pan().points(WholePacks(), {"tofu-firm": 150}) == 0

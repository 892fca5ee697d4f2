"""What is raw is dressed. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import BARE, DRY, IDLE_FLAVOUR, IDLE_SPICE, PLAIN, ROUND, UNSALTED_NUTS
from calmlarder.compose.wishes.seasoning import (
    Dressed,
    FlavoursAtHand,
    NotDry,
    NotPlain,
    Rounded,
    SaltedNuts,
    SpicesAtHand,
)
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def test_bare_leaves_cost(pan: Callable[..., Tiny]) -> None:
    """Rocket with and without lime.

    firm tofu 280g
    rocket 60g
    lime
    """
    assert pan().points(Dressed(), {"tofu-firm": 80, "rocket": 30}) == -BARE
    assert pan().points(Dressed(), {"tofu-firm": 80, "rocket": 30, "lime": 10}) == 0


def test_what_rounds_off_and_is_there_costs_where_it_stays_out(pan: Callable[..., Tiny]) -> None:
    """Soy sauce is savoury and moistens, a lime is sour: each that is left out costs.

    firm tofu 280g
    soy sauce
    lime
    """
    tofu = {"tofu-firm": 80}
    assert pan().points(Rounded(), tofu) == -ROUND["savoury"] - ROUND["moist"] - ROUND["sour"]
    assert pan().points(Rounded(), tofu | {"soy-sauce": 8}) == -ROUND["sour"]
    assert pan().points(Rounded(), tofu | {"soy-sauce": 8, "lime": 10}) == 0


def test_a_spice_to_fry_that_is_there_costs_where_it_stays_out(pan: Callable[..., Tiny]) -> None:
    """Paprika in the oil of the pan.

    firm tofu 280g
    paprika
    """
    assert pan().points(Rounded(), {"tofu-firm": 80}) == -ROUND["fried"]
    assert pan().points(Rounded(), {"tofu-firm": 80, "paprika": 1}) == 0


def test_what_is_at_hand_costs_where_it_stays_out(pan: Callable[..., Tiny]) -> None:
    """A lime has a place in the pan dish; parsley has none, and soy sauce is in every cupboard.

    firm tofu 280g
    lime
    parsley
    soy sauce
    """
    assert pan().points(FlavoursAtHand(), {"tofu-firm": 80}) == -IDLE_FLAVOUR
    assert pan().points(FlavoursAtHand(), {"tofu-firm": 80, "lime": 10}) == 0


def test_two_spices_of_the_chosen_kitchen_are_used_where_they_are_there(pan: Callable[..., Tiny]) -> None:
    """Paprika and oregano are of the Mediterranean, sichuan pepper of the other kitchen, allspice waits.

    firm tofu 280g
    paprika
    dried oregano
    ground allspice
    """
    tofu = {"tofu-firm": 80}
    assert pan().points(SpicesAtHand(), tofu) == 0  # in an East Asian pan
    assert pan().points(SpicesAtHand(), tofu | {"paprika": 1}) == -IDLE_SPICE
    assert pan().points(SpicesAtHand(), tofu | {"paprika": 1, "oregano": 1}) == 0


def test_a_south_asian_dish_takes_three(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """Cumin and mustard seeds, and the turmeric that stands beside them."""
    curry = PAN.model_copy(update={"flavours": ("south-asian",)})
    lots = lots_of(["firm tofu 280g", "cumin", "mustard seeds", "turmeric"])
    tiny = Tiny(pattern_problems(lots, wanting(), [curry], tables)[0])
    two = {"tofu-firm": 80, "cumin": 1, "mustard-seeds": 1}
    assert tiny.points(SpicesAtHand(), two) == -IDLE_SPICE
    assert tiny.points(SpicesAtHand(), two | {"turmeric": 1}) == 0


def test_what_the_larder_lacks_costs_nothing(pan: Callable[..., Tiny]) -> None:
    """Neither soy sauce nor lime.

    firm tofu 280g
    """
    assert pan().points(Rounded(), {"tofu-firm": 80}) == 0


def test_eggs_with_nothing_savoury_are_plain(pan: Callable[..., Tiny]) -> None:
    """With and without soy sauce; salmon tastes by itself.

    eggs x6
    salmon fillets 300g
    soy sauce
    """
    assert pan().points(NotPlain(), {"egg": 110}) == -PLAIN
    assert pan().points(NotPlain(), {"egg": 110, "soy-sauce": 8}) == 0
    assert pan().points(NotPlain(), {"salmon": 150}) == 0


def test_fried_fish_with_nothing_moist_is_dry(pan: Callable[..., Tiny]) -> None:
    """With and without lime; raw tomatoes beside it moisten nothing, and eggs are not dry.

    salmon fillets 300g
    eggs x6
    lime
    cucumber
    """
    assert pan().points(NotDry(), {"salmon": 150}) == -DRY
    assert pan().points(NotDry(), {"salmon": 150, "cucumber": 60}) == -DRY
    assert pan().points(NotDry(), {"salmon": 150, "lime": 10}) == 0
    assert pan().points(NotDry(), {"egg": 110}) == 0


def test_a_dressing_of_peanut_butter_wants_salt(pan: Callable[..., Tiny]) -> None:
    """Lime alone salts nothing; tahini is salted in the words of its step.

    firm tofu 280g
    peanut butter
    tahini
    lime
    """
    tofu = {"tofu-firm": 80, "lime": 10}
    assert pan().points(SaltedNuts(), tofu | {"peanut-butter": 20}) == -UNSALTED_NUTS
    assert pan().points(SaltedNuts(), tofu | {"tahini": 20}) == 0
    assert pan().points(SaltedNuts(), tofu) == 0

"""First what goes off first. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.wishes.rescue import Rescue
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny, slot


def test_what_presses_is_worth_more(pan: Callable[..., Tiny]) -> None:
    """Kale goes today, carrots keep.

    firm tofu 280g
    kale 70g, use by today
    carrots 300g
    """
    tofu = pan().points(Rescue(), {"tofu-firm": 80})
    with_kale = pan().points(Rescue(), {"tofu-firm": 80, "kale": 70})
    with_carrots = pan().points(Rescue(), {"tofu-firm": 80, "carrot": 80})
    assert with_kale >= tofu + 100  # a portion on its last day, and the lot is used up
    assert with_carrots - tofu < 20


def test_fish_by_its_label_goes_before_fish_that_is_only_estimated(pan: Callable[..., Tiny]) -> None:
    """Both have two days; one says so itself.

    salmon fillet 120g, use by friday
    cod fillet 120g
    """
    assert pan().points(Rescue(), {"salmon": 120}) > pan().points(Rescue(), {"cod": 120}) + 40
    assert pan().points(Rescue(), {"cod": 120}) > 0


def test_fish_in_its_last_days_is_worth_more_than_tofu(pan: Callable[..., Tiny]) -> None:
    """Tofu with the same label keeps once it is cooked, and spoils slower.

    firm tofu 130g, use by tomorrow
    salmon fillet 120g, use by tomorrow
    """
    assert pan().points(Rescue(), {"salmon": 120}) > 1.3 * pan().points(Rescue(), {"tofu-firm": 130})


def test_a_block_that_is_begun_goes_before_a_whole_one(pan: Callable[..., Tiny]) -> None:
    """Nobody opens another; recalled cookery.

    half a block of firm tofu
    tempeh 200g
    """
    assert pan().points(Rescue(), {"tofu-firm": 80}) > pan().points(Rescue(), {"tempeh": 80})


def test_what_is_past_its_best_does_not_go_before_fish_of_tomorrow(pan: Callable[..., Tiny]) -> None:
    """A use-by day passes, a best-before day does not (UK Food Standards Agency, recalled).

    eggs x4, best before yesterday
    salmon fillet 120g, use by tomorrow
    """
    assert pan().points(Rescue(), {"salmon": 120}) > pan().points(Rescue(), {"egg": 110})


def test_shellfish_wait_for_no_label(fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]) -> None:
    """Prawns are for the day or the next; two days that are only estimated of cod are no label's. Recalled cookery.

    raw prawns 120g
    cod fillet 120g
    """
    dish = PAN.model_dump()
    dish["slots"] |= {"protein": slot("protein", ["shellfish", "fish"], "stir-fry", [1, 2], [0.2, 1.0, 2.0])}
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    points = {option.offered.food.id: option.points for option in problem.options}
    assert points["prawns"] > points["cod"] > 0


def test_what_is_meant_for_tonight_presses(pan: Callable[..., Tiny]) -> None:
    """Somebody took it out to cook it; recalled cookery.

    firm tofu 280g, for tonight
    tempeh 200g
    """
    assert pan().points(Rescue(), {"tofu-firm": 80}) > pan().points(Rescue(), {"tempeh": 80}) + 50

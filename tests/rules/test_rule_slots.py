"""Each slot holds its number of lots and its portions. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.slots import Slots
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny

PAN_WITH_SPROUTS = PAN.model_copy(
    update={
        "slots": {
            **PAN.slots,
            "protein": PAN.slots["protein"].model_copy(update={"portions": (0.5, 1.0, 1.5)}),
            "vegetable": PAN.slots["vegetable"].model_copy(update={"kinds": ("root", "leaf", "brassica", "shoot")}),
        }
    }
)


def test_items_and_portions(pan: Callable[..., Tiny]) -> None:
    """The protein slot wants a half to two portions, of 130 g each.

    firm tofu 500g
    carrots 500g
    """
    assert pan().holds(Slots(), {"tofu-firm": 65})
    assert not pan().holds(Slots(), {"tofu-firm": 60})
    assert not pan().holds(Slots(), {"carrot": 80})  # nothing in the slot that must be filled
    assert not pan(people=2).holds(Slots(), {"tofu-firm": 65, "carrot": 80})


def test_a_slot_is_widened_only_by_the_last_pack_that_is_in_it(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Of firm tofu and tempeh 1.3 portions go in, and of a pack on its last day up to 1.75.

    firm tofu 220g, use by tomorrow
    tempeh 500g
    eggs x6
    """
    protein = PAN.slots["protein"].model_copy(update={"portions": (0.5, 1.0, 1.3)})
    narrow = PAN.model_copy(update={"slots": {**PAN.slots, "protein": protein}})
    (problem,) = pattern_problems(fridge, wanting(), [narrow], tables)
    tempeh = int(tables.food_by_id["tempeh"].portion_g)
    assert Tiny(problem).holds(Slots(), {"tofu-firm": 220})  # 1.7 portions of 130 g
    assert Tiny(problem).holds(Slots(), {"tempeh": tempeh})
    beside_a_little = {"tofu-firm": 65, "tempeh": tempeh}  # 1.5 portions, the pack among them
    assert Tiny(problem).holds(Slots(), beside_a_little)
    without_it = {"tempeh": tempeh, "egg": 55}  # 1.5 portions, and the pack stays out
    assert not Tiny(problem).holds(Slots(), without_it)


def test_half_a_portion_of_rice_is_a_base_where_there_is_no_more(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """Of cooked rice 180 g are a portion: of 100 g one has a dinner, whatever the dish wants at least."""
    base = PAN.slots["base"].model_copy(update={"portions": (0.7, 1.1, 1.5), "items": (1, 1)})
    filled = PAN.model_copy(update={"slots": {**PAN.slots, "base": base}})
    lots = lots_of(["firm tofu 280g", "cooked white rice 300g"])
    (problem,) = pattern_problems(lots, wanting(), [filled], tables)
    assert Tiny(problem).holds(Slots(), {"tofu-firm": 130, "rice-white-cooked": 100})
    assert not Tiny(problem).holds(Slots(), {"tofu-firm": 130, "rice-white-cooked": 85})


def test_what_goes_off_goes_in_as_far_as_it_presses(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """Two fillets for one person tonight where today is their last day; with a day left one of them waits.

    Of sprouts on their last days 150 g each go in, so that none is left.
    """

    def most(*lines: str, people: int = 1) -> dict[str, int]:
        (problem,) = pattern_problems(lots_of(lines), wanting(people=people), [PAN_WITH_SPROUTS], tables)
        return {option.offered.food.id: option.most * option.unit for option in problem.options}

    assert most("2 salmon fillets, use by today")["salmon"] == 240
    assert most("2 salmon fillets, use by tomorrow")["salmon"] < 240
    assert most("4 salmon fillets, use by tomorrow", people=2)["salmon"] < 480
    assert most("bean sprouts 300g, use by tomorrow", people=2)["bean-sprouts"] == 300
    assert most("bean sprouts 300g, use by 20/3", people=2)["bean-sprouts"] < 300


def test_eggs_are_shared_evenly_where_there_are_enough(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """An egg weighs 55 g without its shell here; five between two are four, and three are three."""

    def unit(line: str, people: int) -> int:
        (problem,) = pattern_problems(lots_of([line]), wanting(people=people), [PAN], tables)
        return next(option.unit for option in problem.options if option.offered.food.id == "egg")

    assert unit("5 eggs", 2) == 110
    assert unit("3 eggs", 2) == 55
    assert unit("12 eggs", 3) == 165

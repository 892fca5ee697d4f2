"""Where there are tortillas a Mexican dish has no plain rice. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import RICE_BESIDE_TORTILLAS, RICE_FOR_TORTILLAS
from calmlarder.compose.wishes.fitting import TortillasFirst
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny

RICE = {"rice-white-dry": 75, "tofu-firm": 130}


def test_rice_costs_beside_tortillas_for_everybody(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    mexican = PAN.model_copy(update={"flavours": ("latin",)})

    def points(pattern: object, *lines: str) -> float:
        lots = lots_of(["firm tofu 280g", *lines])
        grains = {**RICE} if any("dry" in line for line in lines) else {"rice-white-cooked": 180, "tofu-firm": 130}
        return Tiny(pattern_problems(lots, wanting(), [pattern], tables)[0]).points(TortillasFirst(), grains)

    assert points(mexican, "dry white rice 1kg", "12 corn tortillas") == -RICE_FOR_TORTILLAS
    assert points(mexican, "dry white rice 1kg", "1 corn tortilla") == 0  # not enough for one
    assert points(mexican, "dry white rice 1kg") == 0
    assert points(PAN, "dry white rice 1kg", "12 corn tortillas") == -RICE_BESIDE_TORTILLAS  # in another kitchen
    assert points(PAN, "dry white rice 1kg", "12 flour tortillas") == 0  # those are at home in any
    assert points(mexican, "cooked white rice 200g, use by today", "12 corn tortillas") == 0  # it goes off first

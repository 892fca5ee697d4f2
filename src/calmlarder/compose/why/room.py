"""Which caps tonight comes near to, and what a little more room under each would be worth: analysis only."""

import time
from collections.abc import Callable, Iterator
from decimal import Decimal

from calmlarder.compose.dinner import dinner_of
from calmlarder.compose.problem import PatternProblem, load_rows
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.compose.stop import Stop
from calmlarder.compose.why.differences import WORTH_TELLING, differences, points_of
from calmlarder.compose.why.model import Bound, Found
from calmlarder.intake.stacking import room_mg
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap

NEAR = 0.8  # of the room taken: from there on a cap is told of; ours, no source
MORE_G = Decimal("0.10")  # the little more; a whole gram is several times most caps

Rebuild = Callable[[DinnerRequest], list[PatternProblem]]


def bounds(
    tonight: Found, wanted: DinnerRequest, rebuild: Rebuild, tables: Tables, end: float, stop: Stop | None
) -> Iterator[Bound]:
    """The sitting caps that are nearly full or hold the dinner back, the fullest first, each when it is known.

    Every cap that any of the lots counts under is looked at: one that is half empty may hold a whole lot back.
    """
    each = tonight.dinner.per_person
    for cap, room in _by_fullness(tonight, wanted, rebuild(wanted)):
        load = (each.worst_g if cap.holds == "worst" else each.loads_g)[cap.key]
        left = end - time.monotonic()
        points, buys = None, None
        if left > 0 and not (stop and stop.asked):
            found = search(rebuild(_roomier(wanted, cap)), 1, left, stop=stop, above=tonight.score + WORTH_TELLING)
            if found.plans:
                gain = points_of(found.plans[0].score - tonight.score)
                other = dinner_of(found.plans[0], False, tables)
                points, buys = gain / float(MORE_G), differences(tonight.dinner, other, -gain, with_foods=False)
            elif found.status == "none":
                points, buys = 0.0, ()
        if points != 0.0 or load >= NEAR * room:
            yield Bound(
                cap=cap.key, load_g=load, room_g=room, more_g=float(MORE_G),
                points_per_g=None if points is None else round(points, 1), buys=buys,
            )  # fmt: skip


def _by_fullness(tonight: Found, wanted: DinnerRequest, problems: list[PatternProblem]) -> list[tuple[Cap, float]]:
    """Caps that some lot counts under, with the g of room under each."""
    counted = {cap.key for problem in problems for cap, _, _ in load_rows(problem)}
    each = tonight.dinner.per_person
    rooms = [(cap, room_mg(wanted.counted, cap) / 1000) for cap in wanted.profile.sitting_caps if cap.key in counted]

    def share(one: tuple[Cap, float]) -> float:
        cap, room = one
        return (each.worst_g if cap.holds == "worst" else each.loads_g)[cap.key] / max(room, 0.001)

    return sorted(rooms, key=share, reverse=True)


def _roomier(wanted: DinnerRequest, cap: Cap) -> DinnerRequest:
    """The same request with a little more room under one cap, and under the same cap of one food."""
    profile = wanted.profile

    def more(caps: tuple[Cap, ...]) -> tuple[Cap, ...]:
        return tuple(
            one.model_copy(update={"grams": one.grams + MORE_G}) if one.key == cap.key else one for one in caps
        )

    roomy = {"food_caps": more(profile.food_caps), "sitting_caps": more(profile.sitting_caps)}
    return wanted.model_copy(update={"profile": profile.model_copy(update=roomy)})

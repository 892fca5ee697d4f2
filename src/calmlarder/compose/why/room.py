"""Which caps tonight comes near to, and what a little more room under each would be worth: analysis only."""

import time
from collections.abc import Callable, Iterator
from decimal import Decimal

from calmlarder.compose.dinner import dinner_of
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.search import search
from calmlarder.compose.stop import Stop
from calmlarder.compose.wanted import Wanted
from calmlarder.compose.why.differences import WORTH_TELLING, differences, points_of
from calmlarder.compose.why.model import Bound, Found
from calmlarder.sitting.stacking import room_mg
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Cap

NEAR = 0.8  # of the room taken: from there on a cap is looked at; ours, no source
MORE_G = Decimal("0.10")  # the little more; a whole gram is several times most caps

Rebuild = Callable[[Wanted], list[PatternProblem]]


def bounds(
    tonight: Found, wanted: Wanted, rebuild: Rebuild, tables: Tables, end: float, stop: Stop | None
) -> Iterator[Bound]:
    """The sitting caps that are nearly full, the fullest first, each when it is known."""
    for cap, load, room in _near(tonight, wanted):
        left = end - time.monotonic()
        points, buys = None, None
        if left > 0 and not (stop and stop.asked):
            roomier = _roomier(wanted, cap)
            found = search(rebuild(roomier), 1, left, stop=stop, above=tonight.score + WORTH_TELLING)
            if found.plans:
                gain = found.plans[0].score - tonight.score
                other = dinner_of(found.plans[0], False, tables)
                points, buys = (
                    points_of(gain) / float(MORE_G),
                    differences(tonight.dinner, other, -points_of(gain), False),
                )
            elif found.status == "none":
                points, buys = 0.0, ()
        yield Bound(
            cap=cap.key, load_g=load, room_g=room, more_g=float(MORE_G),
            points_per_g=None if points is None else round(points, 1), buys=buys,
        )  # fmt: skip


def _near(tonight: Found, wanted: Wanted) -> list[tuple[Cap, float, float]]:
    each = tonight.dinner.per_person
    found = []
    for cap in wanted.profile.sitting_caps:
        room = room_mg(wanted.counted, cap) / 1000
        load = (each.worst_g if cap.holds == "worst" else each.loads_g)[cap.key]
        if load >= NEAR * room and load > 0:
            found.append((cap, load, room))
    return sorted(found, key=lambda one: -one[1] / max(one[2], 0.001))


def _roomier(wanted: Wanted, cap: Cap) -> Wanted:
    """The same request with a little more room under one cap, and under the same cap of one food."""
    profile = wanted.profile

    def more(caps: tuple[Cap, ...]) -> tuple[Cap, ...]:
        return tuple(
            one.model_copy(update={"grams": one.grams + MORE_G}) if one.key == cap.key else one for one in caps
        )

    roomy = {"food_caps": more(profile.food_caps), "sitting_caps": more(profile.sitting_caps)}
    return wanted.model_copy(update={"profile": profile.model_copy(update=roomy)})

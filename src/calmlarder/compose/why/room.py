"""Which limits tonight comes near to, and what a little more room under each would be worth: analysis only."""

from collections.abc import Callable, Iterator
from decimal import Decimal

from calmlarder.compose.limit_rows import limit_rows
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import How, Watch, search
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.compose.why.differences import WORTH_TELLING, differences, points_of
from calmlarder.compose.why.model import Bound, Found
from calmlarder.intake.plate import in_grams
from calmlarder.intake.profile import TO_GRAMS
from calmlarder.intake.shared_cap import with_more
from calmlarder.intake.stacking import rooms
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap

NEAR = 0.8  # of the room taken: from there on a limit is told of; ours, no source
MORE_G = Decimal("0.10")  # the little more; a whole gram is several times most limits

Rebuild = Callable[[DinnerRequest], list[PatternProblem]]


def bounds(tonight: Found, wanted: DinnerRequest, rebuild: Rebuild, tables: Tables, stop: Stop) -> Iterator[Bound]:
    """The limits of the sitting that are nearly full or hold the dinner back, the fullest first, each when it is known.

    Every limit that any of the lots counts under is looked at: one that is half empty may hold a whole lot back.
    """
    each = tonight.dinner.per_person
    how = How(above=tonight.score + WORTH_TELLING, watch=Watch(stop=stop))
    for cap, room, share in _by_fullness(tonight, wanted, rebuild(wanted)):
        load = each.loads_g[cap.key]
        points, buys = None, None
        if not stop.over:
            found = search(rebuild(_roomier(wanted, cap)), 1, stop.left, how)
            if found.plans:
                gain = points_of(found.plans[0].score - tonight.score)
                other = dinner_of(found.plans[0], False, tables)
                points, buys = gain / float(MORE_G), differences(tonight.dinner, other, -gain, with_foods=False)
            elif found.status == "none":
                points, buys = 0.0, ()
        if points != 0.0 or share >= NEAR:
            yield Bound(
                cap=cap.key, load_g=load, at_most_g=each.at_most_g[cap.key], room_g=room, more_g=float(MORE_G),
                points_per_g=None if points is None else round(points, 1), buys=buys,
            )  # fmt: skip


def _by_fullness(
    tonight: Found, wanted: DinnerRequest, problems: list[PatternProblem]
) -> list[tuple[Cap, float, float]]:
    """Limits that some lot counts under, with the g of room under each and the share of it that is taken."""
    counted = {row.cap.key for problem in problems for row in limit_rows(problem) if row.food is None}
    each, found = tonight.dinner.per_person, []
    for cap in wanted.limits.sitting_caps:
        if cap.key in counted:
            left = rooms(wanted.counted, cap)
            room = min(one.likely for one in left)
            most = min((one.at_most for one in left if one.at_most is not None), default=None)
            share = each.loads_g[cap.key] / max(in_grams(room), 0.001)
            if most is not None:
                share = max(share, each.at_most_g[cap.key] / max(in_grams(most), 0.001))
            found.append((cap, round(max(0.0, in_grams(room) - float(TO_GRAMS)), 4), share))
    return sorted(found, key=lambda one: -one[2])


def _roomier(wanted: DinnerRequest, cap: Cap) -> DinnerRequest:
    """The same request with a little more room under one limit, and under the same of one food."""

    def more(caps: tuple[Cap, ...]) -> tuple[Cap, ...]:
        return tuple(with_more(one, MORE_G) if one.group == cap.group else one for one in caps)

    limits = wanted.limits
    roomy = {"food_caps": more(limits.food_caps), "sitting_caps": more(limits.sitting_caps)}
    return wanted.model_copy(update={"profile": limits.model_copy(update=roomy)})

"""The same dinner or plan is searched once a process, and no clock ends it: dozens of tests ask for the demo larder's.

What is found does not hang on how busy the machine is: whoever gives a search a cook's usual time, seconds at least,
has as much as it takes. Less is given by tests of what happens without time.

Kept is only what was asked of the shipped tables and patterns, with the same lots, request and seconds, and came to
its end; `progress` hears the same plans again.
"""

from collections.abc import Callable, Sequence

from calmlarder.adapt import solve as adapt_solve
from calmlarder.compose import compose as module
from calmlarder.compose.compose import Asked, Composed
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import Found, Watch
from calmlarder.compose.solve import Plan
from calmlarder.compose.why import why as why_module
from calmlarder.household import helpful_answers
from calmlarder.patterns.load import shipped_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.plan_days import Asked as PlanAsked
from calmlarder.plan.plan_days import How as PlanHow
from calmlarder.plan.plan_days import plan_days
from calmlarder.plan.planned import Planned, PlanSoFar
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from read_once import SHIPPED, load_tables

ENOUGH_S, USUAL_S = 600.0, 5.0  # on a busy machine; the least of a cook who waits
# Of so many patterns one is planned with where it does not matter how good a plan is; of a few lots with each.
OF_SO_MANY, MANY_LOTS = 4, 10

Told = tuple[Found, tuple[Dinner, ...]]
Problems = Callable[[DinnerRequest], list[PatternProblem]]
_composed_anew, _in_time_anew = module._composed, module._in_time
_kept: dict[str, tuple[Composed, list[Plan]]] = {}
_planned: dict[str, tuple[Planned, list[PlanSoFar]]] = {}


def install() -> None:
    """What finds the dinners of every request asks here first."""
    module._composed = composed  # type: ignore[assignment]
    module._in_time = in_time
    why_module._Asking = Unhurried  # type: ignore[misc]
    for home, name in ((module, "_NEAREST_SECONDS"), (why_module, "_OBSTACLE_SECONDS"), (helpful_answers, "_SECONDS"),
                       (adapt_solve, "_MOST_SECONDS")):  # fmt: skip
        assert getattr(home, name) < ENOUGH_S
        setattr(home, name, ENOUGH_S)


def unhurried(wanted: DinnerRequest) -> DinnerRequest:
    """With as much time as it takes, where it was given a cook's."""
    return wanted.model_copy(update={"seconds": ENOUGH_S}) if wanted.seconds >= USUAL_S else wanted


def in_time(problems: Problems, wanted: DinnerRequest, tables: Tables, watch: Watch, late_share: float = 0.0) -> Told:
    """As the program's own."""
    return _in_time_anew(problems, unhurried(wanted), tables, watch, late_share)


class Unhurried(why_module._Asking):
    """What asks why, as the program's own."""

    def __init__(self, food: Food, asked: Asked) -> None:
        super().__init__(food, asked._replace(wanted=unhurried(asked.wanted)))


def composed(asked: Asked, otherwise: Callable[[], tuple[Dinner, ...]]) -> Composed:
    """As the program's own, which is called where nothing is kept."""
    if not _is_shipped(asked.patterns, asked.tables):
        return _composed_anew(asked, otherwise)
    asked = asked._replace(wanted=unhurried(asked.wanted))
    progress, stop, reached = asked.watch
    key = repr(([*asked.lots], asked.wanted, otherwise is tuple))
    if key not in _kept:
        plans: list[Plan] = []

        def heard(plan: Plan) -> None:
            plans.append(plan)
            if progress is not None:
                progress(plan)

        found = _composed_anew(asked._replace(watch=Watch(heard, stop, reached)), otherwise)
        if stop is not None and stop.asked:
            return found
        _kept[key] = found, plans
        return found
    found, plans = _kept[key]
    for plan in plans if progress is not None else ():
        progress(plan)
    return found


def first_plan(asked: PlanAsked, how: PlanHow) -> Planned:
    """The first plan, day after day, of some of the patterns, in place of the program's own."""
    first = PlanHow(600.0, how.progress, how.stop, how.pinned, rounds=0, bound=False, most_to_buy=0)
    is_shipped = _is_shipped(asked.patterns, asked.tables)
    if len(asked.lots) >= MANY_LOTS:
        asked = asked._replace(patterns=asked.patterns[2::OF_SO_MANY])
    if how.pinned or not is_shipped:
        return plan_days(asked, first)
    key = repr(([*asked.lots], [*asked.sittings], asked.wanted))
    if key not in _planned:
        heard: list[PlanSoFar] = []
        planned = plan_days(asked, first._replace(progress=heard.append))
        if how.stop is not None and how.stop.asked:
            return planned
        _planned[key] = planned, heard
    planned, heard = _planned[key]
    for one in heard if how.progress is not None else ():
        how.progress(one)
    return planned


def _is_shipped(patterns: Sequence[Pattern], tables: Tables) -> bool:
    return tables is load_tables([SHIPPED]) and tuple(patterns) == shipped_patterns()

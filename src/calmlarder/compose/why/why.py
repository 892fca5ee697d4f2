"""Why a food is in tonight's dinner or not: one answer that grows as more of it becomes known."""

import time
from collections.abc import Iterator

from calmlarder.compose.compose import Asked, best_dinners, pattern_problems
from calmlarder.compose.obstacles import obstacles
from calmlarder.compose.offer import offer
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import Progress, Watch
from calmlarder.compose.stop import Stop
from calmlarder.compose.why.alone import alone_over, part_that_fits
from calmlarder.compose.why.deciding import MOST, figures_in_doubt, try_figure
from calmlarder.compose.why.differences import differences, points_of
from calmlarder.compose.why.does import what_it_does
from calmlarder.compose.why.model import AloneOver, Found, Instead, Outcome, Why
from calmlarder.compose.why.place import no_place, options_of
from calmlarder.compose.why.reasons import reasons
from calmlarder.compose.why.resting import resting
from calmlarder.compose.why.room import bounds
from calmlarder.tables.rows import Food

_OBSTACLE_SECONDS = 3.0  # for what holds a food back; ours


def why(food: Food, asked: Asked) -> Iterator[Why]:
    """Ever fuller answers within `wanted.seconds`; the last one is `done`, unless the stop was asked for.

    They are of the dinner that is the `wanted.count`th of the evening, and of the last where there are fewer. What a
    limit or a figure holds back is looked at for the best one alone.
    """
    return _Asking(food, asked).answers()


class _Asking:
    def __init__(self, food: Food, asked: Asked) -> None:
        self._food, self._lots, self._patterns, self._tables = food, asked.lots, asked.patterns, asked.tables
        self._wanted, self._place = asked.wanted.model_copy(update={"count": 1}), asked.wanted.count
        self._progress = asked.watch.progress
        self._stop = Stop(time.monotonic() + asked.wanted.seconds, asked.watch.stop)

    def answers(self) -> Iterator[Why]:
        wanted = self._wanted
        tonight, _ = self._best(wanted.model_copy(update={"count": self._place}), self._progress)
        answer = self._begun(tonight)
        yield answer
        if tonight is None:
            left = max(0.5, self._stop.left)
            offered, _ = offer(self._lots, wanted, self._tables)
            yield answer.model_copy(
                update={"obstacles": obstacles(offered, wanted, self._problems, left), "done": True}
            )
            return
        if answer.outcome in {"used", "could"}:
            answer = answer.model_copy(update={"instead": self._instead(tonight, answer.outcome == "used")})
            if answer.outcome == "could" and answer.instead is not None and answer.instead.dinner is None:
                answer = answer.model_copy(update={"outcome": "breaks"})
            yield answer
        if self._place > 1:
            yield answer.model_copy(update={"done": not self._stop.asked})
            return
        for bound in bounds(tonight, wanted, self._problems, self._tables, self._stop):
            answer = answer.model_copy(update={"bounds": (*answer.bounds, bound)})
            yield answer
        yield from self._deciding(answer, tonight)

    def _begun(self, tonight: Found | None) -> Why:
        """All that needs no second search."""
        food, wanted, tables = self._food, self._wanted, self._tables
        dinner = tonight.dinner if tonight else None
        own = [lot for lot in self._lots if lot.food == food.id]
        offered, excluded = offer(own, wanted, tables)
        unsafe = bool(own) and all(lot.to_bin or lot.is_unsafe for lot in own)
        used = dinner is not None and any(use.food == food.id for use in dinner.uses)
        known = not tables.unknown_of(food.id)
        place = no_place(food, self._lots, wanted, self._patterns, tables) if offered and not used else None
        outcome: Outcome = (
            "used" if used else "absent" if not own else "excluded" if not offered else "no_dinner" if dinner is None
            else "breaks" if place else "could"
        )  # fmt: skip
        over: tuple[AloneOver, ...] = ()
        if known and not used and own and not unsafe:
            options = options_of(food.id, self._lots, wanted, self._patterns, tables)
            over = alone_over(food, wanted, tables, options)
        pattern = next((one for one in self._patterns if dinner and one.id == dinner.pattern), None)
        return Why(
            food=food,
            outcome=outcome,
            people=wanted.people,
            place=self._place,
            tonight=dinner,
            tonight_proven=bool(tonight and tonight.proven),
            does=what_it_does(food.id, dinner, wanted, pattern, tables) if dinner and pattern else (),
            excluded=tuple((one.line, one.why) for one in excluded),
            no_place=place,
            alone_over=over,
            part=part_that_fits(food, wanted, tables) if over or (own and not known and not unsafe) else None,
            is_unsafe=unsafe,
            resting=resting(dinner, tables) if dinner else None,
        )

    def _instead(self, tonight: Found, used: bool) -> Instead:
        """The best dinner without the food where it is used, with it where it is not."""
        food, wanted = self._food.id, self._wanted
        if used:
            others = tuple(one for one in wanted.use if one != food)
            changed = wanted.model_copy(update={"without": (*wanted.without, food), "use": others})
        else:
            changed = wanted.model_copy(update={"use": (*wanted.use, food)})
        other, none_sure = self._best(changed, None)
        if other is not None:
            points = points_of(tonight.score - other.score)
            against = reasons(tonight.plan, other.plan) if points > 0 else ()
            told = differences(tonight.dinner, other.dinner, points, but=self._food.name if used else "")
            sure = other.proven and tonight.proven
            return Instead(dinner=other.dinner, proven=sure, points=points, differences=told, against=against)
        offered, _ = offer(self._lots, changed, self._tables)
        left = min(_OBSTACLE_SECONDS, max(0.5, self._stop.left))
        holding = obstacles(offered, changed, self._problems, left, kept=(food,))
        return Instead(dinner=None, proven=none_sure, points=0.0, holds_back=holding)

    def _deciding(self, answer: Why, tonight: Found) -> Iterator[Why]:
        problems = self._problems(self._wanted)
        figures = figures_in_doubt(tonight, problems, self._wanted, self._tables)
        answer = answer.model_copy(update={"figures_all": len(figures)})
        for figure in figures[:MOST]:
            if self._stop.over:
                break
            found, whole = try_figure(figure, tonight, problems, self._tables, self._stop)
            tried = answer.figures_tried + whole
            best = answer.deciding
            if found is not None and (best is None or found.points > best.points):
                best = found
            answer = answer.model_copy(update={"figures_tried": tried, "deciding": best})
            yield answer
        yield answer.model_copy(update={"done": not self._stop.asked})

    def _best(self, wanted: DinnerRequest, progress: Progress | None) -> tuple[Found | None, bool]:
        """The best dinner; without one, whether it is certain that there is none."""
        timed = wanted.model_copy(update={"seconds": max(0.1, self._stop.left)})
        found, dinners = best_dinners(self._lots, timed, self._patterns, self._tables, Watch(progress, self._stop))
        if not dinners:
            return None, found.status == "none"
        last = len(dinners) - 1
        if last + 1 < wanted.count:
            self._place = last + 1
        return Found(dinners[last], found.plans[last], found.proven[last]), True

    def _problems(self, wanted: DinnerRequest) -> list[PatternProblem]:
        return pattern_problems(self._lots, wanted, self._patterns, self._tables)

"""Which one figure would change the dinner, were it measured as it stands or its food weighed to the gram."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Literal, NamedTuple

from calmlarder.compose.offer import Offered
from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import How, Watch, search
from calmlarder.compose.stop import Stop
from calmlarder.compose.telling import dinner_of
from calmlarder.compose.weights import POINT, WEIGHING
from calmlarder.compose.why.differences import WORTH_TELLING, differences, points_of
from calmlarder.compose.why.model import Deciding, Found
from calmlarder.compose.why.resting import COUNTED, MEASURED
from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.groups import food_figures
from calmlarder.intake.load import LoadProfile, load_under
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Component

MOST = 40  # figures looked at, the likeliest first; ours, to keep the answer short


class Figure(NamedTuple):
    """A food of which it would be known better how far off it may be."""

    food: str
    how: Literal["measured", "weighed"]
    components: tuple[Component, ...]
    better: LoadProfile
    matters: float

    @property
    def price(self) -> int:
        """What putting it on the scale costs the cook, in ten-thousandths of a point."""
        return WEIGHING * POINT if self.how == "weighed" else 0


def figures_in_doubt(
    tonight: Found, problems: Sequence[PatternProblem], wanted: DinnerRequest, tables: Tables
) -> list[Figure]:
    """Those in doubt, by how much of a limit the doubt of one portion takes: the greatest first.

    What tonight is weighed anyway is in no doubt as to its amount.
    """
    on_scale = {use.food for use in tonight.dinner.uses if use.how == "weigh"}
    things = {option.offered.food.id: option.offered for problem in problems for option in problem.options}
    found = [figure for thing in things.values() for figure in _of(thing, wanted, tables)]
    found = [one for one in found if one.matters > 0 and not (one.how == "weighed" and one.food in on_scale)]
    return sorted(found, key=lambda one: (-one.matters, one.food, one.how))


def try_figure(
    figure: Figure, tonight: Found, problems: Sequence[PatternProblem], tables: Tables, stop: Stop
) -> tuple[Deciding | None, bool]:
    """What would change, if anything, and whether the search came to its end."""
    # Dishes that cannot take the food stay as they were, and none of those beats tonight's.
    changed = [_changed(one, figure) for one in problems if any(o.offered.food.id == figure.food for o in one.options)]
    if stop.over:
        return None, False
    how = How(above=tonight.score + figure.price + WORTH_TELLING, watch=Watch(stop=stop))
    found = search(changed, 1, stop.left, how)
    if not found.plans:
        return None, found.status == "none"
    gain = points_of(found.plans[0].score - tonight.score - figure.price)
    other = dinner_of(found.plans[0], False, tables)
    deciding = Deciding(
        food=figure.food,
        name=tables.food_by_id[figure.food].name,
        how=figure.how,
        components=figure.components,
        points=gain,
        differences=differences(tonight.dinner, other, -gain, with_foods=False),
    )
    return deciding, found.status == "proven"


def _of(thing: Offered, wanted: DinnerRequest, tables: Tables) -> Iterator[Figure]:
    if thing.food.id in tables.mixtures:  # what is in a box was weighed, or not, when it was cooked
        return
    rows = tables.fermentables_of(thing.food.id)
    doubted = tuple(
        component
        for component, row in rows.items()
        if (row.basis not in MEASURED or row.high is not None) and (row.error_g or component not in COUNTED)
    )
    if doubted and len(thing.brings.parts) == 1:  # of a mixture it is its parts that are measured or not
        measured = {
            component: row.model_copy(update={"basis": "analysed", "high": None}) if component in doubted else row
            for component, row in rows.items()
        }
        part = thing.brings.parts[0]._replace(figures=food_figures(measured))
        yield _figure(thing, "measured", doubted, LoadProfile((part,)), wanted)
    if thing.brings.anything:  # as if the amount were known: settled, as that of a box
        yield _figure(thing, "weighed", (), replace(thing.brings, settled=True), wanted)


def _figure(
    thing: Offered,
    how: Literal["measured", "weighed"],
    components: tuple[Component, ...],
    better: LoadProfile,
    wanted: DinnerRequest,
) -> Figure:
    portion, sure = float(thing.food.portion_g), wanted.tolerance
    matters = 0.0
    for cap in wanted.limits.sitting_caps:
        was, now = (load_under(one, cap, sure) for one in (thing.brings, better))
        less = float(was.by_eye - now.by_eye) * portion / PER_MG / 1000
        matters = max(matters, less / float(cap.at_most_g or cap.typical_g))
    return Figure(thing.food.id, how, components, better, matters)


def _changed(problem: PatternProblem, figure: Figure) -> PatternProblem:
    return problem.with_options(
        option._replace(offered=option.offered._replace(brings=figure.better))
        if option.offered.food.id == figure.food
        else option
        for option in problem.options
    )

"""Why a food is in the dinner or not, as text and as JSON."""

import textwrap
from collections.abc import Iterable, Iterator
from typing import Any

from calmlarder.and_list import and_list
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import MAIN_RESCUE, rescue_points
from calmlarder.compose.why.model import AloneOver, Bound, Difference, Does, Instead, Why
from calmlarder.intake.cap_words import CAP_WORDS, component_words, in_words
from calmlarder.intake.limit import MOST_GRAMS
from calmlarder.render.basis_words import in_plain_words
from calmlarder.render.dinner_json import dinner_object
from calmlarder.render.style import Style

_SUMS = frozenset({"polyols", "total"})  # of other caps: told only where no other is passed
_SHARE_TOLD = 0.005

# One portion of what is on its last day: compose/weights.py.
_SCALE = f"a portion on its last day is worth {rescue_points(0, True)}, of a protein food {MAIN_RESCUE} times that"


def why_object(why: Why, wanted: DinnerRequest) -> dict[str, Any]:
    """The answer of `why --json`; dinners as in `tonight --json`."""
    instead = why.instead
    told = why.model_dump(
        mode="json",
        include={
            "does", "no_place", "alone_over", "part", "bounds", "resting", "deciding", "figures_tried", "figures_all",
            "obstacles", "done",
        },
    )  # fmt: skip
    return {
        "food": why.food.id,
        "outcome": why.outcome,
        "today": wanted.today.isoformat(),
        "profile": wanted.profile.name,
        "people": why.people,
        "tonight": dinner_object(why.tonight) if why.tonight else None,
        "excluded": [{"line": line, "why": reason} for line, reason in why.excluded],
        "instead": None
        if instead is None
        else {
            **instead.model_dump(mode="json", exclude={"dinner"}),
            "dinner": dinner_object(instead.dinner) if instead.dinner else None,
        },
        **told,
    }


def why_text(why: Why, wanted: DinnerRequest, style: Style, in_points: bool = True) -> str:
    """The whole answer as far as it is known; without `in_points` the search's own measure is left out."""
    instead, bounds = _instead(why, style, in_points), _bounds(why, style, in_points)
    parts = [_about(why, style), instead, bounds, _resting(why, style)]
    return "\n\n".join("\n".join(part) for part in map(list, parts) if part) + "\n"


def _about(why: Why, style: Style) -> Iterator[str]:
    name = why.food.name
    if why.tonight is None:
        yield style.strong("No dinner meets the limits tonight")
    else:
        yield from (style.strong(line) for line in textwrap.wrap(_heading(why), style.width))
    for one in why.does:
        yield from style.hanging(_does(one, why.people))
    if why.outcome == "absent":
        yield from style.hanging(f"The larder holds no {name}.")
    for line, reason in why.excluded:
        yield from style.hanging(f"{line}: {reason}.")
    if why.no_place:
        yield from style.hanging(f"{why.no_place[0].upper()}{why.no_place[1:]}.")
    for over in [one for one in why.alone_over if one.cap not in _SUMS] or why.alone_over:
        yield from style.hanging(_alone(over, name))
    if why.part:
        most = f"no limit binds below {MOST_GRAMS} g" if why.part.grams_weighed is None else (
            f"{why.part.grams_weighed} g on the scale would fit one person at one meal")  # fmt: skip
        yield from style.hanging(f"Of the same thing, {why.part.name}: {most}.")
    for obstacle in why.obstacles:
        yield from style.hanging(f"Problem: {in_words(obstacle)}.")


def _heading(why: Why) -> str:
    tonight = why.tonight.title if why.tonight else ""
    place = "in" if why.outcome == "used" else "not in"
    which = "tonight's dinner" if why.place == 1 else f"dinner {why.place} of tonight"
    return f"{why.food.name.capitalize()}: {place} {which}, {tonight}"


def _does(one: Does, people: int) -> str:
    told = [f"{one.grams} g as its {one.role}"]
    if one.rescued_portions:
        days = "on its last day" if one.days_left == 0 else f"{one.days_left} day{'s' * (one.days_left != 1)} left"
        days = "past its best" if one.days_left is not None and one.days_left < 0 else days
        told.append(f"{days}{', and all of it is used up' * one.finished}")
    brings = [f"{grams:.2f} g {CAP_WORDS.get(key, key)}" for key, grams in one.loads_g.items() if grams >= _SHARE_TOLD]
    told.append(
        f"brings {', '.join([f'{one.protein_g:g} g protein', *brings])} {'' if people == 1 else 'each'}".strip()
    )
    share = max(one.cap_share.items(), key=lambda pair: pair[1], default=None)
    if share and share[1] >= 0.01:
        told.append(f"takes {round(share[1] * 100)} % of the limit on {CAP_WORDS.get(share[0], share[0])}")
    return f"{one.line}: {'; '.join(told)}."


def _alone(over: AloneOver, name: str) -> str:
    fits = f"{over.fits_weighed_g} g of it would fit on the scale, {over.fits_eye_g} g by eye"
    if over.fits_weighed_g == 0:
        fits = "none of it would fit"
    elif over.least_in_dish_g is not None and over.fits_weighed_g < over.least_in_dish_g:
        fits += f"; a dish wants {over.least_in_dish_g} g at the least"
    before = "" if over.room_g >= over.cap_g else f" ({over.room_g:.2f} left after what was eaten before)"
    words = CAP_WORDS.get(over.cap, over.cap)
    return f"{over.grams} g of {name} alone bring {over.load_g:.2f} g of {words}, of {over.cap_g:.2f}{before}; {fits}."


def _instead(why: Why, style: Style, in_points: bool) -> Iterator[str]:
    one = why.instead
    if one is None:
        return
    used = why.outcome == "used"
    word = "without" if used else "with"
    if one.dinner is None:
        yield style.strong(
            f"{word.capitalize()} it no dinner meets the limits{'' if one.proven else ', as far as seen'}"
        )
        if len(one.holds_back) == 1:
            yield from style.hanging(f"What holds it back: {in_words(one.holds_back[0])}.")
        elif one.holds_back:
            all_of_them = "; ".join(map(in_words, one.holds_back))
            yield from style.hanging(f"What holds it back, each of these beside the others: {all_of_them}.")
        return
    yield from (style.strong(line) for line in textwrap.wrap(_instead_heading(one, one.dinner, used), style.width))
    for difference in one.differences:
        if "points" in difference.sentence and not in_points:
            continue
        yield from style.hanging(f"{difference.sentence[0].upper()}{difference.sentence[1:]}.")
    yield from (line for said in _against(one, in_points) for line in style.hanging(said))


def _against(one: Instead, in_points: bool) -> Iterator[str]:
    """Whether it is worse, by how much, and why."""
    if round(one.points) <= 0:
        yield "As good." if one.points > -1 else "It is the better dinner; this one is another to choose from."
        return
    named = [f"{why.words}{f' ({why.points:.0f} points)' if in_points else ''}" for why in one.against]
    if named:
        yield f"What counts against it: {'; '.join(named)}."
    else:
        yield "It is a little worse in many small things."
    if in_points:
        yield f"In all {one.points:.0f} points worse ({_SCALE})."


def _instead_heading(one: Instead, dinner: Dinner, used: bool) -> str:
    sure = "" if one.proven else " (best found in the time)"
    return f"{'The next best without it' if used else 'With it'}: {dinner.title}{sure}"


def _bounds(why: Why, style: Style, in_points: bool) -> Iterator[str]:
    if why.place > 1:
        return
    if not why.bounds:
        if why.done and why.tonight:
            yield "No limit is nearly full tonight; more room in any would change nothing."
        return
    # Not a reason for or against the food: those stand above.
    yield style.strong("For the whole of tonight's dinner: the limits it comes near to")
    for bound in why.bounds:
        yield from style.hanging(_bound(bound, in_points))


def _bound(bound: Bound, in_points: bool) -> str:
    words = CAP_WORDS.get(bound.cap, bound.cap)
    start = f"{words}: {bound.load_g:.2f} of {bound.room_g:.2f} g"
    if bound.buys is None:
        return f"{start}; whether more room would change it was not searched to the end."
    if bound.points_per_g is None or not bound.points_per_g:
        if bound.room_g <= 0:
            return f"{words}: no room is left after what was eaten before; the dinner brings next to none, so it stays."
        return f"{start}; with more room it would be the same dinner."
    points = f": {bound.points_per_g * bound.more_g:.0f} points ({_SCALE})" if in_points else ""
    return (
        f"{start}; with {bound.more_g:.2f} g more room the dinner would be another: {_bought(bound.buys)}{points}. "
        "That is told for comparison only: the limit stays."
    )


_LESS_IS_BETTER = frozenset({"weighings", "minutes"})


def _bought(found: tuple[Difference, ...]) -> str:
    """What more room would give, and what it would cost beside."""
    gains = [one.sentence for one in found if (one.other < one.tonight) == (one.what in _LESS_IS_BETTER)]
    costs = [one.sentence for one in found if one.sentence not in gains]
    told = "; ".join(gains) or "amounts nearer to the usual"
    return f"{told}, though with {'; '.join(costs)}" if costs else told


def _plain(found: tuple[Difference, ...]) -> list[str]:
    return [one.sentence for one in found] or ["amounts nearer to the usual"]


def _figures(why: Why, style: Style) -> Iterator[str]:
    """The foods whose figures are not measured in them, and the ranges that "at most" counts."""
    parts = why.tonight.contributions if why.tonight else ()
    unmeasured = [f"{part.name} ({_alike(part.not_measured)})" for part in parts if part.not_measured]
    ranges = [f"{part.name} ({_alike(part.upper_ends)})" for part in parts if part.upper_ends]
    share = why.resting.not_measured_share if why.resting else 0.0
    counts = "" if round(share * 100) else ", which bring next to nothing here"
    for said, told in (
        (f"Figures not measured in that food{counts}, zeros among them", unmeasured),
        ("At most counts the upper end of a range, g in 100 g", ranges),
    ):
        if told:
            yield from style.hanging(f"{said}: {in_plain_words('; '.join(told))}.")


def _alike(figures: Iterable[str]) -> str:
    """`sorbitol recalled` and `mannitol recalled` as `sorbitol and mannitol recalled`."""
    components: dict[str, list[str]] = {}
    for figure in figures:
        component, _, rest = figure.partition(" ")
        components.setdefault(rest, []).append("GOS" if component == "gos" else component)
    return "; ".join(f"{and_list(names)} {rest}" for rest, names in components.items())


def _resting(why: Why, style: Style) -> Iterator[str]:
    if why.resting is None:
        return
    yield style.strong("What the answer rests on")
    share, recalled = round(why.resting.not_measured_share * 100), round(why.resting.recalled_share * 100)
    if not share:
        yield from style.hanging("All of the likely loads of this dinner were measured in those very foods.")
    else:
        yield from style.hanging(
            f"{share} % of what counts in this dinner is not measured in that very food; {recalled} % is "
            "from memory, not verified.")  # fmt: skip
    yield from _figures(why, style)
    if why.deciding:
        one = why.deciding
        if one.how == "measured":
            doubt = f"If the {component_words(one.components)} of {one.name} were measured and came out as they stand"
        else:
            doubt = f"If {one.name} were weighed to the gram"
        yield from style.hanging(f"{doubt}, the dinner would change: {'; '.join(_plain(one.differences))}.")
    elif why.figures_tried:
        yield from style.hanging("No one figure of those looked at would change the dinner.")
    if why.figures_tried < why.figures_all:
        yield from style.hanging(
            f"Of {why.figures_all} figures that may be off {why.figures_tried} were tried, those likeliest to matter "
            "first; the search was ended before the others.")  # fmt: skip

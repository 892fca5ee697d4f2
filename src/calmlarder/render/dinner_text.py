"""A dinner as text for a terminal or a pipe: amounts, steps, timeline, what it brings each person."""

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.compose.own_oil import OWN_OIL
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.kitchen.filling import IN_SHELLS
from calmlarder.larder.with_bones import WITH_BONES
from calmlarder.render.caution import CAUTION as CAUTION
from calmlarder.render.nourishment import energy_words, minutes_words, protein_words, short_of_filling, short_of_protein
from calmlarder.render.of_limit import as_held, of_limit, of_limits
from calmlarder.render.portions_text import dose_words, portion_lines, weighed_parts
from calmlarder.render.stacked import filled_words, held_g
from calmlarder.render.style import BESIDE_LIMITS, Style, bar
from calmlarder.render.thaw_text import thaw_first, told_later
from calmlarder.render.wrapped import wrapped

if TYPE_CHECKING:
    pass

_BAR_WIDTH = 16
_PERCENT_WIDTH = 6
_MOST_NAMED = 3  # foods that rest on memory; the rest stands with the figures


def figures_text(dinner: Dinner, wanted: DinnerRequest, style: Style) -> str:
    """What a dinner brings each person against the caps, and what it rescues."""
    return "\n".join([*load_lines(dinner, wanted, style), "", *rescued_lines(dinner, style)])


def dinner_lines(dinner: Dinner, wanted: DinnerRequest, style: Style, number: int | None) -> Iterator[str]:
    """A dinner whole, with its place where there are several."""
    heading = f"{number}. {dinner.title}" if number else dinner.title
    yield style.strong(heading)
    yield _about(dinner)
    for dose in dinner.doses:
        yield from style.wrapped(dose_words(dose))
    yield from style.wrapped(short_of_protein(dinner))
    yield from style.wrapped(short_of_filling(dinner))
    yield from style.wrapped(filled_words(wanted))
    yield from style.wrapped(glance(dinner, held_g(wanted)))
    yield ""
    yield from _amounts(dinner, style)
    yield ""
    if not dinner.weigh_first and not weighed_parts(dinner):
        yield style.strong("Weigh nothing: by eye will do")
        yield ""
    yield style.strong("Steps")
    yield from style.hanging(thaw_first(dinner))
    for place, step in enumerate(dinner.steps, start=1):
        yield from wrapped(step, style.width, f"  {place}. ", "     ")
    yield ""
    yield from _timeline(dinner, style)
    yield from portion_lines(dinner, style)
    for caution in told_later(dinner):
        yield from style.hanging(caution)


def glance(dinner: Dinner, before: Mapping[str, float]) -> str:
    """How full the fullest limit is, and what rests on memory: what a cook reads in passing.

    `before` is what still counts of what was eaten before, g by limit.
    """
    each = dinner.per_person
    if not each.limits_g:
        return ""

    def full(key: str) -> float:
        typical, most = each.limits_g[key]
        held = before.get(key, 0.0)
        return max((each.loads_g[key] + held) / typical, 0.0 if most is None else (each.at_most_g[key] + held) / most)

    key = max(each.limits_g, key=full)
    typical, most = each.limits_g[key]
    held = before.get(key, 0.0)
    at_most = each.at_most_g[key] + held
    earlier = f", {held:.2f} g of it from before" if held else ""
    said = (
        f"Fullest: {CAP_WORDS.get(key, key)}, likely {of_limit(each.loads_g[key] + held, typical)} g, "
        f"at most {f'{at_most:.2f}' if most is None else of_limit(at_most, most)} g{earlier}."
    )
    return f"{said} {from_memory(dinner)}".rstrip()


def from_memory(dinner: Dinner) -> str:
    """What rests on recalled figures; empty where nothing does."""
    named = [part.name for part in dinner.contributions if any("recalled" in one for one in part.not_measured)]
    recalled = list(dict.fromkeys(named))
    if not recalled:
        return ""
    more = f" and {len(recalled) - _MOST_NAMED} more" if len(recalled) > _MOST_NAMED else ""
    return f"From memory, not verified: {', '.join(recalled[:_MOST_NAMED])}{more}."


def _about(dinner: Dinner) -> str:
    people = "1 person" if dinner.people == 1 else f"{dinner.people} people"
    each = " each" if dinner.people > 1 else ""
    return f"{people} · {minutes_words(dinner)} · {protein_words(dinner)}, {energy_words(dinner)}{each}"


def _amounts(dinner: Dinner, style: Style) -> Iterator[str]:
    yield style.strong("Amounts for the whole dish")
    width = max(len(use.name) for use in dinner.uses)
    for use in dinner.uses:
        start = f"  {use.grams:>5} g  {use.name:<{width}}  "
        yield from wrapped(start + _how(use, style), style.width, rest=" " * len(start))
    own = [one.removeprefix(OWN_OIL) for one in dinner.cautions if one.startswith(f"{OWN_OIL}your ")]
    whose = own[0].removesuffix(".") if own else "taken for granted"
    for thing in dinner.taken_for_granted:
        yield f"{'':10}{thing:<{width}}  {whose}"


def _how(use: PlateUse, style: Style) -> str:
    how = {
        "weigh": "weigh",
        "eye": use.household or "by eye",
        "staple": use.household or "by eye",
        "box": "from its box",
    }[use.how]
    if use.whole and use.how != "box":
        how = f"all of it, {how}" if how.endswith(IN_SHELLS) else "all of it"
    weighed = use.how == "weigh"
    how = f"{how}, without its bones" if weighed and use.food in WITH_BONES else how
    how = ", ".join(filter(None, (how, style.manner.beside(use.grams))))
    how = f"{how}, {use.look}" if use.look else how
    if use.days_left is None or use.days_left < 0:
        return how
    if use.days_left == 0:
        return f"{how}, last day"
    return f"{how}, {use.days_left} day{'s' * (use.days_left != 1)} left"


def _timeline(dinner: Dinner, style: Style) -> Iterator[str]:
    sure = "" if dinner.timeline.proven else ", perhaps not the shortest"
    yield style.strong(f"One cook, {dinner.minutes} minutes{sure}")
    for moment in dinner.timeline.moments:
        alone = "" if moment.hands_on or not moment.minutes else f", {moment.minutes} min by itself"
        told = f"{moment.start_min // 60}:{moment.start_min % 60:02d}  {moment.what}{alone}"
        yield from wrapped(told, style.width, "  ", "        ")


def load_lines(dinner: Dinner, wanted: DinnerRequest, style: Style) -> Iterator[str]:
    """What it brings each person beside the limits."""
    each = dinner.per_person
    before = held_g(wanted)
    if each.limits_g:
        yield style.strong(f"{BESIDE_LIMITS}{', from before' * bool(before)}")
    width = max((len(CAP_WORDS.get(key, key)) for key in each.limits_g), default=0)
    for key, (typical, most) in each.limits_g.items():
        held = before.get(key, 0.0)
        likely, at_most = each.loads_g[key] + held, each.at_most_g[key] + held
        earlier = f" {held:5.2f}" if before else ""
        line = f"  {CAP_WORDS.get(key, key):<{width}} {of_limits(likely, at_most, typical, most)}{earlier}"
        full = max(as_held(likely, typical) / typical, 0.0 if most is None else as_held(at_most, most) / most)
        level = f"{bar(full, _BAR_WIDTH, style)}{' over' * (full > 1)}"
        if len(line) + 1 + _BAR_WIDTH + _PERCENT_WIDTH <= style.width:
            yield f"{line} {level}"
        else:
            yield from (line, f"    {level}")
    if each.foods_near:
        names = {part.food: part.name for part in dinner.contributions}
        near = [f"{names.get(one.food, one.food)} ({of_limit(one.g, one.limit_g)} g)" for one in each.foods_near]
        yield from style.hanging(f"Near the limit for one food: {', '.join(near)}.")
    for figure, foods in (("Protein", dinner.unknown_nutrients), ("Energy", dinner.unknown_energy)):
        if foods:
            yield from style.hanging(f"{figure} not known, so at least what is told: {', '.join(foods)}.")


def rescued_lines(dinner: Dinner, style: Style) -> Iterator[str]:
    """What is used in time, and what is used up."""
    rescued = dinner.rescued
    if not rescued.grams:
        yield style.strong("Nothing urgent was used")
        return
    yield style.strong(style.manner.told(f"Used up in time: {rescued.grams} g"))
    if rescued.lots_finished:
        yield from style.hanging(f"Nothing left of: {'; '.join(rescued.lots_finished)}.")

"""A dinner as text for a terminal or a pipe."""

import textwrap
from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.compose.relaxations import Nearest
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.cap_words import CAP_WORDS, in_words
from calmlarder.render.caution import CAUTION as CAUTION
from calmlarder.render.nourishment import energy_words, protein_words, short_of_filling, short_of_protein
from calmlarder.render.of_limit import as_held, of_limit, of_limits
from calmlarder.render.portions_text import dose_words, portion_lines, weighed_parts
from calmlarder.render.stacked import day_lines, filled_words, held_g, stacked_lines
from calmlarder.render.style import BESIDE_LIMITS, Style, bar
from calmlarder.render.thaw_text import thaw_first

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.larder.reading import Reading

_BAR_WIDTH = 16
_PERCENT_WIDTH = 6
_MOST_NAMED = 3  # foods that rest on memory; the rest stands with the figures
EAT_ALL_THE_SAME = (
    "Please eat all the same: limits are no reason to skip a meal. Plain rice, potatoes or carrots fit the limits of "
    "elimination, with or without something beside them. If it is often so, tell your dietitian."
)
_NOTHING_NEAR = (
    "Nothing is near: neither less protein, more minutes, smaller amounts, fewer people nor one or two things of a "
    "short list to buy make a dinner of this larder. A plain one from any shop: rice or potatoes, firm tofu (or eggs, "
    "where they are eaten), carrots or spinach, and olive oil."
)


def tonight_text(
    composed: "Composed",
    wanted: DinnerRequest,
    readings: "tuple[Reading, ...]",
    style: Style,
    with_figures: bool = True,
) -> str:
    """The whole answer of a run, with or without the loads of each dinner."""
    composed = _as_read(composed, style)
    parts: list[str] = []
    for number, dinner in enumerate(composed.dinners, start=1):
        parts.append("\n".join(_dinner(dinner, wanted, style, number if len(composed.dinners) > 1 else None)))
        if with_figures:
            parts.append(figures_text(dinner, wanted, style))
    if not composed.dinners:
        parts.append("\n".join(_nothing(composed, style)))
        if composed.nearest:
            parts.append("\n".join(_nearest(composed.nearest, wanted, style)))
    parts.append("\n".join(_stacked(composed, wanted, style)))
    parts.append("\n".join(_left_out(composed, readings, style)))
    parts.append("\n".join(_assumed(readings, style)))
    parts.append("\n".join(_wrapped(CAUTION, style)))
    if composed.dinners:
        parts.append(_closing(composed))
    return "\n\n".join(part for part in parts if part) + "\n"


def _as_read(composed: "Composed", style: Style) -> "Composed":
    """The dinners in the measures and words of this home."""
    if style.manner.is_plain:
        return composed
    nearest = composed.nearest
    if nearest is not None:
        nearest = nearest.model_copy(update={"dinner": style.manner.dinner(nearest.dinner)})
    dinners = tuple(map(style.manner.dinner, composed.dinners))
    return composed.model_copy(update={"dinners": dinners, "nearest": nearest})


def figures_text(dinner: Dinner, wanted: DinnerRequest, style: Style) -> str:
    """What a dinner brings each person against the caps, and what it rescues."""
    return "\n".join([*_loads(dinner, wanted, style), "", *_rescued(dinner, style)])


def notes_text(dinner: Dinner, composed: "Composed", wanted: DinnerRequest, style: Style) -> str:
    """What a cook need not read first: cautions, what was eaten before, what was left out, what rests on memory."""
    cautions = [line for caution in dinner.cautions for line in _wrapped(caution, style)]
    parts = [
        "\n".join(_wrapped(short_of_protein(dinner), style)),
        "\n".join(_wrapped(short_of_filling(dinner), style)),
        "\n".join(cautions),
        "\n".join(_stacked(composed, wanted, style)),
        "\n".join(_wrapped(_from_memory(dinner), style)),
        "\n".join(_left_out(composed, (), style)),
        "\n".join(_wrapped(CAUTION, style)),
    ]
    return "\n\n".join(part for part in parts if part)


def planned_notes_text(dinner: Dinner, style: Style) -> str:
    """The same of a dinner that is planned, and what of the larder it uses up in time."""
    parts = [
        "\n".join(_wrapped(short_of_protein(dinner), style)),
        "\n".join(_wrapped(short_of_filling(dinner), style)),
        "\n".join(line for caution in dinner.cautions for line in _wrapped(caution, style)),
        "\n".join(_rescued(dinner, style)),
        "\n".join(_wrapped(_from_memory(dinner), style)),
        "\n".join(_wrapped(CAUTION, style)),
    ]
    return "\n\n".join(part for part in parts if part)


def _closing(composed: "Composed") -> str:
    if composed.status == "proven":
        return f"Best possible from this larder, found in {composed.seconds:.2f} s."
    return f"The best found in {composed.seconds:.2f} s; with more --seconds there may be a better one."


def _dinner(dinner: Dinner, wanted: DinnerRequest, style: Style, number: int | None) -> Iterator[str]:
    heading = f"{number}. {dinner.title}" if number else dinner.title
    yield style.strong(heading)
    yield _about(dinner)
    for dose in dinner.doses:
        yield from _wrapped(dose_words(dose), style)
    yield from _wrapped(short_of_protein(dinner), style)
    yield from _wrapped(short_of_filling(dinner), style)
    yield from _wrapped(filled_words(wanted), style)
    yield from _wrapped(glance(dinner, held_g(wanted)), style)
    yield ""
    yield from _amounts(dinner, style)
    yield ""
    if not dinner.weigh_first and not weighed_parts(dinner):
        yield style.strong("Weigh nothing: by eye will do")
        yield ""
    yield style.strong("Steps")
    yield from _wrapped(thaw_first(dinner), style, "  ")
    for place, step in enumerate(dinner.steps, start=1):
        yield from textwrap.wrap(step, style.width, initial_indent=f"  {place}. ", subsequent_indent="     ")
    yield ""
    yield from _timeline(dinner, style)
    yield from portion_lines(dinner, style)
    for caution in dinner.cautions:
        yield from _wrapped(caution, style, "  ")


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
    return f"{said} {_from_memory(dinner)}".rstrip()


def _from_memory(dinner: Dinner) -> str:
    named = [part.name for part in dinner.contributions if any("recalled" in one for one in part.not_measured)]
    recalled = list(dict.fromkeys(named))
    if not recalled:
        return ""
    more = f" and {len(recalled) - _MOST_NAMED} more" if len(recalled) > _MOST_NAMED else ""
    return f"From memory, not verified: {', '.join(recalled[:_MOST_NAMED])}{more}."


def _about(dinner: Dinner) -> str:
    people = "1 person" if dinner.people == 1 else f"{dinner.people} people"
    each = " each" if dinner.people > 1 else ""
    return f"{people} · {dinner.minutes} minutes · {protein_words(dinner)}, {energy_words(dinner)}{each}"


def _amounts(dinner: Dinner, style: Style) -> Iterator[str]:
    yield style.strong("Amounts for the whole dish")
    width = max(len(use.name) for use in dinner.uses)
    for use in dinner.uses:
        start = f"  {use.grams:>5} g  {use.name:<{width}}  "
        yield from textwrap.wrap(start + _how(use, style), style.width, subsequent_indent=" " * len(start))
    for thing in dinner.taken_for_granted:
        yield f"{'':10}{thing:<{width}}  taken for granted"


def _nearest(nearest: Nearest, wanted: DinnerRequest, style: Style) -> Iterator[str]:
    """The nearest dinner whole: what has to give, amounts, steps and timeline, loads."""
    dinner = nearest.dinner
    has_to = " and ".join(give.sentence for give in nearest.gives)
    yield from _wrapped(f"Nearest: {dinner.title}, if you {has_to}.", style)
    sure = "Proven the nearest" if nearest.proven else "Not proven the nearest"
    yield from _wrapped(f"{sure}, as protein, minutes, amounts, people and what to buy are priced.", style)
    yield ""
    yield from _dinner(dinner, wanted, style, None)
    yield ""
    yield from _loads(dinner, wanted, style)


def _how(use: PlateUse, style: Style) -> str:
    how = {
        "weigh": "weigh",
        "eye": use.household or "by eye",
        "staple": use.household or "by eye",
        "box": "from its box",
    }[use.how]
    if use.whole and use.how != "box":
        how = "all of it"
    how = ", ".join(filter(None, (how, style.manner.beside(use.grams))))
    if use.days_left is None:
        return how
    if use.days_left <= 0:
        return f"{how}, {'last day' if use.days_left == 0 else 'past its best'}"
    return f"{how}, {use.days_left} day{'s' * (use.days_left != 1)} left"


def _timeline(dinner: Dinner, style: Style) -> Iterator[str]:
    sure = "" if dinner.timeline.proven else ", perhaps not the shortest"
    yield style.strong(f"One cook, {dinner.minutes} minutes{sure}")
    for moment in dinner.timeline.moments:
        alone = "" if moment.hands_on or not moment.minutes else f", {moment.minutes} min by itself"
        yield from textwrap.wrap(
            f"{moment.start_min // 60}:{moment.start_min % 60:02d}  {moment.what}{alone}",
            style.width,
            initial_indent="  ",
            subsequent_indent="        ",
        )


def _loads(dinner: Dinner, wanted: DinnerRequest, style: Style) -> Iterator[str]:
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
        yield from _wrapped(f"Near the limit for one food: {', '.join(near)}.", style, "  ")
    for figure, foods in (("Protein", dinner.unknown_nutrients), ("Energy", dinner.unknown_energy)):
        if foods:
            yield from _wrapped(f"{figure} not known, so at least what is told: {', '.join(foods)}.", style, "  ")


def _rescued(dinner: Dinner, style: Style) -> Iterator[str]:
    rescued = dinner.rescued
    if not rescued.grams:
        yield style.strong("Nothing urgent was used")
        return
    yield style.strong(f"Used up in time: {rescued.grams} g")
    if rescued.lots_finished:
        yield from _wrapped(f"Used up: {'; '.join(rescued.lots_finished)}.", style, "  ")


def _nothing(composed: "Composed", style: Style) -> Iterator[str]:
    if composed.nearest and all(give.what == "amount" for give in composed.nearest.gives):
        yield style.strong("A dinner within the limits, with a little less in it than its recipe asks for")
        return
    yield style.strong("No dinner meets the limits")
    for obstacle in composed.obstacles:
        yield from _wrapped(f"Problem: {in_words(obstacle)}.", style, "  ")
    if composed.nothing_near:
        yield from _wrapped(_NOTHING_NEAR, style, "  ")
    if composed.nearest is None or not composed.nearest.is_there:
        yield from _wrapped(EAT_ALL_THE_SAME, style)


def _stacked(composed: "Composed", wanted: DinnerRequest, style: Style) -> Iterator[str]:
    lines = stacked_lines(composed, wanted)
    if lines and wanted.stacking is not None:
        longest = wanted.stacking.longest_hours
        yield style.strong(f"Still counted at {wanted.stacking.at:%H:%M}, eaten less than {longest:g} hours before")
    for line in lines:
        yield from _wrapped(line, style, "  ")
    for line in day_lines(composed, wanted):
        yield from _wrapped(line, style)


def _assumed(readings: "tuple[Reading, ...]", style: Style) -> Iterator[str]:
    """What was taken for granted in the lines of the larder, so that the cook may say otherwise."""
    taken = [f"{reading.text} ({', '.join(_once(reading.assumed))})" for reading in readings if reading.assumed]
    if taken:
        yield style.strong("Assumed of your lines")
        yield from _wrapped(f"{'; '.join(taken)}. Write it into the line where it is another.", style, "  ")


def _once(assumed: tuple[str, ...]) -> list[str]:
    """`whole: greens and whites` and `whole: whites and greens` are told once."""
    return list({frozenset(words.split()): words for words in reversed(assumed)}.values())[::-1]


def _left_out(composed: "Composed", readings: "tuple[Reading, ...]", style: Style) -> Iterator[str]:
    asked = [reading for reading in readings if reading.match.outcome == "ask"]
    unknown = [reading for reading in readings if reading.match.outcome == "unknown" and reading.problem is None]
    faulty = [(reading.text, reading.problem) for reading in readings if reading.problem is not None]
    if not (composed.excluded or asked or unknown or faulty):
        return
    yield style.strong("Left out")
    for excluded in composed.excluded:
        yield from _wrapped(f"{excluded.line}: {excluded.why}.", style, "  ")
    for reading in asked:
        names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates[:4])
        asked_for = f"{reading.question}." if reading.question else f"which one? Write {names}."
        yield from _wrapped(f"{reading.text}: {asked_for}", style, "  ")
    for reading in unknown:
        yield from _wrapped(f"{reading.text}: the tables know no food of that name.", style, "  ")
    for line, problem in faulty:
        remedy = f"{problem.remedy[:1].upper()}{problem.remedy[1:]}"
        yield from _wrapped(f"{line}: {problem.what}. {remedy}.", style, "  ")


def _wrapped(text: str, style: Style, indent: str = "") -> list[str]:
    return textwrap.wrap(text, style.width, initial_indent=indent, subsequent_indent=indent + "  " if indent else "")

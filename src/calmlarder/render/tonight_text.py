"""The answer of a run as text for a terminal or a pipe: dinners, the nearest, what was left out and assumed."""

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.garlic_named import LABEL_WITHOUT, MADE_WITHOUT
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.what_gives import Nearest
from calmlarder.intake.cap_words import in_words
from calmlarder.larder.meaning import told_once
from calmlarder.matching.names.words import words_of
from calmlarder.render.caution import CAUTION
from calmlarder.render.dinner_text import dinner_lines, figures_text, from_memory, load_lines, rescued_lines
from calmlarder.render.nourishment import short_of_filling, short_of_protein
from calmlarder.render.stacked import day_lines, stacked_lines
from calmlarder.render.style import Style

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.offer import Excluded
    from calmlarder.larder.meaning import Reading

EAT_ALL_THE_SAME = (
    "Please eat all the same: limits are no reason to skip a meal. Plain rice, potatoes or carrots fit the limits of "
    "elimination, with or without something beside them. If it is often so, tell your dietitian."
)
_ALIKE = 4  # letters: `yog` and slips of spelling are the word. Ours
# Which a cook need not write: how it is sold says so.
_STATES = frozenset(
    {"boiled", "canned", "cooked", "cow", "dried", "dry", "fresh", "frozen", "ground", "plain", "raw", "white"}
)
_WITHOUT_AFTER_ALL = (
    "Where one of those of which nobody can tell holds no onion or garlic after all (read its label), write `without "
    "onion or garlic` behind its line."
)
_NOTHING_NEAR = (
    "Nothing is near: neither less protein, more minutes, smaller amounts, fewer people nor up to three things of a "
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
        parts.append("\n".join(dinner_lines(dinner, wanted, style, number if len(composed.dinners) > 1 else None)))
        if with_figures:
            parts.append(figures_text(dinner, wanted, style))
    if not composed.dinners:
        parts.append("\n".join(_nothing(composed, wanted, style)))
        if composed.nearest:
            parts.append("\n".join(_nearest(composed.nearest, wanted, style)))
    parts.append("\n".join(_stacked(composed, wanted, style)))
    parts.append("\n".join(_left_out(composed, readings, style)))
    parts.append("\n".join(_assumed(composed, readings, style)))
    parts.append("\n".join(style.wrapped(CAUTION)))
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


def notes_text(dinner: Dinner, composed: "Composed", wanted: DinnerRequest, style: Style) -> str:
    """What a cook need not read first: cautions, what was eaten before, what was left out, what rests on memory."""
    cautions = [line for caution in dinner.cautions for line in style.wrapped(caution)]
    parts = [
        "\n".join(style.wrapped(short_of_protein(dinner))),
        "\n".join(style.wrapped(short_of_filling(dinner))),
        "\n".join(cautions),
        "\n".join(_stacked(composed, wanted, style)),
        "\n".join(style.wrapped(from_memory(dinner))),
        "\n".join(_left_out(composed, (), style)),
        "\n".join(style.wrapped(CAUTION)),
    ]
    return "\n\n".join(part for part in parts if part)


def planned_notes_text(dinner: Dinner, style: Style) -> str:
    """The same of a dinner that is planned, and what of the larder it uses up in time."""
    parts = [
        "\n".join(style.wrapped(short_of_protein(dinner))),
        "\n".join(style.wrapped(short_of_filling(dinner))),
        "\n".join(line for caution in dinner.cautions for line in style.wrapped(caution)),
        "\n".join(rescued_lines(dinner, style)),
        "\n".join(style.wrapped(from_memory(dinner))),
        "\n".join(style.wrapped(CAUTION)),
    ]
    return "\n\n".join(part for part in parts if part)


def _closing(composed: "Composed") -> str:
    if composed.status == "proven":
        return f"Best possible from this larder, found in {composed.seconds:.2f} s."
    return f"The best found in {composed.seconds:.2f} s; with more --seconds there may be a better one."


def _nearest(nearest: Nearest, wanted: DinnerRequest, style: Style) -> Iterator[str]:
    """The nearest dinner whole: what has to give, amounts, steps and timeline, loads."""
    dinner = nearest.dinner
    has_to = " and ".join(give.sentence for give in nearest.gives)
    yield from style.wrapped(f"Nearest: {dinner.title}, if you {has_to}.")
    sure = "No dinner needs less to give" if nearest.proven else "Perhaps another dinner needs less to give"
    yield from style.wrapped(f"{sure}, of protein, minutes, amounts, people and shopping.")
    yield ""
    yield from dinner_lines(dinner, wanted, style, None)
    yield ""
    yield from load_lines(dinner, wanted, style)


def _nothing(composed: "Composed", wanted: DinnerRequest, style: Style) -> Iterator[str]:
    if composed.nearest and all(give.what == "amount" for give in composed.nearest.gives):
        yield style.strong("A dinner within the limits, with a little less in it than its recipe asks for")
        return
    if wanted.dish is None:
        yield style.strong("No dinner meets the limits")
    else:
        yield style.strong(f"{wanted.dish.none_of_it.capitalize()} within the limits")
    for obstacle in composed.obstacles:
        yield from style.hanging(f"Problem: {in_words(obstacle)}.")
    if composed.instead:
        if composed.nothing_near:
            yield from style.hanging("None of it is near, not even with up to three things bought.")
        yield from style.wrapped(_instead(composed.instead, style))
        return
    if composed.nothing_near:
        yield from style.hanging(_NOTHING_NEAR)
    if composed.nearest is None or not composed.nearest.is_there:
        yield from style.wrapped(EAT_ALL_THE_SAME)


def _instead(dinners: Sequence[Dinner], style: Style) -> str:
    """What else there is, where the dish that was asked for is not possible."""
    told = "; ".join(f"{style.manner.title(dinner)} ({dinner.minutes} minutes)" for dinner in dinners)
    return f"What else there is, without that wish: {told}."


def _stacked(composed: "Composed", wanted: DinnerRequest, style: Style) -> Iterator[str]:
    lines = stacked_lines(composed, wanted)
    if lines and wanted.stacking is not None:
        longest = wanted.stacking.longest_hours
        yield style.strong(f"Still counted at {wanted.stacking.at:%H:%M}, eaten less than {longest:g} hours before")
    for line in lines:
        yield from style.hanging(line)
    for line in day_lines(composed, wanted):
        yield from style.wrapped(line)


def _assumed(composed: "Composed", readings: "tuple[Reading, ...]", style: Style) -> Iterator[str]:
    """What was taken for granted in the lines of the larder, so that the cook may say otherwise."""
    dinners = (*composed.dinners, *([composed.nearest.dinner] if composed.nearest else []))
    used = {use.food for dinner in dinners for use in dinner.uses}
    beside = " ".join(caution for dinner in dinners for caution in dinner.cautions).lower()
    taken = [
        f"{reading.text} ({', '.join(said)})"
        for reading in readings
        if (
            said := (
                *told_once(reading.assumed),
                *_by_another_name(reading, used, style),
                *_of_another_sort(reading, used, beside),
            )
        )
    ]
    if taken:
        yield style.strong("Assumed of your lines")
        yield from style.hanging(f"{'; '.join(taken)}. Write it into the line where it is another.")


def _by_another_name(reading: "Reading", used: set[str], style: Style) -> Iterator[str]:
    """What the dinner calls a food of which no word stands in its line: `pinto beans` counted as black beans."""
    typed = {*words_of(reading.text), *words_of(style.manner.name(reading.text))}
    for lot, named in zip(reading.lots, reading.names, strict=False):
        name = style.manner.name(named)
        if lot.food in used and not reading.assumed and typed.isdisjoint({*words_of(named), *words_of(name)}):
            yield name


def _of_another_sort(reading: "Reading", used: set[str], beside: str) -> Iterator[str]:
    """What is named beside a dinner by a sort of which its line says nothing: `processed cheese` for a yellow one."""
    typed = words_of(reading.text)
    for lot, name in zip(reading.lots, reading.names, strict=False):
        sort = [word for word in words_of(name)[:-1] if word not in _STATES]
        untold = sort and not any(sort[0][:_ALIKE] == other[:_ALIKE] for other in typed)
        if untold and lot.food not in used and not reading.assumed and name.lower() in beside:
            yield name


def _excluded(excluded: Sequence["Excluded"], style: Style) -> Iterator[str]:
    """Each line with its reason; what can be written behind several of them is told once, at the end."""
    advice = (MADE_WITHOUT, LABEL_WITHOUT)
    several = sum(words in one.why for one in excluded for words in advice) > 1
    for one in excluded:
        why = one.why
        for words in advice if several else ():
            why = why.replace(f": {words}", "")
        yield from style.hanging(f"{one.line}: {why}.")
    if several:
        yield from style.hanging(_WITHOUT_AFTER_ALL)


def _left_out(composed: "Composed", readings: "tuple[Reading, ...]", style: Style) -> Iterator[str]:
    asked = [reading for reading in readings if reading.match.outcome == "ask"]
    unknown = [reading for reading in readings if reading.match.outcome == "unknown" and reading.problem is None]
    faulty = [(reading.text, reading.problem) for reading in readings if reading.problem is not None]
    if not (composed.excluded or asked or unknown or faulty):
        return
    yield style.strong("Left out")
    yield from _excluded(composed.excluded, style)
    for reading in asked:
        names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates[:4])
        asked_for = f"{reading.question}." if reading.question else f"which one? Write {names}."
        yield from style.hanging(f"{reading.text}: {asked_for}")
    for reading in unknown:
        yield from style.hanging(f"{reading.text}: the tables know no food of that name.")
    for line, problem in faulty:
        remedy = f"{problem.remedy[:1].upper()}{problem.remedy[1:]}"
        yield from style.hanging(f"{line}: {problem.what}. {remedy}.")

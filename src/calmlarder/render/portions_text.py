"""Who gets what at a table of several, in words."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.intake.dose import Dose
from calmlarder.intake.eaten import ME
from calmlarder.render.of_limit import of_limit
from calmlarder.render.style import Style
from calmlarder.render.thaw_text import thaw_first

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.portions import Apart, Served


def portion_lines(dinner: "Dinner", style: Style) -> Iterator[str]:
    """Everybody's share, protein and fullest limit; nothing where nobody is named."""
    if not dinner.portions:
        return
    if dinner.apart:
        yield ""
        yield style.strong("Served apart")
        for part in dinner.apart:
            at = f"{part.moment.start_min // 60}:{part.moment.start_min % 60:02d}"
            how = "weigh" if part.how == "weigh" else part.household or "by eye"
            yield from style.hanging(f"{at}  {part.said} ({how})")
    yield ""
    yield style.strong("Whose plate")
    for one in dinner.portions:
        yield from style.hanging(
            f"{one.who}: {_share(one, dinner)}, {one.protein_g:.0f} g protein{_with(one)}{_fullest(one)}"
        )


def weighed_parts(dinner: "Dinner") -> list["Apart"]:
    """What is served apart and wants the scale."""
    return [part for part in dinner.apart if part.how == "weigh"]


def weighed_apart(part: "Apart") -> str:
    """A part as a list of what is weighed names it."""
    return f"{part.grams} g {part.name}, {for_whom(part)}"


def for_whom(part: "Apart") -> str:
    """Who alone gets it."""
    return f"for {' and '.join(part.whose)} only"


def _share(one: "Served", dinner: "Dinner") -> str:
    if len({other.appetite for other in dinner.portions}) == 1:
        return "an equal share"
    return f"{round(100 * one.share)} % of the dish"


def shares_words(dinner: "Dinner") -> str:
    """How the dish is shared, where some eat more of it than others; empty where the plates are alike."""
    if len({one.appetite for one in dinner.portions}) < 2:
        return ""
    shares = (f"{'you' if one.who == ME else one.who} {round(100 * one.share)} %" for one in dinner.portions)
    return f"shared by appetite: {', '.join(shares)}"


def _with(one: "Served") -> str:
    return f", with {' and '.join(one.apart)} apart" if one.apart else ""


def _fullest(one: "Served") -> str:
    if not one.limits_g:
        return ", no limits"

    def full(key: str) -> float:
        typical, most = one.limits_g[key]
        return max(one.loads_g[key] / typical, 0.0 if most is None else one.at_most_g[key] / most)

    key = max(one.limits_g, key=full)
    limit, end = one.limits_g[key]
    return (
        f"; fullest {CAP_WORDS.get(key, key)}, likely {of_limit(one.loads_g[key], limit)} g, "
        f"at most {f'{one.at_most_g[key]:.2f}' if end is None else of_limit(one.at_most_g[key], end)} g"
    )


_KEPT_AWAY = (
    "It holds {}, which somebody at this table avoids: keep it, with its own scale bowl, board, knife and spoon, away "
    "from the dish, and wash your hands after it. Where their allergy is severe, rather skip the day."
)


def dose_words(dose: Dose) -> str:
    """The dose of a challenge, and what the figures say of it."""
    plate = "your" if dose.who == ME else f"{dose.who}'s"
    where = "in the dish" if dose.in_dish else f"beside the dish, on {plate} plate only"
    whose = "Today's challenge" if dose.who == ME else f"Today's challenge of {dose.who}"
    holds = f" {_KEPT_AWAY.format(', '.join(dose.avoided))}" if dose.avoided else ""
    group = CAP_WORDS.get(dose.group, dose.group)
    return (
        f"{whose}: {dose.grams:g} g {dose.name}, weighed, {where}: {dose.dose_g:.2f} g of {group}. This dose is "
        "left out of the limits; everything else keeps to elimination. Rather not today? Skip the day: it can wait."
        f"{holds}"
    )


def steps_of(dinner: "Dinner") -> tuple[str, ...]:
    """What is thawed first, then the steps; what is served apart and doses beside the dish before the last of them.

    Where some eat more than others, last of all how the dish goes onto the plates.
    """
    return tuple(words for words, _ in placed_steps(dinner))


def placed_steps(dinner: "Dinner") -> tuple[tuple[str, int | None], ...]:
    """The same, each with its place among the dinner's own steps; None for what is no step of the dish itself."""
    apart = [part.said for part in dinner.apart]
    apart += [f"Weigh {dose.grams:g} g {dose.name}. {dose_words(dose)}" for dose in dinner.doses if not dose.in_dish]
    own = [(words, place) for place, words in enumerate(dinner.steps)]
    before, beside, after = filter(None, [thaw_first(dinner)]), apart, _sharing(dinner)
    return (
        *((words, None) for words in before), *own[:-1], *((words, None) for words in beside), *own[-1:],
        *((words, None) for words in after),
    )  # fmt: skip


def _sharing(dinner: "Dinner") -> tuple[str, ...]:
    """The step that shares by appetite; none where the plates are alike."""
    shares = shares_words(dinner)
    return (f"{shares[:1].upper()}{shares[1:]} of what is cooked: each limit was counted so.",) if shares else ()

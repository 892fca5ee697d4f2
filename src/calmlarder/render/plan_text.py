"""A plan as text for a terminal or a pipe."""

from collections.abc import Iterator

from calmlarder.compose.dinner import Dinner
from calmlarder.plan.planned import Planned, SittingPlanned
from calmlarder.render.caution import CAUTION
from calmlarder.render.style import Style
from calmlarder.render.thaw_text import freeze_words, thaw_words
from calmlarder.render.tonight_text import EAT_ALL_THE_SAME
from calmlarder.render.wrapped import wrapped
from calmlarder.tables.book import Tables

_IN = "    "
_MOST_WASTED = 8  # lines shown; --json has them all


def plan_text(planned: Planned, tables: Tables, style: Style) -> str:
    """The whole plan: each sitting, what spoils all the same, what to freeze and to buy."""
    sittings = ["\n".join(_sitting(one, planned, style)) for one in planned.sittings]
    return "\n\n".join(sittings) + "\n\n" + notes_text(planned, tables, style)


def notes_text(planned: Planned, tables: Tables, style: Style) -> str:
    """What holds for the plan as a whole: what spoils all the same, what to freeze and to buy, how good it is."""
    parts = ["\n".join(_wasted(planned, style))]
    if any(one.dinner is None for one in planned.sittings):
        parts.insert(0, "\n".join(style.wrapped(EAT_ALL_THE_SAME)))
    if planned.freeze_today:
        parts.append("\n".join(_freeze(planned, tables, style)))
    if planned.buy:
        parts.append("\n".join(_buy(planned, style)))
    if planned.looked_at is not None:
        words = f"Only the {planned.looked_at} things that go first were planned with."
        parts.append("\n".join(style.wrapped(words)))
    parts.append("\n".join(style.wrapped(CAUTION)))
    parts.append("\n".join(style.wrapped(closing(planned))))
    return "\n\n".join(parts) + "\n"


def heading_of(one: SittingPlanned) -> str:
    """When, and what kind: `Thu 12 Mar 12:30, packed`."""
    return f"{one.at:%a %d %b %H:%M}, {one.sitting}"


def closing(planned: Planned) -> str:
    """How good the plan is known to be."""
    if planned.status == "none":
        return f"Nothing was found for any meal in {planned.seconds:.1f} s."
    if planned.status == "proven":
        return f"The best possible from what is there, found in {planned.seconds:.1f} s."
    if planned.gap_percent is None:
        return f"The best found in {planned.seconds:.1f} s."
    return (
        f"The best found in {planned.seconds:.1f} s: waste first, then variety, then work. At most "
        f"{planned.gap_percent:g} % of what it costs in these could be saved by a better plan; were all of that "
        f"waste, {planned.gap_grams:g} g."
    )


def _sitting(one: SittingPlanned, planned: Planned, style: Style) -> Iterator[str]:
    if one.dinner is None:
        yield style.strong(f"{heading_of(one)}: none found yet")
        yield from _wrapped(f"{one.why_empty}.", style)
        return
    if one.leftover_of is not None:
        yield style.strong(f"{heading_of(one)}: leftovers")
        earlier = planned.sittings[one.leftover_of]
        cold = "heated once until steaming" if one.warmed else "eaten cold"
        if one.warmed and one.sitting == "packed":
            cold += ", there or in the morning into a flask"
        yield from _wrapped(f"{one.dinner.title}, the box of {earlier.at:%A}, {cold}.", style)
        yield from _apart(one.dinner, style)
        return
    yield style.strong(heading_of(one))
    yield from _wrapped(one.dinner.title, style)
    people = "1 person" if one.people == 1 else f"{one.people} people"
    yield f"{_IN}{people}, {one.dinner.minutes} minutes, {one.dinner.per_person.protein_g:g} g protein each"
    if one.boxed_for is not None:
        later = planned.sittings[one.boxed_for]
        yield from _wrapped(f"Cook for {one.dinner.people}: cool the rest fast and box it for {later.at:%A}.", style)
    for words in thaw_words(one, planned.sittings[0], style.manner.amount):
        yield from _wrapped(words, style)
    amounts = "; ".join(
        f"{style.manner.amount(use.grams)} {use.name}{' (weigh)' * (use.how == 'weigh')}" for use in one.dinner.uses
    )
    yield from _wrapped(f"{amounts}.", style)
    yield from _apart(one.dinner, style)


def _apart(dinner: Dinner, style: Style) -> Iterator[str]:
    for part in dinner.apart:
        yield from _wrapped(f"Apart: {part.said}", style)


def _wasted(planned: Planned, style: Style) -> Iterator[str]:
    if not planned.wasted:
        yield style.strong("Nothing spoils unused in these days")
        return
    yield style.strong("What this plan does not reach in time")
    for one in planned.wasted[:_MOST_WASTED]:
        yield from style.hanging(f"{one.grams:g} g of `{one.line}`: {one.why}.")
    if len(planned.wasted) > _MOST_WASTED:
        yield f"  and {len(planned.wasted) - _MOST_WASTED} more"


def _freeze(planned: Planned, tables: Tables, style: Style) -> Iterator[str]:
    yield style.strong("Freeze today")
    for one in planned.freeze_today:
        name = tables.food_by_id[one.food].name
        yield from style.hanging(f"{one.grams:g} g {name}: {freeze_words(one, planned.sittings)}.")


def _buy(planned: Planned, style: Style) -> Iterator[str]:
    yield style.strong("Worth buying")
    for one in planned.buy:
        yield from style.hanging(f"{one.grams} g {one.name}: {one.because}.")


def _wrapped(text: str, style: Style) -> list[str]:
    return wrapped(text, style.width, _IN, _IN + "  ")

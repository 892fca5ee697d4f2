"""What can stand in for a food, as text and as JSON."""

import textwrap
from collections.abc import Iterator
from decimal import ROUND_FLOOR, ROUND_UP, Decimal
from typing import Any

from calmlarder.intake.plate import Serving
from calmlarder.render.style import Style
from calmlarder.render.wrapped import wrapped
from calmlarder.swaps.model import Answer, Substitute, told_grams
from calmlarder.swaps.why import GROUP_WORDS
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure

_THOUSANDTH = Decimal("0.001")
_MOST_SHOWN = 8


def swap_object(answer: Answer) -> dict[str, Any]:
    """The answer of `swap --json`; loads are rounded up and room is rounded down to a milligram."""
    return {
        "food": answer.asked.food.id,
        "amount_g": float(answer.asked.grams),
        "why": answer.why,
        "substitutes": [_object(one) for one in answer.substitutes],
    }


def _object(one: Substitute) -> dict[str, Any]:
    said = one.candidate
    return {
        "parts": [{"food": part.food.id, "grams": float(part.grams)} for part in said.parts],
        "score": one.score,
        "keeps": said.keeps,
        "loses": said.loses,
        "when": said.when,
        "load_g": {group: float(load.quantize(_THOUSANDTH, ROUND_UP)) for group, load in one.load_g.items()},
        "headroom_g": {group: float(room.quantize(_THOUSANDTH, ROUND_FLOOR)) for group, room in one.headroom_g.items()},
        "caution": said.caution,
        "in_larder": one.in_larder,
        "source": said.source,
    }


def swap_text(answer: Answer, tables: Tables, style: Style) -> str:
    """The best few, each with amounts, what it keeps and loses, and what it brings."""
    return "\n".join(_lines(answer, tables, style)) + "\n"


def _lines(answer: Answer, tables: Tables, style: Style) -> Iterator[str]:
    yield style.strong(f"Instead of {told_grams(answer.asked.grams)} {answer.asked.food.name}, for one person")
    yield from wrapped(f"{answer.why}.", style.width, "  ", "  ")
    if not answer.substitutes:
        at_home = " in the larder" if answer.asked.only_at_home else ""
        yield ""
        yield f"Nothing{at_home} can stand in under the limits, the diet and the allergens given."
        return
    for place, one in enumerate(answer.substitutes[:_MOST_SHOWN], start=1):
        yield ""
        yield from _substitute(place, one, tables, style)
    more = len(answer.substitutes) - _MOST_SHOWN
    yield ""
    if more > 0:
        yield f"{more} more with --json."
    yield from textwrap.wrap(
        f"Each holds by eye: amounts may be {answer.asked.sure.eye_percent} % off. Loads count this swap alone: "
        "what else is on the plate counts too.",
        style.width,
    )


def substitute_text(place: int, one: Substitute, tables: Tables, style: Style) -> str:
    """One of them alone."""
    return "\n".join(_substitute(place, one, tables, style)) + "\n"


def _substitute(place: int, one: Substitute, tables: Tables, style: Style) -> Iterator[str]:
    said = one.candidate
    names = " + ".join(part.food.name for part in said.parts)
    head = f"{place}. {names}{' (in the larder)' if one.in_larder else ''}"
    yield from (style.strong(line) for line in textwrap.wrap(head, style.width, subsequent_indent="   "))
    yield from _entry("take", ", ".join(_amount(part, tables) for part in said.parts), style)
    yield from _entry("when", _when(said.when), style)
    yield from _entry("keeps", said.keeps, style)
    yield from _entry("loses", said.loses, style)
    yield from _entry("brings", _brings(one), style)
    yield from _entry("mind", said.caution, style)


def _when(said: str) -> str:
    """The first word in whole words: `any` alone says nothing."""
    if said == "any":
        return "at any time"
    return said.replace("any: ", "at any time: ", 1) if said.startswith("any: ") else said


def _entry(word: str, text: str, style: Style) -> list[str]:
    """One labelled line, or none where there is nothing to say."""
    if not text:
        return []
    return wrapped(text, style.width, f"   {word:<6} ", " " * 10)


def _amount(part: Serving, tables: Tables) -> str:
    measure = in_household_measure(part.food, float(part.grams), tables, "nearest")
    return f"{told_grams(part.grams)} {part.food.name}{f' ({measure})' if measure else ''}"


def _left(room: Decimal) -> str:
    return f"{room} g left" if room >= 0 else f"{-room} g over without it already"


def _brings(one: Substitute) -> str:
    """The groups that count, each with its load and what is left of its limit."""
    told = []
    for group, load in one.load_g.items():
        if load >= _THOUSANDTH * 5 and group in one.headroom_g:
            room = one.headroom_g[group].quantize(Decimal("0.01"), ROUND_FLOOR)
            told.append(f"{GROUP_WORDS[group]} {load.quantize(Decimal('0.01'), ROUND_UP)} g ({_left(room)})")
    return ", ".join(told) or "next to nothing in any group"

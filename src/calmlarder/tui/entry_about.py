"""Beside the log on a wide screen: the entry under the bar, with all that it brought."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from calmlarder.history.felt import WORST
from calmlarder.intake.eaten import EVERYONE, ME
from calmlarder.render.days_text import ROW_WORDS
from calmlarder.tables.vocabulary import GROUPS

if TYPE_CHECKING:
    from calmlarder.history.felt import Felt
    from calmlarder.household.diary import Entry
    from calmlarder.intake.eaten import Eaten
    from calmlarder.render.manner import Manner

_LEAST_UG = 5_000  # what is told as 0.00 g is left out


def entry_words(one: "Entry", manner: "Manner") -> str:
    """What was eaten, or how the gut felt."""
    if one.felt is not None:
        return "\n".join(_felt_lines(one.felt))
    return manner.told("\n".join(_eaten_lines(one.eaten, manner))) if one.eaten is not None else ""


def _felt_lines(felt: "Felt") -> Iterator[str]:
    yield f"gut {felt.score} of {WORST}, {felt.at:%A} {felt.at.day} {felt.at:%B, %H:%M}"
    if felt.scores is not None:
        yield ""
        yield "Each by itself"
        yield from (f"  {score:>2}  {name}" for name, score in felt.scores.model_dump().items())
    if felt.note:
        yield ""
        yield felt.note


def _eaten_lines(eaten: "Eaten", manner: "Manner") -> Iterator[str]:
    yield f"{manner.name(eaten.title)}, {eaten.at:%A} {eaten.at.day} {eaten.at:%B, %H:%M}"
    yield f"  {eaten.grams:.0f} g{'' if eaten.who in {ME, EVERYONE} else f', {eaten.who}'}"
    sums = {group: sum(one.likely_ug for one in eaten.loads if one.group == group) for group in GROUPS}
    told = [f"  {sums[group] / 1_000_000:.2f} g  {ROW_WORDS[group]}" for group in GROUPS if sums[group] >= _LEAST_UG]
    yield ""
    yield "What it likely brought"
    yield from told or ["  next to nothing of any group"]
    if eaten.unknown:
        yield f"  not counted, as its figures are not known: {', '.join(eaten.unknown)}"
    had = eaten.nourished
    if had is not None:
        yield ""
        yield "Nourishment"
        for name, value in had.model_dump(exclude={"at_least"}).items():
            words, _, unit = name.rpartition("_")
            yield f"  {'at least ' * (name in had.at_least)}{value:.{1 if value < 20 else 0}f} {unit} {words}"

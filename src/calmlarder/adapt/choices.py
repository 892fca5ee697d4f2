"""What may be done with each line of a recipe, each with its price: keep, swap, less, or leave out."""

import zlib
from collections.abc import Iterator, Sequence
from decimal import ROUND_DOWN, Decimal
from typing import NamedTuple

from calmlarder.adapt import prices
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.loads import LineLoad
from calmlarder.adapt.model import Eaters, Kind
from calmlarder.adapt.written import written
from calmlarder.intake.eaters import allergens_met, suits_diet
from calmlarder.intake.load import LoadProfile, load_profile_of
from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import MOST_GRAMS, Asked, Candidate
from calmlarder.swaps.rank import fitting
from calmlarder.tables.book import Tables

_STEPS = tuple(Decimal(step) for step in ("0.5", "1", "2", "5", "10", "20", "25", "50", "100", "250", "500", "1000"))
_MOST_STEPS = 10  # ways to take less of one thing
_LEAST_GRAMS = Decimal("0.1")


class Choice(NamedTuple):
    """One way to treat a line. `price` and `lost` (of the dish's weight) are in thousandths of a point."""

    kind: Kind | None  # None: as it is
    brings: tuple[LineLoad, ...]
    lines: tuple[str, ...]
    price: int
    lost: int
    candidate: Candidate | None = None


class Open(NamedTuple):
    """A line with all its choices, the first of them to keep it where that is allowed."""

    line: Counted
    weight: int  # how much of the dish it is, in thousandths of a point
    choices: tuple[Choice, ...]


def open_lines(lines: Sequence[Counted], serves: int, eaters: Eaters, tables: Tables) -> tuple[Open, ...]:
    """The choices of every line. One that brings nothing and breaks nothing is only ever kept."""
    known: dict[str, LoadProfile] = {}
    return tuple(_open(line, serves, eaters, tables, known) for line in lines)


def weight_of(line: Counted, serves: int) -> int:
    """How much of the dish a line is: its role's weight, by how much of a usual portion there is of it."""
    share = float(line.amount.grams / serves / line.food.portion_g) if line.amount else prices.LEAST_SHARE
    share = min(prices.MOST_SHARE, max(prices.LEAST_SHARE, share))
    return round(prices.POINT * prices.WEIGHT[line.food.roles[0]] * share)


def _open(line: Counted, serves: int, eaters: Eaters, tables: Tables, known: dict[str, LoadProfile]) -> Open:
    weight = weight_of(line, serves)
    choices: list[Choice] = []
    if not line.breaks:
        own = (LineLoad(line.food, line.amount, line.profile),) if line.amount and line.profile else ()
        choices.append(Choice(None, own, (line.read.text,), 0, 0))
    if line.brings or line.breaks:
        choices += _swaps(line, weight, serves, eaters, tables, known)
        if not line.breaks:
            choices += _less(line, weight, tables)
        choices.append(_out(line, weight))
    return Open(line, weight, tuple(choices))


def _swaps(
    line: Counted, weight: int, serves: int, eaters: Eaters, tables: Tables, known: dict[str, LoadProfile]
) -> Iterator[Choice]:
    if line.amount is None:
        yield from _unmeasured(line, weight, eaters, tables)
        return
    for candidate in (
        *_alternatives(line, line.amount.grams, eaters, tables),
        *_stand_ins(line, serves, eaters, tables),
    ):
        lines = [written(part.food, part.grams, tables, sure=eaters.sure) for part in candidate.parts]
        for part in candidate.parts:
            if part.food.id not in known:
                known[part.food.id] = load_profile_of(part.food, tables)
        brings = tuple(
            LineLoad(part.food, one.amount, known[part.food.id])
            for part, one in zip(candidate.parts, lines, strict=True)
        )
        lost = round(weight * max(0.0, 1 - candidate.points / prices.SWAP_LIKENESS))
        parts = prices.ANOTHER_PART * (len(lines) - 1)
        price = lost + round(prices.POINT * (prices.TOUCHED + parts))
        texts = tuple(one.line for one in lines)
        yield Choice("swap", brings, texts, price + _tie(line, *texts), lost, candidate)


def _stand_ins(line: Counted, serves: int, eaters: Eaters, tables: Tables) -> list[Candidate]:
    assert line.amount is not None
    if line.profile is None:
        return []  # whether a stand-in brings the same trouble cannot be told
    each = min(Decimal(MOST_GRAMS), max(_LEAST_GRAMS, line.amount.grams / serves))
    asked = Asked(
        food=line.food, grams=each, profile=eaters.profile, diet=eaters.diet, avoid=eaters.avoid, sure=eaters.sure
    )
    return fitting(asked, line.amount.grams, tables)


def _unmeasured(line: Counted, weight: int, eaters: Eaters, tables: Tables) -> Iterator[Choice]:
    """The line's own "or", where it says no amount: only what brings nothing, however much of it is taken."""
    for candidate in _alternatives(line, _LEAST_GRAMS, eaters, tables):
        food = candidate.parts[0].food
        if not load_profile_of(food, tables).anything:
            lost = round(weight * (1 - prices.ALTERNATIVE_POINTS / prices.SWAP_LIKENESS))
            text = f"{food.name}{_tail(line.read.text)}"
            price = lost + round(prices.POINT * prices.TOUCHED) + _tie(line, text)
            yield Choice("swap", (), (text,), price, lost, candidate)


def _alternatives(line: Counted, grams: Decimal, eaters: Eaters, tables: Tables) -> Iterator[Candidate]:
    """What the line itself allows in the food's place, gram for gram."""
    for name in line.read.alternatives:
        food = tables.food_by_id.get(name)
        if food is None or food.id == line.food.id or tables.unknown_of(name):
            continue
        if suits_diet(food, eaters.diet) and not allergens_met(food, eaters.avoid):
            yield Candidate(
                parts=(Serving(food, grams),), points=prices.ALTERNATIVE_POINTS, keeps="what the recipe itself allows",
                loses="", when="", whens=("any",), caution="", source="the recipe",
            )  # fmt: skip


def _less(line: Counted, weight: int, tables: Tables) -> Iterator[Choice]:
    """Less of it, in steps a scale shows, down to what the dish bears; of what is judged by eye, as much weighed."""
    assert line.amount is not None
    assert line.profile is not None
    whole = line.amount.grams
    floor = whole * Decimal(str(prices.FLOOR[line.food.roles[0]]))
    step = next((one for one in _STEPS if (whole - floor) / one <= _MOST_STEPS), _STEPS[-1])
    told = set()
    grams = (whole / step).to_integral_value(ROUND_DOWN) * step
    while grams > 0 and grams >= floor:
        line_written = written(line.food, grams, tables, _tail(line.read.text), line.amount.sure)
        amount = line_written.amount
        lower = amount.most < line.amount.most and amount.grams <= whole
        if lower and amount.grams >= floor and line_written.line not in told:
            told.add(line_written.line)
            lost = round(weight * float(1 - amount.grams / whole))
            price = lost + round(prices.POINT * prices.TOUCHED) + _tie(line, line_written.line)
            brings = (LineLoad(line.food, amount, line.profile),)
            yield Choice("less", brings, (line_written.line,), price, lost)
        grams -= step


def _tail(text: str) -> str:
    """How the line says it is cut: `, finely chopped`."""
    _, comma, rest = text.partition(",")
    return f", {rest.strip()}" if comma and not any(sign.isdigit() for sign in rest) else ""


def _out(line: Counted, weight: int) -> Choice:
    dear = prices.OPTIONAL_OUT if line.read.optional else prices.OUT.get(line.food.roles[0], prices.OUT_ELSE)
    price = round(weight * dear) + round(prices.POINT * prices.TOUCHED) + _tie(line, "out")
    return Choice("out", (), (), price, 0 if line.read.optional else weight)


def _tie(line: Counted, *texts: str) -> int:
    """A tiny price from the words, so that equally good changes are told apart the same way every time."""
    return zlib.crc32("\0".join((line.read.text, str(line.place), *texts)).encode()) % 97

"""Foods that are made of others: a dish in boxes, a mixture of mixtures.csv, and what may be in what."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from decimal import Decimal
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.problems import Problem
from calmlarder.tables.csvfile import Line
from calmlarder.tables.late_rows import cells_of
from calmlarder.tables.rows import WATER, MixtureRow

Parts = Mapping[str, Sequence[tuple[str, Decimal]]]
DEEPEST = 20  # mixtures within mixtures; ours: no kitchen has a tenth of it


class MixturePart(BaseModel):
    """One food of the whole: grams, hundredths of a gram that it may be at the most, and whether it was weighed.

    Of a mixture of mixtures.csv they are millionths of the whole, as a pinch of a spice is little.
    """

    model_config = ConfigDict(frozen=True)

    food: str
    grams: Annotated[int, Field(gt=0)]
    most_hundredths: Annotated[int, Field(gt=0)]
    weighed: bool = False


class Mixture(BaseModel):
    """A dish of `shares` equal shares, each of `share_grams` when it went into its box.

    A part stands for itself alone; it counts under its own cut-off class.
    """

    model_config = ConfigDict(frozen=True)

    shares: Annotated[int, Field(ge=1, le=12)]
    share_grams: Annotated[int, Field(gt=0)]
    parts: Annotated[tuple[MixturePart, ...], Field(min_length=1)]


def parts_by_food(rows: Iterable[MixtureRow]) -> dict[str, list[tuple[str, Decimal]]]:
    """Parts and grams of every mixture, water too."""
    found: dict[str, list[tuple[str, Decimal]]] = {}
    for food, part, grams in cells_of(rows, "food", "part", "grams"):
        found.setdefault(food, []).append((part, grams))
    return found


def weight(parts: Iterable[tuple[str, Decimal]]) -> Decimal:
    """What the whole weighs, in grams: less than its parts where water boils away."""
    return sum((grams for _, grams in parts), Decimal(0))


def depths(mixtures: Parts) -> dict[str, int]:
    """How many mixtures deep each mixture is, one for foods alone, every mixture behind those that are in it.

    A mixture that is in itself, by way of others too, and all that is made of it are left out.
    """
    waiting = {food: {part for part, _ in parts if part in mixtures} for food, parts in mixtures.items()}
    used_in: dict[str, list[str]] = {}
    for food, parts in waiting.items():
        for part in parts:
            used_in.setdefault(part, []).append(food)
    ready = [food for food, parts in waiting.items() if not parts]
    found: dict[str, int] = {}
    for food in ready:
        found[food] = 1 + max((found[part] for part, _ in mixtures[food] if part in found), default=0)
        for user in used_in.get(food, ()):
            waiting[user].discard(food)
            if not waiting[user]:
                ready.append(user)
    return found


def mixture_faults(lines: Sequence[Line[MixtureRow]], foods: Iterable[str]) -> Iterator[Problem]:
    """What stops a mixture from being a sum: no food, water alone, no weight, itself in it, nested too deep."""
    known = {*foods, WATER}
    first: dict[str, str] = {}
    for line in lines:
        first.setdefault(line.row.food, line.where)
        if line.row.part not in known:
            what = f"`{line.row.part}` is no food"
            yield Problem(where=f"{line.where}:2", what=what, remedy="write an id of foods.csv")
    mixtures = parts_by_food(line.row for line in lines)
    deep = depths(mixtures)
    for food in _in_themselves(mixtures, deep):
        yield Problem(where=f"{first[food]}:2", what=f"{food} is in itself", remedy="list what goes into it")
    for food, parts in mixtures.items():
        yield from _weight_faults(food, parts, first[food])
        if deep.get(food) == DEEPEST + 1:  # what is made of this one is deeper still, and said with it
            what = f"{food} is mixtures within mixtures, more than {DEEPEST} deep"
            yield Problem(where=f"{first[food]}:2", what=what, remedy="list the foods that go into it")


def _weight_faults(food: str, parts: Sequence[tuple[str, Decimal]], where: str) -> Iterator[Problem]:
    if all(part == WATER for part, _ in parts):
        what = f"{food} is made of water alone"
        yield Problem(where=f"{where}:2", what=what, remedy="list the foods that go into it")
    elif weight(parts) <= 0:
        what = f"nothing is left of {food}"
        yield Problem(where=f"{where}:3", what=what, remedy="let less water boil away")


def _in_themselves(mixtures: Parts, deep: Mapping[str, int]) -> list[str]:
    """Of mixtures without a depth those that are not merely made of one that is in itself."""
    left = {food: {part for part, _ in parts} for food, parts in mixtures.items() if food not in deep}
    uses = dict.fromkeys(left, 0)
    for parts in left.values():
        for part in parts & left.keys():
            uses[part] += 1
    unused = [food for food, count in uses.items() if not count]
    for food in unused:
        for part in left.pop(food) & left.keys():
            uses[part] -= 1
            if not uses[part]:
                unused.append(part)
    return list(left)

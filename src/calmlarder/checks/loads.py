"""Loads recomputed from the CSV rows: likely, and at most by sorting what may be off.

All in fractions, so that a share by seven people that is just at its limit is not over it. Only roots are rounded,
down. Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from functools import lru_cache
from math import ceil, isqrt
from typing import Any, NamedTuple

from calmlarder.checks.limits import Limit
from calmlarder.checks.tables import Row, error, taken_apart

# Of what could be off, so many of the largest are (Bertsimas & Sim 2004, Operations Research 52(1)).
ERRORS_COUNTED = 2
_ZERO = Fraction(0)
_EXCESS_SHARE = Fraction("0.08")
_PARTS = {
    "oligosaccharides": ("fructans", "gos"),
    "lactose": ("lactose",),
    "sorbitol": ("sorbitol",),
    "mannitol": ("mannitol",),
    "polyols": ("sorbitol", "mannitol"),
    "excess_fructose": ("excess",),
    "total": ("fructans", "gos", "sorbitol", "mannitol", "excess"),
    "fructans": ("fructans",),
    "gos": ("gos",),
}
GROUPS = tuple(_PARTS)
# The components that each of them is worked out from.
_COMPONENTS = {
    group: tuple(name for part in parts for name in (("fructose", "glucose") if part == "excess" else (part,)))
    for group, parts in _PARTS.items()
}
_COLUMNS = ("g_per_100g", "high", "basis")
Figures = Mapping[tuple[str, ...], Row]
Cells = tuple[tuple[str, str, str], ...]


def typical_of(figures: Figures, food: str, group: str) -> Fraction:
    """G per 100 g of a group in a food."""
    return _of_group(group, _cells(figures, food, group))[0]


def error_of(figures: Figures, food: str, group: str) -> Fraction:
    """G per 100 g by which composition may be more: components are measured apart."""
    return _root(_of_group(group, _cells(figures, food, group))[1])


def _cells(figures: Figures, food: str, group: str) -> Cells:
    """All of the rows of a food that its figure of a group is worked out from."""
    rows = [figures[food, name] for name in _COMPONENTS[group]]
    return tuple((row["g_per_100g"], row.get("high") or "", row["basis"]) for row in rows)


@lru_cache(maxsize=8192)
def _of_group(group: str, cells: Cells) -> tuple[Fraction, Fraction]:
    """G per 100 g, and the square of what may be more: of each food for dozens of limits, dinner after dinner."""
    rows = {name: dict(zip(_COLUMNS, row, strict=True)) for name, row in zip(_COMPONENTS[group], cells, strict=True)}
    found = [_component(rows, part) for part in _PARTS[group]]
    return sum((value for value, _ in found), _ZERO), sum((off**2 for _, off in found), _ZERO)


def _root(square: Fraction) -> Fraction:
    """The square root, exact where it is a fraction and else rounded down in the twentieth decimal."""
    whole = isqrt(square.numerator * square.denominator * 10**40)
    return Fraction(whole, square.denominator * 10**20)


def _component(rows: Mapping[str, Row], part: str) -> tuple[Fraction, Fraction]:
    if part != "excess":
        return Fraction(rows[part]["g_per_100g"]), Fraction(error(rows[part]))
    fructose, glucose = rows["fructose"], Fraction(rows["glucose"]["g_per_100g"])
    value = Fraction(fructose["g_per_100g"])
    excess = max(_ZERO, value - glucose)
    if fructose["high"]:
        return excess, max(_ZERO, Fraction(fructose["high"]) - glucose - excess)
    return excess, value * _EXCESS_SHARE


class Part(NamedTuple):
    """G of one food in the whole dish, in an item of the plate.

    `off` is how many g it may be off in a boxed dish, None elsewhere; `share` its g in a gram of the item,
    `wider` the share of it by which the end of a range that it was told in is more.
    """

    item: str
    food: str
    grams: Fraction
    weighed: bool
    share: Fraction
    off: Fraction | None = None
    wider: Fraction = _ZERO


def plate_of(dinner: Mapping[str, Any], boxes: Mapping[str, Any]) -> list[Part]:
    """Every food of a dish, those of a boxed dish each by itself; `boxes` are the boxes of the larder by food."""
    found = []
    for use in dinner["uses"]:
        grams = Fraction(use["grams"])
        if use["food"] not in boxes:
            found.append(Part(use["food"], use["food"], grams, use["how"] == "weigh", Fraction(1)))
            continue
        mixture = boxes[use["food"]]["mixture"]
        whole = mixture["shares"] * mixture["share_grams"]
        for part in mixture["parts"]:
            off = (Fraction(part["most_hundredths"], 100) - part["grams"]) * grams / whole
            inside = part["grams"] * grams / whole
            share = Fraction(part["grams"], whole)
            found.append(Part(use["food"], part["food"], inside, bool(part.get("weighed")), share, max(_ZERO, off)))
    return found


def apart(plate: Iterable[Part], mixed: Mapping[str, Mapping[str, Fraction]], figures: Figures) -> list[Part]:
    """The same dish with mixtures that are nothing but a sum taken apart, so that each part counts in its class."""
    return [
        part._replace(
            food=food, grams=inside * part.grams, share=inside * part.share,
            off=None if part.off is None else part.off * inside,
        )
        for part in plate
        for food, inside in taken_apart(part.food, mixed, figures)
    ]  # fmt: skip


def whole_grams(plate: Iterable[Part]) -> Fraction:
    """G of all items, with the water that is in some of them: what is rounded is rounded in 100 g of the item."""
    items: dict[str, dict[str, Fraction]] = {}
    for part in plate:
        foods = items.setdefault(part.item, {})
        foods[part.food] = foods.get(part.food, _ZERO) + (part.grams / part.share if part.share else _ZERO)
    return sum((max(foods.values()) for foods in items.values()), _ZERO)


class Sure(NamedTuple):
    """How far amounts may be off: a share by eye, g of the whole dish on the scale."""

    eye: Fraction
    scale: Fraction


def sure_of(tolerance: Mapping[str, Any]) -> Sure:
    """From `eye_percent` and `scale_grams`."""
    return Sure(Fraction(tolerance["eye_percent"]) / 100, Fraction(tolerance["scale_grams"]))


def deviation(part: Part, group: str, figures: Figures, sure: Sure) -> Fraction:
    """G by which a part of the whole dish may bring more of a group."""
    return _deviation(part, group, _cells(figures, part.food, group), sure)


@lru_cache(maxsize=8192)
def _deviation(part: Part, group: str, cells: Cells, sure: Sure) -> Fraction:
    typical, squares = (figure / scale for figure, scale in zip(_of_group(group, cells), (100, 10_000), strict=True))
    if part.grams == 0 or (typical == 0 and squares == 0):
        return _ZERO
    if part.off is None and part.weighed:
        return part.grams * _root(squares) + typical * sure.scale * part.share
    if part.off is None:
        return part.grams * _root((_eye(part, sure) * typical) ** 2 + squares)
    if part.weighed:
        return part.grams * _root(squares) + part.off * typical
    return _root((part.off * typical) ** 2 + part.grams**2 * squares)


def _eye(part: Part, sure: Sure) -> Fraction:
    """In whole percent, as all that is judged by eye."""
    return max(sure.eye, Fraction(ceil(100 * part.wider), 100))


class Sum(NamedTuple):
    """G for one person under a limit: likely, by how much each item may be more, and what of each is judged by eye."""

    likely: Fraction
    off: Mapping[str, Fraction]
    by_eye: Mapping[str, Fraction]

    def at_most(self, before: Sequence[Fraction] = ()) -> Fraction:
        """All that is likely, and the largest of what may be more."""
        return self.likely + sum(sorted([*self.off.values(), *before])[-ERRORS_COUNTED:], _ZERO)


def sum_of(
    plate: Iterable[Part], limit: Limit, read: tuple[Mapping[str, Row], Figures], people: int | Fraction, sure: Sure
) -> Sum:
    """What a plate brings each person under a limit, the classes apart that it does not cover."""
    foods, figures = read
    likely, off, by_eye = _ZERO, dict[str, Fraction](), dict[str, Fraction]()
    for part in plate:
        if not _counts(part, limit, foods):
            continue
        load, more = _load_of(part, limit, figures, people), deviation(part, limit.group, figures, sure)
        if not load and not more:
            continue  # as most foods of most groups
        likely += load
        off[part.item] = off.get(part.item, _ZERO) + more / people
        if not part.weighed and part.off is None:
            by_eye[part.item] = by_eye.get(part.item, _ZERO) + load * _eye(part, sure)
    return Sum(likely, off, by_eye)


def likely_of(
    plate: Iterable[Part], limit: Limit, read: tuple[Mapping[str, Row], Figures], people: int | Fraction
) -> Fraction:
    """The same, of what is likely alone."""
    foods, figures = read
    return sum((_load_of(part, limit, figures, people) for part in plate if _counts(part, limit, foods)), _ZERO)


def _counts(part: Part, limit: Limit, foods: Mapping[str, Row]) -> bool:
    return not limit.classes or foods[part.food]["cutoff_class"] in limit.classes


def _load_of(part: Part, limit: Limit, figures: Figures, people: int | Fraction) -> Fraction:
    figure = typical_of(figures, part.food, limit.group)
    return figure * part.grams / (100 * people) if figure else _ZERO

"""Loads and limits recomputed from the CSV rows: likely, and at most by sorting what may be off.

All in fractions, so that a share by seven people that is just at its limit is not over it. Only roots are rounded,
down. Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from fractions import Fraction
from itertools import zip_longest
from math import ceil, isqrt
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.tables import Row, cells_of, error, taken_apart

_ZERO = Fraction(0)
TO_GRAMS = Fraction("0.005")  # limits hold to so much, and so much may come where one is used up
_NEARLY = Fraction("0.00002")  # what rounding of the log to micrograms may make of a limit that is just used up
_OLD_FACTOR = Fraction("1.6")  # at most, where a row of before holds as planned only
_EXCESS_SHARE = Fraction("0.08")
_LIMIT_KEY = ("profile", "scope", "group", "applies_to", "sittings")
_NEAR = Fraction("0.9")  # of its own cut-off: from there on a food is named
_ROUNDED = Fraction("0.0001")  # of numbers shown
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
Figures = Mapping[tuple[str, ...], Row]


class Limit(NamedTuple):
    """One limit in g for one person; no classes are all classes, `most` is None where nothing says so."""

    scope: str
    group: str
    classes: tuple[str, ...]
    typical: Fraction
    most: Fraction | None

    @property
    def key(self) -> str:
        return f"{self.group}:{';'.join(self.classes)}" if self.classes else self.group


def limits_of(folders: Sequence[Path], profile: str, sitting: str) -> list[Limit]:
    """What holds of a profile at a kind of sitting; later folders go before earlier ones."""
    found: dict[tuple[str, ...], Row] = {}
    for folder in folders:
        path = folder / "caps.csv"
        if not path.exists():
            continue
        header, lines = cells_of(path.read_bytes())
        here = [dict(zip_longest(header, (cell.strip() for cell in cells), fillvalue="")) for cells in lines]
        keyed = {tuple(row.get(name, "") for name in _LIMIT_KEY): row for row in here}
        for_all = {key[:4] for key in keyed if not key[4]}
        found = {key: row for key, row in found.items() if key[:4] not in for_all} | keyed
    return [
        _limit(row)
        for row in found.values()
        if row["profile"] == profile and (not row.get("sittings") or sitting in row["sittings"].split(";"))
    ]


def _limit(row: Row) -> Limit:
    classes = tuple(part for part in row["applies_to"].split(";") if part)
    if "grams" in row:
        grams = Fraction(row["grams"])
        most: Fraction | None = grams if row["holds"] == "worst" else grams * _OLD_FACTOR
        return Limit(row["scope"], row["group"], classes, grams, most)
    most = Fraction(row["at_most_g"]) if row["at_most_g"] else None
    return Limit(row["scope"], row["group"], classes, Fraction(row["typical_g"]), most)


def typical_of(figures: Figures, food: str, group: str) -> Fraction:
    """G per 100 g of a group in a food."""
    return sum((_component(figures, food, part)[0] for part in _PARTS[group]), _ZERO)


def error_of(figures: Figures, food: str, group: str) -> Fraction:
    """G per 100 g by which composition may be more: components are measured apart."""
    return _root(_squares_of(figures, food, group))


def _squares_of(figures: Figures, food: str, group: str) -> Fraction:
    return sum((_component(figures, food, part)[1] ** 2 for part in _PARTS[group]), _ZERO)


def _root(square: Fraction) -> Fraction:
    """The square root, exact where it is a fraction and else rounded down in the twentieth decimal."""
    whole = isqrt(square.numerator * square.denominator * 10**40)
    return Fraction(whole, square.denominator * 10**20)


def _component(figures: Figures, food: str, part: str) -> tuple[Fraction, Fraction]:
    if part != "excess":
        return Fraction(figures[food, part]["g_per_100g"]), Fraction(error(figures[food, part]))
    fructose, glucose = figures[food, "fructose"], Fraction(figures[food, "glucose"]["g_per_100g"])
    value = Fraction(fructose["g_per_100g"])
    excess = max(_ZERO, value - glucose)
    if fructose.get("high"):
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
    typical, squares = typical_of(figures, part.food, group) / 100, _squares_of(figures, part.food, group) / 10_000
    if part.grams == 0:
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
        """All that is likely, and the two largest of what may be more."""
        return self.likely + sum(sorted([*self.off.values(), *before])[-2:], _ZERO)


def sum_of(
    plate: Iterable[Part], limit: Limit, read: tuple[Mapping[str, Row], Figures], people: int | Fraction, sure: Sure
) -> Sum:
    """What a plate brings each person under a limit, the classes apart that it does not cover."""
    foods, figures = read
    likely, off, by_eye = _ZERO, dict[str, Fraction](), dict[str, Fraction]()
    for part in plate:
        if limit.classes and foods[part.food]["cutoff_class"] not in limit.classes:
            continue
        load = typical_of(figures, part.food, limit.group) * part.grams / 100 / people
        likely += load
        off[part.item] = off.get(part.item, _ZERO) + deviation(part, limit.group, figures, sure) / people
        if not part.weighed and part.off is None:
            by_eye[part.item] = by_eye.get(part.item, _ZERO) + load * _eye(part, sure)
    return Sum(likely, off, by_eye)


class Past(NamedTuple):
    """What one person ate before and still counts under a limit: likely, and by how much each item may be more."""

    likely: Fraction = _ZERO
    off: tuple[Fraction, ...] = ()


def pasts_of(request: Mapping[str, Any], limit: Limit, food: str | None) -> list[Past]:
    """Of each person whose past counts; nothing where nobody's does."""
    found: dict[str, Past] = {}
    for who, share, loads in _before(request):
        past, off = found.get(who, Past()), dict[str, Fraction]()
        likely = past.likely
        for load in loads:
            if load["group"] != limit.group or (limit.classes and load["cutoff_class"] not in limit.classes):
                continue
            if food is not None and load["food"] != food:
                continue
            likely += share * Fraction(load["likely_ug"]) / 1_000_000
            off[load["item"]] = off.get(load["item"], _ZERO) + share * Fraction(load["off_ug"]) / 1_000_000
        found[who] = Past(likely, (*past.off, *off.values()))
    return list(found.values()) or [Past()]


def _before(request: Mapping[str, Any]) -> Iterator[tuple[str, Fraction, Sequence[Mapping[str, Any]]]]:
    """For each person at the table: which share of an entry in their own window still counts, and its loads."""
    stacking = request.get("stacking")
    if not stacking:
        return
    now = datetime.fromisoformat(stacking["at"])
    entries = request.get("eaten") or ()
    owns = {own["who"]: own for own in stacking.get("own") or ()}
    for who in stacking["who"] or {"everyone", *owns, *(entry["who"] for entry in entries)}:
        own = owns.get(who, {})
        hours = stacking["window_hours"] if own.get("window_hours") is None else own["window_hours"]
        fade = stacking["fade"] if own.get("fade") is None else own["fade"]
        window = Fraction(str(hours)) * 3600
        for entry in entries:
            gap = (now - datetime.fromisoformat(entry["at"])) // timedelta(seconds=1)
            clocks = [60 * (a - b) for a in entry.get("offsets_min") or () for b in stacking.get("offsets_min") or ()]
            seconds = Fraction(min((gap + ahead for ahead in clocks or [0] if gap + ahead >= 0), default=-1))
            if entry["who"] in (who, "everyone") and 0 <= seconds < window:
                yield who, 1 - seconds / window if fade else Fraction(1), entry["loads"]


def passes(brought: Sum, limit: Limit, past: Past) -> str:
    """How a plate passes a limit with what was eaten before; empty where it does not."""
    before = sorted(past.off)[-2:]
    used_up = past.likely + _NEARLY >= limit.typical
    if limit.most is not None and past.likely + sum(before, _ZERO) + _NEARLY >= limit.most:
        used_up = True
    if used_up:
        return f"{_told(brought.likely)} g where the limit is used up" if brought.likely > TO_GRAMS else ""
    likely, room = past.likely + brought.likely, limit.typical + TO_GRAMS
    if likely > room:
        return f"likely {_told(likely)} g, the limit is {_told(limit.typical)} g"
    most = past.likely + brought.at_most(past.off)
    if limit.most is not None and most > limit.most + TO_GRAMS:
        return f"at most {_told(most)} g, it may be {_told(limit.most)} g"
    for item, load in brought.by_eye.items():
        if likely + load > room:
            return f"{item} must be weighed: likely {_told(likely)} g of {_told(limit.typical)} g"
    return ""


def _told(grams: Fraction) -> str:
    return f"{float(grams):.4f}"


def limit_faults(
    plate: Sequence[Part],
    limits: Iterable[Limit],
    people: int | Fraction,
    request: Mapping[str, Any],
    read: tuple[Mapping[str, Row], Figures],
) -> list[str]:
    """Every limit of a sitting or of one food that a plate passes; `read` are foods and figures."""
    sure, faults = sure_of(request["tolerance"]), []
    for limit in limits:
        if limit.scope == "sitting":
            brought = sum_of(plate, limit, read, people, sure)
            told = {passes(brought, limit, past) for past in pasts_of(request, limit, None)}
            faults += [f"{limit.key} a person: {one}" for one in sorted(told - {""})]
        elif limit.scope == "food":
            for food in dict.fromkeys(part.food for part in plate):
                mine = [part for part in plate if part.food == food]
                brought = sum_of(mine, limit, read, people, sure)
                told = {passes(brought, limit, past) for past in pasts_of(request, limit, food)}
                if brought.likely or brought.at_most():
                    faults += [f"{food} alone, {limit.key}: {one}" for one in sorted(told - {""})]
    return faults


def shown_faults(
    shown: Mapping[str, Any],
    plate: Sequence[Part],
    limits: Sequence[Limit],
    people: int,
    request: Mapping[str, Any],
    read: tuple[Mapping[str, Row], Figures],
) -> list[str]:
    """Numbers shown are never below the recomputed ones, and above them by rounding only."""
    sure, faults = sure_of(request["tolerance"]), []
    # Figures are rounded up to a milligram in 100 g, likely and off, each food by itself.
    slack = _ROUNDED + Fraction("0.00003") * whole_grams(plate) / people
    for limit in limits:
        if limit.scope != "sitting":
            continue
        brought = sum_of(plate, limit, read, people, sure)
        for name, truth in (("loads_g", brought.likely), ("at_most_g", brought.at_most())):
            told = Fraction(str(shown[name][limit.key]))
            if not truth - _ROUNDED <= told <= truth + slack:
                faults.append(f"{name} of {limit.key} is shown as {_told(told)}, it is {_told(truth)}")
        if "limits_g" in shown:
            told_limit = [None if one is None else Fraction(str(one)) for one in shown["limits_g"][limit.key]]
            same = [one for one in limits if one.scope == "sitting" and one.key == limit.key]
            most = min((one.most for one in same if one.most is not None), default=None)
            if told_limit != [min(one.typical for one in same), most]:
                faults.append(f"the limit of {limit.key} is shown as {shown['limits_g'][limit.key]}")
    if "foods_near" in shown:
        faults += _near_faults(
            shown["foods_near"], plate, limits, lambda part, limit: sum_of(part, limit, read, people, sure).likely
        )
    return faults


def _near_faults(
    near: Sequence[Mapping[str, Any]],
    plate: Sequence[Part],
    limits: Sequence[Limit],
    likely: Callable[[Sequence[Part], Limit], Fraction],
) -> list[str]:
    """Whatever comes within a tenth of its own cut-off is named; `likely` is what a part of the plate brings each."""
    named = {(one["food"], one["group"]) for one in near}
    return [
        f"{food} is near its own limit of {limit.key} and not named"
        for limit in limits
        if limit.scope == "food"
        for food in dict.fromkeys(part.food for part in plate)
        if (food, limit.group) not in named
        and likely([part for part in plate if part.food == food], limit) >= _NEAR * limit.typical
    ]


def protein_faults(
    dinner: Mapping[str, Any], plate: Iterable[Part], request: Mapping[str, Any], foods: Mapping[str, Row]
) -> list[str]:
    """Protein and lysine under the floors asked for; unknown is none."""
    faults, plate = [], list(plate)
    for name, floor, unit in (
        ("protein_g", Fraction(str(request["protein_floor_g"])), "g of protein"),
        ("lysine_mg", Fraction(str(request.get("lysine_mg", 0))), "mg of lysine"),
    ):
        total = sum((Fraction(foods[part.food][name] or 0) * part.grams for part in plate), _ZERO)
        each = total / 100 / dinner["people"]
        if each < floor:
            faults.append(f"{float(each):.2f} {unit} a person, the floor is {float(floor):g}")
    return faults

"""Each person's plate at a table of several, recomputed by itself: their share of the dish and what is served apart.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.allergens import held_by
from calmlarder.checks.limits import Limit
from calmlarder.checks.loads import Figures, Part, Sum, apart, plate_of, sum_of, sure_of, whole_grams
from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.tables import DIETS, Row
from calmlarder.checks.within_limits import passes, pasts_of

_ZERO = Fraction(0)
_SHOWN = Fraction("0.0002")  # of loads shown, g
_FIGURES = Fraction("0.00003")  # figures are rounded up to a mg in 100 g


class Read(NamedTuple):
    """What plates are read against: rows of foods, figures, mixtures that are a sum, boxes of the larder, folders."""

    foods: Mapping[str, Row]
    figures: Figures
    mixed: Mapping[str, Mapping[str, Fraction]]
    boxes: Mapping[str, Any]
    folders: Sequence[Path]


class Plate(NamedTuple):
    """What somebody gets: parts of dishes, each with how many such shares the dish has."""

    dishes: tuple[tuple[tuple[Part, ...], Fraction], ...]
    whole: tuple[tuple[tuple[Part, ...], Fraction], ...]  # mixtures not taken apart

    @property
    def parts(self) -> list[Part]:
        return [part for parts, _ in self.dishes for part in parts]

    def under(self, limit: Limit, food: str | None, request: Mapping[str, Any], read: Read) -> Sum:
        """All of it under one limit, of one food where it is named."""
        likely, off, by_eye = _ZERO, dict[str, Fraction](), dict[str, Fraction]()
        sure = sure_of(request["tolerance"])
        for parts, shares in self.dishes:
            mine = [part for part in parts if food is None or part.food == food]
            one = sum_of(mine, limit, (read.foods, read.figures), shares, sure)
            likely += one.likely
            for item, grams in one.off.items():
                off[item] = off.get(item, _ZERO) + grams
            for item, grams in one.by_eye.items():
                by_eye[item] = by_eye.get(item, _ZERO) + grams
        return Sum(likely, off, by_eye)


def table_faults(dinner: Mapping[str, Any], request: Mapping[str, Any], read: Read) -> list[str]:
    """What is wrong with anybody's plate; nothing where the request names nobody."""
    table = request.get("table") or ()
    if not table:
        return []
    meals = Fraction(dinner["people"], len(table))  # a dish may be for several sittings of theirs
    faults = [] if meals.denominator == 1 else [f"{len(table)} are at the table, it serves {dinner['people']}"]
    everything = [*dinner["uses"], *dinner.get("apart", ())]
    avoid = {allergen for eater in table for allergen in eater["avoid"]} | set(request["avoid"])
    for use in everything:  # one kitchen: an allergen of one is in nobody's part
        faults += [f"{use['food']} holds {one}" for one in sorted(avoid & _allergens(use["food"], read))]
    for eater in table:
        plate = _plate(dinner, eater, table, read)
        found = [*_limits(plate, eater, request, read), *_eatable(plate, eater, read)]
        least = Fraction(str(request["protein_floor_g"])) * len(table) / _shares(eater, table)
        found += [*_protein(plate, eater, least, read), *_shown(plate, eater, dinner, request, read)]
        faults += [f"{eater['who']}: {fault}" for fault in found]
    return faults


def _plate(
    dinner: Mapping[str, Any], eater: Mapping[str, Any], table: Sequence[Mapping[str, Any]], read: Read
) -> Plate:
    meals = Fraction(dinner["people"], len(table))
    dishes = [(plate_of(dinner, read.boxes), meals * _shares(eater, table))]
    for part in dinner.get("apart", ()):
        if eater["who"] in part["for"]:
            those = [one for one in table if one["who"] in part["for"]]
            dishes.append((plate_of({"uses": [part]}, read.boxes), _shares(eater, those)))
    return Plate(
        tuple((tuple(apart(parts, read.mixed, read.figures)), shares) for parts, shares in dishes),
        tuple((tuple(parts), shares) for parts, shares in dishes),
    )


def _shares(eater: Mapping[str, Any], those: Iterable[Mapping[str, Any]]) -> Fraction:
    return sum((Fraction(one["appetite"]) for one in those), _ZERO) / Fraction(eater["appetite"])


def _limits(plate: Plate, eater: Mapping[str, Any], request: Mapping[str, Any], read: Read) -> Iterator[str]:
    mine = {**request, "stacking": None}
    if request.get("stacking") and not eater["is_guest"]:
        mine["stacking"] = {**request["stacking"], "who": [eater["who"]]}
    for limit in limits_for(read.folders, eater, request["sitting"]):
        if limit.scope not in {"sitting", "food"}:
            continue
        foods = [None] if limit.scope == "sitting" else list(dict.fromkeys(part.food for part in plate.parts))
        for food in foods:
            brought = plate.under(limit, food, request, read)
            if brought.likely or brought.at_most():
                wrong = {passes(brought, limit, past) for past in pasts_of(mine, limit, food)} - {""}
                yield from (f"{food or 'the plate'}, {limit.key}: {one}" for one in sorted(wrong))


def _eatable(plate: Plate, eater: Mapping[str, Any], read: Read) -> Iterator[str]:
    for part in plate.parts:
        food = read.foods[part.food]
        if DIETS.index(food["diet"]) > DIETS.index(eater["diet"]):
            yield f"{food['id']} is not {eater['diet']}"
        if food["id"] in eater["never"]:
            yield f"{food['id']} is never eaten"


def _allergens(food: str, read: Read) -> set[str]:
    ids = [part["food"] for part in read.boxes[food]["mixture"]["parts"]] if food in read.boxes else [food]
    return held_by(read.foods[each] for each in ids)


def _protein(plate: Plate, eater: Mapping[str, Any], most: Fraction, read: Read) -> Iterator[str]:
    """Their own least, or what the sitting asks of their share where that is less (a breakfast)."""
    each, least = _protein_of(plate, read), min(most, Fraction(str(eater["protein_floor_g"])))
    if each < least - Fraction("0.0001"):
        yield f"{float(each):.2f} g of protein, the least is {float(least):.2f}"


def _protein_of(plate: Plate, read: Read) -> Fraction:
    return sum(
        (
            Fraction(read.foods[part.food]["protein_g"] or 0) * part.grams / 100 / shares
            for parts, shares in plate.whole
            for part in parts
        ),
        _ZERO,
    )


def _shown(
    plate: Plate, eater: Mapping[str, Any], dinner: Mapping[str, Any], request: Mapping[str, Any], read: Read
) -> Iterator[str]:
    """What is shown of their plate is what it brings."""
    told = next((one for one in dinner.get("portions", ()) if one["who"] == eater["who"]), None)
    if told is None:
        yield "nothing is shown of their plate"
        return
    if abs(Fraction(str(told["protein_g"])) - _protein_of(plate, read)) > Fraction("0.06"):
        yield f"protein is shown as {told['protein_g']}, it is {float(_protein_of(plate, read)):.2f}"
    slack = _SHOWN + _FIGURES * sum((whole_grams(parts) / shares for parts, shares in plate.dishes), _ZERO)
    for limit in limits_for(read.folders, eater, request["sitting"]):
        if limit.scope == "sitting":
            brought = plate.under(limit, None, request, read)
            for name, truth in (("loads_g", brought.likely), ("at_most_g", brought.at_most())):
                shown = Fraction(str(told[name][limit.key]))
                if not truth - _SHOWN <= shown <= truth + slack:
                    yield f"{name} of {limit.key} is shown as {float(shown):.4f}, it is {float(truth):.4f}"

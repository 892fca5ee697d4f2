"""Amounts as a cook reads them: what goes on the scale, grams in the steps, kitchen measures.

Nothing of calmlarder is imported here but the other checks.
"""

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from calmlarder.checks.dinner_read import Read
from calmlarder.checks.tables import rows

_OIL_KCAL = Fraction("4.5") * 9  # in a teaspoon: 5 ml at 0.9 g/ml, 9 kcal/g (Atwater)
_OIL = re.compile(r"(\d+) tsp oil")
_PARTS = {"a quarter": "0.25", "a third": "0.333", "half": "0.5", "two thirds": "0.667", "three quarters": "0.75"}
_COUNT = re.compile(r"about (\d+)(½?)(?: (\w+))?")
_PART = re.compile(rf"about ({'|'.join(_PARTS)}) of (?:one|a (\w+))")
# What can be eaten of a mussel in its shell (US Department of Agriculture, Standard Reference, refuse: recalled).
_IN_SHELLS, _OF_A_SHELL, _NEAREST_SHELLS_G = re.compile(r"(\d+) g in their shells"), Decimal("0.27"), 10
# What can be eaten of what is weighed raw with its bones (the same).
_OF_BONES = {
    "chicken-drumsticks": "0.67", "chicken-whole": "0.68", "chicken-wings": "0.54", "turkey-leg": "0.7",
    "turkey-wings": "0.6", "turkey-whole": "0.74", "duck-whole": "0.7", "goose": "0.75", "game-bird": "0.75",
    "game-bird-small": "0.75", "quail": "0.8", "poussin": "0.62",
}  # fmt: skip
_BONES, _NEAREST_BONES_G = re.compile(r"(?:(.*), )?(\d+) g including the bones"), 25
_OF_THE_LINE = re.compile(r"all (\d+)|(\d+) of the (\d+)")
_NEAREST, _NEAREST_PART = Decimal("0.27"), Decimal("0.21")  # half of a half; the parts lie further apart
_KINDS_NEVER_HALVED = {"poultry"}
_NEVER_HALVED, _NEAREST_WHOLE = {"floret"}, Decimal("0.51")  # told in whole ones
_FILLETS = re.compile(r"\b(?:fillet|trout|plaice)\b")  # a piece of it is a fillet
_COUNTED, _SMALL_PIECE_G, _SEVERAL = {"piece", "medium", "stalk"}, 20, 3  # of small or many things no half is told
_SPRAYS = {"oil-spray"}  # told as a coat of it
_PINCH_G = Decimal("0.5")  # a food of which a person gets less goes in by the pinch
_SMALL_PORTION_G = 40  # below it amounts are told to a gram, else to five: ours
_REST = r"\(with the rest, unweighed, that is"  # so much of a food is no whole pack, and goes on the scale


def oil_kcal(read: Read) -> Fraction:
    """Of oil that is taken for granted: as many teaspoons as the steps say."""
    return sum((Fraction(found) for found in _OIL.findall(_granted(read))), Fraction(0)) * _OIL_KCAL


def _granted(read: Read) -> str:
    return "; ".join(read.dinner["taken_for_granted"])


def scale_faults(read: Read) -> Iterator[str]:
    """A line for each food to weigh; what is used whole, and whose grams are known, needs no scale."""
    wanted = []
    for food, uses in _weighed(read).items():
        line = f"{sum(use['grams'] for use in uses)} g {read.name(food)}"
        parts = "; ".join(f"{use['grams']} g of `{use['line']}`" for use in uses)
        wanted.append(f"{line} ({parts})" if len(uses) > 1 else line)
    if sorted(read.dinner["weigh_first"]) != sorted(wanted):
        yield f"the weigh list is {'; '.join(read.dinner['weigh_first']) or 'empty'}, to weigh: {'; '.join(wanted)}"


def _weighed(read: Read) -> dict[str, list[Mapping[str, Any]]]:
    """What goes on the scale, by food."""
    found: dict[str, list[Mapping[str, Any]]] = {}
    for use in read.dinner["uses"]:
        lot = read.lots[use["lot"]]
        known = "grams_low" in lot and lot["grams_low"] == lot["grams_high"]  # what is bought comes as it comes
        unit = dealt_in(read, use["food"])
        if use["how"] == "weigh" and not (known and use["grams"] + unit > Decimal(str(lot["grams"]))):
            found.setdefault(use["food"], []).append(use)
    return found


def dealt_in(read: Read, food: str) -> int:
    """The grams it is dealt out in: a box, an egg, a wrap, a slice, else 5 g, of what comes in small portions 1 g."""
    if food in read.boxes:
        return int(read.boxes[food]["mixture"]["share_grams"])
    piece = {"egg": "piece", "wrap": "piece", "bread": "slice"}.get(read.foods[food]["kind"])
    grams = _grams_of(read, food, piece) if piece else None
    if grams is not None:
        return max(1, round(grams))
    return 5 if Decimal(read.foods[food]["portion_g"]) >= _SMALL_PORTION_G else 1


def step_faults(read: Read) -> Iterator[str]:
    """Every amount that stands in a step is one of the dish, and every amount of the dish stands in a step."""
    sums: dict[str, dict[str, int]] = {}
    for use in read.dinner["uses"]:
        slots = sums.setdefault(read.name(use["food"]), {})
        slots[use["slot"]] = slots.get(use["slot"], 0) + use["grams"]
    text = " ".join(read.dinner["steps"])
    names = "|".join(re.escape(name) for name in sorted(sums, key=len, reverse=True))
    for use in read.dinner["uses"]:
        bones, name = _BONES.fullmatch(use["household"] or ""), read.name(use["food"])
        # `630 g chicken pieces (950 g including the bones)`, `2 wings (60 g, 100 g including the bones)`
        if _IN_SHELLS.fullmatch(use["household"] or "") is not None:
            text = text.replace(f"{use['grams']} g {name} ({use['household']})", f"{use['grams']} g {name}")
        if bones is not None:
            too = f"{bones[2]} g including the bones)"
            text = text.replace(f"{use['grams']} g {name} ({too}", f"{use['grams']} g {name}")
            text = text.replace(f"{name} ({use['grams']} g, {too}", f"{name} ({use['grams']} g)")
    text = re.sub(r"(?<![\d.])1 ([\w -]*egg) (?=\(\d+ g\))", r"1 \1s ", text)  # 1 egg (55 g)
    text = re.sub(rf"(?<![\d.])\d+ ({names}) \((\d+) g\)", r"\2 g \1", text)  # 2 eggs (110 g)
    for spoons, name, _ in re.findall(rf"(\d*½? ?t(?:sp|bsp)) ({names}) \((\d+) g\)", text):
        if f"about {spoons}" not in [use["household"] for use in read.dinner["uses"] if read.name(use["food"]) == name]:
            yield f"a step says {spoons} {name}, which is not how the dish measures it"
    text = re.sub(rf"\d*½? ?t(?:sp|bsp) ({names}) \((\d+) g\)", r"\2 g \1", text)  # 4 tsp olive oil (16 g)
    on_scale = {read.name(food): sum(use["grams"] for use in uses) for food, uses in _weighed(read).items()}
    for part, whole, name in re.findall(rf"(\d+) g of the [^()]+ {_REST} (\d+) g ({names})\)", text):
        if not int(part) <= on_scale.get(name, 0) < int(whole):
            yield f"a step weighs {part} g of {name}, {on_scale.get(name, 0)} g of it go on the scale"
    text = re.sub(rf"\d+ g of the [^()]+ {_REST} ", "", text)
    said = re.findall(rf"(?<![\d.])(\d+) g (?:({names})(?![\w-]))?", text)
    for grams, name in said:
        if not name:
            yield f"a step says {grams} g of nothing in the dish"
        elif int(grams) not in sums[name].values():
            yield f"a step says {grams} g {name}, the dish has {' and '.join(map(str, sums[name].values()))} g"
    told = {(name, int(grams)) for grams, name in said}
    oil, granted = (sum(int(found) for found in _OIL.findall(words)) for words in (text, _granted(read)))
    if oil != granted:
        yield f"the steps say {oil} tsp of oil beyond the larder's, {granted} tsp are taken for granted"
    for name, slots in sums.items():
        for grams in slots.values():
            if (name, grams) not in told and not any(f"{some} of {name}" in text for some in ("a pinch", "a coat")):
                yield f"no step says {grams} g {name}"


_CHICKEN_PIECES = "chicken-drumsticks"
# A thigh of 150 to 200 g, a quarter of 330 g (common practice, no source), less a fifth and a quarter of bone
# (USDA SR 28, 05091 and 05075: recalled).
_OF_A_CHICKEN = (
    (re.compile(r"\bthighs?\b", re.IGNORECASE), Decimal(135)),
    (re.compile(r"\b(?:marylands?|(?:leg )?quarters)\b", re.IGNORECASE), Decimal(240)),
)


def measure_faults(read: Read) -> Iterator[str]:
    """Every kitchen measure is about the grams beside it."""
    yield from _bone_faults(read)
    for use in map(_less_bones, read.dinner["uses"]):
        if use["household"] is None:
            continue
        if use["household"] == "a pinch" and Decimal(read.foods[use["food"]]["portion_g"]) < _PINCH_G:
            continue
        if use["household"] == "a coat" and use["food"] in _SPRAYS:
            continue
        by_line = _OF_THE_LINE.fullmatch(use["household"])
        if by_line is not None:
            yield from _counted_in_line(use, read.lots[use["lot"]], by_line)
            continue
        in_shells = _IN_SHELLS.fullmatch(use["household"])
        if in_shells is not None:
            if abs(int(in_shells[1]) * _OF_A_SHELL - use["grams"]) > _NEAREST_SHELLS_G:
                yield f"`{use['household']}` is not {use['grams']} g of {use['food']}"
            continue
        count, part = _COUNT.fullmatch(use["household"]), _PART.fullmatch(use["household"])
        word = (count and count[3]) or (part and part[2]) or "piece"
        if word == "piece" and _FILLETS.search(read.foods[use["food"]]["name"]):
            word = "fillet" if _grams_of(read, use["food"], "fillet") is not None else word
        is_pack = word in {"pack", "packs"}
        line = read.lots[use["lot"]]["line"]
        one = _typed_pack(line) if is_pack else _of_a_chicken(use["food"], line) or _grams_of(read, use["food"], word)
        if one is None or not (count or part):
            yield f"`{use['household']}` says nothing about {use['food']}"
            continue
        said = Decimal(_PARTS[part[1]]) if part else Decimal(count[1]) + Decimal("0.5") * bool(count[2])  # type: ignore[index]
        halved = word.rstrip("s") not in _NEVER_HALVED and read.foods[use["food"]]["kind"] not in _KINDS_NEVER_HALVED
        several = count and int(count[1]) >= _SEVERAL
        halved = halved and not (word.rstrip("s") in _COUNTED and (one < _SMALL_PIECE_G or several))
        off = _NEAREST_WHOLE if count and not halved else _NEAREST_PART if part else _NEAREST
        if abs(said * one - use["grams"]) > off * one:
            yield f"`{use['household']}` is {said * one:.0f} g of {use['food']}, not {use['grams']} g"


def _bone_faults(read: Read) -> Iterator[str]:
    """What a thing weighs with its bones is what can be eaten of it, and they."""
    for use in read.dinner["uses"]:
        bones = _BONES.fullmatch(use["household"] or "")
        if bones is None:
            continue
        share = Decimal(_OF_BONES.get(use["food"], "0"))
        if not share or abs(use["grams"] / share - int(bones[2])) > _NEAREST_BONES_G:
            yield f"`{use['household']}` is not {use['grams']} g of {use['food']}"


def _less_bones(use: Mapping[str, Any]) -> Mapping[str, Any]:
    """A use with its measure alone, without what it weighs with its bones."""
    bones = _BONES.fullmatch(use["household"] or "")
    return use if bones is None else {**use, "household": bones[1]}


def _of_a_chicken(food: str, line: str) -> Decimal | None:
    """G that are eaten of a thigh or a quarter with its bone, in the row of all such pieces."""
    named = (grams for sort, grams in _OF_A_CHICKEN if food == _CHICKEN_PIECES and sort.search(line))
    return next(named, None)


def _counted_in_line(use: Mapping[str, Any], lot: Mapping[str, Any], said: re.Match[str]) -> Iterator[str]:
    """`all 4`, `2 of the 3`: the line counts so many, and that part of the lot goes in, to half of one."""
    of = int(said[1] or said[3])
    some = int(said[1] or said[2])
    each = Decimal(str(lot["grams"])) / of
    if str(of) not in re.findall(r"\d+", use["line"]) or abs(some * each - use["grams"]) > each / 2 + 5:
        yield f"`{use['household']}` of `{use['line']}` is {some * each:.0f} g, not {use['grams']} g"


def _typed_pack(line: str) -> Decimal | None:
    """The one weight in g that a line says."""
    said = re.findall(r"(?<![\d.,/])(\d+(?:\.\d+)?) ?g(?:r|ms?|rams?)?\b", line.lower())
    return Decimal(said[0]) if len(said) == 1 else None


def _grams_of(read: Read, food: str, word: str) -> Decimal | None:
    """Grams of a kitchen measure: the food's own row, its kind's, or the general one."""
    kind = "boxed" if food in read.boxes else read.foods[food]["kind"]
    whose = (food, f"kind:{kind}", "*")
    measures = rows(read.folders, "measures.csv", ("food", "measure"), {*whose})
    for measure in (word, word.removesuffix("s")):
        for key in whose:
            if (key, measure) in measures:
                return Decimal(measures[key, measure]["grams"])
    return None

"""What a cook reads of a dinner, read again: days left, protein, the scale, grams in the steps, measures, cautions.

A right plan told wrongly is cooked wrongly. Nothing of calmlarder is imported here but the other checks.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.lots import COOKED, Lot, days_of
from calmlarder.checks.tables import Row, rows

_HALF = {
    "protein_g": Fraction("0.05"), "fibre_g": Fraction("0.05"), "lysine_mg": Fraction("0.56"),
    "energy_kcal": Fraction("0.56"),
}  # fmt: skip  # shown so coarsely
_BOX_ROUNDED = {
    "protein_g": Fraction("0.05"), "fibre_g": Fraction("0.5"), "lysine_mg": Fraction(10), "energy_kcal": Fraction(1),
}  # fmt: skip
_AT_LEAST = ("protein_g", "energy_kcal")  # said to be at least so much where a figure is unknown
_OIL_KCAL = Fraction("4.5") * 9  # in a teaspoon: 5 ml at 0.9 g/ml, 9 kcal/g (Atwater)
_OF_SOME = re.compile(r"(?:(?:only|just) )?(?:one|two|three|[123]|a couple|couple|a few|few|some) ")  # `one bendy`
_OIL = re.compile(r"(\d+) tsp oil")
_PARTS = {"a quarter": "0.25", "a third": "0.333", "half": "0.5", "two thirds": "0.667", "three quarters": "0.75"}
_COUNT = re.compile(r"about (\d+)(½?)(?: (\w+))?")
_PART = re.compile(rf"about ({'|'.join(_PARTS)}) of (?:one|a (\w+))")
_NEAREST, _NEAREST_PART = Decimal("0.27"), Decimal("0.21")  # half of a half; the parts lie further apart
_SAID_BY = "Food safety as advised by: "
_URGENT_DAYS = 7
_THAWED = {"fish", "shellfish", "poultry", "meat", "tofu", "tempeh", "seitan"}
_PINCH_G = Decimal("0.5")  # a food of which a person gets less goes in by the pinch
_SMALL_PORTION_G = 40


class Read(NamedTuple):
    """A dinner with what it is read against: its lots by id, rows of its foods, its pattern, boxes by food."""

    dinner: Mapping[str, Any]
    lots: Mapping[str, Lot]
    foods: Mapping[str, Row]
    pattern: Mapping[str, Any]
    boxes: Mapping[str, Any]
    folders: Sequence[Path]
    today: date

    def name(self, food: str) -> str:
        """What a food is called on the screen; a boxed dish by its title. `_called` judges that name."""
        if food in self.boxes:
            title = self.boxes[food]["title"]
            return f"{title[:1].lower()}{title[1:]} (boxed)"
        return next((use["name"] for use in self.dinner["uses"] if use["food"] == food), self.foods[food]["name"])


def words_faults(read: Read, plate: Sequence[tuple[str, Fraction]]) -> list[str]:
    """All that is told wrongly; `plate` is grams of each food, a boxed dish taken apart."""
    if any(read.lots.get(use["lot"], {}).get("food") != use["food"] for use in read.dinner["uses"]):
        return []  # another lot than it says: said already
    return [
        *_called(read),
        *_nutrients(read, plate),
        *_days(read),
        *_scale(read),
        *_steps(read),
        *_measures(read),
        *_signs(read),
        *_cautions(read),
        *_finished(read),
    ]


def _nutrients(read: Read, plate: Sequence[tuple[str, Fraction]]) -> Iterator[str]:
    people = read.dinner["people"]
    boxed = any(use["food"] in read.boxes for use in read.dinner["uses"])
    for name, half in _HALF.items():
        shown = Fraction(str(read.dinner["per_person"][name]))
        whole = sum((Fraction(read.foods[food][name] or 0) * grams for food, grams in plate), Fraction(0))
        whole += 100 * _oil_kcal(read) if name == "energy_kcal" else 0
        off = abs(shown * 100 * people - whole)
        if off > (half + (_BOX_ROUNDED[name] if boxed else 0)) * 100 * people + Fraction("0.001"):
            yield f"{name} is shown as {shown}, it is {float(whole / 100 / people):.2f}"
    unknown = {name for name in _AT_LEAST for food, grams in plate if grams and not read.foods[food][name]}
    if unknown != {*read.dinner["at_least"]}:
        yield f"at least is said of {read.dinner['at_least']}, unknown are figures of {sorted(unknown)}"


def _oil_kcal(read: Read) -> Fraction:
    """Of oil that is taken for granted: as many teaspoons as the steps say."""
    return sum((Fraction(found) for found in _OIL.findall(_granted(read))), Fraction(0)) * _OIL_KCAL


def _granted(read: Read) -> str:
    return "; ".join(read.dinner["taken_for_granted"])


def _days(read: Read) -> Iterator[str]:
    keeping = rows(read.folders, "keeping.csv", ("food", "place", "state"))
    for use in read.dinner["uses"]:
        lot = read.lots[use["lot"]]
        days = [on for on, _ in days_of(lot, read.foods, keeping, read.today)]
        # What is bendy today is not fresher tomorrow: a plan says on which day the line was read.
        read_on = date.fromisoformat(lot["read_on"]) if "read_on" in lot else read.today
        days += [read_on + timedelta(days=1)] if is_all_poorly(lot) else []
        left = (min(days) - read.today).days if days else None
        if use["days_left"] != left:
            yield f"`{use['line']}` is shown with {use['days_left']} days left, it has {left}"


def is_all_poorly(lot: Lot) -> bool:
    """Whether a condition is said of all of a lot, and not of one or two of it; what is frozen gets no worse."""
    if lot["place"] == "freezer":
        return False
    said = [one for one in (lot.get("condition") or "").split(", ") if one]
    return any(not _OF_SOME.match(one) for one in said)


def _called(read: Read) -> Iterator[str]:
    """A food goes by its name in the tables, or by another of its names that stands in the cook's own line."""
    for use in read.dinner["uses"]:
        food, name = use["food"], use["name"]
        if food in read.boxes or name == read.foods[food]["name"]:
            continue
        named = rows(read.folders, "names.csv", ("name", "food"), {name})
        known = any(food == row["food"] for row in named.values())
        if not known or any(word not in use["line"].lower() for word in name.lower().split()):
            yield f"`{use['line']}` is called {name}, which is no name of {food} in that line"


_REST = r"\(with the rest, unweighed, that is"  # so much of a food is no whole pack, and goes on the scale


def _scale(read: Read) -> Iterator[str]:
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
        unit = _dealt_in(read, use["food"])
        if use["how"] == "weigh" and not (known and use["grams"] + unit > Decimal(str(lot["grams"]))):
            found.setdefault(use["food"], []).append(use)
    return found


def _dealt_in(read: Read, food: str) -> int:
    """The grams it is dealt out in: a box, an egg, a wrap, a slice, else 5 g, of what comes in small portions 1 g."""
    if food in read.boxes:
        return int(read.boxes[food]["mixture"]["share_grams"])
    piece = {"egg": "piece", "wrap": "piece", "bread": "slice"}.get(read.foods[food]["kind"])
    grams = _grams_of(read, food, piece) if piece else None
    if grams is not None:
        return max(1, round(grams))
    return 5 if Decimal(read.foods[food]["portion_g"]) >= _SMALL_PORTION_G else 1


def _steps(read: Read) -> Iterator[str]:
    """Every amount that stands in a step is one of the dish, and every amount of the dish stands in a step."""
    sums: dict[str, dict[str, int]] = {}
    for use in read.dinner["uses"]:
        slots = sums.setdefault(read.name(use["food"]), {})
        slots[use["slot"]] = slots.get(use["slot"], 0) + use["grams"]
    text = " ".join(read.dinner["steps"])
    names = "|".join(re.escape(name) for name in sorted(sums, key=len, reverse=True))
    text = re.sub(r"(?<![\d.])1 ([\w -]*egg) (?=\(\d+ g\))", r"1 \1s ", text)  # 1 egg (55 g)
    text = re.sub(rf"(?<![\d.])\d+ ({names}) \((\d+) g\)", r"\2 g \1", text)  # 2 eggs (110 g)
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
            if (name, grams) not in told and f"a pinch of {name}" not in text:
                yield f"no step says {grams} g {name}"


def _measures(read: Read) -> Iterator[str]:
    for use in read.dinner["uses"]:
        if use["household"] is None:
            continue
        if use["household"] == "a pinch" and Decimal(read.foods[use["food"]]["portion_g"]) < _PINCH_G:
            continue
        count, part = _COUNT.fullmatch(use["household"]), _PART.fullmatch(use["household"])
        word = (count and count[3]) or (part and part[2]) or "piece"
        is_pack = word in {"pack", "packs"}
        one = _typed_pack(read.lots[use["lot"]]["line"]) if is_pack else _grams_of(read, use["food"], word)
        if one is None or not (count or part):
            yield f"`{use['household']}` says nothing about {use['food']}"
            continue
        said = Decimal(_PARTS[part[1]]) if part else Decimal(count[1]) + Decimal("0.5") * bool(count[2])  # type: ignore[index]
        if abs(said * one - use["grams"]) > (_NEAREST_PART if part else _NEAREST) * one:
            yield f"`{use['household']}` is {said * one:.0f} g of {use['food']}, not {use['grams']} g"


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


def _is_poorly(read: Read, lot: Lot) -> bool:
    """In a condition to speak of; what is called sprouting sprouts only where it is a root, a tuber or a bulb."""
    condition = lot.get("condition") or ""
    if "sprout" in condition and lot["food"] not in read.boxes:
        return read.foods[lot["food"]]["kind"] in {"potato", "root", "allium"}
    return bool(condition)


def _signs(read: Read) -> Iterator[str]:
    """Of what must be cooked through a step says how that is seen, in the words of cautions.csv or their beginning."""
    cautions = rows(read.folders, "cautions.csv", ("applies_to", "states", "until", "caution")).values()
    text = " ".join(read.dinner["steps"]).lower()
    eaten_cold = not {"dinner", "breakfast"}.intersection(read.pattern["sittings"])
    for use in read.dinner["uses"]:
        food = read.foods.get(use["food"])
        if food is None or read.pattern["slots"][use["slot"]]["method"] == "raw":
            continue
        if eaten_cold and food["state"] in COOKED:  # a box, a shake: what is cooked goes in as it is
            continue
        signs = [row["until"] for row in cautions if row["until"] and is_about(row, food)]
        if signs and not any(is_said(sign, text) for sign in signs):
            yield f"no step says how to see that {food['name']} is cooked through: {signs[0]}"


def is_about(row: Row, food: Row) -> bool:
    """Whether a row of cautions.csv speaks of a food in its state."""
    states = [state for state in row["states"].split(";") if state]
    return row["applies_to"] in (food["id"], f"kind:{food['kind']}") and (not states or food["state"] in states)


def is_said(sign: str, text: str) -> bool:
    """Whether a text, in small letters, has a sign or the beginning of its last word."""
    if sign.endswith("steaming hot"):
        return "steaming hot" in text  # a bowl that steams is not hot all through
    return re.search(rf"\b{sign.split()[-1][:4]}", text) is not None


def _thaws(lot: Lot, food: Row | None) -> bool:
    """What was frozen at home and goes to the heat whole; what is sold frozen is cooked from frozen."""
    if food is None or lot["place"] != "freezer":
        return False
    return food["kind"] in _THAWED and food["state"] != "frozen"


def _says_garlic(food: Row | None) -> bool:
    """Whether a made thing has garlic or onion in its name; bulbs, greens and infused oil are what they are."""
    return (
        food is not None
        and food["kind"] not in {"oil", "herb", "allium"}
        and re.search(r"\b(garlic|onions?)\b", food["name"].split(" without ")[0]) is not None
    )


def _cautions(read: Read) -> Iterator[str]:
    """What the pattern, the foods and the lots ask to be minded is said."""
    wanted = list(read.pattern.get("cautions", ()))
    cautions = rows(read.folders, "cautions.csv", ("applies_to", "states", "until", "caution"))
    sources = rows(read.folders, "sources.csv", ("key",))
    said, who = read.dinner["cautions"], next((c for c in read.dinner["cautions"] if c.startswith(_SAID_BY)), "")
    for use in read.dinner["uses"]:
        lot, food = read.lots[use["lot"]], read.foods.get(use["food"])
        for row in cautions.values() if food is not None else ():
            if food is None or not is_about(row, food):
                continue
            wanted += [f"{row['caution']}."] if row["caution"] else []
            authority = sources[(row["source"],)]["citation"].split(",")[0]
            if row["source"] != "common_practice" and authority not in who:
                yield f"it is not said that {authority} advises so"
        name = read.name(use["food"]).capitalize()
        about = [
            (use["days_left"] is not None and use["days_left"] < 0, f"{name}, past its best"),
            (_is_poorly(read, lot) and (use["days_left"] or 0) >= 0, f"{name} ({lot.get('condition')})"),
            (
                _thaws(lot, food),
                f"{name}: thaw before you start, overnight in the fridge, in a sealed bag in cold water",
            ),
            (_says_garlic(food), f"{name}: what it holds of garlic or onion"),
            (bool(lot["owner"]), f"{name} from {lot['owner']}"),
        ]
        for holds, start in about:
            if holds and not any(line.startswith(start) for line in said):
                yield f"nothing is said of: {start}"
    for line in dict.fromkeys(wanted):
        if line not in said:
            yield f"the caution is not shown: {line}"


def _finished(read: Read) -> Iterator[str]:
    """What is said to be used up is, and what is counted as used in time has a day."""
    rescued, uses = read.dinner["rescued"], {use["lot"]: use for use in read.dinner["uses"]}
    urgent = [use for use in uses.values() if use["days_left"] is not None and 0 <= use["days_left"] <= _URGENT_DAYS]
    if rescued["grams"] != sum(use["grams"] for use in urgent):
        yield f"{rescued['grams']} g are said to be rescued, {sum(use['grams'] for use in urgent)} g are"
    for lot_id, line in zip(rescued["finished_ids"], rescued["lots_finished"], strict=True):
        use = uses.get(lot_id)
        left = Decimal(str(read.lots[lot_id]["grams"])) - use["grams"] if use else None
        if use is None or use["line"] != line or left is None or left >= _dealt_in(read, use["food"]):
            yield f"`{line}` is said to be used up"

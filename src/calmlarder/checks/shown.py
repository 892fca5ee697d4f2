"""What a cook reads of a dinner, read again: days left, protein, the scale, grams in the steps, measures, cautions.

A right plan told wrongly is cooked wrongly. Nothing of calmlarder is imported here but the other checks.
"""

import re
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

from calmlarder.checks.at_the_stove import stove_faults
from calmlarder.checks.dinner_read import Read
from calmlarder.checks.lots import Lot, days_of, keeping_of
from calmlarder.checks.shown_amounts import dealt_in, measure_faults, oil_kcal, scale_faults, step_faults
from calmlarder.checks.shown_cautions import caution_faults, sign_faults
from calmlarder.checks.tables import rows

_HALF = {
    "protein_g": Fraction("0.05"), "fibre_g": Fraction("0.05"), "lysine_mg": Fraction("0.56"),
    "energy_kcal": Fraction("0.56"),
}  # fmt: skip  # shown so coarsely
_BOX_ROUNDED = {
    "protein_g": Fraction("0.05"), "fibre_g": Fraction("0.5"), "lysine_mg": Fraction(10), "energy_kcal": Fraction(1),
}  # fmt: skip
_AT_LEAST = ("protein_g", "energy_kcal")  # said to be at least so much where a figure is unknown
_RIPE_DAYS = 2  # a ripe avocado or mango; common practice, no source
_OF_SOME = re.compile(r"(?:(?:only|just) )?(?:one|two|three|[123]|a couple|couple|a few|few|some) ")  # `one bendy`
_URGENT_DAYS = 7


def words_faults(read: Read, plate: Sequence[tuple[str, Fraction]]) -> list[str]:
    """All that is told wrongly; `plate` is grams of each food, a boxed dish taken apart."""
    if any(read.lots.get(use["lot"], {}).get("food") != use["food"] for use in read.dinner["uses"]):
        return []  # another lot than it says: said already
    return [
        *_called(read),
        *_nutrients(read, plate),
        *_days(read),
        *scale_faults(read),
        *step_faults(read),
        *measure_faults(read),
        *sign_faults(read),
        *caution_faults(read),
        *stove_faults(read),
        *_finished(read),
    ]


def _nutrients(read: Read, plate: Sequence[tuple[str, Fraction]]) -> Iterator[str]:
    people = read.dinner["people"]
    boxed = any(use["food"] in read.boxes for use in read.dinner["uses"])
    for name, half in _HALF.items():
        shown = Fraction(str(read.dinner["per_person"][name]))
        whole = sum((Fraction(read.foods[food][name] or 0) * grams for food, grams in plate), Fraction(0))
        whole += 100 * oil_kcal(read) if name == "energy_kcal" else 0
        off = abs(shown * 100 * people - whole)
        if off > (half + (_BOX_ROUNDED[name] if boxed else 0)) * 100 * people + Fraction("0.001"):
            yield f"{name} is shown as {shown}, it is {float(whole / 100 / people):.2f}"
    unknown = {name for name in _AT_LEAST for food, grams in plate if grams and not read.foods[food][name]}
    if unknown != {*read.dinner["at_least"]}:
        yield f"at least is said of {read.dinner['at_least']}, unknown are figures of {sorted(unknown)}"


def _days(read: Read) -> Iterator[str]:
    keeping = keeping_of(read.folders, read.foods)
    for use in read.dinner["uses"]:
        lot = read.lots[use["lot"]]
        days = [on for on, _ in days_of(lot, read.foods, keeping, read.today)]
        # What is bendy today is not fresher tomorrow: a plan says on which day the line was read.
        read_on = date.fromisoformat(lot["read_on"]) if "read_on" in lot else read.today
        days += [read_on + timedelta(days=_RIPE_DAYS if _is_only_ripe(lot) else 1)] if is_all_poorly(lot) else []
        left = (min(days) - read.today).days if days else None
        if use["days_left"] != left:
            yield f"`{use['line']}` is shown with {use['days_left']} days left, it has {left}"


def _is_only_ripe(lot: Lot) -> bool:
    return [one for one in (lot.get("condition") or "").split(", ") if not _OF_SOME.match(one)] == ["ripe now"]


def is_all_poorly(lot: Lot) -> bool:
    """Whether a condition is said of all of a lot, and not of one or two of it; what is frozen gets no worse."""
    if lot["place"] == "freezer":
        return False
    said = [one for one in (lot.get("condition") or "").split(", ") if one]
    return any(not _OF_SOME.match(one) for one in said)


def _called(read: Read) -> Iterator[str]:
    """A food goes by its name in the tables, by its kind, or by another of its names that is in the cook's own line."""
    for use in read.dinner["uses"]:
        food, name = use["food"], use["name"]
        if food in read.boxes or name in {read.foods[food]["name"], read.foods[food]["kind"]}:
            continue
        named = rows(read.folders, "names.csv", ("name", "food"), {name})
        known = any(food == row["food"] for row in named.values())
        if not known or any(word not in use["line"].lower() for word in name.lower().split()):
            yield f"`{use['line']}` is called {name}, which is no name of {food} in that line"


def _finished(read: Read) -> Iterator[str]:
    """What is said to be used up is, and what is counted as used in time has a day."""
    rescued, uses = read.dinner["rescued"], {use["lot"]: use for use in read.dinner["uses"]}
    urgent = [use for use in uses.values() if use["days_left"] is not None and 0 <= use["days_left"] <= _URGENT_DAYS]
    if rescued["grams"] != sum(use["grams"] for use in urgent):
        yield f"{rescued['grams']} g are said to be rescued, {sum(use['grams'] for use in urgent)} g are"
    for lot_id, line in zip(rescued["finished_ids"], rescued["lots_finished"], strict=True):
        use = uses.get(lot_id)
        left = Decimal(str(read.lots[lot_id]["grams"])) - use["grams"] if use else None
        if use is None or use["line"] != line or left is None or left >= dealt_in(read, use["food"]):
            yield f"`{line}` is said to be used up"

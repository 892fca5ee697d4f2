"""What spoils a dish or harms a cook, read from the dinner as it is shown. Nothing of calmlarder is imported here.

Soy sauce: a tablespoon has about 0.9 g sodium (USDA SR 28, 16123: recalled), a third of the 2 g a day of the World
Health Organization's guideline (2012: recalled). The rest is common practice, no source.
"""

import re
from collections.abc import Iterator

from calmlarder.checks.dinner_read import Read

_MOST_SOY_G = 16  # a tablespoon, for one person
_QUARTER_SPOON_OF_TURMERIC_G = 0.75  # 3 g to a teaspoon: USDA SR 28, 02043
_WHOLE = re.compile(r"\b(?:whole|ekor|gutted|scaled|head[- ]on)\b", re.IGNORECASE)
_CUT = re.compile(r"fill?et|steak|slice|portion|loin|boned|boneless|piece|smoked|salted|dried", re.IGNORECASE)
_FLESH = {"meat", "poultry", "fish"}
_BROWNED = r"\b(?:brown|fry)\b[^.;]*"


def stove_faults(read: Read) -> Iterator[str]:
    """A line for each."""
    people = read.dinner["people"]
    grams: dict[str, int] = {}
    for use in read.dinner["uses"]:
        row = read.foods.get(use["food"])
        key = "soy-sauce" if row is not None and row["kind"] == "soy-sauce" else use["food"]
        grams[key] = grams.get(key, 0) + use["grams"]
    if grams.get("soy-sauce", 0) > _MOST_SOY_G * people:
        yield f"{grams['soy-sauce']} g soy sauce is more than a tablespoon a person"
    if grams.get("turmeric", 0) > max(1, _QUARTER_SPOON_OF_TURMERIC_G * people):
        yield f"{grams['turmeric']} g turmeric is more than a quarter of a teaspoon a person"
    text = " ".join(read.dinner["steps"])
    for use in read.dinner["uses"]:
        row = read.foods.get(use["food"])
        if row is None:
            continue
        if (
            row["kind"] == "fish"
            and row["state"] == "raw"
            and _WHOLE.search(use["line"])
            and not _CUT.search(use["line"])
        ):
            yield from () if "gutted" in text else (f"`{use['line']}` is no fillet: no step says that it is gutted",)
    yield from _browned_again(read, text)


def _browned_again(read: Read, text: str) -> Iterator[str]:
    """Cooked meat or fish that alone fills its place and is browned there, with no word of warming it."""
    slots: dict[str, list[str]] = {}
    for use in read.dinner["uses"]:
        slots.setdefault(use["slot"], []).append(use["food"])
    for foods in slots.values():
        rows = [read.foods[food] for food in foods if food in read.foods]
        if len(rows) < len(foods) or any(row["kind"] not in _FLESH or row["state"] != "cooked" for row in rows):
            continue
        for food in foods:
            name = re.escape(read.name(food).removeprefix("cooked "))
            warmed = re.search(rf"\b(?:warm|heat)[^.]*{name}", text, re.IGNORECASE)
            if re.search(rf"{_BROWNED}{name}", text, re.IGNORECASE) and not warmed:
                yield f"{read.name(food)} was cooked before, and is browned again"

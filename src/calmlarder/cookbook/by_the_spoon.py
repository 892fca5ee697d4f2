"""How many people a sauce or a dip is for that says only how much of it there is: so many spoons each."""

import re

# ml to a serving: four spoons of what is scooped up, two of what is spread or poured over. Common practice, no source.
_OF_A_DIP, _OF_A_SAUCE = 60, 30
_DIP = re.compile(
    r"\b(?:dips?|hummus|houmous|guacamole|salsa|tzatziki|raita|baba \w+|spread|p[aâ]t[eé]|labneh)\b", re.IGNORECASE
)
_SAUCE = re.compile(
    r"\b(?:dressings?|vinaigrette|pesto|chutney|jam|marmalade|relish|a[il]ioli|mayo(?:nnaise)?|ketchup|mustard|romesco"
    r"|tapenade|chimichurri|gremolata|harissa|(?:hot|chilli|chili|mint|tahini|peanut|satay|herb|green|dipping|barbecue"
    r"|bbq|tartare?|teriyaki|horseradish|cranberry|sweet|caramel|chocolate|pepper|steak|burger) sauce"
    r"|sauce for everything|glaze|curd|syrup|nut butter|pickle|salsa verde|marinade)\b",
    re.IGNORECASE,
)
_ML = {"ml": 1, "cl": 10, "dl": 100, "l": 1000, "litre": 1000, "liter": 1000, "cup": 237, "pint": 473, "oz": 30}
_VOLUME = re.compile(
    r"(?:about |around |approx(?:imately|\.)? |roughly |just over |a scant )?"
    r"(?P<whole>\d{1,4})?(?:[.,](?P<tenth>\d))?[ -]?(?:(?P<top>\d)/(?P<under>\d)|(?P<sign>[½¼¾⅓⅔]))?"
    r"\s?(?P<unit>ml|cl|dl|l|litres?|liters?|cups?|pints?|(?:fl\.? ?|fluid )oz)\b",
    re.IGNORECASE,
)
_SIGNS = {"½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3}
_MADE = re.compile(r"\b(?:makes|yields?|gives|fills)\b[\s:]{0,3}(?P<rest>[^\n.;]{1,60})", re.IGNORECASE)
_MOST_ML = 1000  # beyond it is a pot of something else


def volume_in(text: str, alone: bool = False) -> str:
    """What a text says it makes in ml or cups (`about 350 ml`), or nothing; `alone` says it is a yield by itself."""
    found = _MADE.search(text)
    told = found["rest"] if found else text if alone else ""
    volume = _VOLUME.match(told.strip())
    return volume[0].strip() if volume else ""


def served_by_the_spoon(title: str, volume: str) -> int | None:
    """How many people so much of a sauce or dip is taken to be for; None of what is no such thing."""
    found = _VOLUME.fullmatch(volume.strip())
    each = _OF_A_DIP if _DIP.search(title) else _OF_A_SAUCE if _SAUCE.search(title) else 0
    if found is None or not each or not any(found[name] for name in ("whole", "top", "sign")):
        return None
    number = int(found["whole"] or 0) + int(found["tenth"] or 0) / 10 + _SIGNS.get(found["sign"] or "", 0.0)
    number += int(found["top"]) / max(1, int(found["under"])) if found["top"] else 0
    unit = found["unit"].lower().rstrip("s")
    ml = number * _ML["oz" if unit.endswith("oz") else unit]
    return int(ml / each) or None if ml <= _MOST_ML else None

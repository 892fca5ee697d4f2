"""schema.org/Recipe as JSON-LD: finding the object, and what it says."""

import html
import json
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

from calmlarder.clean import clean, clean_line
from calmlarder.cookbook.bounds import DEEPEST, LONGEST_STEP, LONGEST_TITLE, MOST_STEPS, check_count, fail
from calmlarder.cookbook.by_the_spoon import served_by_the_spoon, volume_in
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.serves import SERVES, pieces_in, served_in_dishes, serves_above, serves_in, serves_up_to

_TAG = re.compile(r"<[/!a-zA-Z][^<>]{0,500}>")
_OUTSIDE = re.compile(r'"(?:[^"\\]++|\\.)*+"?|[\[{]|[\]}]', re.DOTALL)
# ISO 8601 durations as pages give them: days, hours, minutes, seconds.
_DURATION = re.compile(
    r"P(?:(\d{1,3})D)?(?:T(?:(\d{1,4}(?:\.\d{1,3})?)H)?(?:(\d{1,5}(?:\.\d{1,3})?)M)?(?:\d{1,6}(?:\.\d{1,9})?S)?)?",
    re.IGNORECASE,
)
# `1 onion (, chopped)`, `2 tbsp oil ((or butter))`: notes as some pages glue them to the name.
_NOTE = re.compile(r"\s*\(\s?[,;]\s?([^()]{1,200})\)")
_TWICE = re.compile(r"\(\(([^()]{1,200})\)\)")
# A whole list in one string: commas in front of amounts.
_COMMAS = re.compile(r"\s*[,;]\s+(?=\d|[½¼¾⅓⅔⅛])")
_LONGEST_TIME = 60 * 24 * 30
_MOST_NODES = 2_000_000
_MOST_VALUES = 20
_MOST_NUMBERED = 60  # steps in one paragraph: ours
_BETWEEN = " \t\r\n,;"
_SLIPS = re.compile(
    r'"(?:[^"\\]++|\\.)*+"|,(?=\s*+[\]}])|(?<![:\w])//[^\n"]{0,200}$|/\*[^*"]{0,500}\*/', re.DOTALL | re.MULTILINE
)


def depth_of(text: str) -> int:
    """How deep brackets nest outside strings, counted without recursing."""
    deepest = depth = 0
    for found in _OUTSIDE.finditer(text):
        sign = found[0][0]
        if sign in "[{":
            depth += 1
            deepest = max(deepest, depth)
        elif sign in "]}":
            depth -= 1
    return deepest


def objects_in(text: str) -> Iterator[dict[str, Any]]:
    """The recipe objects in a JSON text, cleaned, outer ones first; none when it is no JSON or too deep.

    One that names no ingredient is among them.
    """
    if depth_of(text) > DEEPEST:
        return
    for content in contents_of(text):
        for found in _objects(content):
            if _is_recipe(found):
                cleaned: dict[str, Any] = cleaned_value(found)
                # An object taken out of a graph leaves its context behind.
                yield cleaned if "@context" in cleaned else {"@context": "https://schema.org", **cleaned}


def names_ingredients(found: dict[str, Any]) -> bool:
    """Whether the object names an ingredient that is more than nothing."""
    return any(line_of(item) for item in _lines(_listed(found)))


def contents_of(text: str) -> list[Any]:
    """What a JSON text holds: as it stands, else with the slips that pages make mended; several values one by one."""
    for tried in (text, _mended(text), html.unescape(text)):
        try:
            return [json.loads(tried, strict=False)]
        except (ValueError, RecursionError):
            continue
    found: list[Any] = []
    rest = _mended(text).lstrip(_BETWEEN)
    reader = json.JSONDecoder(strict=False)
    while rest and len(found) < _MOST_VALUES:
        try:
            one, end = reader.raw_decode(rest)
        except (ValueError, RecursionError):
            break
        found.append(one)
        rest = rest[end:].lstrip(_BETWEEN)
    return found


def _mended(text: str) -> str:
    """A JSON text without commas before a closing bracket and without the escape of a quote that needs none."""
    return _SLIPS.sub(lambda found: found[0].replace("\\'", "'") if found[0][0] == '"' else "", text)


def recipe_of(found: dict[str, Any]) -> Recipe:
    """The recipe an object describes. Raises CannotGoOn when it names no ingredient, or too many."""
    lines = _once(tuple(_bracketed_once(line) for line in (line_of(item) for item in _lines(_listed(found))) if line))
    if not lines:
        fail("names no ingredient", "give the recipe's text instead")
    check_count(len(lines))
    steps = tuple(step for step in _steps(found.get("recipeInstructions"), 0) if step)
    title = (line_of(found.get("name")) or line_of(found.get("headline")) or "A recipe")[:LONGEST_TITLE]
    told = _wordiest(found.get("recipeYield", found.get("yield")))
    pieces = volume_in(line_of(told), alone=True) or pieces_in(line_of(told), alone=True)
    serves = _serves(found.get("recipeYield", found.get("yield"))) or serves_above(title)
    return Recipe(
        title=title,
        serves=serves or served_in_dishes(pieces) or served_by_the_spoon(title, pieces),
        ingredients=lines,
        steps=steps[:MOST_STEPS],
        form="jsonld",
        source=json.dumps(found, ensure_ascii=False),
        minutes=_minutes(found),
        pieces=pieces,
        serves_up_to=serves_up_to(line_of(told)),
    )


def with_address(found: dict[str, Any], address: str) -> dict[str, Any]:
    """The object with the address of its page, where it gives none itself."""
    return {**found, "url": address} if address and not found.get("url") else found


def ingredients_key(found: dict[str, Any]) -> str:
    """The field that holds the ingredients; `ingredients` is the older name."""
    return "recipeIngredient" if "recipeIngredient" in found or "ingredients" not in found else "ingredients"


def _listed(found: dict[str, Any]) -> Any:
    return found.get(ingredients_key(found))


def _objects(content: Any) -> Iterator[dict[str, Any]]:
    """Every object inside, outer ones first."""
    waiting = [content]
    for _ in range(_MOST_NODES):
        if not waiting:
            return
        one = waiting.pop()
        if isinstance(one, dict):
            yield one
            waiting.extend(value for value in reversed(one.values()) if isinstance(value, dict | list))
        elif isinstance(one, list):
            waiting.extend(value for value in reversed(one) if isinstance(value, dict | list))


def _is_recipe(found: dict[str, Any]) -> bool:
    kinds = found.get("@type", found.get("type"))
    names = kinds if isinstance(kinds, list) else [kinds]
    named = any(isinstance(name, str) and re.split(r"[/#:]", name)[-1] == "Recipe" for name in names)
    return named or (kinds is None and bool(found.get("recipeIngredient")))


def cleaned_value(value: Any) -> Any:
    """All text in a value cleaned; it nests no deeper than DEEPEST."""
    if isinstance(value, str):
        return clean(value)
    if isinstance(value, list):
        return [cleaned_value(one) for one in value]
    if isinstance(value, dict):
        return {clean_line(key): cleaned_value(one) for key, one in value.items()}
    return value


def _once(lines: tuple[str, ...]) -> tuple[str, ...]:
    """A list that stands twice on the page, for the screen and for print, once."""
    half, odd = divmod(len(lines), 2)
    return lines[:half] if not odd and half > 1 and lines[:half] == lines[half:] else lines


def _lines(listed: Any) -> Iterator[Any]:
    if isinstance(listed, str):
        whole = [line for line in re.split(r"\n|<br\s{0,3}/?>|</li>|</p>", listed) if line.strip()]
        yield from whole if len(whole) > 1 else _COMMAS.split(listed) if len(_COMMAS.findall(listed)) > 1 else whole
    elif isinstance(listed, list):
        for one in listed:
            yield from _lines(one) if isinstance(one, list) or (len(listed) == 1 and isinstance(one, str)) else [one]
    elif isinstance(listed, dict):
        yield from _lines(listed.get("itemListElement", [listed]))


def _bracketed_once(line: str) -> str:
    """A line whose note some pages set in brackets with the comma that leads to it: `1 onion (, chopped)`."""
    return _NOTE.sub(r", \1", _TWICE.sub(r"(\1)", line))


def line_of(value: Any) -> str:
    """A value as one clean line: entities read, tags gone."""
    if isinstance(value, list):
        value = next((one for one in value if one), "")
    if isinstance(value, dict):
        parts = (value.get(key) for key in ("amount", "unitText", "name", "text", "item"))
        value = " ".join(str(part) for part in parts if isinstance(part, str | int | float)) or value.get("@value", "")
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        return ""
    text = str(value)
    for _ in range(2):  # pages encode twice now and then
        text = html.unescape(text)
    return clean_line(_TAG.sub(" ", clean(text)))


def _steps(value: Any, depth: int) -> Iterator[str]:
    """The steps of a text, a list, HowToStep and HowToSection."""
    if isinstance(value, str):
        lines = [line for line in re.split(r"\n|<br\s{0,3}/?>|</p>|</li>", value) if line.strip()]
        for line in _numbered(lines[0]) if len(lines) == 1 else lines:
            yield line_of(line)[:LONGEST_STEP]
    elif isinstance(value, list):
        for one in value:
            yield from _steps(one, depth)
    elif isinstance(value, dict):
        inner = value.get("itemListElement") or value.get("steps")
        if inner and depth < DEEPEST:
            yield from _steps(inner, depth + 1)
        else:
            yield line_of(value.get("text") or value.get("name") or value.get("description"))[:LONGEST_STEP]


def _numbered(text: str) -> list[str]:
    """The steps of one paragraph that counts them: `1. Heat the oil. 2. Add the rice.`"""
    places = [0]
    for number in range(2, _MOST_NUMBERED):
        found = re.compile(rf"(?<=[.!?)]) {{1,3}}{number}[.)] (?=[A-Z])").search(text, places[-1])
        if found is None:
            break
        places.append(found.start())
    counts = len(places) > 1 and re.match(r"\s*1[.)] ", text)
    return [text[start:end] for start, end in pairwise([*places, len(text)])] if counts else [text]


def _serves(value: Any) -> int | None:
    """recipeYield as a number, a text, a QuantitativeValue or a list of them."""
    if isinstance(value, list):
        # `["12", "12 tacos (serves 4)"]`: a bare number beside words of people is of pieces.
        told = [one for one in value if isinstance(one, str) and SERVES.search(one)]
        return next((serves for serves in map(_serves, told or value) if serves), None)
    if isinstance(value, dict):
        return _serves(value.get("value") or value.get("name"))
    if isinstance(value, bool):
        return None
    if isinstance(value, int | float):
        return serves_in(str(int(value))) if 1 <= value <= 1000 else None
    return serves_in(line_of(value)) if isinstance(value, str) else None


def _wordiest(told: Any) -> Any:
    """Of a yield that is told twice, as a bare number and in words (`["16", "16 bars"]`), the words."""
    words = [one for one in told if isinstance(one, str) and re.search("[a-z]", one)] if isinstance(told, list) else []
    return words[0] if words else told


def _minutes(found: dict[str, Any]) -> int | None:
    whole = _duration(found.get("totalTime"))
    parts = [part for part in (_duration(found.get(key)) for key in ("prepTime", "cookTime")) if part]
    return whole or (sum(parts) if parts else None)


def _duration(value: Any) -> int | None:
    read = _DURATION.fullmatch(value.strip()) if isinstance(value, str) else None
    if read is None:
        return None
    days, hours, minutes = (float(part or 0) for part in read.groups())
    total = round(days * 1440 + hours * 60 + minutes)
    return total if 0 < total <= _LONGEST_TIME else None

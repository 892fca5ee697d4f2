"""A recipe in JSON of no standard, as apps and sites of one hand keep it: told by the names of its fields, then by
its look.

Whatever the fields are called, a recipe has a list of lines with amounts and one of sentences; a yield and a title
stand beside them, or in a card of their own.
"""

from collections.abc import Iterator
from typing import Any

from calmlarder.cookbook.bounds import DEEPEST
from calmlarder.cookbook.by_the_spoon import volume_in
from calmlarder.cookbook.jsonld import cleaned_value, contents_of, depth_of, line_of
from calmlarder.cookbook.line_kinds import like_ingredient
from calmlarder.cookbook.serves import SERVES, pieces_in

# What people call the fields, without `_`, `-` and capitals.
_TITLE = (
    "name", "title", "recipename", "recipetitle", "dish", "recipe", "what", "headline", "heading", "called", "label",
)  # fmt: skip
_YIELD = (
    "servings", "serves", "yield", "yields", "recipeyield", "portions", "people", "makes", "feeds", "persons", "for",
    "numberofservings", "servingsize", "howmany", "quantity", "covers", "diners", "guests",
)  # fmt: skip
_ENDS = (("min", "low", "from", "least", "minimum"), ("max", "high", "to", "upto", "most", "maximum"))
_ABOUT = ("description", "summary", "subtitle", "intro", "about", "headnote")
_LIST = (
    "ingredients", "recipeingredient", "ingredientlist", "ingredientlines", "ingredientgroups", "extendedingredients",
    "stuff", "shopping", "shoppinglist", "youneed", "youwillneed", "needs", "parts", "components", "items", "what",
)  # fmt: skip
_STEPS = (
    "steps", "method", "instructions", "directions", "recipeinstructions", "preparation", "procedure", "howto", "how",
    "process", "doing", "todo", "analyzedinstructions", "make",
)  # fmt: skip
# Of one ingredient, in the order of a line: how much, in what, of what, and what is done with it.
_HEADED = ("heading", "group", "section", "part", "for", "title", "name", "label", "component")
_AMOUNT = ("qty", "quantity", "amount", "amt", "count", "number", "howmuch", "n", "value", "measureamount")
_UNIT = ("unit", "units", "measure", "uom", "unittext", "unitname")
_FOOD = ("food", "ingredient", "name", "item", "what", "product", "text", "of", "thing", "description", "title")
_HOW = ("prep", "preparation", "note", "notes", "comment", "detail", "details", "how", "extra", "state", "info")
_OPTIONAL = ("optional", "isoptional")
_NO_TEXT = frozenset(
    {"type", "kind", "id", "uid", "uuid", "slug", "url", "image", "photo", "order", "position", "step", "index", "nr"}
)
_LEAST_LINES = 2  # of a list that is told by its look: ours
_MOST_VISITED = 20_000  # values of one file


def plain_objects(text: str) -> Iterator[dict[str, Any]]:
    """The recipes of a JSON text that follows no standard, in schema.org's fields; none when it is too deep."""
    if depth_of(text) > DEEPEST:
        return
    for content in contents_of(text):
        for inner in _innermost(cleaned_value(content)):
            told = _told(inner)
            if told is not None:
                yield told


def texts_in(text: str) -> str:
    """All texts of a JSON text in their order, one a line, lists set apart: what to read where no field tells."""
    found: list[str] = []
    waiting: list[Any] = [] if depth_of(text) > DEEPEST else [*reversed(contents_of(text))]
    for _ in range(_MOST_VISITED):
        if not waiting:
            break
        one = waiting.pop()
        if isinstance(one, str):
            found.append(one)
        elif isinstance(one, dict | list):
            found.append("")
            told = (
                [value for name, value in one.items() if _key(name) not in _NO_TEXT] if isinstance(one, dict) else one
            )
            waiting += reversed(told)
    return "\n".join(found)


def _innermost(content: Any) -> Iterator[dict[str, Any]]:
    """The smallest objects that hold both a list of ingredients and steps, in order; a list of recipes holds many."""
    waiting = [content]
    for _ in range(_MOST_VISITED):
        if not waiting:
            return
        one = waiting.pop()
        inner = list(one.values()) if isinstance(one, dict) else one if isinstance(one, list) else []
        inside = [value for value in inner if isinstance(value, dict | list)]
        whole = [value for value in inside if _holds_both(value)]
        if isinstance(one, dict) and not whole and _holds_both(one):
            yield one
        waiting.extend(reversed(whole or ([] if isinstance(one, dict) and _holds_both(one) else inside)))


def _holds_both(value: Any) -> bool:
    if isinstance(value, dict):
        return _listed(value) is not None and _steps(value) is not None
    return isinstance(value, list) and any(_holds_both(one) for one in value if isinstance(one, dict | list))


def _told(found: dict[str, Any]) -> dict[str, Any] | None:
    listed, steps = _listed(found), _steps(found)
    if listed is None or steps is None:
        return None
    title, told_yield = _first(found, _TITLE), _yield(found)
    return {
        "@context": "https://schema.org",
        "@type": "Recipe",
        **({"name": title} if title else {}),
        **({"recipeYield": told_yield} if told_yield else {}),
        "recipeIngredient": listed,
        "recipeInstructions": steps,
    }


def _key(name: str) -> str:
    return "".join(sign for sign in name.casefold() if sign.isalnum())


def _named(found: dict[str, Any], names: tuple[str, ...]) -> Iterator[Any]:
    """The values under names like these, in the order of the names."""
    by_key = {_key(name): value for name, value in reversed(found.items())}
    yield from (by_key[name] for name in names if by_key.get(name) not in (None, "", [], {}))


def _first(found: dict[str, Any], names: tuple[str, ...]) -> str:
    """The first short text under such a name, in the object itself, else in a card within it."""
    cards = [value for value in found.values() if isinstance(value, dict) and not _lines(value)]
    for place in (found, *cards):
        for value in _named(place, names):
            if isinstance(value, str | int | float) and not isinstance(value, bool) and (told := line_of(value)):
                return told
    return ""


def _yield(found: dict[str, Any]) -> str:
    """How many it is for, as a text: `4`, `6 bowls`, `about 250 ml, 10 servings`."""
    cards = [value for value in found.values() if isinstance(value, dict)]
    for place in (found, *cards):
        for value in _named(place, _YIELD):
            told = _told_yield(value)
            if told.isdigit() or SERVES.search(told) or pieces_in(told, alone=True) or volume_in(told, alone=True):
                return told
    said = (line_of(value) for value in _named(found, _ABOUT) if isinstance(value, str))
    return next((told for told in said if SERVES.search(told)), "")


def _told_yield(value: Any) -> str:
    """A yield as one text; of an object its range (`min`, `max`), else what its fields say one behind the other."""
    if not isinstance(value, dict):
        return line_of(value)
    ends = [line_of(one) for names in _ENDS if (one := next(_named(value, names), None)) is not None]
    if ends and all(one.isdigit() for one in ends):
        return f"serves {'-'.join(dict.fromkeys(ends))}"
    return " ".join(part for one in value.values() if (part := line_of(one)))


def _listed(found: dict[str, Any]) -> list[str] | None:
    """The lines of ingredients, headings among them."""
    called_so = [value for name, value in found.items() if "ingredient" in _key(name)]  # `ingredient_blocks`
    named = [lines for value in (*_named(found, _LIST), *called_so) if len(lines := _lines(value)) >= _LEAST_LINES]
    by_look = [lines for value in found.values() if len(lines := _lines(value)) >= _LEAST_LINES]
    by_look.sort(key=len, reverse=True)  # `"times": {"prep": "20 min"}` reads like amounts, too
    numbered = _numbered(found, "ingredient")
    like = [lines for lines in (*named, *by_look, numbered) if _share_like(lines) >= 1 / 2]
    return like[0] if like else next((lines for lines in named if not _sentences(lines)), None)


def _numbered(found: dict[str, Any], name: str) -> list[str]:
    """The texts of fields that are counted: `Ingredient 1`, `Ingredient 2`."""
    counted = [value for key, value in found.items() if _key(key).rstrip("0123456789") == name and _key(key) != name]
    return [line for line in map(line_of, counted) if line]


def _share_like(lines: list[str]) -> float:
    foods = [line for line in lines if not line.endswith(":")]
    return sum(map(like_ingredient, foods)) / len(foods) if foods else 0.0


def _lines(value: Any) -> list[str]:
    """A value as lines of a list: texts, objects of amount and name, groups under their heading."""
    if isinstance(value, str):
        return [line for line in map(line_of, value.split("\n")) if line] if "\n" in value else []
    if isinstance(value, dict):
        if all(isinstance(one, str) for one in value.values()) and all(name.isdigit() for name in value):
            return [line_of(one) for one in value.values()]
        if value and all(isinstance(one, str | int | float) for one in value.values()):
            # `{"peas": "300 g", "onion": "1, chopped"}`
            parted = [(name, *str(one).partition(",")) for name, one in value.items()]
            named = [line_of(f"{amount} {name}{comma}{how}") for name, amount, comma, how in parted]
            return named if _share_like(named) == 1 else []
        grouped = {name: value[name] for name in value if isinstance(value[name], list)}
        # `{"For the sauce": [...], "To serve": [...]}`
        return (
            [line for name, one in grouped.items() for line in (f"{line_of(name)}:", *_lines(one))] if grouped else []
        )
    if not isinstance(value, list):
        return []
    if all(isinstance(one, list) and one and all(isinstance(cell, str) for cell in one) for one in value):
        return [line_of(", ".join(filter(None, (" ".join(row[:2]), *row[2:])))) for row in value]  # rows of cells
    return [line for one in value for line in (_group(one) if isinstance(one, dict) else [line_of(one)]) if line]


def _group(one: dict[str, Any]) -> list[str]:
    inner = next((value for value in one.values() if isinstance(value, list) and value), None)
    if inner is None or _text(one, _AMOUNT):
        return [_ingredient(one)]
    heading = _text(one, _HEADED)
    return [*([f"{heading.rstrip(':')}:"] if heading else []), *_lines(inner)]


def _ingredient(one: dict[str, Any]) -> str:
    """One line of an object: `2 tbsp olive oil, warmed (optional)`."""
    food = _text(one, _FOOD)
    if not food:
        return line_of(" ".join(line_of(value) for name, value in one.items() if _key(name) not in _NO_TEXT))
    amount, unit, how = (_text(one, names) for names in (_AMOUNT, _UNIT, _HOW))
    measured = f"{amount}{unit}" if unit in {"g", "kg", "ml", "l"} and amount else f"{amount} {unit}"
    optional = " (optional)" if any(value is True for value in _named(one, _OPTIONAL)) else ""
    return line_of(f"{measured} {food}{', ' + how if how else ''}{optional}")


def _text(one: dict[str, Any], names: tuple[str, ...]) -> str:
    values = (value for value in _named(one, names) if isinstance(value, str | int | float))
    value = next((value for value in values if not isinstance(value, bool)), "")
    return line_of(f"{value:g}" if isinstance(value, float) else value)


def _steps(found: dict[str, Any]) -> list[str] | None:
    """The steps, by the name of their field, else the value that holds most sentences."""
    named = [steps for value in _named(found, _STEPS) if (steps := _told_steps(value))]
    told = next((steps for steps in (*named, _numbered(found, "step")) if steps and _sentences(steps)), None)
    if told or named:
        return told or max(named, key=len)
    lists = (
        value for value in found.values() if isinstance(value, list) and all(isinstance(one, str) for one in value)
    )
    by_look = [value for value in lists if len(value) >= _LEAST_LINES and _sentences(value)]
    return by_look[0] if by_look and not any(map(like_ingredient, by_look[0])) else None


def _sentences(lines: list[str]) -> bool:
    """Whether most of some lines end as sentences do."""
    return 2 * sum(line.rstrip(")\"' ").endswith((".", "!", "?")) for line in lines) >= len(lines)


def _told_steps(value: Any) -> list[str]:
    if isinstance(value, str):
        return [line for line in map(line_of, value.split("\n")) if line]
    if isinstance(value, list):
        return [line for one in value for line in _told_steps(one)]
    if isinstance(value, dict):
        inner = [one for one in value.values() if isinstance(one, list) and one]
        if inner:
            return [line for one in inner for line in _told_steps(one)]
        texts = [line_of(one) for one in value.values() if isinstance(one, str)]
        if all(name.strip(" .)").isdigit() or _key(name).startswith("step") for name in value):
            return [text for text in texts if text]
        return [max(texts, key=len)] if texts else []
    return []

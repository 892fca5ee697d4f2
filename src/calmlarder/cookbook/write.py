"""Write a recipe again with other ingredients."""

import json
import re
from collections.abc import Mapping, Sequence
from typing import Any

from calmlarder.cookbook.behind import without_buttons
from calmlarder.cookbook.jsonld import ingredients_key
from calmlarder.cookbook.recipe import Form, Recipe
from calmlarder.cookbook.serves import number_span, serves_above, serves_in
from calmlarder.cookbook.title_line import is_round_a_title
from calmlarder.cookbook.words import Item, layout, without_a_mail

Changes = Mapping[int, tuple[str, ...]]


def rewritten(recipe: Recipe, changes: Changes, serves: int | None, form: Form, notes: Sequence[str] = ()) -> str:
    """The recipe with ingredient line `i` replaced by `changes[i]`, an empty tuple taking it out.

    In its own form, text and Markdown keep everything else of the source as it was, and JSON-LD keeps the object's
    other fields and their order; a page of HTML comes back as its JSON-LD object. In another form it is written
    from its title, serves, ingredients and steps. Steps that name a replaced food are left as written; `notes` stand
    behind them, in JSON-LD as steps of their own.
    """
    lines = [line for index, old in enumerate(recipe.ingredients) for line in changes.get(index, (old,))]
    count = serves if serves is not None else recipe.serves
    if form == "jsonld":
        return _object(recipe, lines, serves, notes, changed=bool(changes))
    if recipe.form == form:
        text = _under_its_title(without_a_mail(_in_place(recipe.source, changes)), recipe)
        return _noted(_with_serves(without_buttons(text), serves), notes, form)
    return _noted(_anew(recipe, lines, count, form), notes, form)


def said_anew(recipe: Recipe, title: str, steps: Sequence[str]) -> Recipe:
    """A recipe with another title and steps, in its source too wherever they stand there as they were read."""
    said = {old: new for old, new in zip(recipe.steps, steps, strict=True) if old != new}
    if title != recipe.title:
        said[recipe.title] = title
    if recipe.form == "jsonld":
        found = json.loads(recipe.source)
        for key in ("name", "headline", "recipeInstructions"):
            if key in found:
                found[key] = _said(found[key], said)
        if isinstance(found.get("recipeInstructions"), str) and tuple(steps) != recipe.steps:
            found["recipeInstructions"] = "\n".join(steps)  # a paragraph that was read step by step
        source = json.dumps(found, ensure_ascii=False)
    else:
        source = recipe.source
        for old, new in said.items():
            # A title may be named in the ingredients too; its own place is the first.
            broken = None if old in source else re.search(r"\s+".join(map(re.escape, old.split())), source)
            source = source.replace(broken[0] if broken else old, new, 1)
    update = {"title": title, "first_title": recipe.title, "steps": tuple(steps), "source": source}
    return recipe.model_copy(update=update)


def _said(value: Any, said: Mapping[str, str]) -> Any:
    """Every text of a value that was read as one of `said`, in its new words."""
    if isinstance(value, dict):
        return {key: _said(one, said) for key, one in value.items()}
    if isinstance(value, list):
        return [_said(one, said) for one in value]
    return said.get(" ".join(value.split()), value) if isinstance(value, str) else value


def with_fields(text: str, fields: Mapping[str, Any]) -> str:
    """A JSON-LD object with further fields; those that are None stay out."""
    found = json.loads(text) | {name: value for name, value in fields.items() if value is not None}
    return json.dumps(found, ensure_ascii=False, indent=2) + "\n"


_OWN_NOTES = re.compile(r"\n[#*_ ]*notes[ :*_]*\n(?:(?!\n[#*_ ]*(?:ingredients|method|directions)\b).)*$", re.I | re.S)


def _noted(text: str, notes: Sequence[str], form: Form) -> str:
    if not notes:
        return text
    head, bullet = ("## Notes", "- ") if form == "markdown" else ("Notes", "")
    if _OWN_NOTES.search(text):  # the recipe's own come first
        return "\n".join([text.rstrip("\n"), "", *(f"{bullet}{note}" for note in notes), ""])
    return "\n".join([text.rstrip("\n"), "", head, "", *(f"{bullet}{note}" for note in notes), ""])


def _with_notes(steps: Any, notes: Sequence[str]) -> Any:
    """Instructions of JSON-LD with the notes behind them."""
    if isinstance(steps, str):
        return "\n".join([steps, *notes])
    listed = steps if isinstance(steps, list) else [steps] if steps else []
    return [*listed, *(note if listed and isinstance(listed[0], str) else _step(note) for note in notes)]


def _step(text: str) -> dict[str, str]:
    return {"@type": "HowToStep", "text": text}


# What was said of the dish as it was, and is not of what came of it: its figures, what others thought of it, its page.
_OF_THE_DISH = (
    "nutrition", "aggregateRating", "review", "reviews", "interactionStatistic", "comment", "commentCount", "video",
    "suitableForDiet", "@id", "url", "mainEntityOfPage", "identifier", "author", "publisher", "datePublished",
    "dateModified", "image", "thumbnailUrl", "description", "keywords",
)  # fmt: skip
_ADDRESS = re.compile(r"https?://\S{1,2000}")


def _of_the_original(found: dict[str, Any], title: str) -> dict[str, Any]:
    """A changed recipe as one of its own: the original with its page and its author under `isBasedOn`."""
    based: dict[str, Any] = {"@type": "Recipe", "name": title}
    address = _address_of(found)
    if address:
        based["url"] = address
    if found.get("author"):
        based["author"] = found["author"]
    if found.get("description"):
        based["description"] = found["description"]
    kept = {key: value for key, value in found.items() if key not in _OF_THE_DISH}
    return {**kept, "isBasedOn": based} if len(based) > 2 else kept


def _address_of(found: dict[str, Any]) -> str:
    """The page of a recipe, as its object says."""
    page = found.get("mainEntityOfPage")
    told = (found.get("url"), page.get("@id") if isinstance(page, dict) else page, found.get("@id"))
    return next((one for one in told if isinstance(one, str) and _ADDRESS.fullmatch(one)), "")


def _object(recipe: Recipe, lines: list[str], serves: int | None, notes: Sequence[str], changed: bool) -> str:
    if recipe.form == "jsonld":
        found: dict[str, Any] = json.loads(recipe.source)
        found[ingredients_key(found)] = lines
    else:
        found = {
            "@context": "https://schema.org",
            "@type": "Recipe",
            "name": recipe.title,
            "recipeYield": str(recipe.serves) if recipe.serves else "",
            "recipeIngredient": lines,
            "recipeInstructions": [_step(step) for step in recipe.steps],
        }
        if not recipe.serves:
            del found["recipeYield"]
    if changed:
        found = _of_the_original(found, recipe.first_title or recipe.title)
    if notes:
        found["recipeInstructions"] = _with_notes(found.get("recipeInstructions"), notes)
    if serves is not None:
        found["recipeYield"] = serves if isinstance(found.get("recipeYield"), int) else str(serves)
    return json.dumps(found, ensure_ascii=False, indent=2) + "\n"


def _in_place(source: str, changes: Changes) -> str:
    """The source with changed ingredients, worked from the end so that places in front of it hold."""
    items = layout(source).items
    for index in sorted(changes, reverse=True):
        if index < len(items):
            source = _replaced(source, items[index], changes[index])
    return source


def _under_its_title(source: str, recipe: Recipe) -> str:
    """The source without greetings above its title; with its title for one that only speaks of the dish."""
    title, before = recipe.title, (recipe.first_title or recipe.title).casefold()
    first = min((item.start for item in layout(source).items), default=0)
    head = source[:first].split("\n")
    place = next((at for at, line in enumerate(head) if title in line), None)
    greeted = next((at for at, line in enumerate(head) if line.strip()), None)
    asks = greeted is not None and head[greeted].rstrip().endswith("?")
    if place is None and greeted is not None and (asks or before in head[greeted].casefold()):
        head[greeted] = title
    elif place is not None:
        head = [line for at, line in enumerate(head) if at >= place or not is_round_a_title(line)]
    return "\n".join(head).lstrip("\n") + source[first:]


def _replaced(source: str, item: Item, new: tuple[str, ...]) -> str:
    begin = source.rfind("\n", 0, item.start) + 1
    end = source.find("\n", item.end)
    end = len(source) if end < 0 else end
    before = source[begin : item.start]
    if re.search("[:,;]", before) or source[item.end : end].strip():  # several ingredients share the line
        if new:
            return source[: item.start] + ", ".join(new) + source[item.end :]
        rest = source[item.end :]
        if rest[:1] in (",", ";"):
            return source[: item.start] + rest[1:].lstrip(" ")
        return source[: item.start].rstrip(" ,;") + rest
    if not new:
        return source[:begin] + source[min(end + 1, len(source)) :]
    return source[: item.start] + f"\n{before}".join(new) + source[item.end :]


def _with_serves(source: str, serves: int | None) -> str:
    """The number of people put in the place of the old one, or on a line under the title."""
    found = layout(source)
    if serves is None or serves == (serves_above(found.head) or serves_in(source)):
        return source
    ingredients = {(item.start, item.end) for item in found.items}
    first_item = min((item.start for item in found.items), default=0)
    for titled in (False, True):
        start = 0
        for line in source.split("\n"):
            span = number_span(line, above=titled and start + len(line) < first_item)
            inside = any(begin >= start and end <= start + len(line) for begin, end in ingredients)
            if span is not None and not inside:
                return source[: start + span[0]] + str(serves) + source[start + span[1] :]
            start += len(line) + 1
    first, newline, rest = source.lstrip("\n").partition("\n")
    return f"{first}\n\nServes {serves}\n{newline}{rest}" if newline else f"{first}\n\nServes {serves}\n"


def _anew(recipe: Recipe, lines: list[str], serves: int | None, form: Form) -> str:
    marked = form == "markdown"
    head = [f"# {recipe.title}" if marked else recipe.title, ""]
    if serves:
        head += [f"Serves {serves}", ""]
    bullet = "- " if marked else ""
    body = ["## Ingredients" if marked else "Ingredients", "", *(f"{bullet}{line}" for line in lines), ""]
    numbered = [f"{number}. {step}" for number, step in enumerate(recipe.steps, start=1)]
    steps = ["## Method" if marked else "Method", "", *numbered, ""] if recipe.steps else []
    return "\n".join([*head, *body, *steps])

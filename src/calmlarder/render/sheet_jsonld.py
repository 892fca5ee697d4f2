"""A sheet as schema.org JSON-LD: a Recipe, or an ItemList of recipes or of words."""

import json
from typing import Any

from calmlarder.render.sheet import Sheet

_CONTEXT = "https://schema.org"  # names the vocabulary; nothing is fetched from there


def as_jsonld(sheet: Sheet) -> str:
    """The object, with its context."""
    return json.dumps({"@context": _CONTEXT, **_object(sheet)}, ensure_ascii=False, indent=2) + "\n"


def _object(sheet: Sheet) -> dict[str, Any]:
    if sheet.recipe is not None:
        return _recipe(sheet)
    items: list[Any] = [_recipe(dish) for dish in sheet.dishes]
    items = items or [line for part in sheet.parts for line in part.lines]
    return {
        "@type": "ItemList",
        "name": sheet.title,
        "description": sheet.about,
        "itemListElement": [
            {"@type": "ListItem", "position": place, **({"name": one} if isinstance(one, str) else {"item": one})}
            for place, one in enumerate(items, start=1)
        ],
    }


def _recipe(sheet: Sheet) -> dict[str, Any]:
    about, lines = sheet.recipe, {part.kind: part.lines for part in sheet.parts}
    assert about is not None
    found: dict[str, Any] = {
        "@type": "Recipe",
        "name": sheet.title,
        "description": " ".join([f"{sheet.about}.", *sheet.cautions]),
        "recipeYield": str(about.serves),
        "recipeIngredient": list(lines.get("ingredients", ())),
        "recipeInstructions": [{"@type": "HowToStep", "text": step} for step in lines.get("steps", ())],
    }
    if about.minutes is not None:
        found["totalTime"] = f"PT{about.minutes}M"
    figures = (("calories", about.kcal, "kcal"), ("proteinContent", about.protein_g, "g"),
               ("fiberContent", about.fibre_g, "g"))  # fmt: skip
    known = {name: f"{figure:g} {unit}" for name, figure, unit in figures if figure is not None}
    if known:
        found["nutrition"] = {"@type": "NutritionInformation", **known}
    return found

"""schema.org/Recipe as microdata (`itemprop`), or hRecipe by its classes, in a page: put as a JSON-LD object.

The page is walked tag by tag without recursing, so that malformed or endless markup costs no more than its length.
"""

import re
from collections import Counter
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from calmlarder.clean import clean
from calmlarder.cookbook.bounds import MOST_INGREDIENTS, MOST_STEPS
from calmlarder.cookbook.markup import Token, tokens

_UNSEEN = frozenset({"script", "style", "template", "textarea"})
_BREAKS = frozenset({"br", "div", "dd", "dt", "h1", "h2", "h3", "h4", "li", "ol", "p", "section", "td", "tr", "ul"})
_PARTS = frozenset({"span", "b", "strong"})
_MOST_NAMED = MOST_INGREDIENTS + 2 * MOST_STEPS  # properties that are read; a page for readers has a few dozen
_MOST_TOLD = 300_000  # signs of all properties together, those that stand in one another counted again
_FEW_LISTS = 2  # so many elements with the whole list in them
_LEAST_IN_A_LIST = 3
_SOURCE_LINE = "\r"  # the end of a line in the source, which is but a space on the page
# Names of schema.org; the second of a pair is the older one.
_ONE = {
    "name": "name", "recipeYield": "recipeYield", "yield": "recipeYield", "totalTime": "totalTime",
    "prepTime": "prepTime", "cookTime": "cookTime",
}  # fmt: skip
_MANY = {
    "recipeIngredient": "recipeIngredient", "ingredients": "recipeIngredient", "ingredient": "recipeIngredient",
    "recipeInstructions": "recipeInstructions", "instructions": "recipeInstructions",
}  # fmt: skip
# Classes of hRecipe 0.22 and of h-recipe (microformats2), from memory, by the property of schema.org.
_CLASSES = {
    "fn": "name", "p-name": "name", "ingredient": "recipeIngredient", "p-ingredient": "recipeIngredient",
    "instructions": "recipeInstructions", "instruction": "recipeInstructions", "e-instructions": "recipeInstructions",
    "yield": "recipeYield", "p-yield": "recipeYield", "duration": "totalTime", "dt-duration": "totalTime",
}  # fmt: skip
_OTHER_ITEMS = frozenset({"vcard", "h-card", "hreview", "h-review", "hreview-aggregate", "h-review-aggregate"})


class _Open(NamedTuple):
    """An element that is open: its name, the item it belongs to, what it is of it, and where its text starts."""

    tag: str
    item: dict[str, Any] | None  # the item its children belong to
    owner: dict[str, Any] | None = None  # the recipe that one of these is told of
    names: tuple[str, ...] = ()
    start: int = 0
    content: str = ""


class _Walk:
    """The open elements and the text so far."""

    def __init__(self) -> None:
        self.recipes: list[dict[str, Any]] = []
        self.named = 0
        self._left = _MOST_TOLD
        self._open: list[_Open] = []
        self._count: Counter[str] = Counter()
        self._text: list[str] = []
        self._part_ended = False

    def text(self, text: str) -> None:
        """What stands between two tags; kept only while somebody listens."""
        if text and self.recipes:
            # `<span>1</span><span>teaspoon</span><b>1</b>cup`: parts of a line, set apart by their look alone.
            apart = self._part_ended and text[0].isalnum()
            self._text.append(f" {text}" if apart else text)
            self._part_ended = False

    def starts(self, token: Token, attributes: Mapping[str, str]) -> None:
        """An opening tag, with its attributes as those of microdata."""
        tag = token.name
        if tag in _BREAKS:
            self.text("\n")
        if self._open and tag == self._open[-1].tag and tag in {"li", "p"}:
            self.ends(tag)  # HTML lets their ends be left out
        inside = self._open[-1].item if self._open else None
        item = inside
        if "itemscope" in attributes:
            kinds = attributes.get("itemtype", "").split()
            item = {"@type": "Recipe"} if any(re.split(r"[/#:]", kind)[-1] == "Recipe" for kind in kinds) else {}
            if item:
                self.recipes.append(item)
        names = tuple(attributes.get("itemprop", "").split())[:5]
        owner = inside if names and inside and self.named < _MOST_NAMED else None
        told = attributes.get("content") or attributes.get("datetime", "")
        one = _Open(tag, item, owner, names, len(self._text), told)
        if token.empty:
            self._tell(one, told)
        else:
            self._open.append(one)
            self._count[tag] += 1

    def ends(self, tag: str) -> None:
        """A closing tag; it closes what was left open inside. One that closes nothing is passed over."""
        while self._count[tag]:
            one = self._open.pop()
            self._count[one.tag] -= 1
            if one.owner is not None:
                told = one.content if one.tag in {"meta", "time"} and one.content else self._since(one.start)
                self._tell(one, told if told.strip() else one.content)
            if one.tag == tag:
                break
        self._part_ended = self._part_ended or tag in _PARTS
        if tag in _BREAKS:
            self.text("\n")

    def close(self) -> None:
        """The end of the page closes all."""
        while self._open:
            self.ends(self._open[-1].tag)

    def _since(self, start: int) -> str:
        parts: list[str] = []
        for place in range(start, len(self._text)):
            if self._left <= 0:
                break
            parts.append(self._text[place][: self._left])
            self._left -= len(parts[-1])
        return "".join(parts)

    def _tell(self, one: _Open, told: str) -> None:
        if one.owner is None or not told.strip():
            return
        self.named += 1
        for name in {_ONE[name] for name in one.names if name in _ONE}:
            one.owner.setdefault(name, " ".join(told.split()))
        for name in {_MANY[name] for name in one.names if name in _MANY}:
            listed = one.owner.setdefault(name, [])
            # `div.instructions` round its `p.instruction`s says again what they said.
            if " ".join(told.split()) != " ".join(" ".join(listed).split()):
                listed.append(told.strip())


def microdata_recipe(page: str) -> dict[str, Any] | None:
    """The first recipe of a page that names ingredients by `itemprop`, as a JSON-LD object; None if there is none."""
    return _walked(page, lambda told: told) if "itemprop" in page else None


def hrecipe(page: str) -> dict[str, Any] | None:
    """The same of a page that names them by the classes of hRecipe."""
    return _walked(page, _as_microdata) if re.search(r"\bh-?recipe\b", page) else None


def _walked(page: str, told_of: Callable[[Mapping[str, str]], Mapping[str, str]]) -> dict[str, Any] | None:
    walk = _Walk()
    for token in tokens(page):
        if token.kind == "text":
            walk.text(clean(token.name).replace("\n", _SOURCE_LINE))
        elif token.kind == "end":
            walk.ends(token.name)
        elif token.kind == "start" and token.name not in _UNSEEN:
            walk.starts(token, told_of(token.attributes))
    walk.close()
    recipe = next((one for one in walk.recipes if one.get("recipeIngredient")), None)
    if recipe is None:
        return None
    steps = [line.replace(_SOURCE_LINE, " ") for line in recipe.get("recipeInstructions", ())]
    told = {**recipe, "recipeIngredient": _apart(recipe["recipeIngredient"])}
    return {"@context": "https://schema.org", **told, **({"recipeInstructions": steps} if steps else {})}


def _apart(lines: list[str]) -> list[str]:
    """Each ingredient for itself; one element may hold the whole list, in lines of the page or of its source."""
    for end in ("\n", _SOURCE_LINE):
        if len(lines) <= _FEW_LISTS and any(line.count(end) >= _LEAST_IN_A_LIST - 1 for line in lines):
            return [" ".join(piece.split()) for line in lines for piece in line.split(end)]
    return [" ".join(line.split()) for line in lines]


def _as_microdata(attributes: Mapping[str, str]) -> Mapping[str, str]:
    """The attributes of a tag of hRecipe as those of microdata."""
    classes = attributes.get("class", "").lower().split()
    names = " ".join(dict.fromkeys(_CLASSES[one] for one in classes if one in _CLASSES))
    if {"hrecipe", "h-recipe"} & set(classes):
        return {"itemscope": "", "itemtype": "Recipe"}
    told = {"itemprop": names, "content": attributes.get("title") or attributes.get("datetime", "")} if names else {}
    return {**told, "itemscope": ""} if _OTHER_ITEMS & set(classes) else told

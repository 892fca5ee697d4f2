"""schema.org/Recipe as microdata (`itemprop`) in a page: what it says, put as a JSON-LD object.

The page is walked tag by tag without recursing; only tags that say something of an item go through the parser, so that
malformed or endless markup costs no more than its length.
"""

import re
from collections import Counter
from html.parser import HTMLParser
from itertools import islice
from typing import Any, NamedTuple

from calmlarder.clean import clean
from calmlarder.cookbook.bounds import MOST_INGREDIENTS, MOST_STEPS

_UNSEEN = re.compile(
    r"<!--.*?(?:-->|\Z)|<(script|style|template|textarea)\b.*?(?:</\1\b[^>]{0,99}>|\Z)", re.DOTALL | re.IGNORECASE
)
_TAG = re.compile(r"<(/?)([a-zA-Z][\w:-]{0,40})((?:[^<>\"']|\"[^\"<]{0,5000}\"|'[^'<]{0,5000}')*+)>")
_VOID = frozenset({"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "wbr"})
_BREAKS = frozenset({"br", "div", "dd", "dt", "h1", "h2", "h3", "h4", "li", "ol", "p", "section", "td", "tr", "ul"})
_MOST_NAMED = MOST_INGREDIENTS + 2 * MOST_STEPS  # properties that are read; a page for readers has a few dozen
_MOST_PARSED = 20_000
_MOST_TAGS = 200_000
_MOST_TOLD = 300_000  # signs of all properties together, those that stand in one another counted again
# Names of schema.org; the second of a pair is the older one.
_ONE = {
    "name": "name", "recipeYield": "recipeYield", "yield": "recipeYield", "totalTime": "totalTime",
    "prepTime": "prepTime", "cookTime": "cookTime",
}  # fmt: skip
_MANY = {
    "recipeIngredient": "recipeIngredient", "ingredients": "recipeIngredient",
    "recipeInstructions": "recipeInstructions", "instructions": "recipeInstructions",
}  # fmt: skip


class _Attributes(HTMLParser):
    """Reads one opening tag."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: dict[str, str] = {}

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found = {name: value or "" for name, value in attrs}


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

    def text(self, text: str) -> None:
        """What stands between two tags; kept only while somebody listens."""
        if text and self.recipes:
            self._text.append(text)

    def starts(self, tag: str, attributes: dict[str, str], empty: bool) -> None:
        """An opening tag."""
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
        if empty or tag in _VOID:
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
            one.owner.setdefault(name, clean(told).strip())
        for name in {_MANY[name] for name in one.names if name in _MANY}:
            one.owner.setdefault(name, []).append(clean(told).strip())


def microdata_recipe(page: str) -> dict[str, Any] | None:
    """The first recipe of a page that names ingredients, as a JSON-LD object; None where there is none."""
    if "itemprop" not in page:
        return None
    page = _UNSEEN.sub(" ", page)
    walk = _Walk()
    place = parsed = 0
    for found in islice(_TAG.finditer(page), _MOST_TAGS):
        walk.text(page[place : found.start()])
        place = found.end()
        tag = found[2].lower()
        if found[1]:
            walk.ends(tag)
            continue
        telling = parsed < _MOST_PARSED and "item" in found[3].lower()
        parsed += telling
        walk.starts(tag, _attributes(found[0]) if telling else {}, found[3].rstrip().endswith("/"))
    walk.text(page[place:])
    walk.close()
    recipe = next((one for one in walk.recipes if one.get("recipeIngredient")), None)
    return None if recipe is None else {"@context": "https://schema.org", **recipe}


def _attributes(tag: str) -> dict[str, str]:
    parser = _Attributes()
    parser.feed(tag)
    return parser.found

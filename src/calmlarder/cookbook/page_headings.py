"""Headings that part a list of ingredients on its page, and are not in what the page says of the list to machines.

JSON-LD and microdata list the lines alone, while the steps say `all of the dressing ingredients`.
"""

import re
from collections.abc import Sequence
from itertools import pairwise

from calmlarder.cookbook.blocks import Block, blocks_of
from calmlarder.cookbook.line_kinds import section_of
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.wording import HEADING
from calmlarder.matching.names.words import plain

_LONGEST_HEADING = 40  # signs: ours
_MOST_HEADINGS = 12  # of one list: ours
_MOST_MISSED = 5  # one line in so many may stand otherwise on the page: ours
_MOST_BARE = 4  # words of a heading that nothing but its place shows: ours
_NO_SIGN = re.compile(r"[\W_]+")
_NO_HEADING = re.compile(r"advert\w*|sponsor\w*|promotion|shop\b.*|print|save|or|and|plus|optional", re.IGNORECASE)


def with_page_headings(recipe: Recipe, page: str) -> Recipe:
    """The recipe with the headings of its page between its lines; itself where the page has none."""
    blocks = blocks_of(page)
    places = _places(recipe.ingredients, blocks)
    found = [place for place in places if place is not None]
    if not found or _MOST_MISSED * (len(places) - len(found)) > len(places):
        return recipe
    heads = {
        after: head for before, after in pairwise(found)
        if (head := _heading(blocks, before + 1, after, alone=after - before == 2))
    }  # fmt: skip
    if not heads or len(heads) > _MOST_HEADINGS:
        return recipe
    levels = {blocks[place].level for after in heads for place in (after - 1,)}
    first = _heading(blocks, max(0, found[0] - 1), found[0], alone=0 in levels)
    if first and (blocks[found[0] - 1].level in levels or HEADING.fullmatch(plain(first))):
        heads[found[0]] = first
    lines = []
    for line, place in zip(recipe.ingredients, places, strict=True):
        lines += [f"{heads[place].rstrip(' :')}:"] if place in heads else []
        lines.append(line)
    return recipe.model_copy(update={"ingredients": tuple(lines)})


def _places(lines: Sequence[str], blocks: Sequence[Block]) -> list[int | None]:
    """Where on the page each line stands, in order; None of one that does not."""
    keys = [_key(block.text) for block in blocks]
    found: list[int | None] = []
    start = _first(lines, keys)
    for line in lines:
        key = _key(line)
        at = next((place for place in range(start, len(keys)) if keys[place] == key), None) if key else None
        found.append(at)
        start = at + 1 if at is not None else start
    return found


def _first(lines: Sequence[str], keys: Sequence[str]) -> int:
    """Where the list begins: not at a word of its that stands higher on the page by chance."""
    wanted = {_key(line) for line in lines}
    starts = [place for place, key in enumerate(keys) if key and key in wanted]
    near = (place for place, behind in pairwise(starts) if behind - place <= 2)  # a heading may stand between
    return next(near, starts[0] if starts else 0)


def _key(text: str) -> str:
    return _NO_SIGN.sub("", text.casefold())


def _heading(blocks: Sequence[Block], start: int, end: int, *, alone: bool) -> str:
    """The heading right above a line, where what stands there is one; else nothing.

    `alone` says that nothing else stands between two lines of the list, so that a few bare words are one too.
    """
    block = blocks[end - 1] if end > start else None
    if block is None or len(block.text) > _LONGEST_HEADING or section_of(block.text) is not None:
        return ""
    parts = block.level or block.text.endswith(":") or HEADING.fullmatch(plain(block.text).strip(" :"))
    parts = parts or (alone and _is_bare(block.text))
    return block.text if parts and not re.search(r"\d", block.text) else ""


def _is_bare(text: str) -> bool:
    """Whether a line is a few words that begin large and end as no sentence."""
    few = len(text.split()) <= _MOST_BARE and re.fullmatch(r"[A-Z][\w &'’-]+", text) is not None
    return few and _NO_HEADING.fullmatch(text) is None

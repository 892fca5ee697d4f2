"""A recipe on a page that marks none: told by its headings and lists, as a reader tells it. It is a guess."""

import html
import re
from collections.abc import Sequence
from typing import Any

from calmlarder.cookbook.blocks import Block, blocks_of
from calmlarder.cookbook.bounds import LONGEST_TITLE, MOST_INGREDIENTS, MOST_STEPS
from calmlarder.cookbook.serves import pieces_in, served_in_dishes, serves_above, serves_in
from calmlarder.cookbook.wording import HEADING
from calmlarder.cookbook.words import like_ingredient, section_of
from calmlarder.matching.words import plain, words_of

_LONGEST_LINE = 300
_LONGEST_HEADING = 70
_LEAST_LISTED = 3
_LEAST_NAMED = 2  # words of a recipe's own heading: ours
_PAGE_TITLE = re.compile(r"<title\b[^>]{0,200}>([^<]{1,500})</title", re.IGNORECASE)
# `1. Bring the water to a boil. Add the rice.`: a numbered line that ends as a sentence, not an amount.
_NUMBERED_STEP = re.compile(r"(?:step )?\d{1,2}[.):] ?\s*[A-Z][^:]{20,}[.!]", re.IGNORECASE)
_END = re.compile(
    r"(?:.{0,30}\b(?:comments?|repl(?:y|ies)|related|you (?:may|might)(?: also)? like|more (?:recipes|from)|share|"
    r"nutrition|notes?|tips?|reviews?|subscribe|newsletter|tags?|categor(?:y|ies)|video|equipment|storage|faqs?|"
    r"filed under|did you make)\b.{0,40})",
    re.IGNORECASE,
)

_BEHIND = re.compile(
    r"(?:related (?:posts?|recipes)|you (?:may|might) also like|comments?|share this|\d+ comments?):?", re.I
)


def guessed_object(page: str) -> dict[str, Any] | None:
    """A recipe object from the page's words; None where no list reads like ingredients."""
    blocks = blocks_of(page)
    found = _under_a_heading(blocks) or _by_its_look(blocks)
    if found is None:
        return None
    chosen, behind = found
    first = blocks.index(chosen[0])
    above = [one.text for one in blocks[max(0, first - 12) : first]]
    title = _title(page, blocks[:first])
    told: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": title[:LONGEST_TITLE],
        "recipeIngredient": [_line(one) for one in chosen[:MOST_INGREDIENTS]],
        "recipeInstructions": [one.text for one in behind[:MOST_STEPS]],
    }
    serves = _serves([*above, *(one.text for one in blocks)])
    return {**told, "recipeYield": str(serves)} if serves else told


def _title(page: str, above: Sequence[Block]) -> str:
    """The last heading above the ingredients that the page's own title tells; else its first heading.

    A site's name often stands above it as a heading, too.
    """
    told = _PAGE_TITLE.search(page)
    known = set(words_of(html.unescape(told[1]))) if told else set()
    headings = [one for one in above if one.level in {1, 2} and not section_of(one.text)]
    for one in reversed(headings):
        words = set(words_of(one.text))
        if len(words) >= _LEAST_NAMED and 3 * len(words & known) >= 2 * len(words):
            return one.text
    return next((one.text for level in (1, 2) for one in headings if one.level == level), "")


def _serves(texts: Sequence[str]) -> int | None:
    short = [text for text in texts if len(text) <= _LONGEST_HEADING]
    return next(
        (count for text in short if (count := serves_in(text) if re.search(r"[a-z]", text) else None)), None
    ) or (
        next((count for text in short[:40] if (count := serves_above(text))), None)
        or next((count for text in short if (count := served_in_dishes(pieces_in(text)))), None)
    )


def _line(block: Block) -> str:
    """A heading inside a list keeps looking like one."""
    return block.text if not block.level or block.text.endswith(":") else f"{block.text}:"


def _kind(block: Block) -> str | None:
    return section_of(block.text) if len(block.text) <= _LONGEST_HEADING else None


def _under_a_heading(blocks: Sequence[Block]) -> tuple[list[Block], list[Block]] | None:
    """What stands between the heading of the ingredients and that of the method, and what stands behind it."""
    best: tuple[list[Block], list[Block]] | None = None
    for place, block in enumerate(blocks):
        if _kind(block) != "in":
            continue
        listed, end = _until(blocks, place + 1, block.level, steps_end=True)
        in_lists = {one.listed for one in listed if one.listed}
        if in_lists:
            listed = [one for one in listed if one.listed or one.level or one.text.endswith(":")]
        listed = [one for one in listed if len(one.text) <= _LONGEST_LINE]
        while listed and listed[-1].level:
            listed.pop()
        if sum(like_ingredient(one.text) for one in listed) < _LEAST_LISTED - 1:
            continue
        if best is None or len(listed) > len(best[0]):
            best = listed, _method(blocks, end)
    return best


def _is_step(block: Block) -> bool:
    return not block.level and _NUMBERED_STEP.match(block.text) is not None


def _until(blocks: Sequence[Block], start: int, level: int, *, steps_end: bool = False) -> tuple[list[Block], int]:
    """The lines up to the method, to what comes after a recipe, or to a heading no deeper than this one."""
    found: list[Block] = []
    for place in range(start, len(blocks)):
        block = blocks[place]
        ends = block.level and (_END.fullmatch(block.text) or (block.level <= level and not _is_group(blocks, place)))
        if _kind(block) in {"on", "off"} or ends or _BEHIND.fullmatch(block.text):
            return found, place
        if steps_end and _is_step(block):
            return found, place
        found.append(block)
    return found, len(blocks)


def _is_group(blocks: Sequence[Block], place: int) -> bool:
    """Whether a heading parts the list of ingredients (`For the top`): by its words, or by the list under it."""
    under: list[Block] = []
    for block in blocks[place + 1 : place + 1 + MOST_INGREDIENTS]:
        if (
            block.level
            or not block.listed
            or len(block.text) > _LONGEST_LINE
            or (under and block.listed != under[0].listed)
        ):
            break
        under.append(block)
    like = sum(like_ingredient(one.text) for one in under)
    return like > 0 and (2 * like >= len(under) or bool(HEADING.fullmatch(plain(blocks[place].text).strip(" :"))))


def _method(blocks: Sequence[Block], start: int) -> list[Block]:
    """The steps under the next heading of a method."""
    for place in range(start, len(blocks)):
        if _kind(blocks[place]) == "on":
            steps, _ = _until(blocks, place + 1, blocks[place].level)
            numbered = [one for one in steps if one.listed]
            return numbered or [one for one in steps if not one.level]
    return _unheaded(blocks, start)


def _unheaded(blocks: Sequence[Block], start: int) -> list[Block]:
    """Numbered sentences, or a list of sentences, behind the ingredients under no heading of a method."""
    rest = list(blocks[start:])
    end = next((at for at, one in enumerate(rest) if _BEHIND.fullmatch(one.text)), len(rest))
    end = next((at for at, one in enumerate(rest[:end]) if one.level and _END.fullmatch(one.text)), end)
    numbered = [one for one in rest[:end] if _is_step(one)]
    lists = [one for one in rest[:end] if one.listed and not one.level and one.text.endswith((".", "!"))]
    sentences = [one for one in lists if not like_ingredient(one.text) and one.listed == lists[0].listed]
    return numbered or (sentences if len(sentences) > 1 else [])


def _by_its_look(blocks: Sequence[Block]) -> tuple[list[Block], list[Block]] | None:
    """The list of which most lines start with an amount, and the list or the paragraphs behind it."""
    lists: dict[int, list[Block]] = {}
    for block in blocks:
        if block.listed:
            lists.setdefault(block.listed, []).append(block)
    like = [
        group
        for group in lists.values()
        if len(group) >= _LEAST_LISTED and 2 * sum(like_ingredient(one.text) for one in group) >= len(group)
    ]
    if not like:
        return None
    chosen = [one for group in like for one in group]
    rest = blocks[blocks.index(like[-1][-1]) + 1 :]
    behind = next((one.listed for one in rest if one.listed and not like_ingredient(one.text)), 0)
    steps = lists[behind] if behind else [one for one in rest if not one.level and len(one.text) > _LONGEST_HEADING]
    return chosen, steps

"""A recipe on a page that marks none: told by its headings and lists, as a reader tells it. It is a guess."""

import html
import re
from collections import Counter
from collections.abc import Sequence
from itertools import pairwise, takewhile
from typing import Any

from calmlarder.cookbook.behind import is_between, is_over
from calmlarder.cookbook.blocks import Block, blocks_of
from calmlarder.cookbook.bounds import LONGEST_TITLE, MOST_INGREDIENTS, MOST_STEPS
from calmlarder.cookbook.by_its_look import by_its_look
from calmlarder.cookbook.by_the_spoon import volume_in
from calmlarder.cookbook.line_kinds import like_ingredient, section_of
from calmlarder.cookbook.page_lines import (
    LEAST_LISTED,
    LEAST_STEPS,
    LONGEST_HEADING,
    LONGEST_IN_A_RUN,
    SENTENCE,
    SET_IN_BOLD,
    counted,
    is_step,
    kind_of,
    together,
)
from calmlarder.cookbook.run_together import joined_amounts
from calmlarder.cookbook.serves import (
    SERVES,
    is_yield,
    pieces_among_facts,
    pieces_in,
    served_in_dishes,
    serves_above,
    serves_in,
    serves_up_to,
)
from calmlarder.cookbook.wording import HEADING
from calmlarder.matching.names.words import plain, words_of

_LONGEST_LINE = 300
_BULLETS = re.compile(r"^[•▢☐□–‣◦*·-]+\s+")
_TABLE_HEAD = re.compile(r"(?:what|items?|ingredients?|foods?) ?(?:how much|amounts?|quantit(?:y|ies)|needed)?:?", re.I)
_MOST_IN_A_HEADING = 4  # words: ours
_LEAST_NAMED = 2  # words of a recipe's own heading: ours
_OF_A_PAGE = (1, 2)  # levels of heading that no list of ingredients has inside
_LEAST_TOLD = 2  # sentences in a table that sets out a page: ours
_SITE = re.compile(r"\s+(?:[|–—·»•~-]|::)\s+|\s*[|»]\s*")  # between the name of a dish and that of its site
_PAGE_TITLE = re.compile(r"<title\b[^>]{0,200}>([^<]{1,500})</title", re.IGNORECASE)
_FOR_SO_MANY = re.compile(r"(?:just |enough )?for (?:\d|one|two|three|four|five|six|eight)\b", re.IGNORECASE)
_MAKES = re.compile(r"(?:(?:it|this|that) )?(?:makes|yields?|gives)\b", re.IGNORECASE)
_END = re.compile(
    r"(?:.{0,30}\b(?:comments?|repl(?:y|ies)|related|you (?:may|might)(?: also)? like|more (?:recipes|from)|share|"
    r"nutrition|notes?|tips?|reviews?|subscribe|newsletter|tags?|categor(?:y|ies)|video|equipment|storage|faqs?|"
    r"filed under|did you make)\b.{0,40})",
    re.IGNORECASE,
)


def guessed_object(page: str) -> dict[str, Any] | None:
    """A recipe object from the page's words; None where no list reads like ingredients."""
    blocks = _outside_of_the_layout(blocks_of(page))
    found = _under_a_heading(blocks) or by_its_look(blocks)
    if found is None:
        return None
    chosen, behind = found
    chosen = chosen[1:] if _TABLE_HEAD.fullmatch(chosen[0].text) else chosen
    first_line = chosen[0].text
    chosen = [chosen[start]._replace(text=" ".join(one.text for one in chosen[start:end]))
              for start, end in joined_amounts([one.text for one in chosen])]  # fmt: skip
    first = next(place for place, one in enumerate(blocks) if one.text == first_line)
    above = [one.text for one in blocks[max(0, first - 12) : first]]
    title = _title(page, blocks[:first])
    told: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": title[:LONGEST_TITLE],
        "recipeIngredient": [
            _line(one, _is_alone(place, chosen)) for place, one in enumerate(chosen[:MOST_INGREDIENTS])
        ],
        "recipeInstructions": [_BULLETS.sub("", one.text) for one in behind[:MOST_STEPS] if not is_between(one.text)],
    }
    serves = _serves([*above, *(one.text for one in blocks), *_in_two_lines(blocks)])
    said = (one for text in above for one in re.split(r"(?<=[.!?])\s+", text) if len(one) <= LONGEST_HEADING)
    pieces = next((one for text in said if (one := volume_in(text) or pieces_in(text))), "") or next(
        (one for text in above if (one := pieces_among_facts(text))), ""
    )
    return {**told, "recipeYield": _people(serves, blocks) if serves else pieces} if serves or pieces else told


def _outside_of_the_layout(blocks: Sequence[Block]) -> list[Block]:
    """The lines, of which those that a table only sets out on the page, with heading and prose, stand in no list."""
    headed = {one.listed for one in blocks if one.level in _OF_A_PAGE and one.listed}
    told = Counter(one.listed for one in blocks if one.listed in headed and SENTENCE.search(one.text))
    return [one._replace(listed=0) if told[one.listed] >= _LEAST_TOLD else one for one in blocks]


def _title(page: str, above: Sequence[Block]) -> str:
    """The last heading above the ingredients that the page's own title tells; else its first heading.

    A site's name often stands above it as a heading, too.
    """
    told = _PAGE_TITLE.search(page)
    known = set(words_of(html.unescape(told[1]))) if told else set()
    headings = [one for one in above if one.level in {1, 2} and not section_of(one.text)]
    headings = _without_the_site(headings, html.unescape(told[1]) if told else "")
    for one in reversed(headings):
        words = set(words_of(one.text))
        if len(words) >= _LEAST_NAMED and 3 * len(words & known) >= 2 * len(words):
            return one.text
    first = next((one.text for level in (1, 2) for one in headings if one.level == level), "")
    return first or _named_by_the_page(html.unescape(told[1]) if told else "", above)


def _without_the_site(headings: list[Block], told: str) -> list[Block]:
    """The headings without the name of the site, where the page's own title has it beside a dish that another names."""
    parts = [set(words_of(part)) for part in _SITE.split(" ".join(told.split()))]
    sites = [one for one in headings if len(parts) > 1 and set(words_of(one.text)) in parts]
    rest = [one for one in headings if one not in sites]
    others = [part for part in parts if all(set(words_of(one.text)) != part for one in sites)]
    named = any(set(words_of(one.text)) & part for one in rest for part in others)
    return rest if sites and named else headings


def _named_by_the_page(told: str, above: Sequence[Block]) -> str:
    """Of a page without headings the line that its own title begins with; else that title without the site's name."""
    name = _SITE.split(" ".join(told.split()))[0].strip()
    return next((one.text for one in above if plain(one.text) == plain(name)), name)


def _serves(texts: Sequence[str]) -> int | None:
    parted = [re.split(r"(?<=[.!?])\s+", text) for text in texts]
    sentences = [one for text, told in zip(texts, parted, strict=True) if len(text) > LONGEST_HEADING for one in told]
    sentences += [one for told in parted for one in told[1:] if _FOR_SO_MANY.match(one)]
    short = [
        *(t for t in texts if len(t) <= LONGEST_HEADING or (len(t) <= _LONGEST_LINE and SERVES.match(t))),
        # `… and naan. Feeds 4.`, `… like a pub. For 2, or for 1 after a long walk.`
        *(one for one in sentences if len(one) <= LONGEST_HEADING and (SERVES.match(one) or _FOR_SO_MANY.match(one))),
        # `Makes about 3 cups, call it 24 servings if nobody drinks it.`
        *(one for one in sentences if len(one) <= _LONGEST_LINE and _MAKES.match(one) and SERVES.search(one)),
    ]
    return next(
        (count for text in short if (count := serves_in(text) if re.search(r"[a-z]", text) else None)), None
    ) or (
        next((count for text in short[:40] if not text.isdigit() and (count := serves_above(text))), None)
        or next((count for text in short if (count := served_in_dishes(pieces_in(text)))), None)
    )


def _people(serves: int, blocks: Sequence[Block]) -> str:
    """The people as a yield, with the upper end where a line tells a range of them."""
    short = (one.text for one in blocks if len(one.text) <= LONGEST_HEADING)
    tops = (top for text in short if (top := serves_up_to(text)) and serves in {serves_in(text), serves_above(text)})
    top = next(tops, None)
    return f"serves {serves}-{top}" if top else f"serves {serves}"


def _in_two_lines(blocks: Sequence[Block]) -> list[str]:
    """`Serves` and its number, which stands in a line of its own behind it."""
    pairs = [f"{one.text.rstrip(' :')}: {behind.text}" for one, behind in pairwise(blocks) if behind.text.isdigit()]
    return [pair for pair in pairs if SERVES.match(pair)]


def _line(block: Block, alone: bool) -> str:
    """A heading inside a list keeps looking like one, and so does a name that is `alone` in its list."""
    text = _BULLETS.sub("", block.text)
    return text if not (block.level or alone) or text.endswith(":") else f"{text}:"


def _is_alone(place: int, chosen: Sequence[Block]) -> bool:
    """Whether a few words without an amount are a list of their own, before another list: `Fritters`."""
    block = chosen[place]
    behind = chosen[place + 1] if place + 1 < len(chosen) else block
    alone = sum(one.listed == block.listed for one in chosen) == 1
    return _is_few_words(block) and alone and bool(block.listed) and behind.listed != block.listed


def _under_a_heading(blocks: Sequence[Block]) -> tuple[list[Block], list[Block]] | None:
    """What stands between the heading of the ingredients and that of the method, and what stands behind it."""
    best: tuple[list[Block], list[Block]] | None = None
    for place, block in enumerate(blocks):
        if kind_of(block) != "in":
            continue
        listed, end = _until(blocks, place + 1, block.level, steps_end=True)
        if any(one.listed for one in listed):
            listed = _lists_and_headings(listed)
        listed = [one for one in listed if len(one.text) <= _LONGEST_LINE and not is_yield(one.text)]
        while listed and listed[-1].level:
            listed.pop()
        if sum(like_ingredient(one.text) for one in listed) < LEAST_LISTED - 1:
            continue
        if best is None or len(listed) > len(best[0]):
            best = listed, _method(blocks, end)
    return best


def _lists_and_headings(listed: Sequence[Block]) -> list[Block]:
    """The lines of lists and what parts them: headings, and a few words right above a list that are marked as none."""
    kept: list[Block] = []
    for place, one in enumerate(listed):
        behind = listed[place + 1] if place + 1 < len(listed) else one
        if one.listed or one.level or _parts_the_list(one):
            kept.append(one)
        elif behind.listed and _is_few_words(one):
            kept.append(one._replace(level=SET_IN_BOLD))
    return kept


def _is_few_words(block: Block) -> bool:
    return len(block.text.split()) <= _MOST_IN_A_HEADING and not re.search(r"\d|[.!?]$", block.text)


def _parts_the_list(block: Block) -> bool:
    return block.text.endswith(":") or HEADING.fullmatch(plain(block.text)) is not None


def _until(blocks: Sequence[Block], start: int, level: int, *, steps_end: bool = False) -> tuple[list[Block], int]:
    """The lines up to the method, to what comes after a recipe, or to a heading no deeper than this one."""
    found: list[Block] = []
    for place in range(start, len(blocks)):
        block = blocks[place]
        ends = block.level and (_END.fullmatch(block.text) or (block.level <= level and not _is_group(blocks, place)))
        if kind_of(block) in {"on", "off"} or ends or is_over(block.text):
            return found, place
        if steps_end and block.level and _heads_steps(blocks, place):
            return found, place
        if steps_end and is_step(block):
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
    if not under and HEADING.fullmatch(plain(blocks[place].text).strip(" :")):  # `Dressing`, its lines only broken
        rest = takewhile(lambda one: not one.level and len(one.text) <= LONGEST_IN_A_RUN, blocks[place + 1 :])
        under = [one for one in rest if one.text[-1:] not in ".!?"]
    like = sum(like_ingredient(one.text) for one in under)
    return like > 0 and (2 * like >= len(under) or bool(HEADING.fullmatch(plain(blocks[place].text).strip(" :"))))


def _heads_steps(blocks: Sequence[Block], place: int) -> bool:
    """Whether a heading stands over a list of sentences, whatever it says: `Getting it done`."""
    under = list(takewhile(lambda one: one.listed and not one.level, blocks[place + 1 :]))
    told = [one for one in under if one.listed == under[0].listed and SENTENCE.search(one.text)]
    return len(told) >= LEAST_STEPS and 2 * len(told) >= len(under) and not like_ingredient(under[0].text)


def _method(blocks: Sequence[Block], start: int) -> list[Block]:
    """The steps under the next heading of a method."""
    for place in range(start, len(blocks)):
        if kind_of(blocks[place]) == "on":
            steps, _ = _until(blocks, place + 1, blocks[place].level)
            numbered = [one for one in steps if one.listed]
            return numbered or together(blocks[place], [one for one in steps if not one.level])
    return _unheaded(blocks, start)


def _unheaded(blocks: Sequence[Block], start: int) -> list[Block]:
    """Numbered sentences, or a list of sentences, behind the ingredients under no heading of a method."""
    rest = list(blocks[start:])
    end = next((at for at, one in enumerate(rest) if is_over(one.text)), len(rest))
    end = next((at for at, one in enumerate(rest[:end]) if one.level and _END.fullmatch(one.text)), end)
    numbered = [one for one in rest[:end] if is_step(one)] or counted(rest[:end])
    lists = [one for one in rest[:end] if one.listed and not one.level and one.text.endswith((".", "!"))]
    sentences = [one for one in lists if not like_ingredient(one.text) and one.listed == lists[0].listed]
    return numbered or (sentences if len(sentences) > 1 else [])

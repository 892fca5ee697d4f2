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
from calmlarder.cookbook.by_the_spoon import volume_in
from calmlarder.cookbook.run_together import joined_amounts
from calmlarder.cookbook.serves import (
    SERVES,
    is_yield,
    pieces_among_facts,
    pieces_in,
    served_in_dishes,
    serves_above,
    serves_in,
)
from calmlarder.cookbook.wording import HEADING
from calmlarder.cookbook.words import like_ingredient, section_of
from calmlarder.matching.names.words import plain, words_of

_LONGEST_LINE = 300
_LONGEST_HEADING = 70
_LEAST_LISTED = 3
_LONGEST_IN_A_RUN = 140  # signs of an ingredient
_STILL_LISTED = re.compile(
    r"\b(?:salt|pepper|oil|juice|zest|handful|pinch|sprigs?|squeeze|to (?:serve|taste|garnish|finish)"
    r"|for (?:frying|serving))\b",
    re.I,
)
_SENTENCE = re.compile(r"^\W*[A-Z].{28,}[.!]$", re.DOTALL)
_BULLETS = re.compile(r"^[•▢☐□–‣◦*·-]+\s+")
_TABLE_HEAD = re.compile(r"(?:what|items?|ingredients?|foods?) ?(?:how much|amounts?|quantit(?:y|ies)|needed)?:?", re.I)
_LEAST_STEPS = 2  # of a method before its part of the page may end: ours
_SHORTEST_STEP = 30  # signs of the first one; later ones may be shorter: ours
_MOST_IN_A_HEADING = 4  # words: ours
_SET_IN_BOLD = 4  # the level of a heading that is a paragraph of its own
_LEAST_NAMED = 2  # words of a recipe's own heading: ours
_OF_A_PAGE = (1, 2)  # levels of heading that no list of ingredients has inside
_LEAST_TOLD = 2  # sentences in a table that sets out a page: ours
_SITE = re.compile(r"\s+(?:[|–—·»•~-]|::)\s+|\s*[|»]\s*")  # between the name of a dish and that of its site
_PAGE_TITLE = re.compile(r"<title\b[^>]{0,200}>([^<]{1,500})</title", re.IGNORECASE)
# `1. Bring the water to a boil. Add the rice.`: a numbered line that ends as a sentence, not an amount.
_NUMBERED_STEP = re.compile(r"(?:step )?\d{1,2}[.):] ?\s*[A-Z][^:]{20,}[.!]", re.IGNORECASE)
# `1 Boil the eggs.`: a number that is set apart by its look alone; it tells of a step where the next one follows.
_COUNTED_STEP = re.compile(r"(\d{1,2}) (?=[A-Z].{15,}[.!)]$)")
_FOR_SO_MANY = re.compile(r"(?:just |enough )?for (?:\d|one|two|three|four|five|six|eight)\b", re.IGNORECASE)
_END = re.compile(
    r"(?:.{0,30}\b(?:comments?|repl(?:y|ies)|related|you (?:may|might)(?: also)? like|more (?:recipes|from)|share|"
    r"nutrition|notes?|tips?|reviews?|subscribe|newsletter|tags?|categor(?:y|ies)|video|equipment|storage|faqs?|"
    r"filed under|did you make)\b.{0,40})",
    re.IGNORECASE,
)


def guessed_object(page: str) -> dict[str, Any] | None:
    """A recipe object from the page's words; None where no list reads like ingredients."""
    blocks = _outside_of_the_layout(blocks_of(page))
    found = _under_a_heading(blocks) or _by_its_look(blocks)
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
    said = (one for text in above for one in re.split(r"(?<=[.!?])\s+", text) if len(one) <= _LONGEST_HEADING)
    pieces = next((one for text in said if (one := volume_in(text) or pieces_in(text))), "") or next(
        (one for text in above if (one := pieces_among_facts(text))), ""
    )
    return {**told, "recipeYield": str(serves) if serves else pieces} if serves or pieces else told


def _outside_of_the_layout(blocks: Sequence[Block]) -> list[Block]:
    """The lines, of which those that a table only sets out on the page, with heading and prose, stand in no list."""
    headed = {one.listed for one in blocks if one.level in _OF_A_PAGE and one.listed}
    told = Counter(one.listed for one in blocks if one.listed in headed and _SENTENCE.search(one.text))
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
    sentences = [one for text, told in zip(texts, parted, strict=True) if len(text) > _LONGEST_HEADING for one in told]
    sentences += [one for told in parted for one in told[1:] if _FOR_SO_MANY.match(one)]
    short = [
        *(t for t in texts if len(t) <= _LONGEST_HEADING or (len(t) <= _LONGEST_LINE and SERVES.match(t))),
        # `… and naan. Feeds 4.`, `… like a pub. For 2, or for 1 after a long walk.`
        *(one for one in sentences if len(one) <= _LONGEST_HEADING and (SERVES.match(one) or _FOR_SO_MANY.match(one))),
    ]
    return next(
        (count for text in short if (count := serves_in(text) if re.search(r"[a-z]", text) else None)), None
    ) or (
        next((count for text in short[:40] if not text.isdigit() and (count := serves_above(text))), None)
        or next((count for text in short if (count := served_in_dishes(pieces_in(text)))), None)
    )


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


def _kind(block: Block) -> str | None:
    return section_of(block.text) if len(block.text) <= _LONGEST_HEADING else None


def _under_a_heading(blocks: Sequence[Block]) -> tuple[list[Block], list[Block]] | None:
    """What stands between the heading of the ingredients and that of the method, and what stands behind it."""
    best: tuple[list[Block], list[Block]] | None = None
    for place, block in enumerate(blocks):
        if _kind(block) != "in":
            continue
        listed, end = _until(blocks, place + 1, block.level, steps_end=True)
        if any(one.listed for one in listed):
            listed = _lists_and_headings(listed)
        listed = [one for one in listed if len(one.text) <= _LONGEST_LINE and not is_yield(one.text)]
        while listed and listed[-1].level:
            listed.pop()
        if sum(like_ingredient(one.text) for one in listed) < _LEAST_LISTED - 1:
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
            kept.append(one._replace(level=_SET_IN_BOLD))
    return kept


def _is_few_words(block: Block) -> bool:
    return len(block.text.split()) <= _MOST_IN_A_HEADING and not re.search(r"\d|[.!?]$", block.text)


def _parts_the_list(block: Block) -> bool:
    return block.text.endswith(":") or HEADING.fullmatch(plain(block.text)) is not None


def _is_step(block: Block) -> bool:
    return not block.level and _NUMBERED_STEP.match(block.text) is not None


def _until(blocks: Sequence[Block], start: int, level: int, *, steps_end: bool = False) -> tuple[list[Block], int]:
    """The lines up to the method, to what comes after a recipe, or to a heading no deeper than this one."""
    found: list[Block] = []
    for place in range(start, len(blocks)):
        block = blocks[place]
        ends = block.level and (_END.fullmatch(block.text) or (block.level <= level and not _is_group(blocks, place)))
        if _kind(block) in {"on", "off"} or ends or is_over(block.text):
            return found, place
        if steps_end and block.level and _heads_steps(blocks, place):
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
    if not under and HEADING.fullmatch(plain(blocks[place].text).strip(" :")):  # `Dressing`, its lines only broken
        rest = takewhile(lambda one: not one.level and len(one.text) <= _LONGEST_IN_A_RUN, blocks[place + 1 :])
        under = [one for one in rest if one.text[-1:] not in ".!?"]
    like = sum(like_ingredient(one.text) for one in under)
    return like > 0 and (2 * like >= len(under) or bool(HEADING.fullmatch(plain(blocks[place].text).strip(" :"))))


def _heads_steps(blocks: Sequence[Block], place: int) -> bool:
    """Whether a heading stands over a list of sentences, whatever it says: `Getting it done`."""
    under = list(takewhile(lambda one: one.listed and not one.level, blocks[place + 1 :]))
    told = [one for one in under if one.listed == under[0].listed and _SENTENCE.search(one.text)]
    return len(told) >= _LEAST_STEPS and 2 * len(told) >= len(under) and not like_ingredient(under[0].text)


def _method(blocks: Sequence[Block], start: int) -> list[Block]:
    """The steps under the next heading of a method."""
    for place in range(start, len(blocks)):
        if _kind(blocks[place]) == "on":
            steps, _ = _until(blocks, place + 1, blocks[place].level)
            numbered = [one for one in steps if one.listed]
            return numbered or _together(blocks[place], [one for one in steps if not one.level])
    return _unheaded(blocks, start)


def _together(before: Block, steps: list[Block]) -> list[Block]:
    """The steps up to where the page closes the part that holds the first of them and what stands `before` them."""
    if len(steps) <= _LEAST_STEPS:
        return steps
    both = zip(before.inside, steps[0].inside, strict=False)
    part = tuple(one for one, _ in takewhile(lambda pair: pair[0] == pair[1], both))
    left = (at for at, one in enumerate(steps) if at >= _LEAST_STEPS and one.inside[: len(part)] != part)
    end = next((at for at in left if not _is_step(steps[at])), len(steps))
    return steps[:end]


def _unheaded(blocks: Sequence[Block], start: int) -> list[Block]:
    """Numbered sentences, or a list of sentences, behind the ingredients under no heading of a method."""
    rest = list(blocks[start:])
    end = next((at for at, one in enumerate(rest) if is_over(one.text)), len(rest))
    end = next((at for at, one in enumerate(rest[:end]) if one.level and _END.fullmatch(one.text)), end)
    numbered = [one for one in rest[:end] if _is_step(one)] or _counted(rest[:end])
    lists = [one for one in rest[:end] if one.listed and not one.level and one.text.endswith((".", "!"))]
    sentences = [one for one in lists if not like_ingredient(one.text) and one.listed == lists[0].listed]
    return numbered or (sentences if len(sentences) > 1 else [])


def _counted(blocks: Sequence[Block]) -> list[Block]:
    """The lines that begin with 1, 2, 3 and so on, without these; none where there is no second one."""
    steps: list[Block] = []
    for block in blocks:
        found = None if block.level else _COUNTED_STEP.match(block.text)
        if found and int(found[1]) == len(steps) + 1:
            steps.append(block._replace(text=block.text[found.end() :]))
    return steps if len(steps) >= _LEAST_STEPS else []


def _all_counted(blocks: Sequence[Block]) -> list[Block]:
    """The steps of a table or a list whose rows are 1, 2, 3 and a sentence each; none of anything else."""
    counted = _counted(blocks)
    told = all(one.text.endswith((".", "!")) for one in counted)
    return counted if told and len(counted) == len(blocks) else []


def _by_its_look(blocks: Sequence[Block]) -> tuple[list[Block], list[Block]] | None:
    """The lists of which most lines start with an amount, and the list or the paragraphs behind them."""
    groups = _lists(blocks) or _runs(blocks)
    if not groups:
        return None
    last = blocks.index(groups[-1][-1])
    chosen = _with_their_headings(blocks, groups)
    rest = blocks[last + 1 :]
    return chosen, _list_of_steps(rest) or _together(blocks[last], _paragraphs(rest))


def _list_of_steps(rest: Sequence[Block]) -> list[Block]:
    """The first list behind the ingredients that is of sentences; links to other recipes are none."""
    lists: dict[int, list[Block]] = {}
    for block in rest:
        if is_over(block.text):
            break
        if block.listed and not block.level:
            lists.setdefault(block.listed, []).append(block)
    for steps in lists.values():
        if counted := _all_counted(steps):
            return counted
        told = [one for one in steps if one.text.endswith((".", "!", ")")) or len(one.text) > _LONGEST_HEADING]
        if 2 * len(told) >= len(steps) and not like_ingredient(steps[0].text):
            return steps
    return []


def _lists(blocks: Sequence[Block]) -> list[list[Block]]:
    lists: dict[int, list[Block]] = {}
    for block in blocks:
        if block.listed:
            lists.setdefault(block.listed, []).append(block)
    groups = [group for group in lists.values() if not _all_counted(group)]
    like = [group for group in groups if 2 * sum(like_ingredient(one.text) for one in group) >= len(group)]
    long = [group for group in like if len(group) >= _LEAST_LISTED]
    if not long:
        return []
    # A short list counts beside a longer one, not behind sentences: there it is of links or remarks.
    first = blocks.index(long[0][0])
    before = {block.listed for block in _up_to_a_sentence(blocks, first)}
    return [group for group in like if len(group) >= _LEAST_LISTED or group[0].listed in before]


def _up_to_a_sentence(blocks: Sequence[Block], first: int) -> Sequence[Block]:
    end = next((at for at, one in enumerate(blocks) if at > first and _SENTENCE.search(one.text)), len(blocks))
    return blocks[:end]


def _runs(blocks: Sequence[Block]) -> list[list[Block]]:
    """The longest row of short lines under no list, from the first that starts with an amount to the last."""
    best: list[Block] = []
    row: list[Block] = []
    for block in [*blocks, Block(1, 0, "")]:
        closed = _kind(block) == "on"
        short = len(block.text) <= _LONGEST_IN_A_RUN and block.text[-1:] not in ".!?"
        if short and not (closed or block.level or block.listed):
            row.append(block)
            continue
        like = [place for place, one in enumerate(row) if like_ingredient(one.text)]
        if len(like) > _LEAST_LISTED and 2 * len(like) >= like[-1] - like[0] + 1 and len(like) > len(best) / 2:
            end = len(row) if closed else like[-1] + 1
            still = [at + 1 for at in range(end, len(row)) if _STILL_LISTED.search(row[at].text)]
            end = max([end, *still])
            headed = like[0] > 0 and HEADING.fullmatch(plain(row[like[0] - 1].text).strip(" :"))
            best = row[like[0] - bool(headed) : end]
        row = []
    return [best] if best else []


def _with_their_headings(blocks: Sequence[Block], groups: list[list[Block]]) -> list[Block]:
    """The lines of the lists, each under the heading that stands right above it where there are several."""
    above: dict[int, Block] = {}
    for before, block in pairwise(blocks):
        if block.listed and block.listed not in above:
            above[block.listed] = before
    found: list[Block] = []
    for group in groups:
        head = above.get(group[0].listed)
        if len(groups) > 1 and head is not None and not _kind(head):
            if head.level:
                found.append(head)
            elif HEADING.fullmatch(plain(head.text).strip(" :")):  # set in bold, and marked as nothing
                found.append(head._replace(level=_SET_IN_BOLD))
        found += group
    return found


def _paragraphs(rest: Sequence[Block]) -> list[Block]:
    """The sentences behind the ingredients, from the first long one to a heading of something else."""
    steps: list[Block] = []
    for block in rest:
        if is_over(block.text) or (steps and block.level and not HEADING.fullmatch(plain(block.text))):
            break
        sentence = bool(re.search(r"[.!)][\"”’]?$", block.text))
        if not block.level and (
            len(block.text) > _LONGEST_HEADING or (sentence and (steps or len(block.text) > _SHORTEST_STEP))
        ):
            steps.append(block)
    return steps

"""The ingredients of a page without headings for them: by the look of its lists, or of rows of short lines."""

import re
from collections.abc import Sequence
from itertools import pairwise

from calmlarder.cookbook.behind import is_over
from calmlarder.cookbook.blocks import Block
from calmlarder.cookbook.line_kinds import like_ingredient
from calmlarder.cookbook.page_lines import (
    LEAST_LISTED,
    LEAST_STEPS,
    LONGEST_HEADING,
    LONGEST_IN_A_RUN,
    SENTENCE,
    SET_IN_BOLD,
    all_counted,
    is_step,
    kind_of,
    together,
)
from calmlarder.cookbook.wording import HEADING
from calmlarder.matching.names.words import plain

_STILL_LISTED = re.compile(
    r"\b(?:salt|pepper|oil|juice|zest|handful|pinch|sprigs?|squeeze|to (?:serve|taste|garnish|finish)"
    r"|for (?:frying|serving))\b",
    re.I,
)
_SHORTEST_STEP = 30  # signs of the first one; later ones may be shorter: ours


def by_its_look(blocks: Sequence[Block]) -> tuple[list[Block], list[Block]] | None:
    """The lists of which most lines start with an amount, and the list or the paragraphs behind them."""
    groups = _lists(blocks) or _runs(blocks)
    if not groups:
        return None
    last = blocks.index(groups[-1][-1])
    chosen = _with_their_headings(blocks, groups)
    rest = blocks[last + 1 :]
    return chosen, _list_of_steps(rest) or together(blocks[last], _paragraphs(rest))


def _list_of_steps(rest: Sequence[Block]) -> list[Block]:
    """Numbered sentences, or the first list behind the ingredients that is of them; ways to other recipes are none."""
    end = next((at for at, one in enumerate(rest) if is_over(one.text)), len(rest))
    numbered = [one for one in rest[:end] if is_step(one)]
    if len(numbered) >= LEAST_STEPS:
        return numbered
    lists: dict[int, list[Block]] = {}
    for block in rest:
        if is_over(block.text) or kind_of(block) == "off":
            break
        if block.listed and not block.level:
            lists.setdefault(block.listed, []).append(block)
    for steps in lists.values():
        if in_order := all_counted(steps):
            return in_order
        told = [one for one in steps if one.text.endswith((".", "!", ")")) or len(one.text) > LONGEST_HEADING]
        if 2 * len(told) >= len(steps) and not like_ingredient(steps[0].text):
            return steps
    return []


def _lists(blocks: Sequence[Block]) -> list[list[Block]]:
    lists: dict[int, list[Block]] = {}
    for block in blocks:
        if block.listed:
            lists.setdefault(block.listed, []).append(block)
    groups = [group for group in lists.values() if not all_counted(group)]
    like = [group for group in groups if 2 * sum(like_ingredient(one.text) for one in group) >= len(group)]
    long = [group for group in like if len(group) >= LEAST_LISTED]
    if not long:
        return []
    # A short list counts beside a longer one, not behind sentences: there it is of links or remarks.
    first = blocks.index(long[0][0])
    before = {block.listed for block in _up_to_a_sentence(blocks, first)}
    return [group for group in like if len(group) >= LEAST_LISTED or group[0].listed in before]


def _up_to_a_sentence(blocks: Sequence[Block], first: int) -> Sequence[Block]:
    end = next((at for at, one in enumerate(blocks) if at > first and SENTENCE.search(one.text)), len(blocks))
    return blocks[:end]


def _runs(blocks: Sequence[Block]) -> list[list[Block]]:
    """The longest row of short lines under no list, from the first that starts with an amount to the last."""
    best: list[Block] = []
    row: list[Block] = []
    for block in [*blocks, Block(1, 0, "")]:
        closed = kind_of(block) == "on"
        short = len(block.text) <= LONGEST_IN_A_RUN and block.text[-1:] not in ".!?"
        if short and not (closed or block.level or block.listed):
            row.append(block)
            continue
        like = [place for place, one in enumerate(row) if like_ingredient(one.text)]
        if len(like) > LEAST_LISTED and 2 * len(like) >= like[-1] - like[0] + 1 and len(like) > len(best) / 2:
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
        if len(groups) > 1 and head is not None and not kind_of(head):
            if head.level:
                found.append(head)
            elif HEADING.fullmatch(plain(head.text).strip(" :")):  # set in bold, and marked as nothing
                found.append(head._replace(level=SET_IN_BOLD))
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
            len(block.text) > LONGEST_HEADING or (sentence and (steps or len(block.text) > _SHORTEST_STEP))
        ):
            steps.append(block)
    return steps

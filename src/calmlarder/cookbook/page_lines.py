"""Lines of a page that marks no recipe: what one is by its words, and steps that are numbered or stand together."""

import re
from collections.abc import Sequence
from itertools import takewhile

from calmlarder.cookbook.blocks import Block
from calmlarder.cookbook.line_kinds import section_of

LONGEST_HEADING = 70
LEAST_LISTED = 3
LONGEST_IN_A_RUN = 140  # signs of an ingredient
SENTENCE = re.compile(r"^\W*[A-Z].{28,}[.!]$", re.DOTALL)
LEAST_STEPS = 2  # of a method before its part of the page may end: ours
SET_IN_BOLD = 4  # the level of a heading that is a paragraph of its own
# `1. Bring the water to a boil. Add the rice.`: a numbered line that ends as a sentence, not an amount.
_NUMBERED_STEP = re.compile(r"(?:step )?\d{1,2}[.):] ?\s*[A-Z][^:]{20,}[.!]", re.IGNORECASE)
# `1 Boil the eggs.`: a number that is set apart by its look alone; it tells of a step where the next one follows.
_COUNTED_STEP = re.compile(r"(\d{1,2}) (?=[A-Z].{15,}[.!)]$)")


def kind_of(block: Block) -> str | None:
    """Which part of a recipe a line is the heading of, as `line_kinds.section_of` tells; None where it is none."""
    return section_of(block.text) if len(block.text) <= LONGEST_HEADING else None


def is_step(block: Block) -> bool:
    """Whether a line is numbered and ends as a sentence."""
    return not block.level and _NUMBERED_STEP.match(block.text) is not None


def counted(blocks: Sequence[Block]) -> list[Block]:
    """The lines that begin with 1, 2, 3 and so on, without these; none where there is no second one."""
    steps: list[Block] = []
    for block in blocks:
        found = None if block.level else _COUNTED_STEP.match(block.text)
        if found and int(found[1]) == len(steps) + 1:
            steps.append(block._replace(text=block.text[found.end() :]))
    return steps if len(steps) >= LEAST_STEPS else []


def all_counted(blocks: Sequence[Block]) -> list[Block]:
    """The steps of a table or a list whose rows are 1, 2, 3 and a sentence each; none of anything else."""
    steps = counted(blocks)
    told = all(one.text.endswith((".", "!")) for one in steps)
    return steps if told and len(steps) == len(blocks) else []


def together(before: Block, steps: list[Block]) -> list[Block]:
    """The steps up to where the page closes the part that holds the first of them and what stands `before` them."""
    if len(steps) <= LEAST_STEPS:
        return steps
    both = zip(before.inside, steps[0].inside, strict=False)
    part = tuple(one for one, _ in takewhile(lambda pair: pair[0] == pair[1], both))
    left = (at for at, one in enumerate(steps) if at >= LEAST_STEPS and one.inside[: len(part)] != part)
    end = next((at for at in left if not is_step(steps[at])), len(steps))
    return steps[:end]

"""What stands round a recipe's lists, above its ingredients and below its steps, without what is gone."""

import re
from collections.abc import Sequence

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.model import Adapted
from calmlarder.adapt.names import Names, spans_in, with_last_words
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.serves import serves_in
from calmlarder.cookbook.words import layout
from calmlarder.tables.book import Tables

_SENTENCE = re.compile(r"[^.!?]*[.!?]+(?=\s|$)\s*|[^.!?]+$")
_BARE_HEADING = re.compile(
    r"\n(?:#+ )?(?:[Rr]ecipe |[Cc]ook[’']?s )?(?:notes?|tips?|variations?):?[ \n]*$", re.IGNORECASE
)
_ENOUGH = 40  # letters of a step's end that tell it from others: ours
_LEAST_WORDS = 4  # of a sentence; less is a heading: ours


def without_what_is_gone(recipe: Recipe, parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Recipe:
    """The recipe without the sentences of its introduction that name a food which is swapped or left out."""
    gone = gone_foods(parts, adapted)
    if not gone or recipe.form == "jsonld":
        return recipe
    items = layout(recipe.source).items
    first = min((item.start for item in items), default=0)
    begin = recipe.source.find("\n") + 1
    if not 0 < begin < first:
        return recipe
    names = with_last_words(gone, tables)
    lines = recipe.source[begin:first].split("\n")
    first_title = recipe.first_title or recipe.title
    lines = [line.replace(first_title, recipe.title) for line in lines]  # a title that stands there twice
    kept = [line if serves_in(line) or recipe.title in line else _without(line, names) for line in lines]
    source = "\n".join(kept)
    source = f"{recipe.source[:begin]}{source}{recipe.source[first:]}"
    return recipe.model_copy(update={"source": source})


def without_what_is_gone_below(recipe: Recipe, parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Recipe:
    """The recipe without the sentences below its steps that name a food which is swapped or left out."""
    below = below_the_steps(recipe)
    gone = gone_foods(parts, adapted)
    if not below or not gone:
        return recipe
    names = with_last_words(gone, tables)
    kept = [_without(line, names) for line in below.split("\n")]
    source = recipe.source[: len(recipe.source) - len(below)] + "\n".join(_without_bare_headings(kept))
    return recipe.model_copy(update={"source": source})


def below_the_steps(recipe: Recipe) -> str:
    """What a text has below its last step; nothing where that is not clear."""
    if recipe.form == "jsonld" or recipe.page or not recipe.steps:
        return ""
    end = recipe.steps[-1].rstrip()[-_ENOUGH:]
    at = recipe.source.rfind(end)
    return recipe.source[at + len(end) :] if at >= 0 and recipe.source.count(end) == 1 else ""


def gone_foods(parts: Sequence[Part], adapted: Adapted) -> set[str]:
    """The foods that are swapped or left out."""
    return {
        parts[change.place].read.food or ""
        for change in adapted.changes
        if change.place is not None and change.change in {"swap", "out"}
    }


def _without_bare_headings(lines: Sequence[str]) -> list[str]:
    """The lines without a heading under which nothing is left."""
    text = "\n".join(lines)
    return _BARE_HEADING.sub("\n", text).split("\n")


def _without(line: str, names: Names) -> str:
    told = [one[0] for one in _SENTENCE.finditer(line)]
    kept = [one for one in told if len(one.split()) < _LEAST_WORDS or next(spans_in(one, names), None) is None]
    return line if len(kept) == len(told) else "".join(kept).rstrip()

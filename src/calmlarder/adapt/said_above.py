"""What stands between a recipe's title and its ingredients, without sentences that speak of what is gone."""

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
_LEAST_WORDS = 4  # of a sentence; less is a heading: ours


def without_what_is_gone(recipe: Recipe, parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Recipe:
    """The recipe without the sentences of its introduction that name a food which is swapped or left out."""
    gone = {
        parts[change.place].read.food or ""
        for change in adapted.changes
        if change.place is not None and change.change in {"swap", "out"}
    }
    if not gone or recipe.form == "jsonld":
        return recipe
    items = layout(recipe.source).items
    first = min((item.start for item in items), default=0)
    begin = recipe.source.find("\n") + 1
    if not 0 < begin < first:
        return recipe
    names = with_last_words(gone, tables)
    lines = recipe.source[begin:first].split("\n")
    kept = [line if serves_in(line) else _without(line, names) for line in lines]
    source = "\n".join(kept)
    source = f"{recipe.source[:begin]}{source}{recipe.source[first:]}"
    return recipe.model_copy(update={"source": source})


def _without(line: str, names: Names) -> str:
    told = [one[0] for one in _SENTENCE.finditer(line)]
    kept = [one for one in told if len(one.split()) < _LEAST_WORDS or next(spans_in(one, names), None) is None]
    return line if len(kept) == len(told) else "".join(kept).rstrip()

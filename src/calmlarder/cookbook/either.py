"""The foods that an ingredient line allows in each other's place (`butter or oil`, `olive or canola oil`)."""

import re

from calmlarder.cookbook.line_amount import take_quantity
from calmlarder.cookbook.names import IngredientNames, Part
from calmlarder.cookbook.wording import without_prep, without_tail
from calmlarder.matching.names.foods import Match
from calmlarder.tables.book import Tables

OR = re.compile(r"\s*,?\s+(?:or(?: else| even)?|and/or)\s+|\s*(?<!\d)/(?!\d)\s*")
_WHOLE = 100.0  # the score of a name in full
_STATES_ALONE = frozenset({"dried", "frozen", "canned", "tinned", "ground"})
_IN_FRONT = re.compile(r"(dried|frozen|ground|canned|tinned)\b")
_THE_SAME = frozenset({"one", "ones"})  # `1 small onion or half a large one`
_FLESH = frozenset({"meat", "poultry", "fish"})


def either_of(rest: str, told: frozenset[str], names: IngredientNames, tables: Tables) -> list[Part]:
    """The foods a line allows, first the one it names first (`butter or oil`, `olive or canola oil`)."""
    whole_name = rest.split(",")[0]
    if "without" in whole_name and names.is_name(whole_name):
        return [names.part(whole_name, told)]  # `salsa without onion or garlic`
    head = without_tail(rest)
    pieces = [take_quantity(piece).rest for piece in OR.split(head)]
    pieces = pieces[:1] + [piece for piece in pieces[1:] if piece not in _THE_SAME]
    form = _IN_FRONT.match(pieces[0])  # `dried porcini or shiitake`
    if form is not None:
        formed = [f"{form[1]} {piece}" for piece in pieces[1:]]
        if all(names.match(one, told).score >= _WHOLE for one in formed):
            pieces = pieces[:1] + formed
    if len(pieces) > 1:
        listed = [one for piece in pieces for one in re.split(r"\s*,\s*", piece) if one]
        if all(names.match(one, told).score >= _WHOLE for one in listed):
            pieces = listed  # `dried apricots, raisins, or dates`
    whole = names.part(head, told)
    if len(pieces) < 2:
        return [whole]
    if len(pieces) == 2 and without_prep(pieces[-1]) in _STATES_ALONE:
        return [names.part(pieces[0], told - _STATES_ALONE)]  # `fresh thyme, or 1 teaspoon dried`
    pieces = [piece for piece in pieces[:-1] if without_prep(piece)] + pieces[-1:]  # `kosher or sea salt`
    bare = [without_prep(piece.split(",")[0] or piece) for piece in pieces]
    last = bare[-1].split()
    parts: list[Part] = []
    for piece, name in zip(pieces, bare, strict=True):
        alone = names.part(piece, told)
        cuts = [cut for cut in range(1, len(last)) if not _parts_a_name(last, cut, names)] if name else []
        shared = [names.part(f"{name} {' '.join(last[cut:])}", told) for cut in cuts]
        joined = next((one for one in shared if one.match.food is not None and one.match.score >= _WHOLE), None)
        full = alone.match.food is not None and alone.match.score >= _WHOLE and len(name.split()) > 1
        if piece is pieces[-1] or joined is None or full:
            parts.append(alone)  # `vegetable oil or grill spray`: the first is a whole name
        elif alone.match.food is not None and alone.match.food.kind == "allium":
            # `garlic or chilli oil`: the clove or its oil; nobody but the cook can tell.
            both = (*alone.match.candidates, *joined.match.candidates)
            parts.append(Part(Match("ask", None, None, 100.0, both), None))
        else:
            parts.append(joined)
    first = parts[0].match
    other = parts[-1].match
    strange = other.food is None and (first.food and first.food.id) not in {one.food for one in other.candidates}
    if len(last) > 1 and _are_flesh((bare[0], last[0]), names, tables):
        # `pork or turkey bacon`: two kinds of one thing, of which the first is not named in full.
        return [parts[-1]]
    if first.food is not None and strange and len(last) > 1 and len(bare[0].split()) == 1:
        # `cream or dry sherry` may be cream, or a kind of what the tables do not know.
        return [Part(Match("ask", None, None, 100.0, first.candidates), None)]
    named = [part for part in parts if part.match.outcome != "unknown"]
    return parts if named else [whole]


def _parts_a_name(words: list[str], cut: int, names: IngredientNames) -> bool:
    """Whether the word before a cut makes another thing of those behind it: an ice cream is no cream."""
    whole, behind = (names.match(" ".join(words[at:]), frozenset()) for at in (cut - 1, cut))
    if whole.food is None or behind.food is None or min(whole.score, behind.score) < _WHOLE:
        return False
    return whole.food.kind != behind.food.kind


def _are_flesh(words: tuple[str, ...], names: IngredientNames, tables: Tables) -> bool:
    found = [names.match(word, frozenset()).candidates for word in words]
    kinds = [{tables.food_by_id[one.food].kind for one in candidates} for candidates in found]
    return all(" " not in word for word in words) and all(kind and kind <= _FLESH for kind in kinds)

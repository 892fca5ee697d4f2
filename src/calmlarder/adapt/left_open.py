"""What becomes of lines that nobody can count for sure: left out where the dish does without, else told how much."""

import re
from collections.abc import Iterable, Iterator, Sequence

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.line_words import if_optional, tail_of
from calmlarder.adapt.model import Adapted, Change, Unread
from calmlarder.adapt.usual_amounts import SEASONINGS, is_beside
from calmlarder.adapt.worst import is_plain_word
from calmlarder.adapt.written import written
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.tables.book import Tables

_LETTERS = re.compile(r"[^\W\d_]{3,}")


def left_out_unread(unread: Iterable[Unread], reads: Sequence[IngredientRead]) -> Iterator[Change]:
    """A line that is optional or but served with it goes where nobody can say what it brings."""
    for one in unread:
        if not one.harmless and is_beside(reads[one.place]):
            why = f"nobody can say that it is fine ({one.why}), and the dish does without it"
            yield Change(place=one.place, ingredient=one.text, change="out", to=(), lines=(), why=why)


def so_much_of_it(lines: Iterable[Counted], changed: set[int | None], tables: Tables) -> Iterator[Change]:
    """A line that stays without an amount, of which it counts how much there is, gets the one that was reckoned."""
    for line in lines:
        measured = line.amount is not None and line.profile is not None and line.food.kind not in SEASONINGS
        if line.amount is None or not measured or not line.read.unsure or line.place in changed or line.read.also:
            continue
        tail = tail_of(line.read.text)
        words = f"{line.food.name}{tail}{'' if 'optional' in tail else if_optional(line.read)}"
        told = written(line.food, line.amount.grams, tables, words).line
        why = f"{line.read.unsure}: so much was reckoned with ({line.read.assumed})"
        to = (line.amount,)
        yield Change(place=line.place, ingredient=line.read.text, change="weigh", to=to, lines=(told,), why=why)


def without_unread(steps: Sequence[str], adapted: Adapted, reads: Sequence[IngredientRead]) -> tuple[str, ...]:
    """The steps, in which the strange words of a line that was left out unread are marked so."""
    gone = [change.ingredient for change in adapted.changes if _left_out_unread(change, reads)]
    words = {word for text in gone for word in _LETTERS.findall(text) if not is_plain_word(word.casefold())}
    if not words:
        return tuple(steps)
    word = rf"(?:{'|'.join(sorted(map(re.escape, words), key=len, reverse=True))})"
    named = re.compile(rf"\b{word}(?:[ -]{word})*\b", re.IGNORECASE)
    return tuple(named.sub(r"\g<0> [left out]", step) for step in steps)


def _left_out_unread(change: Change, reads: Sequence[IngredientRead]) -> bool:
    return change.change == "out" and change.place is not None and reads[change.place].food is None

"""Flour without gluten binds less: an egg more, where there are eggs that are counted and few of them."""

import re
from collections.abc import Sequence
from decimal import Decimal

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.model import Amount, Change
from calmlarder.tables.book import Tables

_WANTS = "batters and doughs that must bind want an egg more"
_BINDS = Decimal("0.75")  # g of egg to a gram of flour that bind without more, as in a sponge cake: common practice
_LEAST_FLOUR = Decimal(100)  # g; less only thickens or coats: ours
_LEAST_TOLD = Decimal(60)  # g; of less nobody needs the word: ours
_COUNTED = re.compile(
    r"\s*(\d{1,2}|one|two|three|four|five|six)\b(?=(?: [\w-]+){0,4} eggs?\b)(?!.*\b(?:yolk|white)s?\b)"
)
_FOR_A_GLAZE = re.compile(r"\b(?:to|for) (?:glaz|brush)\w*|\begg[ -]?wash\b", re.IGNORECASE)  # that binds nothing
_COUNTS = ("one", "two", "three", "four", "five", "six")
_NO_EGG = (  # common practice, no source
    "no egg holds it here: mix 1 tsp ground psyllium husk for each 100 g into it first, and let the dough stand ten "
    "minutes"
)
_WHY = "gluten-free flour binds less: an egg more holds it together (common practice, no source)"


def with_eggs_that_bind(
    changes: tuple[Change, ...], lines: Sequence[Counted], tables: Tables, binds: bool = True
) -> tuple[Change, ...]:
    """The changes, with an egg more where it is needed; what they say of eggs is left out where it is settled.

    `binds` is whether the dish has a batter or a dough at all: a crumble need not hold together.
    """
    flour = sum(
        (one.grams for change in changes if _WANTS in change.how for one in change.to
         if tables.food_by_id[one.food].kind == "flour"),
        Decimal(0),
    )  # fmt: skip
    eggs = [
        line
        for line in lines
        if line.food.id == "egg"
        and line.amount is not None
        and not line.breaks
        and not _FOR_A_GLAZE.search(line.read.text)
    ]
    settled = tuple(_without_the_word(change) for change in changes)
    if not binds:
        return settled
    if not flour or not eggs:
        return tuple(map(_with_psyllium, changes)) if flour >= _LEAST_FLOUR else changes
    held = sum((line.amount.grams for line in eggs if line.amount is not None), Decimal(0))
    changed = {change.place for change in changes}
    if held >= _BINDS * flour or flour < _LEAST_TOLD:
        return settled
    if flour < _LEAST_FLOUR:
        return changes  # the cook decides: an egg more is much for a small batter
    more = next((new for line in eggs if line.place not in changed and (new := _one_more(line)) is not None), None)
    return changes if more is None else tuple(sorted((*settled, more), key=_place))


def _place(change: Change) -> int:
    return change.place if change.place is not None else 10_000  # what is of the whole dish stands last


def _one_more(line: Counted) -> Change | None:
    """The line with an egg more; None where its eggs are not counted."""
    found = _COUNTED.match(line.read.text.casefold())
    if found is None or line.amount is None or line.read.also:
        return None
    count = int(found[1]) if found[1].isdigit() else _COUNTS.index(found[1]) + 1
    if count == 0:
        return None
    rest = line.read.text[found.end(1) :]
    rest = re.sub(r"\begg\b", "eggs", rest, count=1)
    grams = line.amount.grams * (count + 1) / count
    amount = Amount(food="egg", grams=grams, high=max(grams, line.amount.high), weighed=False, sure=line.amount.sure)
    return Change(
        place=line.place,
        ingredient=line.read.text,
        change="more",
        to=(amount,),
        lines=(f"{count + 1}{rest}",),
        why=_WHY,
    )


def _with_psyllium(change: Change) -> Change:
    """The change with what binds a dough that no egg holds, in the place of its word on eggs."""
    return change.model_copy(
        update={"why": change.why.replace(_WANTS, _NO_EGG), "how": change.how.replace(_WANTS, _NO_EGG)}
    )


def _without_the_word(change: Change) -> Change:
    """The change without its word on eggs, in why and how."""
    if _WANTS not in change.how:
        return change
    why = re.sub(rf"(?:; )?when: (?:any: )?{_WANTS}", "", change.why)
    how = re.sub(rf"(?:^|; ){_WANTS}", "", change.how).removeprefix("; ")
    return change.model_copy(update={"why": why, "how": how})

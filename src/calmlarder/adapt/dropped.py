"""What a line allows besides its food, where that may not be eaten: it is left out of the line, and of the steps."""

import re
from collections.abc import Sequence

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.line_words import tail_of
from calmlarder.adapt.model import Adapted, Change, Eaters
from calmlarder.adapt.names import Names, names_of_all, spans_in, with_last_words
from calmlarder.adapt.triggers import passes_alone
from calmlarder.adapt.written import in_own_measure, written
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.tables.book import Tables

_OR_BEFORE = re.compile(r"\s*(?:,|/)?\s*\bor (?:(?:some|the|a|an|warm|hot|crusty|fresh|your) )*$", re.IGNORECASE)
_OR_BEHIND = re.compile(r"(?:,| |/)*\bor\b ", re.IGNORECASE)
_COMMA_BEFORE = re.compile(r",\s*(?:(?:some|the|a|an|warm|hot|crusty|fresh) )*$", re.IGNORECASE)
_FIRST_OR = re.compile(r",? or ", re.IGNORECASE)
_ENDS = re.compile(r"\s*(?:[.;:)!]|$)")
_LAST_OR = re.compile(r",? or ((?:[^\W\d]+ ){0,3}[^\W\d]{3,})(?:,[^,]*)?$", re.IGNORECASE)
_OF_IT = re.compile(r"(?:(?:some|warm|hot|crusty|fresh) )+$", re.IGNORECASE)


def only_changes(
    lines: Sequence[Counted], changed: set[int | None], eaters: Eaters, tables: Tables
) -> tuple[Change, ...]:
    """A change for each line that stays as it is and allows besides what passes a limit, breaks diet, or is unknown."""
    found = []
    for line in lines:
        bad = [one for one in line.read.alternatives if _is_unsound(one, eaters, tables)]
        unread = bool(line.read.said) and not line.read.alternatives
        if line.place in changed or line.read.also or line.breaks or not (bad or unread):
            continue
        if line.amount is None and (line.profile is None or line.profile.anything):
            continue  # it is not counted itself
        names = " and ".join(tables.food_by_id[one].name for one in bad)
        found.append(
            Change(
                place=line.place,
                ingredient=line.read.text,
                change="only",
                to=(line.amount,) if line.amount is not None else (),
                unmeasured=() if line.amount is not None else (line.food.id,),
                lines=(_line_of(line, tables),),
                why=f"what the line allows besides may not be eaten: {names}"
                if names
                else "what the line allows besides could not be read",
            )
        )
    return tuple(found)


def _is_unsound(food: str, eaters: Eaters, tables: Tables) -> bool:
    row = tables.food_by_id[food]
    fits = suits_diet(row, eaters.diet) and not allergens_met(row, eaters.avoid)
    return not fits or bool(tables.unknown_of(food)) or passes_alone(food, eaters, tables)


def _line_of(line: Counted, tables: Tables) -> str:
    """The line with its own food alone."""
    if line.read.said:
        return line.read.said
    words = f"{_own_half(line, tables) or line.food.name}{tail_of(line.read.text)}"
    if line.amount is None or line.read.assumed.startswith("taken as"):
        return words
    own = in_own_measure(line.read, line.food, line.amount.grams, tables)
    return f"{own.line} {words}" if own is not None else written(line.food, line.amount.grams, tables, words).line


def _own_half(line: Counted, tables: Tables) -> str:
    """`Basmati rice` of `Basmati rice or warm naan`: the line's own words, where it begins with them and no amount."""
    head = _FIRST_OR.split(line.read.text.partition(",")[0])[0].strip()
    spans = list(spans_in(head, names_of_all(tables)))
    alone = not re.search(r"\d", head) and spans and all(line.food.id in meant for _, _, meant in spans)
    return head if alone and line.amount is not None and line.read.assumed.startswith("taken as") else ""


def steps_without_others(
    steps: Sequence[str], reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables
) -> tuple[str, ...]:
    """The steps without what a changed line allows besides (`rice or naan`), where it is no longer in the list."""
    steps = _without_unread_others(steps, reads, adapted)
    gone = {
        food
        for change in adapted.changes
        if change.place is not None and change.change in {"swap", "out", "only"}
        for food in reads[change.place].alternatives
    }
    held = {
        read.food for place, read in enumerate(reads) if all(change.place != place for change in adapted.changes)
    } | {
        one.food
        for change in adapted.changes
        if change.place is not None and change.change != "only"
        for one in change.to
        if one.food not in reads[change.place].alternatives
    }
    kept = set(with_last_words({food for food in held if food}, tables))
    names = {words: meant for words, meant in with_last_words(gone - held, tables).items() if words not in kept}
    return tuple(_without(step, names) for step in steps) if names else tuple(steps)


def _without_unread_others(steps: Sequence[str], reads: Sequence[IngredientRead], adapted: Adapted) -> tuple[str, ...]:
    """The steps without what a line allows besides that nobody could read, in the words of its line."""
    for change in adapted.changes:
        read = reads[change.place] if change.place is not None else None
        other = _LAST_OR.search(read.text) if read is not None and change.change == "only" and read.said else None
        if other is not None:
            named = re.compile(rf",? or (?:the |some )?{re.escape(other[1].strip())}\b", re.IGNORECASE)
            steps = [named.sub("", step) for step in steps]
    return tuple(steps)


def _without(step: str, names: Names) -> str:
    for start, end, _ in reversed(list(spans_in(step, names))):
        before, behind = _OR_BEFORE.search(step[:start]), _OR_BEHIND.match(step, end)
        comma = _COMMA_BEFORE.search(step[:start])
        if before is not None:
            step = f"{step[: before.start()]}{step[end:]}"
        elif (behind is not None and comma is not None) or (comma is not None and _ENDS.match(step, end)):
            step = f"{step[: comma.start()]}{step[end:]}"
        elif behind is not None:
            of_it = _OF_IT.search(step[:start])
            step = f"{step[: of_it.start() if of_it else start]}{step[behind.end() :]}"
    return step

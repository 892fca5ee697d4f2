"""Lines that name several foods, and the changed recipe in the form it came in or the one asked for."""

import re
from collections import Counter
from collections.abc import Sequence
from decimal import Decimal
from itertools import accumulate, takewhile
from typing import NamedTuple

from calmlarder.adapt.in_cups import measures_in_cups, with_cups
from calmlarder.adapt.line_cuts import cut_of
from calmlarder.adapt.line_words import own_words, tail_of
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.step_gone import studs_of
from calmlarder.adapt.titles import heading_after
from calmlarder.adapt.written import written
from calmlarder.cookbook.recipe import Form, IngredientRead, Recipe
from calmlarder.cookbook.write import rewritten
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_STAYS = frozenset({"less", "weigh", "more"})
_PIECES_OF_A_LINE = re.compile(r",| and | & |\+")
_WHITE_AND_GREEN = re.compile(
    r"\b(?:whites?|greens?)(?: parts?)? and (?:light |dark |pale )?(?:whites?|greens?)\b", re.I
)
_BRACKETS = re.compile(r"\([^()]*\)")
_FOR_WHAT_ALL = re.compile(r",? \b(?:for|to) (?:serve|serving|topping|garnish|finish|the top|sprinkle|sprinkling)\b.*$")


class Part(NamedTuple):
    """One food of an ingredient line: `line` is the number of the line in the recipe."""

    line: int
    read: IngredientRead


def parts_of(reads: Sequence[IngredientRead]) -> tuple[Part, ...]:
    """Every food of every line: "salt and pepper" are two. A line that was not read whole stays whole."""
    parts: list[Part] = []
    for line, read in enumerate(reads):
        parts.append(Part(line, read))
        if read.outcome == "read":
            parts += [Part(line, one) for one in read.also]
    return tuple(parts)


class Page(NamedTuple):
    """A recipe, the parts of its lines, and what is to change of them."""

    recipe: Recipe
    parts: Sequence[Part]
    adapted: Adapted


def changed_recipe(page: Page, form: Form | None, tables: Tables, notes: Sequence[str] = ()) -> str | None:
    """The recipe with its changes written in, `notes` behind its steps; None where it could not be brought under.

    What was not counted stays, with a mark.
    """
    recipe, parts, adapted = page
    if adapted.after is None:
        return None
    changed = [change.place for change in adapted.changes if change.place is not None]
    unread = {one.place: one.mark for one in adapted.in_doubt}
    joined = joined_lines(parts, adapted, tables)
    lines: dict[int, tuple[str, ...]] = {parts[place].line: (line,) for place, line in joined.items()}
    for place, mark in sorted(unread.items(), reverse=True):  # of one line the first part's mark
        line = parts[place].line
        lines[line] = (_marked(recipe.ingredients[line], mark),)
    apart = lines_apart(adapted, parts, tables)
    staying = {parts[one.place].line for one in adapted.changes if one.place is not None and one.change in _STAYS}
    for line in dict.fromkeys(parts[place].line for place in changed):
        lines[line] = tuple(
            text
            for place, part in enumerate(parts)
            if part.line == line
            for text in _texts(place, recipe, parts, apart, tables)
        )
        if (studs := studs_of(recipe.ingredients[line])) and line not in staying:
            lines[line] = (*lines[line], studs)
    lines |= _headings(parts, adapted, tables)
    if measures_in_cups(recipe.ingredients):
        lines = {line: tuple(with_cups(text, adapted, tables) for text in texts) for line, texts in lines.items()}
    return rewritten(recipe, lines, adapted.after.serves, form or recipe.form, notes)


def _headings(parts: Sequence[Part], adapted: Adapted, tables: Tables) -> dict[int, tuple[str, ...]]:
    """The headings of the list that name a food which none of the lines below has any more."""
    changes = {change.place: change for change in adapted.changes}
    found: dict[int, tuple[str, ...]] = {}
    for place, part in enumerate(parts):
        if part.read.outcome != "heading":
            continue
        below = [*takewhile(lambda one: parts[one].read.outcome != "heading", range(place + 1, len(parts)))]
        stays = {parts[one].read.food for one in below if one not in changes}
        stays |= {to.food for one in below if one in changes for to in changes[one].to}
        left = [(parts[one].read.food, changes[one]) for one in below if one in changes]
        gone = [(food, change) for food, change in left if food is not None and food not in stays]
        if (new := heading_after(part.read.text, gone, tables)) != part.read.text:
            found[part.line] = (new,)
    return found


def lines_apart(adapted: Adapted, parts: Sequence[Part], tables: Tables) -> Adapted:
    """The changes as they stand in the list: without what is put to another line, and each stand-in once."""
    joined = joined_lines(parts, adapted, tables)
    return _once(_without(adapted, {adapted.amounts[place].food for place in joined}), parts, tables)


def line_of_several(change: Change, food: str, page: Page, tables: Tables) -> str:
    """The line of a food that stays and of which a change of the same line makes more; empty where there is none."""
    recipe, parts, apart = page
    if change.place is None or len(change.to) != 1:
        return ""
    changed = {one.place for one in apart.changes}
    line = parts[change.place].line
    beside = (n for n, part in enumerate(parts) if part.line == line and n not in changed and part.read.food == food)
    return next((text for n in beside for text in _texts(n, recipe, parts, apart, tables)[:1]), "")


def joined_lines(parts: Sequence[Part], adapted: Adapted, tables: Tables) -> dict[int, str]:
    """Lines that stay as they are but for what turns into their food elsewhere: one line, all of it.

    Not from under another heading: what goes into a sauce is not added to the salad. No oil, which steps call but
    oil and use here and there.
    """
    under = list(accumulate(part.read.outcome == "heading" for part in parts))
    changed = {change.place for change in adapted.changes} | {one.place for one in adapted.unread}
    more: dict[str, Decimal] = {}
    headings: dict[str, set[int]] = {}
    for change in adapted.changes:
        if change.change == "swap" and change.place is not None:
            for one in change.to:
                headings.setdefault(one.food, set()).add(under[change.place])
                more[one.food] = more.get(one.food, Decimal(0)) + one.grams
    alone = Counter(part.line for part in parts)
    found: dict[int, str] = {}
    for place, part in enumerate(parts):
        amount = adapted.amounts.get(place)
        if place in changed or amount is None or alone[part.line] > 1 or amount.food not in more:
            continue
        if headings[amount.food] != {under[place]}:
            continue
        food = tables.food_by_id[amount.food]
        if stays_apart(part, food):
            continue
        words = own_words(part.read, food, amount.grams, tables)
        found[place] = written(food, amount.grams + more.pop(amount.food), tables, words).line
    return found


def stays_apart(part: Part, food: Food) -> bool:
    """Whether nothing is put to a line: oil, and a spice that it calls otherwise, as cayenne is no spoon of flakes."""
    unlike = food.kind == "spice" and not set(words_of(food.name)[-1:]) <= set(words_of(part.read.text))
    return food.kind == "oil" or unlike


def _once(adapted: Adapted, parts: Sequence[Part], tables: Tables) -> Adapted:
    """What takes the place of several lines stands in the first of them, all of it; not where headings part them."""
    changed = {change.place for change in adapted.changes}
    staying = {(part.line, part.read.food) for place, part in enumerate(parts) if place not in changed}

    def joins_its_line(change: Change) -> bool:  # `mixed mushrooms (shiitake, oyster)` become oyster mushrooms
        line = parts[change.place or 0].line
        return len(change.to) == 1 and (line, change.to[0].food) in staying

    swaps = [change for change in adapted.changes if change.change == "swap" and not joins_its_line(change)]
    grams: dict[str, list[Decimal]] = {}
    for change in swaps:
        for one in change.to:
            grams.setdefault(one.food, []).append(one.grams)
    several = {food: sum(each, Decimal(0)) for food, each in grams.items() if len(each) > 1}
    under = list(accumulate(part.read.outcome == "heading" for part in parts))
    headings: dict[str, set[int]] = {}
    for change in swaps:
        for one in change.to:
            headings.setdefault(one.food, set()).add(under[change.place or 0])
    several = {food: grams for food, grams in several.items() if len(headings[food]) == 1}
    if not several:
        return adapted
    changes = []
    told: set[str] = set()
    for change in adapted.changes:
        if change in swaps and change.to:
            pairs = []
            for one, line in zip(change.to, change.lines, strict=True):
                if one.food in told:
                    continue  # it stands in an earlier line
                if one.food in several:
                    food, tail = tables.food_by_id[one.food], tail_of(line)
                    new = written(food, several[one.food], tables, f"{food.name}{tail}")
                    pairs.append((new.amount, new.line))
                    told.add(one.food)
                else:
                    pairs.append((one, line))
            change = change.model_copy(update={"to": tuple(a for a, _ in pairs), "lines": tuple(b for _, b in pairs)})
        changes.append(change)
    return adapted.model_copy(update={"changes": tuple(changes)})


def _without(adapted: Adapted, foods: set[str]) -> Adapted:
    """The changes without what is added to a line of that food; a swap into it alone leaves no line."""
    changes = []
    for change in adapted.changes:
        if change.change == "swap" and change.to:
            kept = [(one, line) for one, line in zip(change.to, change.lines, strict=True) if one.food not in foods]
            update = {"to": tuple(one for one, _ in kept), "lines": tuple(line for _, line in kept)}
            change = change.model_copy(update=update)
        changes.append(change)
    return adapted.model_copy(update={"changes": tuple(changes)})


def _texts(place: int, recipe: Recipe, parts: Sequence[Part], adapted: Adapted, tables: Tables) -> tuple[str, ...]:
    """What a food of a changed line becomes; what turns into another food of the line is added to that one."""
    part = parts[place]
    changes = {change.place: change for change in adapted.changes if change.place is not None}
    beside = {n: one for n, one in enumerate(parts) if one.line == part.line and n != place}
    if place in changes:
        change = changes[place]
        joins = any(
            _becomes(change, one) and (n in adapted.amounts if n not in changes else _weighs(changes[n]))
            for n, one in beside.items()
            if change.change == "swap"
        )
        more = [changes[n].to[0].grams for n in beside if n in changes and _becomes(changes[n], part)]
        if _weighs(change) and more and part.read.food:  # greens that are weighed, and whites that become greens
            food = tables.food_by_id[part.read.food]
            words = f"{food.name}{tail_of(change.lines[0]) or cut_of(recipe.ingredients[part.line])}"
            return (written(food, change.to[0].grams + sum(more), tables, words).line,)
        return () if joins else change.lines
    more = [changes[n].to[0].grams for n in beside if n in changes and _becomes(changes[n], part)]
    if not more or place not in adapted.amounts:
        return _kept(part, recipe, adapted, place, tables)
    food = tables.food_by_id[part.read.food or ""]
    line = recipe.ingredients[part.line]
    several = " and " in _WHITE_AND_GREEN.sub("", _BRACKETS.sub("", line))
    alone = "" if several else line  # what is said behind is of the one food that it names
    words = f"{food.name}{cut_of(_own_piece(line, food)) or cut_of(alone)}"
    return (written(food, adapted.amounts[place].grams + sum(more), tables, words).line,)


def _weighs(change: Change) -> bool:
    return change.change in _STAYS and len(change.to) == 1


def _becomes(change: Change, part: Part) -> bool:
    return len(change.to) == 1 and change.to[0].food == part.read.food


def _marked(text: str, mark: str) -> str:
    return text if text.endswith(mark) else f"{text} {mark}"


def _own_piece(text: str, food: Food) -> str:
    """What a line of several foods says of this one; empty where its name stands in no piece of it, or in several."""
    pieces = [piece.strip() for piece in _PIECES_OF_A_LINE.split(_FOR_WHAT_ALL.sub("", text)) if piece.strip()]
    named = [piece for piece in pieces if set(words_of(food.name)[-1:]) <= set(words_of(piece))]
    return named[0] if len(named) == 1 and len(pieces) > 1 else ""


def _kept(part: Part, recipe: Recipe, adapted: Adapted, place: int, tables: Tables) -> tuple[str, ...]:
    """A line of its own for a food that stays, where another food of its line changes."""
    text = part.read.text
    if text == recipe.ingredients[part.line]:
        food, amount = tables.food_by_id[part.read.food or ""], adapted.amounts.get(place)
        piece = _own_piece(text, food)
        if part.read.grams is None and piece:  # what it was taken for is no word of the recipe
            use = _FOR_WHAT_ALL.search(text)
            return (f"{piece[:1].upper()}{piece[1:]}{use[0] if use else ''}",)
        words = f"{food.name}{cut_of(piece or text)}"
        text = food.name if amount is None else written(food, amount.grams, tables, words).line
    mark = next((one.mark for one in adapted.in_doubt if one.place == place), "")
    return (_marked(text, mark) if mark else text,)

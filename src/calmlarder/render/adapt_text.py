"""An adapted recipe as text: what each line brings, before and after, the changes, the recipe."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from calmlarder.adapt.model import Adapted, Loads
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.larder.order import days_in_words
from calmlarder.render.adapt_json import counted_lines, lines_of
from calmlarder.render.caution import CAUTION
from calmlarder.render.style import Style, blocks
from calmlarder.swaps.model import sane_grams, told_grams
from calmlarder.tables.book import Tables

_HELD = " [in the larder: "
_LEAST_BAR, _MOST_BAR = 4, 16
_BESIDE_BAR = 13  # the load in front of a bar, the percentage behind it
_VERDICTS = {
    "fits": "It fits as it is: every limit of the profile holds.",
    "adapted": "The smallest change that makes it fit, as we count changes.",
    "adapted_best_found": "It fits after these; there may be a smaller change.",
    "cannot": "This recipe cannot be made to fit: that would take more than half of the dish away.",
    "open": "No change that makes it fit was found in the time there is.",
    "nothing_read": "No ingredient could be counted, so nothing can be said of this recipe.",
}
_OF_WHAT_WAS_COUNTED = {
    "fits": "What was counted of it keeps under every limit.",
    "adapted": "What was counted of it fits after the changes below.",
    "adapted_best_found": "What was counted of it fits after the changes below.",
    "cannot": "What was counted of it cannot be made to fit: that would take more than half of the dish away.",
    "open": "For what was counted no change that makes it fit was found in the time there is.",
    "nothing_read": "No ingredient could be counted.",
}
_CHANGES = {
    "swap": "Swap",
    "less": "Less",
    "weigh": "Weigh",
    "out": "Leave out",
    "more": "More",
    "only": "Only",
    "serving": "Serve smaller",
}


class Run(NamedTuple):
    """What a run answers: the title, what each line was read as, what is to change, and the recipe as changed."""

    title: str
    reads: Sequence[IngredientRead]
    adapted: Adapted
    recipe: str | None


def adapt_text(run: Run, tables: Tables, style: Style) -> str:
    """The whole answer of a run: what to do first, then the figures."""
    title, reads, adapted, recipe = run
    parts = [
        _heading(title, reads, adapted, style),
        _changes(reads, adapted, tables, style),
        _unread(adapted, style),
        _loads(adapted, tables, style),
        _recipe(reads, adapted, recipe, style),
        _ingredients(reads, adapted, tables, style),
        style.wrapped(CAUTION),
    ]
    return "\n\n".join("\n".join(part) for part in (list(one) for one in parts) if part) + "\n"


def verdict(reads: Sequence[IngredientRead], adapted: Adapted) -> str:
    """How many lines were counted, and how the recipe stands; not known where some line or the list is in doubt."""
    counted, whole = counted_lines(reads, adapted), lines_of(reads)
    head = f"{counted} of {whole} lines counted" if counted < whole else f"All {whole} lines counted"
    if adapted.known:
        return f"{head}. {_VERDICTS[adapted.status]}"
    triggers = dict.fromkeys(one.trigger for one in adapted.in_doubt if one.trigger)
    named = f" Not counted, and often rich in what elimination limits: {', '.join(triggers)}." if triggers else ""
    return f"{head}: not known whether this recipe fits.{named} {_OF_WHAT_WAS_COUNTED[adapted.status]}"


def _heading(title: str, reads: Sequence[IngredientRead], adapted: Adapted, style: Style) -> Iterator[str]:
    serves = str(adapted.before.serves)
    if adapted.after is not None and adapted.after.serves != adapted.before.serves:
        serves = f"{adapted.after.serves} (written for {serves})"  # only so does it fit
    yield from (style.strong(line) for line in textwrap.wrap(f"{title or 'A recipe'}, for {serves}", style.width))
    yield from style.wrapped(verdict(reads, adapted))
    for warning in (*adapted.remarks, *adapted.warnings):
        yield from style.wrapped(warning)


def _ingredients(reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables, style: Style) -> Iterator[str]:
    """Each line with what it was read as, and what it brings most of."""
    yield style.strong("What each ingredient brings a serving")
    brought = {one.place: one for one in adapted.brought}
    unread = {one.place for one in adapted.unread}
    for place, read in enumerate(reads):
        if read.outcome == "heading":
            continue
        amount = adapted.amounts.get(place)
        share = brought.get(place)
        if read.outcome == "nothing":
            told = "nothing"
        elif place in unread or share is None:
            told = "not counted"
        elif share.cap is None:
            unknown = read.food in tables.food_by_id and tables.unknown_of(read.food or "")
            told = "no figure is known; see the changes" if unknown else "nothing that is limited"
        else:
            words = CAP_WORDS.get(share.cap, share.cap)
            told = f"{float(share.grams):.2f} g {words} ({round(100 * float(share.grams / share.limit_g))} %)"
        food = tables.food_by_id[read.food].name if read.food and read.food in tables.food_by_id else ""
        known = f"{told_grams(sane_grams(amount.grams))} {food}" if amount else food
        known += f" ({read.assumed})" if known and read.assumed else ""
        known = f" = {known}" if known and known.casefold() != read.text.casefold() else ""
        there = _there(read.food, adapted)
        yield from style.wrapped(f"{read.text}{known}: {told}{there}", "  ", "      ")


def _there(food: str | None, adapted: Adapted) -> str:
    """What the larder holds of a food, and for how long."""
    held = adapted.at_home.get(food or "")
    if held is None:
        return ""
    days = "" if held.days_left is None else f", {days_in_words(held.days_left)}"
    return f"{_HELD}{told_grams(sane_grams(held.grams))}{days}]"


def _all_there(foods: Sequence[str], adapted: Adapted, tables: Tables) -> str:
    """The same of what takes a food's place; where that is several, each by its name."""
    if len(foods) == 1:
        return _there(foods[0], adapted)
    told = [
        f"{tables.food_by_id[food].name} {marks.removeprefix(_HELD).removesuffix(']')}"
        for food in foods
        if food in tables.food_by_id and (marks := _there(food, adapted))
    ]
    return f"{_HELD}{'; '.join(told)}]" if told else ""


def _loads(adapted: Adapted, tables: Tables, style: Style) -> Iterator[str]:
    """Before and after side by side: what is likely, and how full its limit is, likely or at most."""
    if adapted.status == "nothing_read" or not adapted.limits_g:  # a person without limits
        return
    after = adapted.after if adapted.changes else None
    yield style.strong(f"Each serving, g of the limit: {'before, then after' if after else 'as written'}")
    yield from style.hanging("grams are what is likely; % is the fuller of likely and at most")
    width = max(len(CAP_WORDS.get(key, key)) for key in adapted.limits_g)
    count = 2 if after else 1
    beside = width + 9 + 2 * (count - 1)
    one_line = style.width >= beside + count * (_BESIDE_BAR + _LEAST_BAR)
    long = min(_MOST_BAR, (style.width - (beside if one_line else 6)) // count - _BESIDE_BAR)
    if one_line:
        columns = ("before", "after") if after else ("now",)
        yield f"  {'':<{width}}{'limit':>5}  {''.join(f'{one:<{long + _BESIDE_BAR + 2}}' for one in columns)}".rstrip()
    for key, (typical, most) in adapted.limits_g.items():
        limit = (float(typical), None if most is None else float(most))
        sides = [_side(loads, key, limit, long, style) for loads in (adapted.before, after) if loads]
        head = f"  {CAP_WORDS.get(key, key):<{width}} {limit[0]:.2f}"
        yield from (f"{head}  {'  '.join(sides)}",) if one_line else (head, f"    {'  '.join(sides)}")


def _side(loads: Loads, key: str, limit: tuple[float, float | None], long: int, style: Style) -> str:
    """What is likely, and how full the fuller of both is."""
    load = float(loads.loads_g[key])
    full = load / limit[0] if limit[1] is None else max(load / limit[0], float(loads.at_most_g[key]) / limit[1])
    return f"{load:5.2f} {blocks(full, long, style)} {round(full * 100):4d} %"


def _changes(reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables, style: Style) -> Iterator[str]:
    if not adapted.changes:
        return
    yield style.strong("Changes")
    texts = [read.text for read in reads]
    for change in adapted.changes:
        if change.change == "serving" and adapted.after is not None:
            head = f"Serve smaller: {adapted.after.serves} servings in place of {adapted.before.serves}"
        else:
            arrow = f": {' + '.join(change.lines)}" if change.lines else ""
            food = tables.food_by_id.get(reads[change.place].food or "") if change.place is not None else None
            several = food is not None and texts.count(change.ingredient) > 1
            named = f"{food.name} of `{change.ingredient}`" if food and several else change.ingredient
            head = f"{_CHANGES[change.change]}: {named}{' -> ' + arrow[2:] if arrow else ''}"
        marks = _all_there([one.food for one in change.to], adapted, tables)
        yield from style.hanging(f"{head}{marks}")
        why = f"{change.why[:1].upper()}{change.why[1:]}."
        yield from style.wrapped(why, "    ", "    ")


def _unread(adapted: Adapted, style: Style) -> Iterator[str]:
    harmless = [one.text for one in adapted.unread if one.harmless]
    if harmless:
        yield style.strong("Not counted, harmless however it is read: ten usual amounts bring nothing that counts")
        for text in harmless:
            yield from style.hanging(text)
    if not adapted.in_doubt:
        return
    yield style.strong("Not counted: nobody can say that these are fine")
    for one in adapted.in_doubt:
        likely = f"names {one.trigger}, of which what a dish usually holds passes a limit; " if one.trigger else ""
        yield from style.hanging(f"{one.text}: {likely}{one.why}.")


def _recipe(reads: Sequence[IngredientRead], adapted: Adapted, recipe: str | None, style: Style) -> Iterator[str]:
    if recipe is None or not adapted.changes:
        return
    yield style.strong("The recipe, changed")
    yield from style.wrapped(
        "Its steps name what is in the list now; brackets say how much of it, or what is done otherwise. "
        "A line that was not counted says so."
    )
    yield ""
    manner = style.manner.as_a_page_names_them(" ".join(read.text for read in reads))
    yield from map(manner.told, recipe.rstrip("\n").split("\n"))

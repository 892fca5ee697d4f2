"""Foods that the steps of a recipe name and its ingredient list does not: the page may hold half of the list."""

import re
from collections.abc import Iterable, Sequence, Set

from calmlarder.adapt.collective import words_for_several
from calmlarder.adapt.instead import stand_ins_beside
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.names import foods_in, names_of_all, spans_in
from calmlarder.adapt.no_foods import without_verbs, without_work
from calmlarder.adapt.said_above import below_the_steps
from calmlarder.adapt.step_numbers import within
from calmlarder.adapt.triggers import passes_alone
from calmlarder.adapt.worst import matters
from calmlarder.cookbook.bounds import MOST_SIGNS_OF_STEPS
from calmlarder.cookbook.recipe import IngredientRead, Recipe
from calmlarder.matching.names.notes import COLOURS
from calmlarder.matching.names.words import words_of
from calmlarder.swaps.candidates import same_thing
from calmlarder.tables.book import Tables

_MOST_NAMED = 12
# Verbs and what a dish is called on its way; as words in steps they seldom name an ingredient of their own.
_ELSE = frozenset(
    words_of(
        "butter cream flour oil salt pepper season water ice stock broth sauce dressing batter dough cake paste soup "
        "curry salad juice greens toast date mince leaf seed stick chip crumble dip pie stew filling topping syrup mix "
        "snack sandwich wrap roll base crumb pan pot bowl tin skin peel zest sprinkle leftover marinade fry roast bake "
        "grill steam braise mash vegetable meat fish fruit loaf pancake ball patty fritter "
        "meatball burger kofta dumpling gravy "
        "casserole gratin grit bubbly crouton slaw"
    )
)
# What becomes of the rest another day, what else could be done, and what would be nice beside it are no part of the
# dish: `Leftovers? Roll in breadcrumbs and fry.`, `A dollop of yoghurt is nice.`
_ANOTHER_DAY = re.compile(
    r"\bleft[ -]?overs?\s?[?:][^\n]*|\b(?:(?:recipe|cook[’']?s|chef[’']?s|top|handy|serving) )?"
    r"(?:tips?|variations?|swaps?|n\.?b\.?)\s?:[^\n]*",
    re.IGNORECASE,
)
_BY_THE_WAY = re.compile(
    r"(?<![^.!?\n])(?![^.!?\n]*\buntil\b)[^.!?\n]*?\b(?:left[ -]?overs"
    r"|(?:is|are|would be|'s) (?:(?:also|very|really|always|especially|even|just) )?"
    r"(?:nice|lovely|good|great|delicious|welcome|excellent|wonderful|tasty|perfect|optional)\b(?! and)"
    r"|(?:goes|go|works?|pairs?) (?:(?:very|really|so) )?(?:well|great|nicely|beautifully) with"
    r"|if you (?:like|wish|fancy|want)|if liked|if you(?:'d| would) (?:like|rather)"
    r"|(?:can|could|may|might) (?:also )?be (?:used|swapped|substituted|replaced) (?:instead|for|in place)\b"
    r"|you (?:can|could|may|might) (?:also|swap|replace|substitute|try)|swap (?:the|out)|for a change|next time"
    # `don't let anybody put ketchup on it`; what goes in later, or not all at once, does go in
    r"|(?:don[’']?t|do not|never) (?:let \w+ |be tempted to |you dare )?(?:put|add|use|serve)\b"
    r"(?![^.!?\n]*\b(?:until|till|yet|all|too|before|once|more|now|early|straight)\b)"
    r"|(?:good|nice|lovely|great|delicious|excellent|wonderful|perfect|brilliant|(?:even )?better)"
    r" (?:hot|cold|the next day|with|on|over|in|alongside|next to)\b)[^.!?\n]*",
    re.IGNORECASE,
)
# `Serve with naan.`, and a sentence that says no more than what would do beside it: `Rice or chapatis.`
_WITH = re.compile(
    r"(?:\b(?:serv(?:e[ds]?|ing)|eat(?:en)?)\b[^.;:]{0,40}?\b(?:with|over|in|on|alongside|atop)\b"
    r"|(?<=[.!?] )(?=[\w-]+ or (?:[\w-]+ ){0,2}[\w-]+(?:[.!]|$)))"
    r"([^.;:]{1,80})"
    r"|(?<![^.!?\n] )(?<![^.!?\n ])([A-Z][^.;:!?\n]{1,60}?) (?:to serve|alongside|on the side|at the table)"
    r"(?=[.;!\n]|$)",
    re.IGNORECASE,
)
# `For the bechamel, melt the butter`, `To make the pesto, blend …`: it is made here.
_MAKES = re.compile(
    r"\b(?:for|make|making|prepare) (?:the|a|your) ((?:[^\W\d_]+ ){0,2}[^\W\d_]+)"
    r"(?=[,:.;]| (?:by|in|while|melt|heat|mix)\b)",
    re.IGNORECASE,
)
_BRACKETS = re.compile(r"\[[^\[\]]{1,400}\]")
_FOR_WHAT = re.compile(r" for [^,\]]+")
_NOW = re.compile(r"\s*\[([^\[\]]{1,200})")
_NEVER = frozenset(words_of("salt pepper water ice dressing sauce juice season leaf"))

_IT_DOES = re.compile(r"\b(?:let|lets|make|makes|help|watch) (?:it|them|this|everything) $", re.IGNORECASE)  # fizz


def named_outside(recipe: Recipe, reads: Iterable[IngredientRead], eaters: Eaters, tables: Tables) -> tuple[str, ...]:
    """A warning where steps name foods that could matter and that no ingredient line speaks of; else nothing.

    What it is served with has a remark of its own (`served_with`).
    """
    covered = {word for line in recipe.ingredients for word in words_of(line)}
    ids = {food for read in reads for food in (read.food, *read.alternatives) if food is not None}
    names = names_of_all(tables)
    covered |= {word for words, meant in names.items() if meant & ids for word in words}
    covered |= words_for_several(ids, tables)  # `the cheese`, where feta is in the list
    made = _made_of(ids, recipe, tables)
    last = words_of(recipe.title)[-1:]  # an onion marmalade is the marmalade of its steps
    title = set(words_of(recipe.title))
    found: dict[str, None] = {}
    for step in within(recipe.steps):
        told = _plain_step(step)
        for start, end, meant in spans_in(told, names):
            words = words_of(told[start:end])
            strange = covered.isdisjoint(_beside_colours(words)) and not set(words) <= _ELSE and not meant & made
            strange = strange and not _is_something_else_now(told[end:], covered)
            strange = strange and not _IT_DOES.search(told[:start])
            strange = strange and not (len(words) == 1 and _is_a_dish(meant, tables))
            strange = strange and not (title.issuperset(words) and (words[-1:] == last or _is_made(meant, tables)))
            if strange and any(matters(one, eaters, tables) for one in meant):
                found[" ".join(words)] = None
    if not found:
        return ()
    named = ", ".join(list(found)[:_MOST_NAMED])
    return (f"The steps name what is not in the list of ingredients, so the list may not be whole: {named}.",)


def served_with(recipe: Recipe, reads: Iterable[IngredientRead], eaters: Eaters, tables: Tables) -> tuple[str, ...]:
    """A remark on what the steps serve it with that the list does not name and that could matter; else nothing.

    It says which of it passes a limit at a usual portion: `chapati or rice`, of which the one is wheat.
    """
    known = _known(recipe, reads, tables)
    remarks: list[str] = []
    beside: dict[str, frozenset[str]] = {}
    for step in within(recipe.steps):
        for told in _WITH.finditer(step):
            beside |= _strange_in(without_work(told[1] or told[2]), known, eaters, tables)
    if beside:
        said = f"The steps serve it with {', '.join(beside)}, which is not in the list: that is not counted."
        remarks.append(said + _which_pass(beside, eaters, tables))
    passing: dict[str, frozenset[str]] = {}
    for step in within(recipe.steps):
        for way in (_ANOTHER_DAY, _BY_THE_WAY):
            for told in way.finditer(_WITH.sub(" . ", step)):
                passing |= _strange_in(without_verbs(told[0]), known, eaters, tables)
    passing = {one: meant for one, meant in passing.items() if one not in beside and not set(words_of(one)) <= _ELSE}
    if passing:
        said = f"Named in passing, or as you like, and not counted: {', '.join(passing)}."
        remarks.append(said + _which_pass(passing, eaters, tables))
    return tuple(remarks)


def _known(recipe: Recipe, reads: Iterable[IngredientRead], tables: Tables) -> tuple[set[str], set[str]]:
    """The words and the foods that the list speaks of."""
    ids = {food for read in reads for food in (read.food, *read.alternatives) if food is not None}
    covered = {word for line in recipe.ingredients for word in words_of(line)}
    made = _made_of(ids, recipe, tables)
    covered |= words_for_several(ids, tables)  # `the cheese`, where parmesan is in the list
    if any(tables.food_by_id[food].kind == "bread" for food in ids if food in tables.food_by_id):
        covered.add("toast")  # it is toasted from the bread of the list
    return covered, ids | made


_PASSES = "[not counted: a usual portion passes a limit]"


def marked_beside(
    steps: Sequence[str], page: tuple[Recipe, Sequence[IngredientRead], Set[str]], eaters: Eaters, tables: Tables
) -> tuple[str, ...]:
    """The steps with a mark behind what they serve it with, where a usual portion of that passes a limit.

    `page` is the recipe, its lines as read, and the foods that stand in for some of them now.
    """
    recipe, reads, now = page
    covered, ids = _known(recipe, reads, tables)
    known = covered | {word for food in now for word in words_of(tables.food_by_id[food].name)}, ids | now
    marked = []
    for step in steps:
        for told in reversed(list(_WITH.finditer(step))):
            start, end = told.span(1 if told[1] else 2)
            step = _marked(step, (start, end), _passing_in(without_work(step[start:end]), known, eaters, tables))
        for way in (_ANOTHER_DAY, _BY_THE_WAY):
            for told in reversed(list(way.finditer(step))):
                step = _marked(step, told.span(), _passing_by(told[0], known, eaters, tables))
        marked.append(step)
    return tuple(marked)


def marked_below(
    said: Recipe, recipe: Recipe, reads: Sequence[IngredientRead], eaters: Eaters, tables: Tables
) -> Recipe:
    """The changed recipe with such a mark in what its page says below the steps."""
    below = below_the_steps(said)
    if not below:
        return said
    known = _known(recipe, reads, tables)
    lines = below.split("\n")
    told = [_marked(line, (0, len(line)), _passing_by(line, known, eaters, tables)) for line in lines]
    return said.model_copy(update={"source": said.source[: len(said.source) - len(below)] + "\n".join(told)})


def _passing_in(told: str, known: tuple[set[str], set[str]], eaters: Eaters, tables: Tables) -> list[str]:
    """What a text names that passes a limit at a usual portion, and that the list does not speak of."""
    strange = _strange_in(told, known, eaters, tables)
    return [words for words, meant in strange.items() if any(passes_alone(one, eaters, tables) for one in meant)]


def _passing_by(told: str, known: tuple[set[str], set[str]], eaters: Eaters, tables: Tables) -> list[str]:
    """The same of what is only named in passing, where `leftovers` and `toast` are no food."""
    found = _passing_in(without_verbs(told), known, eaters, tables)
    return [words for words in found if not set(words_of(words)) <= _ELSE]


def _marked(step: str, span: tuple[int, int], names: Sequence[str]) -> str:
    start, end = span
    for words in names:
        place = step.casefold().rfind(words, start, end) + len(words)
        if place >= len(words) and not _NOW.match(step, place):
            step = f"{step[:place]} {_PASSES}{step[place:]}"
    return step


def _strange_in(
    told: str, known: tuple[set[str], set[str]], eaters: Eaters, tables: Tables
) -> dict[str, frozenset[str]]:
    """What a text names that could matter, by its words there; `known` are the words and foods of the list."""
    covered, ids = known
    found: dict[str, frozenset[str]] = {}
    # no name runs over a sign: `leeks, white fish`
    parts = [(part, *span) for part in re.split(r"[,;:]", told) for span in spans_in(part, names_of_all(tables))]
    for part, start, end, meant in parts:
        words = words_of(part[start:end])
        bread = all(tables.food_by_id[one].kind == "bread" for one in meant)  # garlic bread is no garlic of the list
        told_of = words[-1:] if bread else _beside_colours(words)
        strange = covered.isdisjoint(told_of) and not meant & ids and not set(words) <= _NEVER
        strange = strange and not _is_a_dish(meant, tables)
        strange = strange and not _is_something_else_now(part[end:], covered)
        if strange and any(matters(one, eaters, tables) for one in meant):
            found[" ".join(part[start:end].lower().split())] = meant
    return found


def _beside_colours(words: Sequence[str]) -> Sequence[str]:
    """The words of a name that tell what it is: brown bread is not of the list because its onions are brown."""
    return [word for word in words if word not in COLOURS] or words


def _which_pass(found: dict[str, frozenset[str]], eaters: Eaters, tables: Tables) -> str:
    """Which of what was named passes a limit at a usual portion, and what of it does not."""
    over = [words for words, meant in found.items() if any(passes_alone(one, eaters, tables) for one in meant)]
    if not over:
        return ""
    wheat = {words for words in over if any(tables.food_by_id[one].gluten == "yes" for one in found[words])}
    named = ", ".join(
        f"{words} ({'wheat or the like' if words in wheat else 'much of what is limited'})" for words in over
    )
    rest = [words for words in found if words not in over]
    rest = rest or list(stand_ins_beside({words: found[words] for words in over}, eaters, tables))
    instead = f"choose {' or '.join(rest)} instead." if rest else "choose something else."
    return f" A usual portion passes a limit: {named}; {instead}"


def _is_a_dish(meant: Iterable[str], tables: Tables) -> bool:
    """Whether a word names ready dishes alone (`the lasagne`): in steps it is the dish that is cooked."""
    return all(tables.food_by_id[one].kind == "boxed" for one in meant)


def _is_made(meant: Iterable[str], tables: Tables) -> bool:
    """Whether a word names nothing but what is cooked from several foods, `the bolognese`: a title tells it is here."""
    return all(tables.composite_of(one) is not None for one in meant)


def _is_something_else_now(behind: str, covered: set[str]) -> bool:
    """Whether brackets behind a name say what of the list it is now, as an adapted recipe has them."""
    found = _NOW.match(behind)
    return found is not None and (found[1] == "left out" or not covered.isdisjoint(words_of(found[1])))


def _plain_step(step: str) -> str:
    """A step without what it is served with, likened to and cooked in, and without verbs that are foods too."""
    step = _BRACKETS.sub(lambda found: _FOR_WHAT.sub("", found[0]), step)  # `[maple syrup for honey]`
    for told in (_ANOTHER_DAY, _BY_THE_WAY, _WITH):
        step = told.sub(" . ", step)
    return without_verbs(step)


def _made_of(ids: set[str], recipe: Recipe, tables: Tables) -> set[str]:
    """Mixtures that the recipe makes itself: title or steps say so, or some of their parts are in the list.

    `the hummus`, `the meatballs` of a step are what was made in the steps before.
    """
    titled = {food for _, foods in foods_in(recipe.title, names_of_all(tables)) for food in foods}
    made = {food.id: tables.composite_of(food.id) for food in tables.foods}
    dishes = {dish for dish, mixture in made.items() if mixture and tables.food_by_id[dish].kind == "boxed"}
    called = [words_of(one) for one in _MAKES.findall(" . ".join(recipe.steps)[:MOST_SIGNS_OF_STEPS])]
    named = names_of_all(tables)
    dishes |= {dish for words in called for dish in named.get(words, ()) if made.get(dish)}
    mixed = {dish for dish in dishes if (whole := made[dish]) and ids & {part.food for part in whole.parts}}
    wholes = [dish for dish, mixture in made.items() if mixture]
    return mixed | {dish for dish in titled if any(same_thing(dish, one) for one in wholes)}

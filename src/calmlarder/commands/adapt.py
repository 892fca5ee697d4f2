"""`calmlarder adapt FILE`: the smallest change that brings a recipe under the caps."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from typing import TYPE_CHECKING

from calmlarder.commands.given.foods import Adapt
from calmlarder.commands.inputs import allergens_of, at_fault, household_of, seats_of, tolerance_of
from calmlarder.cookbook.read import read_recipe
from calmlarder.cookbook.recipe import Recipe
from calmlarder.cookbook.serves import EATEN_ONE_EACH
from calmlarder.larder.files import read_text, where_of
from calmlarder.problems import CannotGoOn, Problem

if TYPE_CHECKING:
    from calmlarder.household.adapting import Answer
    from calmlarder.household.household import Household

MOST_BYTES = 5_000_000


def adapt(options: Adapt) -> int:
    """Read, solve, check, show; status 3 where it cannot be brought under, or is not known to fit."""
    from calmlarder.household.adapting import Eaters, adapted_recipe, eaters_named, with_larder
    from calmlarder.household.sharing import keep_adapted
    from calmlarder.household.swapping import grams_to_eat

    if options.kept is not None or options.forget is not None:
        return _of_kept(options)
    file = options.file
    if file is None:
        what, remedy = "no recipe is given", "name its file, or - for standard input"
        raise CannotGoOn([Problem(where="FILE", what=what, remedy=remedy)])
    with household_of(options) as household:
        tables, manner = household.tables, household.manner
        eating = household.eating(options.profile, options.diet, allergens_of(options))
        eaters = Eaters(
            profile=eating.profile,
            sitting=options.sitting,
            diet=eating.diet,
            avoid=eating.avoid,
            sure=tolerance_of(options, household),
            at_home=grams_to_eat([one.lot for one in household.lots()], eating.avoid),
        )
        seats = seats_of(options)
        if seats is not None:
            if options.profile or options.people:
                remedy = "leave out --profile and --people: those who are named have limits of their own"
                raise CannotGoOn([Problem(where="--for", what="says who eats already", remedy=remedy)])
            eaters = eaters_named(household, seats, eaters)
            options = replace(options, people=len(seats.names) + seats.guests)
        recipe = read_recipe(read_text(file, MOST_BYTES, "give the recipe alone"))
        if (each := _one_each(options, recipe)) is not None:
            told = adapted_recipe(household, recipe, each, eaters)
            _show_one_each(told, recipe, each, household)
        answer = adapted_recipe(household, recipe, _serves(options, recipe, where_of(file)), eaters, options.format)
        if answer.faults:
            return at_fault("an adapted recipe", answer.faults)
        keep_adapted(household, answer)
        answer = with_larder(answer, [one.lot for one in household.lots()])
        kept = ""
        if options.keep:
            from calmlarder.household.own_recipes import keep_recipe

            kept = f"Kept: {keep_recipe(household, answer).title}. `tonight` proposes it when its foods are there."
    if options.json:
        print(json.dumps(answer.told, ensure_ascii=False, indent=2))
    else:
        from calmlarder.render.adapt_text import Run, adapt_text
        from calmlarder.render.style import style_of_output

        style = style_of_output(manner)
        print(adapt_text(Run(recipe.title, answer.reads, answer.adapted, answer.changed), tables, style), end="")
        print(f"\n{kept}" if kept else "", end="\n" if kept else "")
    return 0 if answer.adapted.holds and answer.adapted.known else 3


def _of_kept(options: Adapt) -> int:
    """The kept recipes, one of them, or one less."""
    from calmlarder.household.own_recipes import forget_recipe, own_recipes, readable, recipe_numbered

    with household_of(options) as household:
        if options.forget is not None:
            print(
                f"Forgotten: {forget_recipe(household, options.forget).title}. `calmlarder larder undo` brings it back."
            )
            return 0
        if options.kept:
            print(readable(recipe_numbered(household, options.kept)), end="")
            return 0
        recipes = own_recipes(household)
    if options.json:
        print(json.dumps([one.model_dump(mode="json") for one in recipes], ensure_ascii=False, indent=2))
    else:
        rows = [f"{number:>3}  {one.title}, for {one.serves}" for number, one in enumerate(recipes, start=1)]
        print("\n".join(rows) or "No recipe is kept: `calmlarder adapt FILE --keep` keeps one.")
    return 0


def _one_each(options: Adapt, recipe: Recipe) -> int | None:
    """How many people eat, if one piece each: of what is eaten so, where nobody says how many people there are."""
    from calmlarder.household.adapting import MOST_SERVES

    asked = options.people or options.serves or recipe.serves or options.json or options.keep
    found = None if asked else EATEN_ONE_EACH.match(recipe.pieces)
    return int(found[1]) if found is not None and 1 < int(found[1]) <= MOST_SERVES else None


def _show_one_each(answer: Answer, recipe: Recipe, each: int, household: Household) -> None:
    """What it would be at one piece each, before the question for how many; nothing where its check finds fault."""
    from calmlarder.render.adapt_text import Run, adapt_text
    from calmlarder.render.style import style_of_output

    if not answer.faults:
        said = f"If {recipe.pieces} are for {each}, one each; whoever eats two has twice the load:"
        tables, style = household.tables, style_of_output(household.manner)
        text = adapt_text(Run(recipe.title, answer.reads, answer.adapted, answer.changed), tables, style)
        print(f"{said}\n\n{text}", flush=True)


def _serves(options: Adapt, recipe: Recipe, source: str) -> int:
    """Into how many servings the dish goes at one sitting. Raises CannotGoOn where nobody says."""
    from calmlarder.household.adapting import MOST_SERVES

    for where, number in (("--people", options.people), ("--serves", options.serves)):
        if number is not None and not 1 <= number <= MOST_SERVES:
            raise CannotGoOn(
                [Problem(where=where, what=f"{number} is out of range", remedy=f"give 1 to {MOST_SERVES}")]
            )
    serves = options.people or options.serves or recipe.serves
    if serves is None or not 1 <= serves <= MOST_SERVES:
        what = "the recipe does not say how many people it serves"
        if recipe.pieces:
            what = f"the recipe says how many pieces it makes ({recipe.pieces}), not how many people it serves"
        each = re.search(r"\d+", recipe.pieces)
        remedy = f"say it with --serves: {each[0]} for one of them each" if each else "say it with --serves"
        raise CannotGoOn([Problem(where=source, what=what, remedy=remedy)])
    return int(serves)

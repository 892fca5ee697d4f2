"""`calmlarder tables`: what is wrong in them, one food whole, and a food of the cook's own."""

import sys
from datetime import date
from decimal import Decimal

from calmlarder.commands.given.common import Place
from calmlarder.commands.given.foods import Made, ShowFood
from calmlarder.commands.inputs import folders_of, food_named, own_tables_of, tables_of
from calmlarder.labels.words import read_label_words, source_faults
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.patterns.load import check_patterns, read_patterns, unused_foods
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.food_text import food_text
from calmlarder.tables.check import check_tables, coverage
from calmlarder.tables.doubts import doubts, protein_doubts, read_published
from calmlarder.tables.mine import Called, Part, made_food, write_made
from calmlarder.tables.places import shipped


def check(options: Place) -> int:
    """Say every problem with its place; without any, the doubts, and how much the tables hold and rest on."""
    folders = folders_of(options)
    tables, problems = check_tables(folders)
    published, faults = read_published(folders)
    recipes = shipped("recipes")
    problems += [*faults, *read_label_words(folders)[1], *source_faults(folders), *check_patterns(recipes, tables)]
    if problems:
        print("\n".join(str(problem) for problem in problems), file=sys.stderr)
        print(f"{len(problems)} problems", file=sys.stderr)
        return 2
    patterns = read_patterns(recipes)[0]
    for doubt in (*doubts(tables), *protein_doubts(folders, published), *unused_foods(tables, patterns)):
        print(f"doubt: {doubt}")
    covered = coverage(tables)
    bases = ", ".join(f"{count} {basis}" for basis, count in sorted(covered.by_basis.items()))
    print(f"{covered.foods} foods, {covered.figures} fermentable figures above zero: {bases}")
    print(f"measured: {covered.sourced_percent} % of them; {covered.decisive_sourced_percent} % of fructans, GOS,")
    print("sorbitol and mannitol")
    print(f"{covered.summed_foods} foods are mixtures whose other figures are the sum of their parts")
    print(f"{len(covered.unknown)} foods lack a figure and are left out of dinners: {', '.join(covered.unknown)}")
    print(f"{len(patterns)} dish patterns")
    return 0


def show(options: ShowFood) -> int:
    """Print everything the tables hold on a food."""
    tables = tables_of(options)
    print(food_text(food_named(" ".join(options.food), "FOOD", tables), tables), end="")
    return 0


def add(options: Made) -> int:
    """Read the ingredients as larder lines, compute the whole, write it, show it."""
    tables = tables_of(options)
    reader = LarderReader(tables, date.today())
    parts: list[Part] = []
    problems: list[Problem] = []
    for text in options.ingredients.split(";"):
        reading = reader.read(text, "--from")
        if reading is None:
            continue
        if reading.lots:
            parts += [Part(tables.food_by_id[lot.food], Decimal(str(lot.grams))) for lot in reading.lots]
        elif reading.problem is not None:
            problems.append(reading.problem)
        else:
            names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates)
            what = f"`{reading.text}` {'may be several foods' if names else 'is no food of the tables'}"
            problems.append(
                Problem(where="--from", what=what, remedy=f"write {names}" if names else "name it otherwise")
            )
    if not parts and not problems:
        problems.append(Problem(where="--from", what="names no ingredient", remedy='write "100 g kale; 20 g walnuts"'))
    if problems:
        raise CannotGoOn(problems)
    weighs = Decimal(str(options.weighs)) if options.weighs else None
    folder = own_tables_of(options)
    write_made(made_food(Called(options.name, options.kind, options.role), parts, weighs, tables), folder, tables)
    print(f"Added to {folder}:")
    again = tables_of(options)
    print(food_text(next(food for food in again.foods if food.name == options.name), again), end="")
    return 0

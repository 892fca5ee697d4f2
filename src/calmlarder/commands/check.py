"""`calmlarder tables check`: everything that can be wrong in the tables and the patterns."""

import sys

from calmlarder.commands import given
from calmlarder.commands.inputs import folders_of
from calmlarder.labels.words import read_label_words, source_faults
from calmlarder.patterns.doubts import unused_foods
from calmlarder.patterns.load import check_patterns, read_patterns
from calmlarder.tables.check import check_tables, coverage
from calmlarder.tables.doubts import doubts
from calmlarder.tables.places import shipped
from calmlarder.tables.published import protein_doubts, read_published


def check(options: given.Place) -> int:
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

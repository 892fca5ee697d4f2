"""`calmlarder tables mine add NAME --from "…; …"`: a food made at home, for the cook's own tables."""

from datetime import date
from decimal import Decimal

from calmlarder.commands import given
from calmlarder.commands.inputs import own_tables_of, tables_of
from calmlarder.larder.reading import LarderReader
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.food_text import food_text
from calmlarder.tables.mine import Part, made_food, write_made


def add(options: given.Made) -> int:
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
    write_made(made_food(options.name, parts, weighs, options.kind, options.role, tables), folder)
    print(f"Added to {folder}:")
    again = tables_of(options)
    print(food_text(next(food for food in again.foods if food.name == options.name), again), end="")
    return 0

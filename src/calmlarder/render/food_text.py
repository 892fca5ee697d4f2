"""One food whole: figures, basis, sources in words, names, measures, keeping."""

from collections.abc import Iterator

from calmlarder.render.basis_words import BASIS_WORDS
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

PER = "per 100 g"  # the heading over the figures
_NUTRIENTS = (
    ("energy", "energy_kcal", "kcal"),
    ("protein", "protein_g", "g"),
    ("lysine", "lysine_mg", "mg"),
    ("fibre", "fibre_g", "g"),
    ("calcium", "calcium_mg", "mg"),
    ("iron", "iron_mg", "mg"),
)


def food_text(food: Food, tables: Tables, on_screen: bool = False) -> str:
    """Everything the tables hold on a food; on a screen without what only a table or a command is asked by."""
    return "\n".join(_lines(food, tables, on_screen)) + "\n"


def _lines(food: Food, tables: Tables, on_screen: bool) -> Iterator[str]:
    yield f"{food.name} ({food.state}){'' if on_screen else f', id {food.id}'}"
    if food.note:
        yield f"  {food.note}"
    by_class = "" if on_screen else f"; cut-off class {food.cutoff_class}"
    yield f"  {food.kind}; can be {', '.join(food.roles)}; {food.diet}{by_class}"
    yield f"  allergens: {', '.join(food.allergens) or 'none of the 14'}; gluten: {food.gluten}"
    yield f"  a portion in a main dish: {food.portion_g:g} g"
    ways = ", ".join(f"{method} {minutes} min" if minutes else method for method, minutes in food.minutes.items())
    yield f"  ways and minutes: {ways or 'none for tonight'}"
    yield PER
    for words, field, unit in _NUTRIENTS:
        value = getattr(food, field)
        yield f"  {words:<9} {'unknown' if value is None else f'{value:g} {unit}'}"
    yield f"  from {_source(food.nutrient_source, food.nutrient_code, tables)}"
    parts = {row.part: row.grams for row in tables.parts if row.food == food.id}
    if parts:
        percent = (f"{100 * grams / sum(parts.values()):.3g} % {_part(part, tables)}" for part, grams in parts.items())
        yield f"made of {', '.join(percent)}"
    yield "fermentables, g per 100 g"
    for component, row in tables.fermentables_of(food.id).items():
        high = f", up to {row.high:g} at most" if row.high is not None else ""
        yield f"  {component:<9} {row.g_per_100g:g}{high}, {BASIS_WORDS[row.basis]}"
        note = f" ({row.note.replace('recalled as', 'from memory')})" if row.note else ""
        yield f"    {_source(row.source, row.code, tables)}{note}"
    for component in tables.unknown_of(food.id):
        yield f"  {component:<9} unknown"
    names = [row.name for row in tables.names if row.food == food.id]
    yield f"other names: {', '.join(names) or 'none'}"
    measures = [f"{row.measure} {row.grams:g} g ({_short(row.source, tables)})" for row in tables.own_measures(food)]
    yield f"measures: {'; '.join(measures) or 'those of its kind'}"
    yield "keeping"
    yield from keeping_lines(food, tables)


def keeping_lines(food: Food, tables: Tables) -> Iterator[str]:
    """How long a food keeps in each place and state, with the source of each."""
    for place in ("fridge", "freezer", "cupboard"):
        for state in ("whole", "opened", "cooked"):
            kept = tables.keeping_of(food, place, state)
            if kept is not None:
                yield f"  {place}, {state}: {kept.days} days, {kept.kind} ({_short(kept.source, tables)})"


def _part(part: str, tables: Tables) -> str:
    food = tables.food_by_id.get(part)
    return food.name if food else part


def _short(key: str, tables: Tables) -> str:
    """A source in a few words: who published it, or that it is common practice."""
    return "common practice, no source" if key == "common_practice" else tables.authority(key).split(". ")[0]


def _source(key: str, code: str, tables: Tables) -> str:
    source = next((row for row in tables.sources if row.key == key), None)
    words = source.citation if source else key
    return f"{words}{f', under {code}' if code else ''}"

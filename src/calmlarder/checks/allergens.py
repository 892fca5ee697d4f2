"""What a food holds of the allergens that somebody avoids, by the cells of foods.csv.

Nothing of calmlarder is imported here on purpose.
"""

from collections.abc import Iterable, Mapping


def held_by(foods: Iterable[Mapping[str, str]]) -> set[str]:
    """The allergens of these rows together; gluten too where a food may hold some."""
    foods = list(foods)
    held = {word.strip() for food in foods for word in food["allergens"].split(";") if word.strip()}
    return held | ({"gluten"} if any(food["gluten"] != "no" for food in foods) else set())

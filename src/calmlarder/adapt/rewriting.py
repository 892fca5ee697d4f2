"""The changed recipe, in the form it came in or the one asked for."""

from calmlarder.adapt.model import Adapted
from calmlarder.cookbook.recipe import Form, Recipe
from calmlarder.cookbook.write import rewritten


def changed_recipe(recipe: Recipe, adapted: Adapted, form: Form | None) -> str | None:
    """The recipe with its changes written in; None where it could not be brought under."""
    if adapted.after is None:
        return None
    changes = {change.place: change.lines for change in adapted.changes if change.place is not None}
    serves = adapted.after.serves
    return rewritten(recipe, changes, serves, form or recipe.form)

"""`calmlarder tables show FOOD`: one food whole."""

from calmlarder.commands import given
from calmlarder.commands.inputs import food_named, tables_of
from calmlarder.render.food_text import food_text


def show(options: given.ShowFood) -> int:
    """Print everything the tables hold on a food."""
    tables = tables_of(options)
    print(food_text(food_named(" ".join(options.food), "FOOD", tables), tables), end="")
    return 0

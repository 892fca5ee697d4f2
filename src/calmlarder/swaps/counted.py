"""What servings judged by eye bring under the limits of one sitting."""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.load import load_of_group, load_profile_of
from calmlarder.intake.plate import Item, Row, Serving, exact_grams, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import GROUPS, Group


def rows_for(eaten: Sequence[Serving], limits: Profile, tables: Tables, sure: Tolerance = USUAL) -> list[Row]:
    """Every limit under which one of these foods brings something."""
    items = [Item(one.food.id, load_profile_of(one.food, tables), Fraction(one.grams), False, sure) for one in eaten]
    return list(rows_of(items, limits))


def likely_by_group(eaten: Sequence[Serving], tables: Tables, sure: Tolerance = USUAL) -> Mapping[Group, Decimal]:
    """Grams of every group that are likely over all foods."""
    profiles = [(load_profile_of(one.food, tables), Fraction(one.grams)) for one in eaten]
    return {
        group: exact_grams(sum((load_of_group(one, group, sure).load(grams) for one, grams in profiles), Fraction(0)))
        for group in GROUPS
    }

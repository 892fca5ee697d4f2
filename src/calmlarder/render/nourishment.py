"""Minutes, protein and energy of a dinner in words: at least so much where a figure is unknown; what misses the aim."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner, MoreProtein


_LITTLE_KCAL = 400  # fills nobody for an evening: ours, below the 500 that a dinner aims at


def minutes_words(dinner: "Dinner") -> str:
    """`21 minutes, 1 more than you gave`."""
    return f"{dinner.minutes} minutes" + (f", {dinner.minutes_over} more than you gave" if dinner.minutes_over else "")


def protein_words(dinner: "Dinner", whole: bool = False) -> str:
    """Protein of one person, g; `whole` grams for what is read in passing."""
    least = "at least " if "protein_g" in dinner.at_least else ""
    grams = dinner.per_person.protein_g
    return f"{least}{round(grams) if whole else grams:g} g protein"


def energy_words(dinner: "Dinner") -> str:
    """Energy of one person, kcal."""
    least = "at least " if "energy_kcal" in dinner.at_least else ""
    return f"{least}{dinner.per_person.energy_kcal:g} kcal"


def short_of_protein(dinner: "Dinner") -> str:
    """Where the protein that was aimed at is missed: by how much, and what more would do."""
    if not dinner.protein_short_g:
        return ""
    least = "at least " if "protein_g" in dinner.at_least else ""
    told = f"{least}{dinner.per_person.protein_g:g} of {dinner.protein_target_g:g} g protein"
    if dinner.more_protein is None:
        return f"{told}."
    if not dinner.more_protein:
        return f"{told}; nothing small at home or on a short list to buy brings the rest within the limits."
    more = " or ".join(_more_words(one) for one in dinner.more_protein)
    bought = " from the shop" if dinner.more_protein[0].where == "shop" else ""
    too_much = dinner.more_protein[0].too_much
    why = f"; so much {' or '.join(too_much)} of what is at home would pass a limit" if too_much else ""
    return f"{told}; {more} more{bought} would do{' for all' if dinner.people > 1 else ''}{why}."


def short_of_filling(dinner: "Dinner") -> str:
    """Where a dinner fills too little by itself: that plain rice or potatoes go with it."""
    kcal = dinner.per_person.energy_kcal
    if dinner.sitting != "dinner" or kcal >= _LITTLE_KCAL or "energy_kcal" in dinner.at_least:
        return ""
    return f"{kcal:g} kcal is little for a dinner: plain rice or potatoes fit the limits, and fill it."


def _more_words(one: "MoreProtein") -> str:
    measure = f" ({one.household})" if one.household else ", weighed," if one.weighed else ""
    return f"{one.grams} g {one.name}{measure}"

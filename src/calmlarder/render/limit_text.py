"""How much of one food fits one sitting, as text and as JSON."""

from collections.abc import Iterator
from typing import Any

from calmlarder.intake.cap_words import CAP_WORDS, component_words
from calmlarder.intake.limit import MOST_GRAMS, Limit
from calmlarder.render.basis_words import BASIS_WORDS
from calmlarder.tables.book import Tables


def limit_object(limit: Limit) -> dict[str, Any]:
    """The answer of `limit --json`."""
    return {
        "food": limit.food.id,
        "grams_weighed": limit.grams_weighed,
        "grams_eye": limit.grams_eye,
        "binding": limit.binding,
        "household": limit.household,
    }


def limit_text(limit: Limit, profile: str, tables: Tables) -> str:
    """Amounts, the limit that binds, and the figures with their sources."""
    return "\n".join(_lines(limit, profile, tables)) + "\n"


def _lines(limit: Limit, profile: str, tables: Tables) -> Iterator[str]:
    food = limit.food
    yield f"{food.name} ({food.state}), alone at one meal of one person, limits: {profile}"
    if limit.binding is None:
        yield f"  no limit below {MOST_GRAMS} g"
    else:
        weighed = f"{limit.grams_weighed} g" if limit.grams_weighed is not None else f"over {MOST_GRAMS} g"
        yield f"  on the scale  {weighed}"
        yield f"  by eye        {limit.grams_eye} g{f', {limit.household}' if limit.household else ''}"
        yield f"  bound by      the limit on {CAP_WORDS.get(limit.binding, limit.binding)}"
    yield "  figures, g per 100 g"
    for component, row in tables.fermentables_of(food.id).items():
        source = f"{row.source} {row.code}".strip() if row.basis != "recalled" else row.code
        note = f"; {row.note.replace('recalled as', 'from memory')}" if row.note else ""
        high = f" (up to {row.high})" if row.high is not None else ""
        whence = ", ".join(part for part in (BASIS_WORDS[row.basis], source) if part)
        yield f"    {component_words([component]):<9} {row.g_per_100g:>6}{high}  {whence}{note}"

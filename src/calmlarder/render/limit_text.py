"""How much of one food fits one sitting, as text and as JSON."""

from collections.abc import Iterator
from typing import Any

from calmlarder.history.nourishment import RECOMMENDED
from calmlarder.intake.cap_words import CAP_WORDS, component_words
from calmlarder.intake.limit import MOST_GRAMS, Limit
from calmlarder.intake.limit_at_table import OnesLimit, TableLimit
from calmlarder.render.basis_words import BASIS_WORDS
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


def limit_object(limit: Limit) -> dict[str, Any]:
    """The answer of `limit --json`."""
    return {
        "food": limit.food.id,
        "grams_weighed": limit.grams_weighed,
        "grams_eye": limit.grams_eye,
        "binding": limit.binding,
        "household": limit.household,
    }


def table_limit_object(answer: TableLimit) -> dict[str, Any]:
    """The answer of `limit --for --json`; `shared` are grams of one dish for those who eat it."""
    return {
        "food": answer.food.id,
        "people": [
            {"who": one.who, "profile": one.profile, "not_eaten": one.not_eaten, **limit_object(one.limit)}
            for one in answer.each
        ],
        "shared": {
            "by": list(answer.shared_by),
            "grams_weighed": answer.grams_weighed,
            "grams_eye": answer.grams_eye,
            "first": answer.first,
        },
    }


def table_limit_text(answer: TableLimit, tables: Tables) -> str:
    """Each person's amounts, those of a dish that they share, and the figures with their sources."""
    lines = [f"{answer.food.name} ({answer.food.state}), alone at one meal"]
    lines += [f"  {one.who}, limits {one.profile}: {_ones(one)}" for one in answer.each]
    if not answer.shared_by:
        lines.append("  In a dish that they share: nothing of it.")
    elif len(answer.shared_by) > 1:
        names = ", ".join(answer.shared_by)
        amount = f"no limit below {MOST_GRAMS} g each"
        if answer.first is not None:
            amount = (
                f"{answer.grams_weighed} g on the scale, {answer.grams_eye} g by eye; {answer.first} is there first"
            )
        lines.append(f"  In one dish for {names}, in shares by appetite: {amount}")
    return "\n".join([*lines, *_figures(answer.food, tables)]) + "\n"


def _ones(one: OnesLimit) -> str:
    if one.not_eaten:
        return f"not for them: it {one.not_eaten}"
    limit = one.limit
    if limit.binding is None:
        return f"no limit below {MOST_GRAMS} g"
    weighed = f"{limit.grams_weighed} g" if limit.grams_weighed is not None else f"over {MOST_GRAMS} g"
    eye = f"{limit.grams_eye} g by eye{f' ({limit.household})' if limit.household else ''}"
    return f"{weighed} on the scale, {eye}; because of the limit on {CAP_WORDS.get(limit.binding, limit.binding)}"


def limit_text(limit: Limit, profile: str, tables: Tables) -> str:
    """Amounts, the limit that binds, and the figures with their sources."""
    return "\n".join(_lines(limit, profile, tables)) + "\n"


def _lines(limit: Limit, profile: str, tables: Tables) -> Iterator[str]:
    food = limit.food
    yield f"{food.name} ({food.state}), alone at one meal of one person, limits: {profile}"
    if limit.binding is None:
        yield f"  {_no_limit(food, tables)}"
    else:
        weighed = f"{limit.grams_weighed} g" if limit.grams_weighed is not None else f"over {MOST_GRAMS} g"
        yield f"  on the scale  {weighed}"
        yield f"  by eye        {limit.grams_eye} g{f', {limit.household}' if limit.household else ''}"
        yield f"  because of    the limit on {CAP_WORDS.get(limit.binding, limit.binding)}"
        yield "  A little more now and then does no harm. Your own limit may be higher: a challenge shows it."
    yield from _figures(food, tables)


def _no_limit(food: Food, tables: Tables) -> str:
    """That nobody need count it: it holds none of the groups, or little in all that one eats."""
    rows = tables.fermentables_of(food.id).values()
    if tables.unknown_of(food.id) or any(row.g_per_100g or row.high for row in rows):
        return f"no limit below {MOST_GRAMS} g: as much as one eats"
    return "holds none of these groups: as much as you like"


def _figures(food: Food, tables: Tables) -> Iterator[str]:
    yield "  figures, g per 100 g"
    for component, row in tables.fermentables_of(food.id).items():
        source = f"{row.source} {row.code}".strip() if row.basis != "recalled" else row.code
        note = f"; {row.note.replace('recalled as', 'from memory')}" if row.note else ""
        high = f" (up to {row.high})" if row.high is not None else ""
        whence = ", ".join(part for part in (BASIS_WORDS[row.basis], source) if part)
        yield f"    {component_words([component]):<9} {row.g_per_100g:>6}{high}  {whence}{note}"


_SCOPES = {"food": "one food", "sitting": "a meal", "day": "a day"}


def limit_sources(profile: str, tables: Tables) -> str:
    """Every limit of the profile, then the works that are cited."""
    return "\n".join(_source_lines(profile, tables)) + "\n"


def _cited(source: str, tables: Tables) -> str:
    """What a row says of its source, with author and year in place of a key."""
    words = (word.rstrip(" ;,") for word in source.split(" "))
    ends = (word[len(word.rstrip(";,")) :] for word in source.split(" "))
    return " ".join(f"{tables.author_and_year(word)}{end}" for word, end in zip(words, ends, strict=True))


def _source_lines(profile: str, tables: Tables) -> Iterator[str]:
    yield f"Where the limits of {profile} come from, for one person (caps.csv holds them)"
    cited: list[str] = []
    for scope, words in _SCOPES.items():
        caps = [cap for cap in tables.caps if cap.profile == profile and cap.scope == scope]
        if caps:
            yield ""
            yield words
        for cap in caps:
            kinds = f" ({', '.join(cap.sittings)})" if cap.sittings else ""
            most = f", at most {cap.at_most_g:.2f} g" if cap.at_most_g is not None else ""
            words, source = CAP_WORDS.get(cap.key, cap.key), _cited(cap.source, tables)
            yield f"  {cap.typical_g:>5.2f} g{most}  {words}{kinds}: {source}"
            cited += [word.strip(" ;,") for word in cap.source.split()]
    yield ""
    yield "What is recommended for a day"
    for name, (words, source) in RECOMMENDED.items():
        yield f"  {name.rpartition('_')[0]}: {words} ({tables.author_and_year(source)})"
        cited.append(source)
    yield ""
    yield "Cited"
    for row in tables.sources:
        if row.key in cited:
            seen = (
                ""
                if row.seen_as == "data set"
                else f" (seen: {row.seen_as.replace('recalled', 'from memory, not verified')})"
            )
            yield f"  {row.citation}{seen}"

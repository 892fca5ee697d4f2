"""How much of one food fits one sitting, as text and as JSON."""

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from calmlarder.history.nourishment import RECOMMENDED
from calmlarder.intake.cap_words import CAP_WORDS, component_words
from calmlarder.intake.limit import MOST_GRAMS, Limit
from calmlarder.intake.limit_at_table import OnesLimit, TableLimit
from calmlarder.intake.profile import Profile
from calmlarder.render.basis_words import BASIS_WORDS
from calmlarder.render.challenge_names import limit_line
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap
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


_OURS = re.compile(r": ours\b")
_SCOPES = {"food": "One food", "sitting": "A meal", "day": "A day"}


def limit_sources(profile: Profile, tables: Tables) -> str:
    """Every limit of the profile, somebody's own among them, then the works that are cited."""
    return "\n".join(_source_lines(profile, tables)) + "\n"


def _cited(source: str, tables: Tables) -> str:
    """What a row says of its source, with author and year in place of a key, in the words of the screens."""
    words = (word.rstrip(" ;,") for word in source.split(" "))
    ends = (word[len(word.rstrip(";,")) :] for word in source.split(" "))
    told = " ".join(f"{tables.author_and_year(word)}{end}" for word, end in zip(words, ends, strict=True))
    return _OURS.sub(": our choice", told.replace("sitting", "meal"))


def _said_of_all(caps: Iterable[Cap], tables: Tables) -> list[str]:
    """What the sources of all limits with an upper end say, to be told once."""
    told = [_cited(cap.source, tables).split("; ") for cap in caps if cap.at_most_g is not None]
    return [part for part in told[0] if all(part in one for one in told)] if len(told) > 1 else []


def _limit(cap: Cap) -> str:
    kinds = f" ({', '.join(cap.sittings)})" if cap.sittings else ""
    most = f", at most {cap.at_most_g:.2f} g" if cap.at_most_g is not None else ""
    return f"  {cap.typical_g:>5.2f} g{most}  {CAP_WORDS.get(cap.key, cap.key)}{kinds}"


def limits_held(profile: Profile) -> str:
    """Every limit of a profile, without its sources; nothing where it limits nothing."""
    scopes = {"food": profile.food_caps, "sitting": profile.sitting_caps, "day": profile.day_caps}
    parts = ["\n".join([_SCOPES[name], *map(_limit, caps)]) for name, caps in scopes.items() if caps]
    return "\n\n".join(parts)


def _limits(caps: Sequence[Cap], once: Sequence[str], tables: Tables) -> Iterator[str]:
    """A line a limit; a source that all of them have stands below them."""
    sources = ["; ".join(part for part in _cited(cap.source, tables).split("; ") if part not in once) for cap in caps]
    is_one = len(caps) > 1 and len(set(sources)) == 1
    for cap, source in zip(caps, sources, strict=True):
        yield f"{_limit(cap)}{'' if is_one else f': {source}'}"
    if is_one:
        yield f"  all of these: {sources[0]}"


def _source_lines(profile: Profile, tables: Tables) -> Iterator[str]:
    yield f"Where the limits of {profile.name} come from"
    yield "  for one person; caps.csv holds them" + (", but for your own" if profile.own_limits else "")
    if profile.own_limits:
        yield from ("", "Your own", *(f"  {limit_line(own)}" for own in profile.own_limits))
    of_profile = [*profile.food_caps, *profile.sitting_caps, *profile.day_caps]
    cited = [word.strip(" ;,") for cap in of_profile for word in cap.source.split()]
    once = _said_of_all(of_profile, tables)
    yield from (f"  {part}" for part in once)
    for scope, words in _SCOPES.items():
        caps = [cap for cap in of_profile if cap.scope == scope]
        if caps:
            yield ""
            yield words
            yield from _limits(caps, once, tables)
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

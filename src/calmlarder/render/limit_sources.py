"""Where the limits of a profile come from, in words: each with its grams, its scope and its source."""

from collections.abc import Iterator

from calmlarder.history.nourishment import RECOMMENDED
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.tables.book import Tables

_SCOPES = {"food": "one food", "sitting": "a meal", "day": "a day"}


def limit_sources(profile: str, tables: Tables) -> str:
    """Every limit of the profile, then the works that are cited."""
    return "\n".join(_lines(profile, tables)) + "\n"


def _lines(profile: str, tables: Tables) -> Iterator[str]:
    yield f"Where the limits of `{profile}` come from (ingredient_tables/caps.csv), for one person"
    cited: list[str] = []
    for scope, words in _SCOPES.items():
        caps = [cap for cap in tables.caps if cap.profile == profile and cap.scope == scope]
        if caps:
            yield ""
            yield words
        for cap in caps:
            kinds = f" ({', '.join(cap.sittings)})" if cap.sittings else ""
            most = f", at most {cap.at_most_g:g}" if cap.at_most_g is not None else ""
            yield f"  {cap.typical_g:>5.2f} g{most}  {CAP_WORDS.get(cap.key, cap.key)}{kinds}: {cap.source}"
            cited += [word.strip(" ;,") for word in cap.source.split()]
    yield ""
    yield "What is recommended for a day"
    for name, (words, source) in RECOMMENDED.items():
        yield f"  {name.rpartition('_')[0]}: {words} ({source})"
        cited.append(source)
    yield ""
    yield "Cited"
    for row in tables.sources:
        if row.key in cited:
            seen = "" if row.seen_as == "data set" else f" (seen as: {row.seen_as})"
            yield f"  {row.key}: {row.citation}{seen}"

"""What dish is meant by a cook's words: a kind of dish, or words of a dish's own title."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pydantic import BaseModel, ConfigDict
from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.names.words import SMALL, plain, words_of
from calmlarder.patterns.kinds import DishKind
from calmlarder.patterns.pattern import REFERENCE, Pattern
from calmlarder.problems import CannotGoOn, Problem

_JOINING = SMALL | {"on", "over", "under", "or", "its", "for", "to", "into", "as", "by"}
_SLIPS = ((8, 2), (4, 1))  # letters of a word, and how many of them may be wrong: ours

_Key = tuple[str, ...]


class Dish(BaseModel):
    """A dish that is asked for: its name, how a sentence says it, and the ids of the patterns that make it."""

    model_config = ConfigDict(frozen=True)

    name: str
    said: str
    patterns: tuple[str, ...]

    @property
    def none_of_it(self) -> str:
        """`no soup`, `no wraps or tacos`."""
        return f"no {self.said.removeprefix('an ').removeprefix('a ')}"


class _Term(NamedTuple):
    name: str
    said: str
    patterns: tuple[str, ...]


def dish_named(text: str, patterns: Sequence[Pattern], kinds: Sequence[DishKind], where: str = "--dish") -> Dish:
    """The dish that words mean. Raises CannotGoOn, naming the kinds, where they mean none or may mean several.

    A kind goes before the words of a title: pasta is every pasta, a risotto only that. A pattern's id is words, too.
    """
    terms = _terms(patterns, kinds)
    key = words_of(text)
    found = [terms[key]] if key in terms else _misspelt(" ".join(key), terms)
    if len(found) == 1:
        return Dish(name=found[0].name, said=found[0].said, patterns=found[0].patterns)
    if found:
        what = f"`{text[:60]}` may be {' or '.join(term.name for term in found[:4])}"
        raise CannotGoOn([Problem(where=where, what=what, remedy="write one of them")])
    names = ", ".join(kind.name for kind in kinds)
    remedy = f"write one of: {names}; or words of a dish's title, such as risotto; a food is asked for with --use"
    raise CannotGoOn([Problem(where=where, what=f"`{text[:60]}` is no kind of dish here", remedy=remedy)])


def kinds_of(patterns: Sequence[Pattern], kinds: Sequence[DishKind]) -> tuple[DishKind, ...]:
    """The kinds that these patterns are of, in the order in which they are offered."""
    used = {name for pattern in patterns for name in pattern.kind}
    return tuple(kind for kind in kinds if kind.name in used)


def _terms(patterns: Sequence[Pattern], kinds: Sequence[DishKind]) -> dict[_Key, _Term]:
    """All that can be asked for by its words; what stands first in a kind is not looked for in titles."""
    terms: dict[_Key, _Term] = {}
    named = [*((one, one.name) for one in kinds), *((one, word) for one in kinds for word in one.words)]
    for kind, word in named:
        ids = tuple(pattern.id for pattern in patterns if kind.name in pattern.kind)
        terms.setdefault(words_of(word), _Term(kind.name, kind.said, ids))
    titles: dict[_Key, _Term] = {}
    for pattern in patterns:
        for run in _runs(pattern):
            key = words_of(run)
            so_far = titles.get(key, _Term(run, run, ()))
            titles[key] = so_far._replace(patterns=tuple(dict.fromkeys((*so_far.patterns, pattern.id))))
    return titles | terms


def _runs(pattern: Pattern) -> Iterator[str]:
    """Words that stand together in a title or the id. A title for one food only counts by two words or more.

    `beef` is no dish, and nobody who asks for it is served a chicken stroganoff.
    """
    for title in (pattern.title, pattern.id.replace("-", " ")):
        yield from _runs_of(title, 1)
    for title in pattern.titles.values():
        yield from _runs_of(title, 2)


def _runs_of(title: str, least: int) -> Iterator[str]:
    for part in REFERENCE.sub("|", title).replace(",", "|").split("|"):
        words = plain(part).replace("-", " ").split()
        for start in range(len(words)):
            for end in range(start + least, len(words) + 1):
                if words[start] not in _JOINING and words[end - 1] not in _JOINING:
                    yield " ".join(words[start:end])


def _misspelt(typed: str, terms: dict[_Key, _Term]) -> list[_Term]:
    """What is nearest within a slip or two of spelling that leave the first letter; each once."""
    most = next((slips for letters, slips in _SLIPS if len(typed) >= letters), 0)
    near: dict[_Term, int] = {}
    for key, term in terms.items():
        word = " ".join(key)
        slips = DamerauLevenshtein.distance(typed, word, score_cutoff=most)
        if word[:1] == typed[:1] and slips <= most:
            near[term] = min(slips, near.get(term, slips))
    return [term for term, slips in near.items() if slips == min(near.values())]

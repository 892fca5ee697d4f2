"""In what another dinner differs from tonight's, in words with numbers."""

from collections.abc import Iterator

from calmlarder.and_list import and_list
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.weights import POINT
from calmlarder.compose.why.model import Difference

WORTH_TELLING = POINT // 2  # a dinner that is better by less is the same to a cook; ours, no source
_QUARTERS = ("", "a quarter of a", "half a", "three quarters of a")
_SIGNS = ("", "¼", "½", "¾")
_PROTEIN_TOLD = 0.5  # g a person: less is not worth a word; ours


def differences(
    tonight: Dinner, other: Dinner, points: float, with_foods: bool = True, but: str = ""
) -> tuple[Difference, ...]:
    """What `other` has more or less of. `points` is how much worse it is.

    Without foods where the other dinner is an analysis that must not be cooked: then no amount of it is told.
    The food `but` is asked about
    and goes without saying.
    """
    found = list(_numbers(tonight, other))
    if with_foods:
        found = [*_foods(tonight, other, but), *found]
    if abs(points) >= 0.05 and not any(one.what in {"rescued", "finished", "weighings", "minutes"} for one in found):
        told = f"{abs(points):.1f} points {'less' if points > 0 else 'more'} by the wishes together"
        found.append(Difference(what="wishes", tonight=0, other=round(-points, 2), sentence=told))
    return tuple(found)


def points_of(score: int) -> float:
    """A score or a difference of scores, in points."""
    return round(score / POINT, 2)


def _foods(tonight: Dinner, other: Dinner, but: str) -> Iterator[Difference]:
    mine, theirs = _grams(tonight), _grams(other)
    gone = [f"{grams} g {name}" for name, grams in mine.items() if name not in theirs and name != but]
    come = [f"{grams} g {name}" for name, grams in theirs.items() if name not in mine]
    if gone or come:
        told = [f"{word} {and_list(things)}" for word, things in (("pushes out", gone), ("takes in", come)) if things]
        yield Difference(what="foods", tonight=len(mine), other=len(theirs), sentence=" and ".join(told))


def _grams(dinner: Dinner) -> dict[str, int]:
    grams: dict[str, int] = {}
    for use in dinner.uses:
        grams[use.name] = grams.get(use.name, 0) + use.grams
    return grams


def _numbers(tonight: Dinner, other: Dinner) -> Iterator[Difference]:
    mine, theirs = tonight.rescued, other.rescued
    if abs(theirs.portions - mine.portions) >= 0.01:
        sentence = f"{_portions(theirs.portions - mine.portions)} of what goes off first is used up"
        yield Difference(what="rescued", tonight=mine.portions, other=theirs.portions, sentence=sentence)
    if len(theirs.lots_finished) != len(mine.lots_finished):
        yield _told("finished", len(mine.lots_finished), len(theirs.lots_finished), "item used up", "items used up")
    if len(other.weigh_first) != len(tonight.weigh_first):
        yield _told("weighings", len(tonight.weigh_first), len(other.weigh_first), "weighing", "weighings")
    if other.minutes != tonight.minutes:
        yield _told("minutes", tonight.minutes, other.minutes, "minute", "minutes")
    protein = (tonight.per_person.protein_g, other.per_person.protein_g)
    if abs(protein[1] - protein[0]) >= _PROTEIN_TOLD:
        yield _told("protein", *protein, "g protein each", "g protein each")


def _portions(by: float) -> str:
    """So much more or less, to the quarter of a portion: nobody cooks by the hundredth."""
    quarters, more = round(abs(by) * 4), "more" if by > 0 else "less"
    if not quarters:
        return f"a little {more}"
    whole, part = divmod(quarters, 4)
    if not whole:
        return f"about {_QUARTERS[part]} portion {more}"
    number = f"{whole}{_SIGNS[part]}"
    return f"about {number} portion{'s' * (quarters > 4)} {more}"


def _told(what: str, tonight: float, other: float, one: str, many: str) -> Difference:
    by = round(abs(other - tonight), 2)
    more = "more" if other > tonight else "less" if many.startswith("g ") else "fewer"
    sentence = f"{by:g} {more} {one if by == 1 else many} ({other:g} in place of {tonight:g})"
    if many.startswith("g "):
        sentence = f"{by:g} g {more} {many.removeprefix('g ')} ({other:g} in place of {tonight:g})"
    return Difference.model_validate({"what": what, "tonight": tonight, "other": other, "sentence": sentence})

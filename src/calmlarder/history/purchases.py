"""Which entries of the ledger are of one lot: what came in at once, and what became of it."""

from collections.abc import Iterable, Sequence

from pydantic import BaseModel, ConfigDict

from calmlarder.history.ended import Ended

_SAME_G = 1.0  # amounts are kept to a tenth of a gram; more than this apart is another lot


class Purchase(BaseModel):
    """One lot that has wholly ended, g: what it was when its first part ended, and what became of it."""

    model_config = ConfigDict(frozen=True)

    food: str
    size_g: float
    eaten_g: float
    given_g: float
    thrown_g: float
    why: str | None


def purchases(entries: Iterable[Ended]) -> list[Purchase]:
    """Lots that are used up, in the order in which they ended.

    The store gives the number of its newest lot to another once that is gone, so an entry goes on with a lot only
    where what was there is what the entry before it had left.
    """
    open_lots: dict[int, list[Ended]] = {}
    done = []
    for entry in entries:
        parts = open_lots.pop(entry.lot, [])
        if parts and (parts[-1].food != entry.food or abs(_rest(parts[-1]) - entry.of_grams) > _SAME_G):
            parts = []
        parts = [*parts, entry]
        if _rest(entry) > _SAME_G:
            open_lots[entry.lot] = parts
        else:
            done.append(_purchase(parts))
    return done


def _rest(entry: Ended) -> float:
    return entry.of_grams - entry.grams - entry.boxed


def _purchase(parts: Sequence[Ended]) -> Purchase:
    def of(how: str) -> float:
        return round(sum(part.grams for part in parts if part.how == how), 1)

    boxed = sum(part.boxed for part in parts)
    return Purchase(
        food=parts[0].food,
        size_g=parts[0].of_grams,
        # What went into a box was put to use; if the box is thrown, that is an entry of the box.
        eaten_g=round(of("eaten") + boxed, 1),
        given_g=of("given"),
        thrown_g=of("thrown"),
        why=next((part.why for part in reversed(parts) if part.why is not None), None),
    )

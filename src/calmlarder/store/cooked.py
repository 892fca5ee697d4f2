"""A dinner that was cooked, in the store: lots used, shares eaten, the rest in boxes, all of it one action."""

from collections.abc import Iterable, Sequence

from calmlarder.larder.lot import Lot
from calmlarder.sitting.eaten import Eaten
from calmlarder.store.eaten import content_of
from calmlarder.store.larder import KeptLot, kept, used_up
from calmlarder.store.store import Store


def cook(
    store: Store,
    lots: Sequence[KeptLot],
    title: str,
    uses: Iterable[tuple[str, str, int]],
    entry: Eaten | None,
    boxed: Lot | None,
) -> None:
    """Take (line, food, grams) out of the lots, log one share and keep the boxes; None where there is none."""
    store.change_lots(
        used_up(lots, uses),
        f"cook {title}",
        [] if entry is None else [content_of(entry)],
        [] if boxed is None else [kept(boxed)],
    )

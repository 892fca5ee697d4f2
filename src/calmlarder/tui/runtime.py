"""The screens go on while the solver works in another thread of the same interpreter."""

import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager

# Python's own is 5 ms. A refill reads the store row by row, and waits for its turn after each row.
_TURN_S = 0.001
_WASTE_SEEN_AFTER = (50_000, 50, 100)  # objects, rounds: less at a time than in a command, as a stop is seen; ours


def share_time() -> None:
    """Threads that want to go on wait no longer than this for their turn, nor long for waste to be found."""
    sys.setswitchinterval(_TURN_S)
    gc.set_threshold(*_WASTE_SEEN_AFTER)


@contextmanager
def kept_for_good() -> Iterator[None]:
    """What is loaded in here, and before, stays: it is never searched for waste again.

    Such a search stops every thread, and with tables, solver and screens in memory it takes a tenth of a second.
    """
    gc.disable()
    try:
        yield
    finally:
        if not gc.get_freeze_count():  # once: what a second time finds beside it may be waste
            gc.freeze()
        gc.enable()

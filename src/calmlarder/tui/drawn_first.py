"""A thread that waits until the screen is drawn."""

from threading import Event
from typing import Any

from textual.screen import Screen

_DRAWN_WITHIN_S = 0.2  # ours: a screen that is left meanwhile draws nothing more


def let_it_draw(screen: Screen[Any]) -> None:
    """From a thread: two threads at work hold up each other, and it is the screen that somebody sees.

    What is put on the screen is laid out in one refresh and drawn in the next.
    """
    drawn = Event()
    screen.app.call_from_thread(screen.call_after_refresh, screen.call_after_refresh, drawn.set)
    drawn.wait(_DRAWN_WITHIN_S)

"""The program ended from outside: by a signal, or because its terminal is gone. The terminal is left as it was."""

import asyncio
import os
import signal
import sys
import threading
from typing import Any

from textual.app import App

# SIGQUIT and SIGHUP are unknown to Windows.
_SIGNALS = tuple(found for name in ("SIGTERM", "SIGQUIT", "SIGHUP") if (found := getattr(signal, name, None)))
_SHELL_OFFSET = 128  # a shell tells a program that a signal ended by 128 and its number (POSIX, Shell, 2.8.2)
GONE = _SHELL_OFFSET + 1  # as if by SIGHUP, which is 1 everywhere
_LONGEST_S = 5.0  # to draw the terminal as it was; where that hangs, nobody is there to see it


def end_with_signals(app: App[Any]) -> None:
    """Leave in order when a signal asks for it. What was confirmed is in the store already."""

    def leave(number: int) -> None:
        app.exit(return_code=_SHELL_OFFSET + number)
        _end_at_the_latest(_SHELL_OFFSET + number)

    loop = asyncio.get_running_loop()
    for one in _SIGNALS:
        try:
            loop.add_signal_handler(one, leave, int(one))
        except (NotImplementedError, RuntimeError, ValueError):  # Windows, or not the main thread
            return


def terminal_is_gone() -> bool:
    """Whether the terminal that keys come from was closed: it is none any more."""
    try:
        return not os.isatty(sys.__stdin__.fileno()) if sys.__stdin__ is not None else True
    except (OSError, ValueError):
        return True


def _end_at_the_latest(status: int) -> None:
    """A thread that reads or writes a terminal that is gone may wait for ever."""
    timer = threading.Timer(_LONGEST_S, os._exit, (status,))
    timer.daemon = True
    timer.start()

"""How the program runs beside its solver, and how it ends: turns of threads, faults, signals, a lost terminal."""

import asyncio
import gc
import os
import signal
import sys
import threading
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from textual.app import App
from textual.worker import WorkerFailed

from calmlarder.clean import clean
from calmlarder.problems import CannotGoOn
from calmlarder.tui.errors import tell

# Python's own is 5 ms. A refill reads the store row by row, and waits for its turn after each row.
_TURN_S = 0.001
# Objects, rounds, rounds of rounds: little at a time, as a keystroke waits for each. Measured: 100 rounds at once were
# half a million objects, which stopped every thread for 0.14 to 0.22 s; ours.
_WASTE_SEEN_AFTER = (5_000, 4, 5_000)


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


FAULT = 70  # the program found itself at fault: sysexits.h, EX_SOFTWARE
_MOST_FAULTS = 5  # from then on it ends: something is wrong that leaving a screen does not mend


def fault_words(error: BaseException) -> str:
    """What went wrong, and where, in a line."""
    frames = traceback.extract_tb(error.__traceback__)
    where = f" at {frames[-1].filename.rpartition('/')[2]}:{frames[-1].lineno}" if frames else ""
    return f"calmlarder is at fault ({type(error).__name__}: {clean(str(error))[:200]}{where}); what was kept is kept"


class SurvivesFaults(App[None]):
    """Textual calls `_handle_exception` for what no handler caught, and would end with a traceback."""

    def __init__(self) -> None:
        super().__init__()
        self.faults: list[BaseException] = []

    def _handle_exception(self, error: Exception) -> None:
        cause = error.error if isinstance(error, WorkerFailed) else error
        if isinstance(cause, CannotGoOn):
            tell(self, cause)
        else:
            self.faults.append(cause)
            if len(self.faults) >= _MOST_FAULTS or not self._running:
                self.exit(return_code=FAULT, message=fault_words(cause))
                return
            self.notify(fault_words(cause), severity="error", timeout=15, markup=False)
        if not isinstance(error, WorkerFailed):  # what reads the screen's messages ended with it
            self.call_later(self._leave_screen, fault_words(cause))

    def _leave_screen(self, words: str) -> None:
        """Behind the first screen there is none to go back to: then it ends, in words."""
        if len(self.screen_stack) > 2:
            self.pop_screen()
        else:
            self.exit(return_code=FAULT, message=words)


# SIGQUIT and SIGHUP are unknown to Windows.
_SIGNALS = tuple(found for name in ("SIGTERM", "SIGQUIT", "SIGHUP") if (found := getattr(signal, name, None)))
_SHELL_OFFSET = 128  # a shell tells a program that a signal ended by 128 and its number (POSIX, Shell, 2.8.2)
GONE = _SHELL_OFFSET + 1  # as if by SIGHUP, which is 1 everywhere
_LONGEST_S = 5.0  # to draw the terminal as it was; where that hangs, nobody is there to see it


def end_with_signals(app: App[Any], before: Callable[[], None]) -> None:
    """Leave in order when a signal asks for it, after `before`. What was confirmed is in the store already."""

    def leave(number: int) -> None:
        before()
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

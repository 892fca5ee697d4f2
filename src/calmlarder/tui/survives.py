"""An exception of a screen is said, and the screen is left; of the first one the program ends in words."""

import traceback

from textual.app import App
from textual.worker import WorkerFailed

from calmlarder.clean import clean
from calmlarder.problems import CannotGoOn
from calmlarder.tui.errors import tell

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

"""A program left open past midnight goes on with the new day, and says so."""

from collections.abc import Callable
from datetime import date
from typing import Any

from textual.screen import Screen, ScreenResultType

Clock = Callable[[], date]
LOOK_S = 1.0  # between two looks at the clock


def turned_words(day: date) -> str:
    """What is said when a day begins."""
    return f"It is {day:%A %d %B} now: days left are counted from today."


class TurnsWithDay(Screen[ScreenResultType]):
    """A screen that shows what hangs on the day: drawn anew at once where it is on top, else when one comes back."""

    def __init__(self, *arguments: Any) -> None:
        super().__init__(*arguments)
        self._is_of_yesterday = False

    def day_turned(self) -> None:
        """Another day has begun."""
        if self.is_current:
            self.draw_new_day()
        else:
            self._is_of_yesterday = True

    def on_screen_resume(self) -> None:
        """Back on top."""
        if self._is_of_yesterday:
            self._is_of_yesterday = False
            self.draw_new_day()

    def draw_new_day(self) -> None:
        """Show what holds now; a screen that keeps more than it draws reads that anew."""
        self.refresh()

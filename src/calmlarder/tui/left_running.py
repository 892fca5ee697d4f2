"""A program that is left open: the day, its store and its terminal may change under it."""

from calmlarder.household.household import Household
from calmlarder.problems import CannotGoOn
from calmlarder.tui.day_turns import Clock, TurnsWithDay, turned_words
from calmlarder.tui.runtime import GONE, SurvivesFaults, terminal_is_gone

_STAYS_S = 86_400  # a day: what must not be overlooked
SEEN_S = 30  # what is said when a day begins stays so long


class LeftOpen(SurvivesFaults):
    """Looks around now and then."""

    _kitchen: Household
    _clock: Clock | None
    _has_terminal = _store_is_missed = False

    def keep_draft(self) -> None:
        """What is half typed is kept before the program ends without having been asked to."""

    def look_around(self) -> None:
        """What may change under a program that is left open: the day, its store, its terminal."""
        if self._has_terminal and terminal_is_gone():
            self.keep_draft()
            self.exit(return_code=GONE)
            return
        self.look_at_clock()
        try:
            self._kitchen.look_at_place()
        except CannotGoOn as stop:
            if not self._store_is_missed:
                self._store_is_missed = True
                self.notify("\n".join(map(str, stop.problems)), severity="error", timeout=_STAYS_S, markup=False)
        for words in self._kitchen.unread():
            self.notify(words, severity="warning", timeout=SEEN_S, markup=False)

    def look_at_clock(self) -> None:
        """Past midnight every screen goes on with the new day."""
        day = self._kitchen.today if self._clock is None else self._clock()
        if day == self._kitchen.today:
            return
        self._kitchen.turn_to(day)
        for screen in self.screen_stack:
            if isinstance(screen, TurnsWithDay):
                screen.day_turned()
        self.notify(turned_words(day), timeout=SEEN_S)

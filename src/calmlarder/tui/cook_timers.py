"""Timers at the stove by keys: one for what cooks by itself, and what was set by mistake is stopped."""

from typing import TYPE_CHECKING

from textual.screen import Screen

from calmlarder.render.portions_text import placed_steps
from calmlarder.tui.choice import Choice
from calmlarder.tui.stove import Timers

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner


class SetsTimers(Screen[bool]):
    """The part of Cook that sets timers and stops them."""

    _read: "Dinner"
    _step: int

    def _remember(self) -> None:
        """Keep how far it is."""
        raise NotImplementedError

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """There is a timer to stop."""
        if action == "stop_timer":
            return bool(self.query(Timers) and self.query_one(Timers).ends_s)
        return super().check_action(action, parameters)

    def action_timer(self) -> None:
        """Count down what cooks by itself: under the bar what this step tells of, of what does not run yet."""
        timers = self.query_one(Timers)
        alone = {
            f"{moment.what}, {moment.minutes} min{timers.left_of(moment.what)}": moment
            for moment in self._read.timeline.moments
            if moment.minutes and not moment.hands_on
        }
        if not alone:
            self.notify("nothing here cooks by itself")
            return

        def picked(name: str | None) -> None:
            if name is not None:
                timers.begin(alone[name].what, alone[name].minutes)
                self._remember()
                self.refresh_bindings()
                self.notify("the timer runs: s stops it", markup=False)

        _, place = placed_steps(self._read)[self._step]
        waiting = [name for name, moment in alone.items() if not timers.left_of(moment.what)]
        marked = next((name for name in waiting if alone[name].step == place), next(iter(waiting), ""))
        self.app.push_screen(Choice("Set a timer for what?", list(alone), marked=marked), picked)

    def action_stop_timer(self) -> None:
        """One that was set by mistake, or is done; where several are there it is asked which."""
        timers = self.query_one(Timers)
        names = list(timers.ends_s)

        def picked(name: str | None) -> None:
            if name is not None:
                timers.stop(name)
                self._remember()
                self.refresh_bindings()
                self.notify(f"stopped: the timer of {name} (t sets it anew)", markup=False)

        if len(names) == 1:
            picked(names[0])
        elif names:
            self.app.push_screen(Choice("Stop which timer?", names), picked)

"""What opens from the larder whichever lot is chosen: days, waste, people, a challenge."""

from calmlarder.household.household import Household
from calmlarder.tui.day_turns import TurnsWithDay


class LarderPages(TurnsWithDay[None]):
    """The keys of a larder's screen that lead to other screens."""

    def __init__(self, kitchen: Household) -> None:
        super().__init__()
        self._kitchen = kitchen

    def action_days(self) -> None:
        """Days side by side, and what was thrown."""
        from calmlarder.tui.days_screen import DaysScreen

        self.app.push_screen(DaysScreen(self._kitchen))

    def action_waste(self) -> None:
        """Days, at what was thrown away and what would help."""
        from calmlarder.tui.days_screen import DaysScreen

        self.app.push_screen(DaysScreen(self._kitchen, at_waste=True))

    def action_people(self) -> None:
        """Who eats here."""
        from calmlarder.tui.people_screen import PeopleScreen

        self.app.push_screen(PeopleScreen(self._kitchen))

    def action_challenge(self) -> None:
        """What a challenge asks of today."""
        from calmlarder.tui.challenge_screen import ChallengeScreen

        self.app.push_screen(ChallengeScreen(self._kitchen))

"""The pages that the program's own keys open, and from where."""

from typing import Any

from textual.screen import ModalScreen, Screen

from calmlarder.household.household import Household
from calmlarder.tui.asked_for_tonight import TonightOnly
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.left_running import LeftOpen

_FROM_THE_LARDER = frozenset({"tonight", "plan", "limits"})
_OWN_PAGES = {"adapt": "AdaptScreen", "packet": "PacketScreen"}


class Pages(LeftOpen):
    """The part of the program that leads from page to page."""

    _kitchen: Household
    _tonight_only: TonightOnly

    @property
    def _page(self) -> Screen[Any]:
        """The page below whatever question or list stands over it."""
        return next(one for one in reversed(self.screen_stack) if not isinstance(one, ModalScreen))

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """A page that cannot be opened from here is not offered here."""
        if action in _FROM_THE_LARDER:
            return isinstance(self._page, LarderScreen)
        if action in _OWN_PAGES:
            return type(self._page).__name__ != _OWN_PAGES[action]
        return super().check_action(action, parameters)

    def action_tonight(self) -> None:
        """Dinner, when there is something to cook."""
        if isinstance(self.screen, LarderScreen):
            if not self._kitchen.lots():
                self.screen.notify("the larder is empty: type what is there first")
                return
            from calmlarder.tui.tonight_screen import TonightScreen

            self.push_screen(TonightScreen(self._kitchen, self._tonight_only))

    def action_plan(self) -> None:
        """The next sittings, when there is something to cook."""
        if isinstance(self.screen, LarderScreen):
            if not self._kitchen.lots():
                self.screen.notify("the larder is empty: type what is there first")
                return
            from calmlarder.tui.plan_screen import PlanScreen

            self.push_screen(PlanScreen(self._kitchen))

    def action_limits(self) -> None:
        """Who eats, and what holds for them."""
        if isinstance(self.screen, LarderScreen):
            from calmlarder.tui.limits_screen import LimitsScreen

            self.push_screen(LimitsScreen(self._kitchen))

    def action_adapt(self) -> None:
        """A recipe that somebody else wrote, from any page but its own."""
        from calmlarder.tui.adapt_screen import AdaptScreen

        if not isinstance(self.screen, (ModalScreen, AdaptScreen)):
            self.push_screen(AdaptScreen(self._kitchen))

    def action_packet(self) -> None:
        """The list of a packet in the hand, from any page but its own."""
        from calmlarder.tui.packet_screen import PacketScreen

        if not isinstance(self.screen, (ModalScreen, PacketScreen)):
            self.push_screen(PacketScreen(self._kitchen))

    def action_sources(self) -> None:
        """Where the figures of a food on this screen come from; where there is none, those of the limits."""
        from calmlarder.tui.page import Page
        from calmlarder.tui.sources import show_limit_sources

        asked = getattr(self.screen, "action_figures", None)
        if asked is not None:
            asked()
        elif not isinstance(self.screen, (ModalScreen, Page)):
            show_limit_sources(self.screen, self._kitchen)

    def action_help(self) -> None:
        """The help page, once."""
        from calmlarder.tui.help_screen import HelpScreen

        if not isinstance(self.screen, HelpScreen):
            self.push_screen(HelpScreen(self.screen))

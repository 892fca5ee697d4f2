"""The first line of a screen: its name, what it is about, and on the right what holds for it now."""

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn, cut

_BETWEEN = 3  # columns, at least, between the name and what stands on the right


class TopLine(Drawn):
    """Reads `sub_title` of its screen, as in `tonight, Wed 11 Mar`: the name strong, the rest faint."""

    def __init__(self) -> None:
        super().__init__()
        self._now = ""

    def on_mount(self) -> None:
        """Drawn anew with every other title."""
        self.watch(self.screen, "sub_title", self.redraw, init=False)

    def say(self, now: str) -> None:
        """What stands on the right; what follows a colon gives way where there is no room, then all of it."""
        self._now = now
        self.redraw()

    @property
    def content(self) -> str:
        """What can be read in it."""
        return self.draw(max(1, self.size.width)).plain

    def draw(self, width: int) -> Text:
        """One line."""
        name, _, about = (self.screen.sub_title or "").partition(", ")
        text = Text(no_wrap=True)
        text.append(cut(name, width), style="bold " + self.tone("accent"))
        if about and len(name) + 2 + len(about) <= width:
            text.append(f"  {about}", style=self.tone("faint"))
        room = width - len(text.plain)
        for now in (self._now, self._now.partition(": ")[0]):
            if now and len(now) + _BETWEEN <= room:
                text.append(f"{now:>{room}}", style=self.tone("faint"))
                break
        return text

"""Help: the keys of the screen one stands on, a tour on one page, words explained, sources."""

from collections.abc import Sequence
from textwrap import wrap
from typing import Any, ClassVar, NamedTuple

from rich.text import Text
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.screen import Screen
from textual.widgets import Static

from calmlarder.render.caution import CAUTION
from calmlarder.tui.key_bar import keys_of
from calmlarder.tui.widgets.drawn import Drawn, cut
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal

_READABLE = 88  # columns of a paragraph
_TWO_COLUMNS = 76  # columns from which the keys stand in two
_NAMES = 11  # columns of a key's name, of a word that is explained


class Part(NamedTuple):
    """A heading, and rows of a short name with what there is to say of it; a row without a name is a paragraph."""

    heading: str
    rows: tuple[tuple[str, str], ...]


_TOUR = Part(
    "An evening, in one page",
    (
        ("larder", "Type what is in the fridge, a line a thing, as you would text it to a friend, or paste many. "
                   "What was assumed stands beside the line; what only you can know waits on top, to answer."),
        ("F3", "Tonight's dinner: what to weigh, how near the limits, one order of work. n the next one, x leave "
               "something out, f who eats tonight, + cook for one more (the rest can be boxed), Ctrl+Z takes a change "
               "of mind back. All of it is for tonight only."),
        ("Enter", "At the stove: one step at a time, timers, the time line. c when it is cooked: larder, log and "
                  "boxes follow."),
        ("log", "\"ate 200 ml orange juice, at one o'clock\" counts for three hours. \"plate 170 g tofu, 75 g "
                "broccoli\" says whether a plate fits. \"feel 3 a bit tight\", 0 calm to 10 the worst you know, or "
                "\"feel 1 0 2 0\" for pain, bloating, wind and urgency apart."),
        ("Ctrl+N", "The next days together, so that least is left over; what to freeze and to buy."),
        ("Ctrl+R", "A recipe that somebody else wrote, brought under your limits by the smallest change. k keeps one "
                   "that fits: it is named with tonight's dinner when its foods are there."),
        ("Ctrl+L", "Days: the gut over what was eaten, the week's nourishment, what was thrown; e corrects the log."),
        ("F2", "Who eats, and what holds for them for good. What is changed on other screens holds for tonight."),
        ("Shift+F2", "The people of this house, each with a diet, allergens, limits and an appetite of their own: f on "
                     "tonight's dinner makes one for all who are ticked."),
        ("Shift+F4", "A challenge: one group tried again, day by day, to a limit of your own. With a dietitian."),
        ("Ctrl+Z", "Undoes the last thing done to larder or log, and the one before. What cannot be undone asks."),
    ),
)  # fmt: skip
_WORDS = Part(
    "Words",
    (
        ("limit", "what a food, a meal or a day may bring of a group for one person. The cut-offs for one food are "
                  "published (Varney 2017); the sums of a meal are ours. F9 tells each with its source."),
        ("likely", "what is on the plate by the figures of the tables."),
        ("at most", "likely, with the two things on the plate that could be off the most both off: by eye 30 %, on "
                    "the scale 2 g, and what the figures themselves may be off."),
        ("the bar", "solid to likely, faint to at most, a tick at the limit; it ends at 1.6 times the limit, which "
                    "is what at most may come to."),
        ("weigh", "an amount that could pass a limit by itself if it were misjudged. The others can be a handful."),
        ("groups", "fructans and GOS (onion, wheat, pulses), lactose (milk), excess fructose (honey, apple), "
                   "sorbitol and mannitol (stone fruit, mushrooms)."),
        ("last day", "past it food is not cooked with; a best-before day is not such a day, a use-by day is."),
        ("assumed", "taken for granted from the line, such as dry for rice; write the line again where it is wrong."),
        ("box", "a portion of a cooked dish that was kept; it holds what it held when it was cooked."),
    ),
)  # fmt: skip
_EVERYWHERE = Part(
    "Everywhere",
    (
        ("Ctrl+P", "every key of a screen, to search by its words; light or dark"),
        ("F9", "where a figure comes from: of a food, of a limit"),
        ("F12", "a packet in the hand: what its list of ingredients says"),
        ("F1", "this page"),
        ("Esc", "a step back; a click beside what opened does the same"),
        ("Ctrl+Q", "leave. Everything is kept on this machine, and nothing leaves it."),
        ("mouse", "each key below the screen, each item, each meal of a plan may be clicked"),
    ),
)


class Parts(Drawn):
    """Headings over rows; names in a column, words hanging beside them."""

    def __init__(self, parts: Sequence[Part], across: int = 1, id: str | None = None) -> None:
        """`across` columns where there is room for them."""
        super().__init__(id=id)
        self._parts, self._across = tuple(parts), across

    def draw(self, width: int) -> Text:
        """Never wider than can be read."""
        across = self._across if width >= _TWO_COLUMNS else 1
        each = min(width, _READABLE * across) // across - (across - 1)
        if (
            across > 1
            and max((len(words) for part in self._parts for _, words in part.rows), default=0) >= each - _NAMES
        ):
            across, each = 1, min(width, _READABLE)  # nothing is cut that a row of its own has room for
        text = Text(no_wrap=True)
        for part in self._parts:
            text.append("\n\n" if text.plain else "")
            text.append(part.heading, style="bold " + self.tone("accent"))
            if across > 1:
                self._beside(text, part, across, each)
                continue
            for name, words in part.rows:
                lines = wrap(words, each - _NAMES) if name else wrap(words, each)
                text.append(f"\n{cut(name, _NAMES - 1):<{_NAMES}}" if name else "\n", style="bold")
                text.append(("\n" + " " * (_NAMES if name else 0)).join(lines))
        return text

    def _beside(self, text: Text, part: Part, across: int, each: int) -> None:
        """Short rows in columns, read down the first and then down the next."""
        high = -(-len(part.rows) // across)
        for number in range(high):
            text.append("\n")
            for name, words in part.rows[number::high]:
                text.append(f"{cut(name, _NAMES - 1):<{_NAMES}}", style="bold")
                text.append(f"{cut(words, each - _NAMES - 1):<{each - _NAMES}}")


class HelpScreen(Modal[None]):
    """One page, which the arrows move; the keys of the screen below it stand first."""

    BINDINGS: ClassVar[list[BindingType]] = [Binding("f1", "leave", "Back", show=False)]

    def __init__(self, screen: Screen[Any]) -> None:
        super().__init__()
        self._keys = Part("Keys here", tuple((key, words) for key, words in keys_of(screen) if words != "Help"))
        self._about = getattr(screen, "ABOUT", "")

    def compose(self) -> ComposeResult:
        """Keys, tour, words, cautions."""
        with VerticalScroll(id="page"):
            if self._about:
                yield Parts([Part("What is asked here", (("", self._about),))], id="about-here")
                yield Static("")
            yield Parts([self._keys], across=2, id="keys-here")
            yield Static("")
            yield Parts([_EVERYWHERE, _TOUR, _WORDS, Part("Cautions", (("", CAUTION),))], id="tour")
        yield KeysLine()

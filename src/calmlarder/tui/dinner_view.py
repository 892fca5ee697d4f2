"""A dinner on the screen: the dish large, what is weighed, how near the limits, amounts, one order of work."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING

from rich.text import Text
from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.widgets import Static

from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.larder.order import days_in_words
from calmlarder.render.manner import PLAIN, Manner
from calmlarder.render.nourishment import energy_words, minutes_words, protein_words
from calmlarder.render.portions_text import dose_words, for_whom, shares_words, weighed_apart, weighed_parts
from calmlarder.render.thaw_text import thaw_first
from calmlarder.tui.widgets.amounts import Amount, AmountList
from calmlarder.tui.widgets.dish import DishCard, OrderOfWork, Work
from calmlarder.tui.widgets.drawn import READABLE, Drawn
from calmlarder.tui.widgets.limit_bar import NearLimits, Nearness

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner, PlateUse
    from calmlarder.compose.portions import Apart
    from calmlarder.kitchen.timeline import Moment

_HUGE, _WIDE, _MIDDLE = 150, 108, 74  # columns of the view from which three or two of its parts stand side by side
_NARROWEST = 40  # columns that a note has at least
_MOST_NAMED = 3
_URGENT_DAYS = 1  # left: what goes first, and is said before anything else of it
_AT_MOST = 1.6  # the end of a bar where nothing limits what may come at most, as in the profiles of caps.csv


def _with_headings(words: str) -> Text:
    """Strong is each line that stands over indented ones."""
    text, lines = Text(words), words.split("\n")
    start = 0
    for line, below in zip(lines, [*lines[1:], ""], strict=True):
        if line and not line.startswith(" ") and below.startswith(" "):
            text.stylize("bold", start, start + len(line))
        start += len(line) + 1
    return text


class DinnerView(VerticalScroll):
    """One dinner, its parts beside each other where there is room and below each other where there is not."""

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._shown: Dinner | None = None
        self.manner = PLAIN  # how amounts and names are read in this home

    def compose(self) -> ComposeResult:
        """The card over the columns, the notes below."""
        yield DishCard()
        with Container(id="columns"):
            with Container(id="plates"):
                yield AmountList()
                with Vertical(id="weigh-column"):
                    yield Static("", id="weigh", markup=False)
                    yield NearLimits()
            yield OrderOfWork()
        with Container(id="notes"):
            yield Static("", id="to-do", markup=False)
            yield Static("", id="to-know", markup=False)

    def on_resize(self) -> None:
        """Side by side, or below each other."""
        self.set_class(self.size.width >= _HUGE, "huge")
        self.set_class(_WIDE <= self.size.width < _HUGE, "wide")
        self.set_class(_MIDDLE <= self.size.width < _WIDE, "middle")

    def say(self, words: str) -> None:
        """Words in place of a dinner."""
        self._begin_at_top(None)
        self.add_class("-words")
        self.query_one(DishCard).show("", ())
        self.query_one("#weigh", Static).update("")
        self.query_one(NearLimits).show(())
        self.query_one(AmountList).show("", ())
        self.query_one(OrderOfWork).show(())
        self._note(words, in_two=False)

    def show(
        self,
        dinner: "Dinner",
        note: str,
        words: str,
        before_g: Mapping[str, float] = MappingProxyType({}),
        *,
        above: str = "",
    ) -> None:
        """A dinner; `above` stands over its title, `note` below that, `words` below everything.

        `before_g` still counts from what was eaten before, g by limit.
        """
        self._begin_at_top(dinner)
        self.remove_class("-words")
        dinner = self.manner.dinner(dinner)
        doses = [self.manner.told(dose_words(dose)) for dose in dinner.doses]
        self.query_one(DishCard).show(dinner.title, _facts(dinner), " ".join([*doses, note]).strip(), above)
        self.query_one("#weigh", Static).update(_weigh(dinner, self.manner))
        heading = "How near the limits, with what was eaten before" if any(before_g.values()) else "How near the limits"
        self.query_one(NearLimits).show(_near(dinner, before_g), heading)
        amounts = amounts_of(dinner, self.manner)
        self.query_one(AmountList).show("On the plates", amounts)
        self.query_one(OrderOfWork).show(
            [Work(one.start_min, one.what) for one in _moments(dinner)], thaw_first(dinner)
        )
        self._note(words)

    def show_box(self, dinner: "Dinner", how: str, words: str, before_g: Mapping[str, float]) -> None:
        """A portion of a dinner out of its box: `how` it is eaten, and what is in one portion; nothing is cooked."""
        self._begin_at_top(dinner)
        self.remove_class("-words")
        dinner = self.manner.dinner(dinner)
        facts = [protein_words(dinner, whole=True), energy_words(dinner)]
        self.query_one(DishCard).show(dinner.title, facts, how)
        self.query_one("#weigh", Static).update("")
        self.query_one(NearLimits).show(_near(dinner, before_g))
        each = [_amount_boxed(round(use.grams / dinner.people), use.name, self.manner) for use in dinner.uses]
        self.query_one(AmountList).show("In one portion, about", each)
        self.query_one(OrderOfWork).show(())
        self._note(words)

    @property
    def notes_width(self) -> int:
        """Columns to which notes are wrapped before they come here."""
        return max(_NARROWEST, min(READABLE, self.size.width - 4))

    def _note(self, words: str, *, in_two: bool = True) -> None:
        """What is to be done about the rest of the larder, and behind the first free line what is to be known."""
        to_do, _, to_know = words.partition("\n\n") if in_two else (words, "", "")
        for name, part in (("to-do", to_do), ("to-know", to_know)):
            place = self.query_one(f"#{name}", Static)
            place.update(_with_headings(part))
            place.display = bool(part)

    def _begin_at_top(self, dinner: "Dinner | None") -> None:
        """Another dinner is read from its title; the same one, told again, stays where it was read."""
        if dinner is None or dinner != self._shown:
            self.scroll_home(animate=False)
        self._shown = dinner

    @property
    def content(self) -> str:
        """Everything that can be read in it."""
        parts = [part.draw(max(40, part.content_size.width)).plain for part in self.query(Drawn)]
        return "\n".join([*parts, *(str(part.content) for part in self.query(Static))])


def _moments(dinner: "Dinner") -> list["Moment"]:
    """The order of work, what is served apart in its place."""
    apart = [part.moment for part in dinner.apart]
    return sorted([*dinner.timeline.moments, *apart], key=lambda one: one.start_min)


def _facts(dinner: "Dinner") -> list[str]:
    facts = [minutes_words(dinner), protein_words(dinner, whole=True), energy_words(dinner)]
    facts += [f"for {dinner.people}"] if dinner.people > 1 else []
    facts += [words] if (words := shares_words(dinner)) else []
    urgent = [use for use in dinner.uses if use.days_left is not None and use.days_left <= _URGENT_DAYS]
    urgent.sort(key=lambda use: (use.days_left, -use.grams))
    first = list(dict.fromkeys(use.name for use in urgent))[:_MOST_NAMED]
    return [*facts, f"uses first: {', '.join(first)}"] if first else facts


def _weigh(dinner: "Dinner", manner: Manner) -> str:
    """What the scale is needed for, what is served apart too."""
    weighed = [*dinner.weigh_first, *(manner.weighed(weighed_apart(part)) for part in weighed_parts(dinner))]
    if not weighed:
        return "Weigh nothing: by eye will do\n"
    count = len(weighed)
    return "\n".join([f"Weigh {count} thing{'' if count == 1 else 's'}", *(f"  {one}" for one in weighed), ""])


def _near(dinner: "Dinner", before_g: Mapping[str, float]) -> list[Nearness]:
    each = dinner.per_person
    return [
        Nearness(
            CAP_WORDS.get(key, key),
            each.loads_g[key] + before_g.get(key, 0.0),
            each.at_most_g[key] + before_g.get(key, 0.0),
            limit,
            most or _AT_MOST * limit,
        )
        for key, (limit, most) in each.limits_g.items()
    ]


def amounts_of(dinner: "Dinner", manner: Manner) -> list[Amount]:
    """Everything in it, what only some of them get too, and the oil that the steps use beside the larder's."""
    granted = [_amount_granted(thing) for thing in dinner.taken_for_granted]
    uses = [_amount(use, manner) for use in dinner.uses]
    return [*uses, *granted, *(_amount_apart(part, manner) for part in dinner.apart)]


def _amount_boxed(grams: int, name: str, manner: Manner) -> Amount:
    """Of one portion that was boxed."""
    ounces = manner.beside(grams)
    return Amount(grams, name, False, (f"{grams} g",) if ounces else (), measure=ounces)


def _amount_granted(thing: str) -> Amount:
    """`4 tsp oil`: nobody weighs it, and the larder need not name it."""
    count, unit, name = thing.split(" ", 2)
    return Amount(0, name, False, ("taken for granted",), measure=f"{count} {unit}")


def _amount_apart(part: "Apart", manner: Manner) -> Amount:
    """The same of what only some of those at the table get."""
    ounces = manner.beside(part.grams)
    notes = (*([f"{part.grams} g"] if ounces else []), *(["weigh"] if part.how == "weigh" else []))
    return Amount(part.grams, part.name, part.how == "weigh", notes, for_whom(part), ounces)


def _amount(use: "PlateUse", manner: Manner) -> Amount:
    """A food of a dish, as a list of amounts shows it."""
    weighed = use.how == "weigh" and not use.whole
    measure = [use.household] if use.household and use.how not in {"weigh", "box"} else []
    ounces = manner.beside(use.grams)
    grams = [f"{use.grams} g"] if ounces and ounces != f"{use.grams} g" else []
    notes = [*grams, "weigh"] if weighed else [*grams, "all of it"] if use.how == "weigh" else []
    notes += ["from its box"] if use.how == "box" else []
    measure += [] if use.how == "weigh" else grams
    is_past = use.days_left is not None and use.days_left < 0
    words = "" if is_past and use.look else days_in_words(use.days_left)
    left = [f"{words} left" if words.endswith(("day", "days")) and words != "last day" else words] if words else []
    is_urgent = use.days_left is not None and use.days_left <= _URGENT_DAYS
    if ounces and is_urgent:  # days left give no way to a second measure
        notes = [*left, *notes, *measure]
    else:
        notes += left + measure if is_urgent else measure + left
    return Amount(use.grams, use.name, weighed, tuple(notes), measure=ounces, look=use.look)

"""A plan on the screen: its meals as cards, what is left over all the same, what to freeze, what to buy."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from datetime import date, timedelta
from textwrap import wrap
from types import MappingProxyType
from typing import TYPE_CHECKING

from textual import on
from textual.app import ComposeResult
from textual.containers import Container, Vertical, VerticalScroll
from textual.widgets import Static

from calmlarder.household.planning import Outcome
from calmlarder.plan.sittings import PlannedSitting
from calmlarder.render.manner import PLAIN
from calmlarder.render.thaw_text import freeze_words
from calmlarder.tui.dinner_view import amounts_of
from calmlarder.tui.widgets.amounts import AmountList, Fact, Facts
from calmlarder.tui.widgets.day_board import Card, DayBoard
from calmlarder.tui.widgets.drawn import READABLE

if TYPE_CHECKING:
    from calmlarder.larder.lot import Lot
    from calmlarder.plan.planned import Planned, SittingPlanned, Wasted

_SIDE_BY_SIDE = 108  # columns from which the notes stand beside each other
_BETTER = "looking for a better one; . keeps this"
_NAMES: Mapping[str, str] = MappingProxyType({"packed": "packed lunch"})


def asked_line(asked: Sequence[PlannedSitting]) -> str:
    """What is planned, in a line."""
    days, meals = len({one.day for one in asked}), len(asked)
    words = [f"{days} day{'s' * (days != 1)}", f"{meals} meal{'s' * (meals != 1)} for {asked[0].people}"]
    return " · ".join([*words, *([f"{asked[0].minutes} min"] if asked[0].minutes else [])])


def dishes_words(sittings: "Sequence[SittingPlanned]") -> str:
    """Every dish of a plan with the day on which it is cooked, and what stays without one."""
    cooked = [one for one in sittings if one.dinner is not None and one.leftover_of is None and not one.from_box]
    told = [f"{one.at:%a} {one.dinner.title}" for one in cooked if one.dinner is not None]
    empty = sum(one.dinner is None for one in sittings)
    told += [f"{empty} meal{'s' * (empty > 1)} without a dish"] if empty else []
    return "; ".join(told) or "what is eaten out of boxes"


def card_of(one: "SittingPlanned", sittings: "Sequence[SittingPlanned]", note: str = "", unfit: str = "") -> Card:
    """When, what, and which meal's leftovers they are or which they leave; `unfit` is why it is cooked no longer.

    `note` says more of it, as that it is pinned.
    """
    notes = [f"no longer fits, {unfit}"] if unfit else []
    notes += [note] if note else []
    title = one.dinner.title if one.dinner is not None else "nothing yet" if not one.why_empty else "none found yet"
    figure = ""
    if one.dinner is None:
        notes += [one.why_empty] if one.why_empty else []
    elif one.from_box:
        notes.append(f"its box is there, {'heated once' if one.warmed else 'cold'}")
    elif one.leftover_of is not None:
        notes.append(f"from the box of {_when(sittings[one.leftover_of])}, {'heated once' if one.warmed else 'cold'}")
    else:
        figure = f"{one.dinner.minutes} min"
        notes += [f"thaw the {use.name} the evening before" for use in one.thawed]
        if one.boxed_for is not None:
            notes.append(f"cook for {one.dinner.people}, box the rest for {_when(sittings[one.boxed_for])}")
    return Card(f"{one.at:%a %d %b}", kind_of(one), figure, title, tuple(notes))


def box_words(one: "SittingPlanned", sittings: "Sequence[SittingPlanned]") -> str:
    """Which box a meal comes out of, and how it is eaten; nothing where it is cooked itself."""
    if one.leftover_of is None and not one.from_box:
        return ""
    flask = ", there or in the morning into a flask" if one.sitting == "packed" else ""
    how = f"Warm it until it steams all through{flask}" if one.warmed else "Eat it cold, as it comes from the fridge"
    which = (
        f"this is the box of {_when(sittings[one.leftover_of])}" if one.leftover_of is not None else "its box is there"
    )
    return f"Nothing to cook: {which}. {how}."


def _when(one: "SittingPlanned") -> str:
    return f"{one.at:%A}'s {kind_of(one)}"


def kind_of(one: "SittingPlanned") -> str:
    """The kind of meal in words."""
    return _NAMES.get(one.sitting, one.sitting)


def left_over_line(plan: "Planned", name_of: Callable[[str], str]) -> str:
    """What the plan does not reach, in a line."""
    if not plan.wasted:
        return "nothing is left over on its last day"
    named = ", ".join(f"{one.grams:g} g {name_of(one.food)}" for one in plan.wasted[:3])
    more = len(plan.wasted) - 3
    freeze = {one.lot for one in plan.freeze_today}
    saved = " · the freezer saves it" if all(one.lot in freeze for one in plan.wasted) else ""
    return f"left over on its last day: {named}{f' and {more} more' if more > 0 else ''}{saved}"


def boxes_line(
    lots: "Sequence[Lot]", sittings: "Sequence[SittingPlanned]", today: date, wasted: "Sequence[Wasted]" = ()
) -> str:
    """The boxes that no meal of a plan eats, until when they keep, and what keeps them from it where that is known.

    Empty where there are none.
    """
    eaten = {use.lot for one in sittings if one.dinner is not None for use in one.dinner.uses}
    eaten |= {one.from_box for one in sittings}
    there = [lot for lot in lots if lot.id not in eaten and lot.place != "freezer" and not lot.to_bin]
    left = Counter((lot.box.title, lot.days_left) for lot in there if lot.box is not None)
    boxed = {lot.id for lot in there if lot.box is not None}
    because = dict.fromkeys(one.because for one in wasted if one.lot in boxed and one.because)
    told = [
        f"{count} portion{'s' * (count > 1)} boxed, {title}"
        + (f", keep{'s' * (count == 1)} until {today + timedelta(days=days):%a %d %b}" if days is not None else "")
        for (title, days), count in left.items()
    ]
    if not told:
        return ""
    nobody = f"no meal of this plan eats {'it' if sum(left.values()) == 1 else 'them'}"
    return "; ".join((f"{'; '.join(told)}: {nobody}", *because))


def unfit_line(unfit: Mapping[int, str], meals: int) -> str:
    """That a kept plan is of before, and what to do."""
    those = f"{len(unfit)} of its {meals} meals no longer fit{'s' * (len(unfit) == 1)}"
    stay = "the others stay" if len(unfit) < meals else "Esc leaves it as it is"
    return (
        f"As it was planned before: {those}. n finds {'another dish' if len(unfit) == 1 else 'other dishes'}, {stay}."
    )


def how_good(plan: "Planned") -> str:
    """How good a plan is known to be, in food; first of all how many of its meals have no dish."""
    empty = sum(one.dinner is None for one in plan.sittings)
    if empty:
        return f"{empty} meal{'s' * (empty > 1)} without a dish"
    if plan.status == "proven":
        return "best possible"
    if plan.gap_grams is None:
        return "the best found"
    return f"the best found: no plan can save more than another {plan.gap_grams:g} g"


def details(outcome: Outcome, heard: float | None) -> str:
    """The search in its own words: cost, bound, gap, time; `heard` is a bound that came after the plan, in points."""
    from calmlarder.plan.planned import Planned, gap_percent
    from calmlarder.render.plan_text import closing

    plan = outcome.plan
    cost, bound, gap = plan.cost_points, plan.bound_points, plan.gap_percent
    if heard is not None and (bound is None or heard > bound):
        bound, gap = heard, gap_percent(round(cost), round(heard))
    lines = [
        "What the search says of itself",
        "",
        f"cost of this plan   {cost:.0f} points: waste first, then variety, then work",
        f"no plan costs less  {'not known yet' if bound is None else f'{bound:.0f} points'}",
        f"between the two     {'not known yet' if gap is None else f'{gap:g} %'}",
    ]
    return "\n".join([*lines, *(["", closing(plan)] if isinstance(plan, Planned) else [])])


class PlanView(VerticalScroll):
    """Shows one outcome."""

    def compose(self) -> ComposeResult:
        """A line for all of it, the meals, and what to do about the rest."""
        yield Static("", id="left-over", markup=False)
        yield DayBoard(id="meals")
        with Container(id="plan-notes"):
            yield AmountList()
            with Vertical(classes="column"):
                yield Facts(id="unreached")
                yield Facts(id="to-buy")
            with Vertical(classes="column"):
                yield Facts(id="to-freeze")
        yield Static("", id="plan-boxes", markup=False)
        yield Static("", id="plan-caution", markup=False)

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._sittings: tuple[SittingPlanned, ...] = ()
        self.manner = PLAIN  # how amounts and names are read in this home

    def on_mount(self) -> None:
        """The board has the focus, and not what scrolls it."""
        self.can_focus = False
        for name in ("unreached", "to-freeze", "to-buy"):
            self.query_one(f"#{name}", Facts).show("", ())

    def on_resize(self) -> None:
        """Notes beside each other, or below."""
        self.set_class(self.size.width >= _SIDE_BY_SIDE, "wide")

    def show(
        self,
        outcome: Outcome,
        notes: Mapping[int, str],
        name_of: Callable[[str], str],
        unfit: Mapping[int, str] = MappingProxyType({}),
    ) -> None:
        """`notes` are said of meals by their index, `unfit` is why a meal fits no longer."""
        from calmlarder.plan.planned import Planned
        from calmlarder.render.caution import CAUTION

        plan = outcome.plan
        sittings = self._sittings = self.manner.sittings(plan.sittings)
        cards = [card_of(one, sittings, notes.get(n, ""), unfit.get(n, "")) for n, one in enumerate(sittings)]
        told = self.manner.told
        cards = [one._replace(notes=tuple(map(told, one.notes))) for one in cards]
        self.query_one(DayBoard).show(cards)
        self.show_marked()
        done = plan if isinstance(plan, Planned) else None
        about = unfit_line(unfit, len(sittings)) if unfit else left_over_line(done, name_of) if done else _BETTER
        self.query_one("#left-over", Static).update(told(about))
        caution = "\n".join(wrap(CAUTION, max(40, min(READABLE, self.size.width - 4))))
        self.query_one("#plan-caution", Static).update(caution if done else "")
        evening = outcome.asked.evening
        boxes = self.query_one("#plan-boxes", Static)
        words = boxes_line(evening.lots, plan.sittings, evening.request.today, done.wasted) if done else ""
        boxes.update(told(words))
        boxes.display = bool(boxes.content)
        wasted = [self._fact(one.grams, name_of(one.food), one.why) for one in done.wasted] if done else []
        self.query_one("#unreached", Facts).show("Left over on its last day", wasted)
        frozen = [self._fact(one.grams, name_of(one.food), freeze_words(one, done.sittings))
                  for one in done.freeze_today] if done else []  # fmt: skip
        self.query_one("#to-freeze", Facts).show("Freeze today", frozen)
        bought = [self._fact(one.grams, one.name, one.because) for one in done.buy] if done else []
        self.query_one("#to-buy", Facts).show("Worth buying", bought)

    def _fact(self, grams: float, name: str, words: str) -> Fact:
        return Fact(grams, self.manner.name(name), self.manner.told(words), self.manner.beside(grams))

    @on(DayBoard.Marked)
    def show_marked(self) -> None:
        """What is in the marked meal."""
        marked = self.query_one(DayBoard).marked
        dinner = self._sittings[marked].dinner if marked is not None and marked < len(self._sittings) else None
        amounts = self.query_one(AmountList)
        amounts.display = dinner is not None
        if dinner is not None:
            heading = f"In it{f', for {dinner.people}' if dinner.people > 1 else ''}"
            amounts.show(heading, amounts_of(dinner, self.manner))

    def say(self, words: str) -> None:
        """Words in place of a plan."""
        self.query_one("#left-over", Static).update(words)

    @property
    def content(self) -> str:
        """Everything that can be read in it."""
        parts = [
            part.draw(max(20, part.content_size.width)).plain for part in (self.query_one(DayBoard), *self.query(Facts))
        ]
        return "\n".join([*(str(part.content) for part in self.query(Static)), *parts])

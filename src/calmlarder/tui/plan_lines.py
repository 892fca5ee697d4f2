"""A plan in lines that fit the screen: the sittings, and how good the plan is known to be."""

import textwrap
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING

from calmlarder.household.planning import Outcome
from calmlarder.plan.sittings import PlannedSitting

if TYPE_CHECKING:
    from calmlarder.plan.planned import SittingPlanned

_IN = "  "
_NAMES: Mapping[str, str] = MappingProxyType({"packed": "packed lunch"})


def asked_line(asked: Sequence[PlannedSitting], diet: str, profile: str) -> str:
    """What is planned, in a line."""
    days = len({one.day for one in asked})
    many = len(asked)
    first = asked[0]
    minutes = f"{first.minutes} minutes" if first.minutes else "any time"
    words = [f"{days} day{'s' * (days != 1)}", f"{many} sitting{'s' * (many != 1)} for {first.people}", minutes]
    return " · ".join([*words, diet, profile])


def measure_line(outcome: Outcome, done: bool, heard: float | None) -> str:
    """What the plan costs, what none can cost less than, and how far it may be from the best.

    `heard` is a bound that came after the plan, in points.
    """
    from calmlarder.plan.planned import Planned, gap_percent

    plan = outcome.plan
    cost, bound, gap = plan.cost_points, plan.bound_points, plan.gap_percent
    if not done and heard is not None and (bound is None or heard > bound):
        bound, gap = heard, gap_percent(round(cost), round(heard))
    words = f"cost {cost:.0f}, " + ("no bound yet" if bound is None else f"bound {bound:.0f}")
    words += "" if gap is None else f", gap {gap:g} %"
    if not isinstance(plan, Planned):
        return f"{words}: getting better, . keeps it"
    state = {"proven": "proven the best", "stopped": "stopped"}.get(plan.status, "the best found")
    return f"{words}: {state}, {plan.seconds:.1f} s"


def sitting_lines(
    one: "SittingPlanned",
    sittings: "Sequence[SittingPlanned]",
    width: int,
    pinned: bool = False,
    titled: bool = True,
) -> str:
    """When, what, and which sitting's leftovers they are or which they leave."""
    about = [f"{one.at:%a %d %b %H:%M}, {_name(one)}"]
    below: list[str] = []
    if one.dinner is None:
        below = [f"nothing: {one.why_empty}" if one.why_empty else "nothing yet"]
    elif one.leftover_of is not None:
        cold = "heated once" if one.warmed else "cold"
        below = [f"leftovers of {_when(sittings[one.leftover_of])}, {cold}"]
    else:
        about.append(f"{one.dinner.minutes} min")
        if one.boxed_for is not None:
            below.append(f"cook for {one.dinner.people}, box the rest for {_when(sittings[one.boxed_for])}")
    if one.dinner is not None and titled:
        below.insert(0, one.dinner.title)
    about += ["pinned"] if pinned else []
    lines = textwrap.wrap(", ".join(about), width)
    for text in below:
        lines += textwrap.wrap(text, width, initial_indent=_IN, subsequent_indent=_IN * 2)
    return "\n".join(lines)


def _when(one: "SittingPlanned") -> str:
    return f"{one.at:%A}'s {_name(one)}"


def _name(one: "SittingPlanned") -> str:
    return _NAMES.get(one.sitting, one.sitting)

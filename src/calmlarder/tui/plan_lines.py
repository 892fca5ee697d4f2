"""A plan in lines that fit the screen: the sittings, and how good the plan is known to be."""

import textwrap
from collections.abc import Collection, Sequence
from typing import TYPE_CHECKING

from calmlarder.plan.sittings import PlannedSitting

if TYPE_CHECKING:
    from calmlarder.plan.planned import SittingPlanned

_IN = "  "


def asked_line(asked: Sequence[PlannedSitting], diet: str, profile: str) -> str:
    """What is planned, in a line."""
    days = len({one.day for one in asked})
    many = len(asked)
    first = asked[0]
    minutes = f"{first.minutes} minutes" if first.minutes else "any time"
    words = [f"{days} day{'s' * (days != 1)}", f"{many} sitting{'s' * (many != 1)} for {first.people}", minutes]
    return " · ".join([*words, diet, profile])


def measure_line(cost: float, bound: float | None, gap: float | None) -> str:
    """What the plan costs, what none can cost less than, and how far it may be from the best."""
    below = "no bound yet" if bound is None else f"bound {bound:.0f}"
    return f"cost {cost:.0f}, {below}" + ("" if gap is None else f", gap {gap:g} %")


def sitting_lines(
    one: "SittingPlanned", sittings: "Sequence[SittingPlanned]", pinned: Collection[int], number: int, width: int
) -> str:
    """When, what, and which sitting's leftovers they are or which they leave."""
    about = [f"{one.at:%a %d %b %H:%M}, {one.sitting}"]
    below = []
    if one.dinner is None:
        below = [f"nothing: {one.why_empty}" if one.why_empty else "nothing yet"]
    elif one.leftover_of is not None:
        cold = "cold" if one.sitting == "packed" else "heated once"
        below = [one.dinner.title, f"leftovers of {_when(sittings[one.leftover_of])}, {cold}"]
    else:
        about.append(f"{one.dinner.minutes} min")
        below = [one.dinner.title]
        if one.boxed_for is not None:
            below.append(f"cook for {one.dinner.people}, box the rest for {_when(sittings[one.boxed_for])}")
    about += ["pinned"] if number in pinned else []
    lines = textwrap.wrap(", ".join(about), width)
    for text in below:
        lines += textwrap.wrap(text, width, initial_indent=_IN, subsequent_indent=_IN * 2)
    return "\n".join(lines)


def _when(one: "SittingPlanned") -> str:
    return f"{one.at:%A} {one.sitting}"

"""What a pattern has to give at the least: no model is built for a pattern that cannot be the nearest."""

from calmlarder.compose.problem import PORTION, SERVING_MINUTES, Option, PatternProblem
from calmlarder.compose.weights import (
    BUY_ONE,
    GIVES_AT_ALL,
    MINUTE_LATE,
    MOST_PORTION_SHORT,
    MOST_PROTEIN_SHORT,
    POINT,
    PORTION_SHORT,
    PROTEIN_SHORT,
)


def least_given(problem: PatternProblem, minutes: int | None, buys: int = 1) -> int | None:
    """Ten-thousandths of a point that no dinner of this pattern escapes; None where no dinner is possible.

    `buys` is how many things may be bought.
    """
    if not problem.fillable:
        return None
    lacking = missing(problem)
    if lacking > buys:
        return None
    own = _most_protein(problem)
    richest = sorted((o.most * o.protein_mg for o in problem.options if o.offered.gives == "buy"), reverse=True)
    prices = [_short(problem, own + sum(richest[:n]), n * BUY_ONE * POINT) for n in range(lacking, buys + 1)]
    possible = [price for price in prices if price is not None]
    scant = _scant(problem)
    return min(possible) + scant + _late(problem, minutes) if possible and scant is not None else None


def _is_own(option: Option) -> bool:
    return option.offered.gives != "buy"


def missing(problem: PatternProblem) -> int:
    """Lots to buy at the least; two slots cannot share one, two groups may, and a group one with its own slot."""
    slots = problem.pattern.slots.items()
    own = {name: {o.key for _, o in problem.in_slot(name) if _is_own(o)} for name, _ in slots}
    lacking = {name: lack for name, slot in slots if (lack := slot.items[0] - len(own[name])) > 0}
    groups = [names for names in problem.pattern.one_of if not any(own[name] for name in names)]
    alone = any(not lacking.keys() & set(names) for names in groups)
    return sum(lacking.values()) + int(alone)


def _scant(problem: PatternProblem) -> int | None:
    """What slots that must be filled lack of their least, with the fullest lots; None beyond what may give."""
    price = 0
    for name, slot in problem.pattern.slots.items():
        least = problem.least_in(name)
        if not slot.items[0] or not least:
            continue
        there = sorted((o.most * o.portion_units for _, o in problem.in_slot(name)), reverse=True)
        short = least - sum(there[: slot.items[1]])
        if short > int(least * MOST_PORTION_SHORT):
            return None
        if short > 0:
            price += GIVES_AT_ALL * POINT + short * PORTION_SHORT * (POINT // PORTION)
    return price


def _most_protein(problem: PatternProblem) -> int:
    """Mg for the whole dish with every slot filled by what is richest in it, as if its lots were free for it."""
    total = 0
    for name, slot in problem.pattern.slots.items():
        options = [option for _, option in problem.in_slot(name) if _is_own(option)]
        by_lots = sum(sorted((o.most * o.protein_mg for o in options), reverse=True)[: slot.items[1]])
        room, by_room = problem.most_in(name), 0
        for option in sorted(options, key=lambda o: -o.protein_mg / o.portion_units):
            units = min(option.most, -(-room // option.portion_units))
            by_room += units * option.protein_mg
            room = max(0, room - units * option.portion_units)
        total += min(by_lots, by_room)
    return total


def _short(problem: PatternProblem, protein: int, price: int) -> int | None:
    floor = round(problem.wanted.protein_floor_g * 1000) * problem.wanted.people
    short = floor - protein
    if short <= 0:
        return price
    if short > int(floor * MOST_PROTEIN_SHORT):
        return None
    return price + GIVES_AT_ALL * POINT + short * (PROTEIN_SHORT * POINT // 1000)


def _late(problem: PatternProblem, minutes: int | None) -> int:
    """The quickest food of the slowest slot that must be filled."""
    if minutes is None:
        return 0
    quickest = [
        min(option.minutes for _, option in problem.in_slot(name))
        for name, slot in problem.pattern.slots.items()
        if slot.items[0]
    ]
    late = max(quickest, default=0) + SERVING_MINUTES - minutes
    return (GIVES_AT_ALL + MINUTE_LATE * late) * POINT if late > 0 else 0

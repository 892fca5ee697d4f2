"""A line of the larder in words, as it is typed."""

from calmlarder.household.household import Household
from calmlarder.larder.groups import days_words
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import Reading
from calmlarder.render.about import about_span


def meaning(reading: Reading, kitchen: Household) -> str:
    """What a line that was read says, or what to write instead."""
    if reading.problem is not None:
        return f"{reading.problem.what}; {reading.problem.remedy}"
    asked = reading.to_answer
    assumed = f" ({', '.join(reading.assumed)}: assumed)" if reading.assumed else ""
    lots = "; ".join(_lot_meaning(lot, kitchen) for lot in reading.lots or reading.standing) + assumed
    if asked is None:
        return lots
    question = f"{asked.question} {', '.join(asked.choices[:4])}".strip()
    return f"{question}; the rest stands: {lots}" if reading.standing else question


def _lot_meaning(lot: Lot, kitchen: Household) -> str:
    span = f"{lot.grams:g} g" if lot.grams_low == lot.grams_high else about_span(lot.grams_low, lot.grams_high)
    left = f", {_left(lot)} ({lot.days_from})" if lot.days_left is not None and not lot.to_bin else ""
    to_bin = f", {lot.condition}: put it in the bin" if lot.to_bin else ""
    owner = f", of {lot.owner}{'' if lot.owner_agrees else ': ask first'}" if lot.owner else ""
    return f"{kitchen.name_of(lot.food)}, {span}, {lot.place}{left}{owner}{to_bin}"


def _left(lot: Lot) -> str:
    if lot.days_left is not None and lot.days_left > 0:
        return f"{days_words(lot)} left"
    return "past its day" if lot.days_left is not None and lot.days_left < 0 else "its last day"

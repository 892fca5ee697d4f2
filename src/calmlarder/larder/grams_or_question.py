"""The grams of a food that a line tells, or what must be asked about them."""

from calmlarder.larder.grams import as_a_serving, fits_measure, grams_of, out_of_proportion, share_of
from calmlarder.larder.to_answer import Answers
from calmlarder.matching.amounts.amount_of_line import Amount
from calmlarder.matching.amounts.numbers_and_fractions import ONE, Span
from calmlarder.matching.part import Part
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_NO_AMOUNT = Amount(ONE, None, None, "none")
USUAL, RIGHT = "a usual amount", "is right"  # what answers a question about an amount


def grams_or_question(
    part: Part, food: Food, answers: Answers, tables: Tables
) -> tuple[Span | None, str, tuple[str, ...]]:
    """Grams of a food of a line (low, typical, high), or what must be asked about them and what would answer."""
    amount = part.amount if answers.amount != "usual" else _NO_AMOUNT
    if amount.measure is not None and not fits_measure(amount, food, tables):
        return None, f"`{amount.measure}` says nothing about {food.name}", _usual(food, tables)
    span = grams_of(amount, food, tables)
    if span is None:
        return None, f"how much {food.name} is there?", _usual(food, tables)
    span = as_a_serving(span, amount, food, part.words)
    if amount.grams is not None and len(part.named.foods) > 1:
        shares = [share_of(tables.food_by_id[one], tables) for one in part.named.foods]
        part_of_it = share_of(food, tables) / sum(shares)
        span = span.times(Span(part_of_it, part_of_it, part_of_it))
    if answers.amount != "as told" and out_of_proportion(amount, span, food):
        choices = (f"{span.typical:g} g {RIGHT}", *_usual(food, tables))
        return None, f"{span.typical:g} g of {food.name}: is that right?", choices
    return span, "", ()


def _usual(food: Food, tables: Tables) -> tuple[str, ...]:
    usual = grams_of(_NO_AMOUNT, food, tables)
    return (f"{USUAL}, {usual.typical:g} g",) if usual is not None else ()

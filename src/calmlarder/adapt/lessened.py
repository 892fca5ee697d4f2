"""Less of a line: weighed, lessened, in halves, or left out."""

import re
from collections.abc import Iterator
from decimal import ROUND_DOWN, Decimal

from calmlarder.adapt import prices
from calmlarder.adapt.choice import Choice, tie
from calmlarder.adapt.counted import Counted
from calmlarder.adapt.dish import Dish
from calmlarder.adapt.line_words import own_words
from calmlarder.adapt.loads import LineLoad
from calmlarder.adapt.model import Kind
from calmlarder.adapt.written import written

_STEPS = tuple(Decimal(step) for step in ("0.5", "1", "2", "5", "10", "20", "25", "50", "100", "250", "500", "1000"))
_MOST_STEPS = 10  # ways to take less of one thing
_WEIGHED = Decimal("0.9")
_STILL_A_PORTION = Decimal("0.4")  # of a usual one: it is tasted and seen; ours
HALF = Decimal("0.5")
_SO_MANY = re.compile(r"\s*(\d{1,2}|one|two|three|four|five|six)\b (?!x\b)(?=[a-z])")
_BY_SPOON = re.compile(r"[\d ./¼½¾]{1,8} ?(?:tbsp|tsp|tablespoons?|teaspoons?)\b")
_IN_GRAMS = re.compile(r"\d+(?:\.\d)? g ")
_COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_HALVED = "pepper"
_COMES_SMALL = frozenset({"fruit-vegetable", "pepper", "tomato"})
_SMALL_ONES = (150, 125, 110, 100, 90, 80)  # g a piece: ours
IN_HALVES = ", in halves, one a serving"


def lessened(line: Counted, weight: int, least: float, dish: Dish) -> Iterator[Choice]:
    """Less of it, in steps a scale shows, down to what the dish bears; of what is judged by eye, as much weighed."""
    assert line.amount is not None
    assert line.profile is not None
    tables, serves = dish.tables, dish.serves
    whole = line.amount.grams
    floor = whole * Decimal(str(least))
    step = next((one for one in _STEPS if (whole - floor) / one <= _MOST_STEPS), _STEPS[-1])
    told = set()
    words = own_words(line.read, line.food, whole, tables)
    grams = (whole / step).to_integral_value(ROUND_DOWN) * step
    while grams > 0 and grams >= floor:
        line_written = written(line.food, grams, tables, words, line.amount.sure)
        amount = line_written.amount
        lower = amount.most < line.amount.most and amount.grams <= whole
        by_spoon = line.food.kind == "sweetener" and _BY_SPOON.match(line.read.text.casefold()) is not None
        lower &= not (by_spoon and _IN_GRAMS.match(line_written.line))  # who has a spoon in hand weighs no honey
        if lower and amount.grams >= floor and line_written.line not in told:
            told.add(line_written.line)
            lost = round(weight * float(1 - amount.grams / whole))
            kept = amount.grams >= _STILL_A_PORTION * line.food.portion_g * serves
            less = lost * (prices.LESS_OF_IT if kept else 1)
            price = round(less + prices.POINT * prices.TOUCHED) + tie(line, line_written.line)
            brings = (LineLoad(line.food, amount, line.profile),)
            kind: Kind = "weigh" if amount.grams >= whole * _WEIGHED else "less"
            yield Choice(kind, brings, (line_written.line,), price, lost)
        grams -= step


def halved(line: Counted, weight: int, dish: Dish) -> Iterator[Choice]:
    """Half as many of what holds a filling, cut in halves."""
    found = _SO_MANY.match(line.read.text.casefold())
    count = (_COUNTS.get(found[1]) or int(found[1])) if found else 0
    if line.amount is None or line.profile is None or 0 < count < dish.serves:
        return
    words = f"{line.food.name}{IN_HALVES}"
    one = written(line.food, line.amount.grams * HALF, dish.tables, words, line.amount.sure)
    lost = round(weight * _lost_of_a_shell(HALF))
    price = lost + round(prices.POINT * (prices.TOUCHED + prices.CUT_OPEN)) + tie(line, one.line)
    yield Choice("less", (LineLoad(line.food, one.amount, line.profile),), (one.line,), price, lost)


def smaller_ones(line: Counted, weight: int, dish: Dish) -> Iterator[Choice]:
    """As many of what is filled, each a small one: so the steps hold as they stand, and each person has their own."""
    found = _SO_MANY.match(line.read.text.casefold())
    if line.amount is None or line.profile is None or line.food.kind not in _COMES_SMALL or found is None:
        return
    count = _COUNTS.get(found[1]) or int(found[1])
    halves = line.food.kind == _HALVED and count % 2 == 0  # a pepper is filled in halves too
    for count, each, tail in [(count, each, "") for each in _SMALL_ONES] + [
        (count // 2, each, IN_HALVES) for each in _SMALL_ONES if halves
    ]:
        cut = tail == IN_HALVES
        if not count or (cut and 2 * count < dish.serves) or each * count >= line.amount.grams * _WEIGHED:
            continue
        names = {line.food.name, line.food.name if line.food.name.endswith("s") else f"{line.food.name}s"}
        one = written(line.food, Decimal(each * count), dish.tables, sure=line.amount.sure)
        text = f"{count} small {max(names, key=len) if count > 1 else line.food.name}, about {each} g each{tail}"
        lost = round(weight * _lost_of_a_shell(one.amount.grams / line.amount.grams))
        price = lost + round(prices.POINT * (prices.TOUCHED + prices.CUT_OPEN * cut)) + tie(line, text)
        yield Choice("less", (LineLoad(line.food, one.amount, line.profile),), (text,), price, lost)


def _lost_of_a_shell(share: Decimal) -> float:
    """What is lost of a thing that is filled: its filling and its look stay, but not in next to nothing of it."""
    return float((1 - share) / 2 + max(Decimal(0), HALF - share))


def left_out(line: Counted, weight: int) -> Choice:
    dear = prices.OPTIONAL_OUT if line.read.optional else prices.OUT.get(line.food.roles[0], prices.OUT_ELSE)
    price = round(weight * dear) + round(prices.POINT * prices.TOUCHED) + tie(line, "out")
    return Choice("out", (), (), price, 0 if line.read.optional else weight)

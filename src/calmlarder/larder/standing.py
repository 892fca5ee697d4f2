"""Where a lot stands, whether it is open, and from which day a thing without a date is counted."""

import re
from collections.abc import Sequence
from datetime import date, timedelta

from calmlarder.larder.lot import Lot
from calmlarder.larder.urgency import Kept, Urgency
from calmlarder.matching.amounts.amount_of_line import Amount
from calmlarder.matching.conditions.states import (
    COOKED_AS_THEY_ARE,
    COOKED_WORDS,
    FLESH_WORDS,
    is_flesh_to_cook,
    is_fried_from_frozen,
)
from calmlarder.matching.dates.date_words import Dated
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.line import LineRead
from calmlarder.matching.part import Part
from calmlarder.matching.places import Place
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES, COOKED_STATES

_CUPBOARD_KINDS = frozenset({
    "flour", "starch", "oil", "acid", "spice", "sweetener", "nut", "seed", "dried-fruit", "soy-sauce",
    "sea-vegetable", "nut-butter", "potato",
})  # fmt: skip
_CUPBOARD_STATES = frozenset({"dry", "canned", "canned drained", "dried"})
_FRESH_KINDS = frozenset({
    "leaf", "salad-leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "shoot", "stem", "fruit-vegetable",
    "sweetcorn", "fruit", "herb", "fish", "shellfish", "poultry", "meat", "milk", "cream", "yoghurt", "cheese", "bread",
})  # fmt: skip
# What is cut open when some of it is gone, and goes fast from there; half a banana keeps its skin no better.
_CUT_OPEN = frozenset({"fruit", "squash", "tomato", "allium"})
_SOFT_FOODS = frozenset({"avocado", "cucumber"})
_CUT_UP = LatePattern(r"\b(?:cut(?: up)?|chopped|cubed|diced|sliced|peeled|left ?overs?)\b", re.I)
_CUT = frozenset({"wedge", "slice", "chunk", "piece"})
# Cooked grain that is sold so, in what keeps it on the shelf until it is opened.
_SEALED = LatePattern(
    r"\b(?:pouch(?:es)?|sachets?|microwav(?:e|able|eable)|micro|tins?|cans?|canned|tinned|rice cups?)\b", re.I
)
_SEALED_KINDS = frozenset({"rice", "grain", "pulse", "pepper", "herb"})
_COOKED_AT_HOME = LatePattern(r"\b(?:cooked|boiled|left ?overs?|made|microwaved|from|open(?:ed)?)\b", re.I)
# Thawed food is eaten within a day: UK Food Standards Agency (recalled). In the fridge it thaws for as long: ours.
_THAWED_DAYS, _THAWS_DAYS = 1, 2
_THAWS = frozenset({"fish", "shellfish", "poultry", "meat"})
_SALTED = frozenset({"salt-cod", "salt-cod-soaked", "fish-dried", "mackerel-salted"})
_SOAKED = LatePattern(r"\bsoak(?:ed|ing|s)?\b", re.IGNORECASE)
_THAWED = LatePattern(r"\b(?:thaw(?:ed|ing)|defrost(?:ed|ing))\b", re.IGNORECASE)
# Made in a kitchen, such a thing keeps as one that was opened, and not as a sealed jar.
_HOME_MADE = LatePattern(r"\bstewed\b|\bhome ?-?made\b", re.I)
_STEWED = LatePattern(r"\bstewed\b", re.I)
_JARRED_AT_HOME = frozenset({"sauce", "paste"})
_TIN = LatePattern(r"\b(?:tins?|cans?|canned|tinned)\b", re.I)
_FRESH_DAYS = 14  # what keeps longer in the fridge presses nobody: ours


def thawed_by(dates: Sequence[Dated], kept: Kept, line: str) -> tuple[Dated, ...]:
    """The last day of raw fish or meat that its line calls thawed: today or tomorrow, by when it came out.

    What began to thaw two days ago was frozen for the first of them; older it has the days of what was opened. Salted
    fish that stands in water has a day as well, unless it was sold soaked and has a use-by of its own.
    """
    food = kept.food
    sold_so = food.state == "raw" and any(one.kind == "use-by" for one in dates)
    if food.id in _SALTED and _SOAKED.search(line) and kept.place != "freezer" and not sold_so:
        return (Dated("use-by", kept.today + timedelta(days=1)),)
    if food.kind not in _THAWS or food.state not in {"raw", "frozen"} or kept.place != "fridge":
        return ()
    if not _THAWED.search(line):
        return ()
    since = min((one.on for one in dates if one.on and one.kind == "opened"), default=kept.today)
    if not 0 <= (kept.today - since).days <= _THAWS_DAYS:
        return ()
    return (Dated("use-by", max(kept.today, since + timedelta(days=_THAWED_DAYS))),)


def is_opened(line: LineRead, amount: Amount) -> bool:
    """Whether a line tells that a packet is open, in words or by what is left of it."""
    return _is_less_than_one(amount) or any(dated.kind == "opened" for dated in line.dates)


def _is_less_than_one(amount: Amount) -> bool:
    """Whether some of a pack is gone; a small one is whole."""
    return amount.grams is None and amount.number.typical < 1 and not amount.small_pack


def is_cooked_vegetable(food: Food, text: str) -> bool:
    """Whether a line tells that a vegetable was cooked which the tables know raw alone."""
    return food.state == "raw" and food.kind in COOKED_AS_THEY_ARE and COOKED_WORDS.search(text) is not None


def _is_cooked_by_now(food: Food, text: str) -> bool:
    """Whether a line tells that a thing was cooked which the tables know raw or frozen alone: `sausages 4 cooked`."""
    return (is_flesh_to_cook(food) or is_fried_from_frozen(food)) and FLESH_WORDS.search(text) is not None


def _said_of(part: Part, line: LineRead) -> str:
    """The words of a line that may tell how one of its foods was made: `carrots, beetroot x2 cooked` cooks no carrots.

    What stands before foods that no comma parts is said of each: `cooked carrots and courgette`.
    """
    is_of_all = len(line.parts) == 1 or ("," not in line.text and COOKED_WORDS.match(line.text.strip()) is not None)
    return line.text if is_of_all else f"{part.words} {part.said}"


def _is_cut(food: Food, amount: Amount, text: str) -> bool:
    """Whether a fruit, a squash or the like is cut, or some of it gone: `half an avocado`, and not half a punnet."""
    if food.state != "raw" or not (food.kind in _CUT_OPEN or food.id in _SOFT_FOODS):
        return False
    part = amount.measure is None and amount.grams is None and amount.number.typical < 1
    return part or amount.measure in _CUT or _CUT_UP.search(text) is not None


def cut_when_bought(dates: Sequence[Dated], food: Food, text: str) -> tuple[Dated, ...]:
    """The dates, where fruit or squash was bought cut up: it goes from there as fast as what was opened."""
    if food.kind not in _CUT_OPEN or food.state != "raw" or not _CUT_UP.search(text):
        return tuple(dates)
    return tuple(one._replace(kind="opened") if one.kind == "bought" else one for one in dates)


def _is_sealed(line: LineRead, food: Food, amount: Amount) -> bool:
    """Whether it came cooked in what keeps it on the shelf (`rice pouch`), or in a tin, and is not opened."""
    sealed = food.kind in _SEALED_KINDS and food.state in {*COOKED_STATES, "raw"}
    sealed |= food.kind == "sauce" and food.state in COOKED_STATES and bool(_TIN.search(line.text))  # soups and stews
    return (
        sealed
        and bool(_SEALED.search(line.text))
        and not _COOKED_AT_HOME.search(line.text)
        and not is_opened(line, amount)
    )


def _is_home_made(food: Food, text: str) -> bool:
    """Whether a thing that is sold in jars was stewed or stirred together at home."""
    return food.state == "as sold" and bool(
        _STEWED.search(text) or (food.kind in _JARRED_AT_HOME and _HOME_MADE.search(text))
    )


def _usual_place(food: Food, line: LineRead) -> Place:
    if _is_home_made(food, line.text):
        return "fridge"
    if food.state == "frozen":
        made = any(dated.kind == "made" for dated in line.dates) or _is_cooked_by_now(food, line.text)
        return "fridge" if made and is_fried_from_frozen(food) else "freezer"
    if food.state in COOKED_STATES:
        return "fridge"
    shelf = food.is_staple or food.kind in _CUPBOARD_KINDS or food.state in _CUPBOARD_STATES
    opened = any(dated.kind == "opened" for dated in line.dates)
    if food.state in CANNED_STATES and any(dated.kind == "made" for dated in line.dates):
        opened = True  # cooked at home: the tables know it out of tins alone
    return "cupboard" if shelf and (food.state == "dry" or not opened) else "fridge"


def _is_part_of_tin(food: Food, amount: Amount) -> bool:
    """Whether some of a tin is gone, so that it is open: `half a tin of chickpeas`."""
    return food.state in CANNED_STATES and _is_less_than_one(amount)


def was_open(lot: Lot, today: date) -> bool:
    """Whether a lot was taken as opened the day before, since some of its tin is gone."""
    return any(one.kind == "opened" and one.assumed and one.on is not None and one.on < today for one in lot.dates)


def place_of(food: Food, line: LineRead, amount: Amount) -> Place:
    """Where a food of a line stands: where the line says, else where such a thing is kept."""
    if line.place is None and _is_part_of_tin(food, amount):
        return "fridge"
    return line.place or ("cupboard" if _is_sealed(line, food, amount) else _usual_place(food, line))


def noted(kept: Kept, line: LineRead, part: Part) -> tuple[Dated, ...]:
    """The day of typing, where a fresh thing has no date: its days are counted from there, as an estimate."""
    food = kept.food
    said = _said_of(part, line)
    is_cooked = is_cooked_vegetable(food, said) or _is_cooked_by_now(food, said)
    if kept.place == "fridge" and is_cooked and not part.to_bin:
        return (Dated("made", kept.today, True),)
    if kept.place == "fridge" and _is_cut(food, part.amount, line.text) and not part.to_bin:
        return (Dated("opened", kept.today, True),)
    if kept.place == "fridge" and _is_part_of_tin(food, part.amount) and not part.to_bin:
        return (Dated("opened", kept.today - timedelta(days=1), True),)
    if kept.place == "fridge" and _is_home_made(food, line.text) and not part.to_bin and not line.always:
        return (Dated("opened", kept.today, True),)
    state = "cooked" if food.state in COOKED_STATES else "whole"
    row = kept.tables.keeping_of(food, kept.place, state)
    fresh = row is not None and row.days <= _FRESH_DAYS and (food.kind in _FRESH_KINDS or row.kind == "safety")
    fresh = fresh and kept.place == "fridge" and not part.to_bin and not line.always
    return (Dated("noted", kept.today),) if fresh else ()


_BROWNED = frozenset({"brown", "brownish", "gone brown", "browning", "yellow", "gone yellow"})
_SPOIL_SO = frozenset({"leaf", "shoot"})


def is_brown_and_old(food: Food, conditions: tuple[str, ...], urgency: Urgency) -> bool:
    """Whether sprouts or leaves have turned and are past their days: thrown away (common practice, no source)."""
    past = urgency.days_left is not None and urgency.days_left < 0
    return past and food.kind in _SPOIL_SO and not _BROWNED.isdisjoint(conditions)

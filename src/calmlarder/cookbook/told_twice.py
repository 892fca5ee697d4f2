"""A line whose amount is told twice, in metric measures and in others: the metric one counts."""

import re

_NUMBER = r"[\d½¼¾⅓⅔⅛]"
# `1 pt / 570 ml`, `750 ml-1 litre / 1 1/4-1 3/4 pints`: the same twice, of which the one in grams or litres counts.
_COUNT = rf"(?:\d+ \d/\d|\d+/\d|\d[\d.,]*(?: ?{_NUMBER})?|{_NUMBER})"
_IN_METRIC = (
    rf"{_COUNT} ?(?:ml|cl|dl|l|litres?|liters?|g|kg)(?: ?(?:-|to) ?{_COUNT} ?(?:ml|cl|dl|l|litres?|liters?|g|kg))?"
)
_UNIT_OLD = r"(?:(?:fl|fluid) ?\.? ?(?:oz|ounces?)|pints?|pt|oz|ounces?|lbs?|pounds?|quarts?|qt)\b\.?"
_IN_IMPERIAL = rf"{_COUNT}(?: ?(?:-|to) ?{_COUNT})? ?{_UNIT_OLD}(?: {_COUNT} ?{_UNIT_OLD})?"
_IN_CUPS = rf"{_COUNT}(?: ?(?:-|to) ?{_COUNT})? ?(?:cups?|tablespoons?|tbsp)\b\.?"
_METRIC_FIRST = re.compile(rf"^({_IN_METRIC})\b ?(?:/ ?{_IN_CUPS}|(?:/|\() ?{_IN_IMPERIAL}\)?)")
_METRIC_LAST = re.compile(rf"^(?:{_IN_CUPS} ?/|{_IN_IMPERIAL} ?(?:/|\()) ?({_IN_METRIC})\b\)?")
_ML_TO_LITRES = re.compile(r"^(\d{3}) ?ml ?(?:-|to) ?(\d(?:\.\d)?) ?(?:l|litres?|liters?)\b")
# `juice and all`, `skin and all`: none of it is taken away.
_AND_ALL = re.compile(
    r",?\s*\b(?:with )?(?:(?:its|their|the) )?(?:juices?|liquid|skins?|bones?|fat|rinds?|seeds|stalks?|leaves|tops)"
    r" (?:and|&) all\b"
)
# `a dash or two of hot sauce`: two of them, not one or another thing.
_ONE_OR_TWO = re.compile(r"\b(?:an? )?(dash|pinch|splash|handful|squeeze|drop|sprig|knob) or two\b")


def metric_alone(line: str) -> str:
    """A plain line whose amount is told twice, with the one in metric measures alone, in one unit.

    Without the words that all of it goes in, which name no food.
    """
    line = _ONE_OR_TWO.sub(r"2 \1", _AND_ALL.sub("", line))
    told = _METRIC_LAST.sub(r"\1", _METRIC_FIRST.sub(r"\1", line))
    return _ML_TO_LITRES.sub(lambda one: f"{one[1]}-{float(one[2]) * 1000:.0f} ml", told)

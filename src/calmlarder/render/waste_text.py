"""The ledger told: weeks, foods thrown, what was rescued, and what would help most."""

from collections.abc import Iterator, Sequence
from typing import Any

from calmlarder.history.advice import Advice, Advised
from calmlarder.history.waste import FoodThrown, Waste, Week
from calmlarder.render.style import Style, blocks

_MOST_FOODS = 10
_BESIDE, _BESIDE_SHORT = 46, 20  # columns that week and numbers take
_WIDE = 60  # columns from which on eaten and given stand beside


def waste_text(waste: Waste, advised: Advised, style: Style) -> Iterator[str]:
    """Lines for a terminal."""
    shown = _since_first(waste.weeks)
    weeks = len(shown)
    yield from style.headings(f"Thrown in {'one week' if weeks == 1 else f'{weeks} weeks'}, g of edible food by week")
    most = max(week.thrown_g for week in waste.weeks)
    wide = style.width >= _WIDE
    room = style.width - (_BESIDE if wide else _BESIDE_SHORT)
    for week in shown:
        drawn = blocks(week.thrown_g / most if most else 0, room, style)
        numbers = f"  eaten {week.eaten_g:>5.0f}, given {week.given_g:>4.0f}" if wide else ""
        yield f"  {week.monday:%Y-%m-%d}  {drawn} {week.thrown_g:>5.0f}{numbers}"
    yield ""
    yield from style.headings(f"In all {waste.thrown_g:g} g, about {waste.thrown_portions:.1f} portions")
    yield from _foods(waste, style)
    yield ""
    yield from style.headings(
        f"Used up in time by a proposed dinner: {waste.rescued_g:g} g, about {waste.rescued_portions:.1f} portions"
    )
    yield from style.hanging("Cooked with a week or less left. What would have become of it without the dinner, "
                       "nobody knows.")  # fmt: skip
    yield ""
    yield from style.headings("What would help most")
    if advised.missing:
        yield from style.hanging(f"Nothing to say yet: {advised.missing}.")
    for number, advice in enumerate(advised.advice, 1):
        yield from style.hanging(f"{number}. {advice_words(advice)}")


def _since_first(weeks: Sequence[Week]) -> Sequence[Week]:
    """Without the weeks before anything was told, but the last at least: they were no weeks without waste."""
    told = [number for number, week in enumerate(weeks) if week.eaten_g or week.given_g or week.thrown_g]
    return weeks[min(told, default=len(weeks) - 1) :]


def _foods(waste: Waste, style: Style) -> Iterator[str]:
    if not waste.foods:
        yield "  nothing"
    for food in waste.foods[:_MOST_FOODS]:
        yield from style.hanging(_food_words(food))
    rest = waste.foods[_MOST_FOODS:]
    if rest:
        yield f"  and {sum(food.grams for food in rest):g} g of {len(rest)} more foods"


def _food_words(food: FoodThrown) -> str:
    times = "once" if food.times == 1 else f"{food.times} times"
    whys = ", ".join(f"{why} {count}" for why, count in food.whys)
    return f"{food.grams:g} g {food.title}, {food.portions:.1f} portions, {times}{f' ({whys})' if whys else ''}"


def advice_words(advice: Advice) -> str:
    """One advice as a sentence with its numbers."""
    what = {
        "buy less": f"Buy less {advice.title}: {advice.eaten_g:g} g in place of {advice.size_g:g} g.",
        "freeze": f"Freeze a part of the {advice.title} on the day it comes in; "
        f"it keeps {advice.freezer_weeks} weeks there.",
        "eat first": f"Eat {advice.title} first: it does not last as long as it takes you.",
        "leave it": f"Leave {advice.title} in the shop.",
    }[advice.what]
    why = f", mostly: {advice.why}" if advice.why else ""
    return (
        f"{what} Of {advice.lots} bought {advice.thrown_lots} were thrown at least in part, {advice.thrown_g:g} g "
        f"together{why}; the usual size was {advice.size_g:g} g and {advice.eaten_g:g} g of it were eaten or given."
    )


def waste_object(waste: Waste, advised: Advised) -> dict[str, Any]:
    """Plain values; `missing` says why there is no advice."""
    told = waste.model_dump(mode="json")
    for food in told["foods"]:
        food["whys"] = dict(food["whys"])
    advice = [{**one.model_dump(mode="json"), "words": advice_words(one)} for one in advised.advice]
    return {**told, "advice": advice, "missing": advised.missing}

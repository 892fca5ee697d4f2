"""Why each change is made, in words with numbers."""

import re
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from typing import NamedTuple

from calmlarder.adapt import prices
from calmlarder.adapt.choice import Choice, Open
from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.line_words import is_unraised
from calmlarder.adapt.loads import LineLoad, under_each
from calmlarder.intake.plate import exact_grams
from calmlarder.intake.profile import Profile
from calmlarder.swaps.why import GROUP_WORDS
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.rows import Food

_WHEN = re.compile(r"^(?:any|cooked|raw)(?:, |$)")  # of a swap in two parts each says it
_BOILED = frozenset({"grain", "rice"})
_A_MAIN_SHARE = 0.75  # of a usual portion; less of a grain is not what the dish is cooked for: ours
_TOPS = {
    "leek-green": "only until soft, not golden",
    "spring-onion-green": "only a minute",
    "chives": "only a minute, off the heat",
}
_OF_WHAT = {"food": "of one food ", "sitting": "of a meal ", "day": "of a day "}
_READY = frozenset({"cooked", "boiled"})
_STANDS = "leave ten minutes"
_AT_THE_END = "stir it in at the end"
_SIMMERED_DOWN = frozenset({"squash", "potato", "root"})  # thickens as the pulse did
_PODS_LATER = 3  # green beans are never eaten raw
# Pieces of an orange fall apart where dried fruit plumps up, and go bitter: common practice, no source.
_DRIED_FRUIT, _FALLS_APART, _FRUIT_STEWS = "dried-fruit", "citrus", 5
_FAR_BELOW = Decimal("0.85")  # of its own limit: what is kept is less than that asks for; ours
_MINUTES_LATER = 4  # less makes no difference in a pan: ours


class Share(NamedTuple):
    """The limit of which an amount takes the largest part, and grams of it a serving."""

    cap: Cap
    grams: Decimal


def share_of(one: LineLoad, serves: int, limits: Profile, passed: tuple[str, ...]) -> Share | None:
    """Of the limits passed, or where none of them counts this food, of all; None for what brings nothing."""
    shares = [
        Share(cap, exact_grams(Fraction(under.likely, serves)))
        for _, cap, under in under_each(one, limits)
        if under.likely
    ]
    groups = {cap.group for cap in (*limits.sitting_caps, *limits.food_caps) if cap.key in passed}
    under_passed = [share for share in shares if share.cap.group in groups]
    return max(under_passed or shares, key=lambda share: share.grams / share.cap.typical_g, default=None)


def why_line(
    line: Open, choice: Choice, serves: int, limits: Profile, passed: tuple[str, ...], goes_out: bool = False
) -> str:
    """The reason for one changed line; `goes_out` says that elimination does without it, little as it may be."""
    told = [line.line.breaks] if line.line.breaks else []
    if line.line.profile is None:
        told.append(f"no figure is known of {line.line.food.name}")
    amount, brings = line.line.amount, line.line.profile
    if amount is not None and brings is not None:
        share = share_of(LineLoad(line.line.food, amount, brings), serves, limits, passed)
        if share is not None and (share.cap.key in passed or not told):
            brought = f"likely {_said(share.grams)} g of {GROUP_WORDS[share.cap.group]} a serving come from"
            passing = _limit_passed(share, choice, line.line.food.id, serves, limits, goes_out)
            told.append(f"{brought} {line.line.food.name}; {passing}")
    if choice.candidate is not None:
        candidate = choice.candidate
        told += [f"keeps {candidate.keeps}"] if candidate.keeps else []
        told += [f"loses {candidate.loses}"] if candidate.loses else []
        when = candidate.when.removeprefix("any: ")
        told += [f"when: {when}"] if when not in {"", "any"} else []
        told += [f"mind: {candidate.caution}"] if candidate.caution else []
    if any(is_unraised(line.line.read, one.food) for one in choice.brings if one.food.id != line.line.food.id):
        told.append("it was self-raising: 1 tsp baking powder goes with each 100 g (common practice, no source)")
    return "; ".join(told) or (
        f"what {line.line.food.name} may hold at most counts too, beside the rest of the dish, "
        "though likely it holds nothing"
    )


def _limit_passed(share: Share, choice: Choice, food: str, serves: int, limits: Profile, goes_out: bool) -> str:
    """The limit that a share passes; where it alone does not, what else asks for the change."""
    limit = f"the limit {_OF_WHAT[share.cap.scope]}is {share.cap.typical_g:.2f} g"
    if _said(share.grams) >= share.cap.typical_g:
        kept = next((one for one in choice.brings if one.food.id == food), None)
        under_it = (under for _, cap, under in under_each(kept, limits) if cap == share.cap) if kept else ()
        own = [exact_grams(Fraction(under.likely, serves)) for under in under_it]
        deeper = any(one < _FAR_BELOW * share.cap.typical_g for one in own)
        return f"{limit}; with the rest of the dish less than that has room in a meal" if deeper else limit
    if goes_out:
        return "elimination does without onion and garlic, little as it may be"
    if choice.kind == "weigh":
        return f"{limit}, which it may pass by eye"
    whole = next((cap for cap in limits.sitting_caps if cap.group == share.cap.group), None)
    if whole is None:
        return f"{limit}, which it may pass"
    return f"with the rest of the dish, and what it may hold at most, it comes too near {whole.typical_g:.2f} g a meal"


def how_to(line: Open, choice: Choice) -> str:
    """How what takes a line's place is treated: in a cook's words, and how long it takes where that differs."""
    if choice.candidate is None or choice.kind != "swap":
        return ""
    told = []
    whens = choice.candidate.when.split("; ") if len(choice.candidate.parts) > 1 else [choice.candidate.when]
    for when in whens:
        _, colon, how = when.partition(": ")
        how = _WHEN.sub("", how)
        told += [how] if colon and how else []
    told += [
        f"add {one.food.name} only for the last {one.food.minutes['boil']} minutes"
        if _quicker(line, one.food)
        else f"cook {one.food.name} for about {one.food.minutes['boil']} minutes, in as much liquid as its packet says"
        for one in choice.brings
        if _boils_otherwise(line.line.food, one.food)
    ]
    told += [
        f"{one.food.name}, about {one.food.minutes['boil']} minutes: begin earlier"
        for one in choice.brings
        if _slower(line.line.food, one.food) and "raw" not in choice.candidate.whens
    ]
    if _cooked_already(line.line.food, choice):
        told.append("it needs no soaking and no long boiling: leave those steps out and add it for the last 10 minutes")
    if choice.candidate.caution:
        told.append(choice.candidate.caution)
    return "; ".join(dict.fromkeys(told))


def at_heat(line: Open, choice: Choice) -> str:
    """How long what takes a line's place is cooked, where it is another time; nothing where the step's holds."""
    if choice.candidate is None or choice.kind != "swap":
        return ""
    food = line.line.food
    if _cooked_already(food, choice):
        return "cooked already, so no soaking, and only for the last 10 minutes"
    told = []
    dry_pulse = food.kind == "pulse" and food.state == "dry"
    for one in choice.brings:
        name = f"{one.food.name} " if len(choice.brings) > 1 else ""
        if one.food.state in _READY and any(_AT_THE_END in when for when in choice.candidate.when.split("; ")):
            told.append(f"{name}only at the end")
        elif food.kind == _DRIED_FRUIT and one.food.kind == _FALLS_APART and one.food.state == "raw":
            told.append(f"{name}only for the last {_FRUIT_STEWS} minutes")
        elif dry_pulse and one.food.kind in _SIMMERED_DOWN and one.food.state == "raw":
            told.append(f"{name}from the start")
        elif dry_pulse and one.food.state != "dry":
            told.append(f"{name}only for the last 10 minutes")
        elif _boils_otherwise(food, one.food) and _quicker(line, one.food):
            told.append(f"{name}add only for the last {one.food.minutes['boil']} minutes")
        elif dry_pulse and 0 < one.food.minutes.get("boil", 0) < food.minutes.get("boil", 0) + _MINUTES_LATER:
            told.append(f"{name}only for the last {one.food.minutes['boil']} minutes")
        elif "boil" in one.food.minutes and (dry_pulse or _boils_otherwise(food, one.food) or _slower(food, one.food)):
            told.append(f"{name}about {one.food.minutes['boil']} minutes")
    return "; ".join(told)


def not_soaked(line: Open, choice: Choice) -> str:
    """What is done with a grain that must boil, where the step only pours hot water over another."""
    return "; ".join(
        f"boil the {short_name(one.food.name)} for about {one.food.minutes['boil']} minutes "
        "in plenty of water, and drain"
        for one in choice.brings
        if choice.kind == "swap" and one.food.kind in _BOILED and _boils_otherwise(line.line.food, one.food)
    )


def done_first(line: Open, choice: Choice) -> str:
    """What has to happen before a stand-in goes in, without which the dish fails: standing, or browning raw mince."""
    if choice.candidate is None or choice.kind != "swap":
        return ""
    if line.line.food.kind == "pulse" and any(_is_raw_mince(one.food) for one in choice.brings):
        return "the mince browned in a pan first, until no pink is left"
    return "stirred together and left ten minutes first" if _STANDS in choice.candidate.when else ""


def _is_raw_mince(food: Food) -> bool:
    return food.kind in {"meat", "poultry"} and food.state == "raw" and food.name.endswith(" mince")


def not_browned(line: Open, choice: Choice) -> str:
    """How green tops are fried in place of onion: they burn before they turn golden (common practice, no source)."""
    told = {_TOPS.get(one.food.id, "") for one in choice.brings} - {""}
    return "; ".join(sorted(told)) if line.line.food.kind == "allium" and choice.kind == "swap" else ""


def _quicker(line: Open, other: Food) -> bool:
    """Whether a grain beside the main things is done long before the one whose place it takes."""
    food = line.line.food
    beside = line.weight < prices.POINT * prices.WEIGHT["base"] * _A_MAIN_SHARE
    return beside and food.minutes.get("boil", 0) >= other.minutes["boil"] + _MINUTES_LATER


def _cooked_already(food: Food, choice: Choice) -> bool:
    """Whether tins or tofu take the place of a dry pulse, all of it; 10 minutes: common practice."""
    ready = [one.food for one in choice.brings if one.food.kind in {"pulse", "tofu", "tempeh"}]
    none_dry = all(one.food.state != "dry" for one in choice.brings)
    return food.kind == "pulse" and food.state == "dry" and len(ready) == len(choice.brings) > 0 and none_dry


def _boils_otherwise(food: Food, other: Food) -> bool:
    """Whether a dry base takes the place of another that takes up its water otherwise."""
    bases = food.roles[0] == other.roles[0] == "base" and other.state == "dry" and food.kind != "flour"
    return bases and "boil" in other.minutes and food.minutes.get("boil") != other.minutes["boil"]


def _slower(food: Food, other: Food) -> bool:
    """Whether a vegetable takes clearly longer in the pot than the one whose place it takes."""
    both = "boil" in food.minutes and "boil" in other.minutes and other.roles[0] in {"vegetable", "base"}
    later = _PODS_LATER if other.kind == "pod" else _MINUTES_LATER
    return both and other.state == "raw" and other.minutes["boil"] >= food.minutes["boil"] + later


def why_serving(serves: int, more: int) -> str:
    """The reason for a smaller serving."""
    less = Decimal(100 * (more - serves)) / more
    return f"each serving is {less.quantize(Decimal(1), ROUND_HALF_UP)} % smaller, and so is all that it brings"


def _said(grams: Decimal) -> Decimal:
    return grams.quantize(Decimal("0.01"), ROUND_HALF_UP)

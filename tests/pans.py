"""What a cook knows of pans, read from steps and timeline with words of our own.

Common practice, no source: ginger, garlic and ground spices burn in a few minutes of dry heat; a pan from which
something was lifted out has no fat left; small leaves are done in two or three minutes; what is in a hot pan cooks on
while nobody looks; two vessels are told apart by name; nobody salts a dish that is served.
"""

import re
from collections.abc import Iterator, Mapping
from itertools import pairwise

from calmlarder.compose.dinner import Dinner
from calmlarder.kitchen.timeline import Moment
from calmlarder.tables.rows import Food

WHOLE_SPICES = {"bay-leaf", "cardamom", "cloves", "curry-leaves", "lime-leaves", "mustard-seeds", "panch-phoron",
                "saffron", "star-anise"}  # fmt: skip
WET = r"water|simmer|braise|broth|soup|bubble|boil|ladle|pour|melt|thicken|sauce|tomato|passata|cream|milk|steam"
GONE = r"lift (?:all )?out|keep w|drain|dry|toast|[Ss]lide|leave to cool|[Bb]ring|vegetable pot|pot for|off the heat"
DRY_MINUTES, LEAF_MINUTES = 4, 4


def pan_faults(dinner: Dinner, foods: Mapping[str, Food]) -> list[str]:
    """What no cook would do with pots and pans, empty where all is well."""
    return [
        *_burnt(dinner, foods),
        *_rags(dinner, foods),
        *_left_alone(dinner),
        *_halves(dinner),
        *_unnamed(dinner),
    ]


def _stays(dinner: Dinner, number: int, dry_only: bool) -> int:
    """For how long what comes in with a moment is on the ring, as far as the pan is not told to be wet."""
    here, at = dinner.timeline.moments[number], dinner.timeline.moments[number].start_min
    if here.minutes:
        return 0 if dry_only and re.search(WET, here.what) else here.minutes
    on = [m for m in dinner.timeline.moments if m.equipment == "ring" and m.start_min <= at < m.start_min + m.minutes]
    named = re.search(r"to the pot with (?:the )?([\w -]+)$", here.what)
    hosts = [m for m in on if named and named[1] in m.what] or on
    left = [m.start_min + m.minutes - at for m in hosts if not dry_only or not re.search(WET, m.what)]
    return min(left, default=0)


def _goes_on(moments: tuple[Moment, ...], number: int) -> list[Moment]:
    """What is fried in the pan in the minute in which a moment ends."""
    here = moments[number]
    later = [m for m in moments[number + 1 :] if m.start_min == here.start_min + here.minutes]
    return [m for m in later if m.equipment == "ring" and "the pan" in m.what]


def _burnt(dinner: Dinner, foods: Mapping[str, Food]) -> Iterator[str]:
    moments = dinner.timeline.moments
    for number, moment in enumerate(moments):
        added = [foods[food] for food in moment.adds if food in foods]
        burns = [one for one in added if one.kind in {"herb", "spice"} and one.id not in WHOLE_SPICES]
        if burns and (moment.equipment == "ring" or moment.minutes == 0) and "wide pot" not in moment.what:
            after = [m.minutes for m in _goes_on(moments, number) if not re.search(WET, m.what)]
            if _stays(dinner, number, dry_only=True) > DRY_MINUTES or max([0, *after]) > DRY_MINUTES + 1:
                yield f"{burns[0].name} burns: {moment.what}"


def _rags(dinner: Dinner, foods: Mapping[str, Food]) -> Iterator[str]:
    if "rack in" in " ".join(dinner.steps):  # eggs that are poached among leaves take longer than these: not mended yet
        return
    for number, moment in enumerate(dinner.timeline.moments):
        added = [foods[food] for food in moment.adds if food in foods]
        soft = [one for one in added if one.kind == "leaf" and 0 < one.minutes.get("boil", 9) <= LEAF_MINUTES - 1]
        if soft and len(soft) == len(added) and _stays(dinner, number, dry_only=False) > LEAF_MINUTES:
            yield f"{soft[0].name} is cooked to rags: {moment.what}"


def _left_alone(dinner: Dinner) -> Iterator[str]:
    told = " ".join(dinner.steps)
    rings = [m for m in dinner.timeline.moments if m.equipment == "ring" and m.minutes]
    for word in ("pan", "pot"):
        inside = [m for m in rings if re.search(rf"\b{word}s?\b", m.what)]
        for one, other in pairwise(inside):
            stays = not re.search(GONE, one.what + other.what) and not re.search(r"Then lift out|Then drain", told)
            if stays and other.start_min > one.start_min + one.minutes:
                yield f"left alone: {one.what}; then {other.what}"


def _halves(dinner: Dinner) -> Iterator[str]:
    text = " ".join(dinner.steps)
    halves = re.findall(r"\b[Hh]alf of (?:\d|all)", text)
    told = r"\b(?:(?:pour|melt) in|warm) the rest of the|\bin the rest of the fat|\bturn [^.]* in the rest of the"
    rests = re.findall(told, text.lower())
    if len(halves) != len(rests):
        yield f"{len(halves)} times half of the fat, {len(rests)} times the rest: {text}"


def _unnamed(dinner: Dinner) -> Iterator[str]:
    hot = any(moment.equipment for moment in dinner.timeline.moments)
    for step in dinner.steps:
        for sentence in re.split(r"(?<=\.) ", step):
            added = re.search(r"^(?:Meanwhile a|A)dd ", sentence)
            if hot and added and not re.search(r"\b(?:pans?|pot|tray|bowl)\b", sentence):
                yield f"to what? {sentence}"
        if re.search(r"(?:[Ff]inish|[Ss]erve|[Tt]op) with (?:a pinch of |a grind of )?(?:salt|pepper)\.", step):
            yield f"nothing to do: {step}"
    tasted = next((n for n, step in enumerate(dinner.steps) if step.startswith("Taste")), None)
    if tasted == len(dinner.steps) - 1 and not dinner.steps[-1].endswith("and serve."):
        yield "tasted when it is served"

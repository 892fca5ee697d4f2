"""The minutes that a cook reads: those in the steps are those of the timeline, and nothing is heated for less.

The timeline tells each piece of work in the words of its step, less the amounts. With the foods' names and the amounts
taken out of both, each piece is found in the steps in its turn, and the minutes said there are compared with its own.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from calmlarder.checks.lots import COOKED
from calmlarder.checks.tables import Row

_STATE = re.compile(
    r"^(?:cooked|boiled|dry|canned|fresh|frozen|dried|ground|fried|firm|plain|raw|steamed|roast|baked|microwaved) "
)
_LABEL = re.compile(r" (?:with (?:garlic|onion|shallot|wheat)|without|and other) .*$| with (?:garlic|onion|wheat)$")
_FOOD = "\x00"  # stands for a food's name
_AMOUNT = re.compile(
    rf"(?:\b(?:all )?(?:\d+ (?:g )?|\d*½? ?t(?:sp|bsp) )|\ba (?:pinch|coat) of )?{_FOOD}"
    r"(?: \((?:\d+ g|[^()]* juice|(?:\d+ g, )?\d+ g including the bones|\d+ g in their shells)\))?"
)  # 2 eggs (110 g), 4 tsp olive oil (16 g)
_OIL = re.compile(r"\b\d+ tsp oil\b")
_SMALL_WORDS = {"the", "and", "all", "a", "an"}  # which come and go with the amounts
_HOT = {"ring", "oven", "microwave"}
_COOKS_ON = {"aromatic", "spice", "topping"}  # goes in first and cooks on with what follows, or is scattered over
_SOAKED = re.compile(r"\bsoak(?:ed|ing)?\b", re.IGNORECASE)  # done already, as the cook's line says
_FIRST = re.compile(r"\b(?:soaked|simmered)\b[^,;]*")
# Bacon and gammon simmer 20 minutes for each 500 g and 20 more: common practice, no source.
_CURED_JOINT = re.compile(r"\b(?:gammon|bacon joint|boiling bacon)\b", re.IGNORECASE)
# Quick rice takes ten minutes at the most, instant rice was cooked and dried again: five (packets, recalled).
_WHITE_RICE = {"rice-white-dry", "rice-basmati-dry"}
_QUICK_RICE = re.compile(r"\b(?:instant|quick|express|\d+[ -]?min(?:ute)?s?)\b", re.IGNORECASE)
_QUICK_RICE_MINUTES, _INSTANT_RICE_MINUTES = 10, 5
_INSTANT_RICE = re.compile(r"\binstant\b", re.IGNORECASE)
# Fine strips in a hot pan are done in two or three minutes: common practice, no source.
_SHREDDED = re.compile(r"\b(?:shredded|grated|spirali[sz]ed|julienned?|matchsticks?)\b", re.IGNORECASE)
_SHREDS, _SHRED_MINUTES = {"brassica", "fruit-vegetable", "root"}, 2
# Vegetables that were cooked before need only be hot, which a few minutes do: common practice, no source.
_VEGETABLES = {"brassica", "fruit-vegetable", "leaf", "pepper", "pod", "root", "squash", "stem"}
_COOKED_BEFORE = re.compile(r"\b(?:cooked|boiled|steamed|braised|left[ -]?over)\b", re.IGNORECASE)
_HOT_MINUTES, _A_DAY = 3, 1440
_END = "."


class _Piece(NamedTuple):
    """A piece of work of the timeline and where its words stand among those of the steps."""

    moment: Mapping[str, Any]
    begin: int
    end: int


def minute_faults(dinner: Mapping[str, Any], foods: Mapping[str, Row], pattern: Mapping[str, Any]) -> list[str]:
    """Work of the timeline that no step tells, minutes in a step that are not those of the timeline, too short heat."""
    names = _names(dinner)
    told = [word for step in dinner["steps"] for word in (*_words(step, names), _END)]
    pieces: list[_Piece] = []
    faults, at = [], 0
    for moment in dinner["timeline"]:
        words = _words(moment["what"], names)
        begin = next((n for n in range(at, len(told) - len(words) + 1) if told[n : n + len(words)] == words), None)
        if begin is None:
            faults.append(f"no step says in its turn: {moment['what']}")
            continue
        at = begin + len(words)
        pieces.append(_Piece(moment, begin, at))
    timeline = dinner["timeline"]
    wrong = faults or list(_said(told, pieces, timeline))
    return [*wrong, *_in_turn(timeline), *_too_short(dinner, foods, pattern), *_not_soaked(dinner, foods)]


def _said(told: Sequence[str], pieces: Sequence[_Piece], timeline: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    begins = [*(piece.begin for piece in pieces[1:]), len(told)]
    for number, (piece, until) in enumerate(zip(pieces, begins, strict=True)):
        what, minutes = piece.moment["what"], piece.moment["minutes"]
        said = _numbers(told[piece.begin : piece.end], "for") + _numbers(told[piece.end : until], "about")
        yield from (f"a step says {n} minutes, the timeline {minutes}: {what}" for n in said if n != minutes)
        before = told[pieces[number - 1].end if number else 0 : piece.begin]
        for n in _numbers(before, "last"):
            if not any(n == end - piece.moment["start_min"] for end in _ends(piece.moment, timeline)):
                yield f"a step says the last {n} minutes, the timeline otherwise: {what}"


def _ends(moment: Mapping[str, Any], timeline: Sequence[Mapping[str, Any]]) -> Iterator[int]:
    """When that ends which is on the heat as a thing joins it."""
    for one in timeline:
        end = one["start_min"] + one["minutes"]
        if one["equipment"] in _HOT and one["start_min"] <= moment["start_min"] <= end and one is not moment:
            yield end


def _in_turn(timeline: Sequence[Mapping[str, Any]]) -> Iterator[str]:
    starts = [moment["start_min"] for moment in timeline]
    if starts != sorted(starts) or any(moment["minutes"] < 0 for moment in timeline) or min(starts) != 0:
        yield "the timeline is not in the order of its minutes"


def _too_short(dinner: Mapping[str, Any], foods: Mapping[str, Row], pattern: Mapping[str, Any]) -> Iterator[str]:
    """Foods that leave the heat before the minutes of their row in foods.csv; where a batter is, it is fried later."""
    eaten_cold = not {"dinner", "breakfast"}.intersection(pattern["sittings"])
    timeline = dinner["timeline"]
    for use in dinner["uses"]:
        food, slot = foods.get(use["food"]), pattern["slots"][use["slot"]]
        method = slot["method"]
        # In the microwave it depends on how much there is; what is cooked goes into a cold box as it is. Of eggs
        # `shown_cautions.py` wants the sign that they are set: stirred into a soup they are sooner than boiled whole.
        if food is None or method in {"raw", "microwave"} or (eaten_cold and food["state"] in COOKED):
            continue
        if slot["role"] in _COOKS_ON or food["kind"] == "egg":
            continue
        wanted = int(dict(part.split(":") for part in food["minutes"].split(";") if part).get(method, 0))
        if method == "boil" and use["food"] in _WHITE_RICE and _QUICK_RICE.search(use["line"]):
            instant = _INSTANT_RICE.search(use["line"]) is not None
            wanted = min(wanted, _INSTANT_RICE_MINUTES if instant else _QUICK_RICE_MINUTES)
        wanted = min(wanted, _soon_done(food, use["line"], method))
        if method == "boil" and _CURED_JOINT.search(use["line"]):
            wanted = min(wanted, 20 + use["grams"] // 25)
        small = food["kind"] == "potato" or food["state"] != "raw"  # safe: the dish says how long, as of small dice
        if slot.get("minutes") is not None and small:
            wanted = min(wanted, slot["minutes"])
        comes_in = [moment for moment in timeline if use["food"] in moment["adds"]]
        own = [moment["minutes"] for moment in comes_in if moment["equipment"] in _HOT and moment["minutes"]]
        if any(
            re.search(r"lift out|^heat .* brown ", moment["what"]) for moment in comes_in
        ):  # browned, and cooked on later
            back = [moment for moment in timeline if moment not in comes_in and _is_in(use, moment)]
            own += [moment["minutes"] or max(_left(moment, timeline), default=0) for moment in back
                    if moment["equipment"] in _HOT or not moment["minutes"]]  # fmt: skip
        longest = max(own or [left for moment in comes_in for left in _left(moment, timeline)], default=0)
        if longest < wanted:
            yield f"{food['name']} is on the heat for {longest} minutes, it wants {wanted}"


def _soon_done(food: Row, line: str, method: str) -> int:
    """The minutes that raw vegetables want of which the line says more than the table: in shreds, or cooked before."""
    if food["state"] == "raw" and food["kind"] in _VEGETABLES and method != "roast" and _is_called_cooked(food, line):
        return _HOT_MINUTES
    shreds = method == "stir-fry" and food["state"] == "raw" and food["kind"] in _SHREDS and _SHREDDED.search(line)
    return _SHRED_MINUTES if shreds else _A_DAY


def _is_called_cooked(food: Row, line: str) -> bool:
    """Whether the word stands beside this food, and not beside another of the same line."""
    told = re.split(r"[,;+&/]|\band\b|\bwith\b", line.lower())
    names = {word.rstrip("s")[:6] for word in re.findall(r"[a-z]{4,}", food["name"].lower())}
    by_another = not any(name in line.lower() for name in names)  # `collards cooked w ham + beans` begins with its own
    return any(
        _COOKED_BEFORE.search(part)
        and (
            len(told) == 1
            or any(name in part for name in names)
            or len(_COOKED_BEFORE.sub("", part).strip()) < 4
            or (by_another and part is told[0])
        )
        for part in told
    )


def _not_soaked(dinner: Mapping[str, Any], foods: Mapping[str, Row]) -> Iterator[str]:
    """Salted fish, dry mince and their like: what their row in foods.csv soaks or simmers first stands in a step."""
    text = " ".join(dinner["steps"])
    for use in dinner["uses"]:
        food = foods.get(use["food"])
        first = _FIRST.search(food["prep"]) if food is not None and "protein" in food["roles"].split(";") else None
        wants = "simmered" if _SOAKED.search(use["line"]) else first[0] if first is not None else ""
        if food is not None and first is not None and wants not in text:
            yield f"no step says that {food['name']} is {first[0]}"


def _is_in(use: Mapping[str, Any], moment: Mapping[str, Any]) -> bool:
    """Whether a moment speaks of a food, by its name with or without its state."""
    name = use["name"]
    return any(re.search(rf"(?<![\w-]){re.escape(called)}(?![\w-])", moment["what"])
               for called in (name, _STATE.sub("", name), _LABEL.sub("", name)))  # fmt: skip


def _left(moment: Mapping[str, Any], timeline: Sequence[Mapping[str, Any]]) -> Iterator[int]:
    """How long anything is on the heat from when a thing comes in, that which it joins or a later one."""
    for one in timeline:
        end = one["start_min"] + one["minutes"]
        if one["equipment"] in _HOT and end >= moment["start_min"]:
            yield end - max(moment["start_min"], one["start_min"])


def _numbers(words: Sequence[str], lead: str) -> list[int]:
    """The minutes behind a word, `about 8 minutes`, `for about 13 minutes`, `the last 4 minutes`."""
    leads = {"for": {"for", "about"}, "about": {"about"}, "last": {"last"}}[lead]
    return [
        int(number)
        for before, number, after in zip(words, words[1:], words[2:], strict=False)
        if before in leads and number.isdigit() and after in {"minute", "minutes"}
    ]


def _names(dinner: Mapping[str, Any]) -> list[str]:
    """What each food may be called: whole, without its state, without what its label says."""
    found: set[str] = set()
    for use in dinner["uses"]:
        for name in (use["name"], _LABEL.sub("", use["name"])):
            found |= {name.lower(), _STATE.sub("", name.lower())}
            found |= {name.lower().removesuffix("s")} if name.lower().endswith("eggs") else set()  # 1 egg (55 g)
    return sorted(found, key=len, reverse=True)


def _words(text: str, names: Sequence[str]) -> list[str]:
    """The words of a step or of a piece of work without foods, amounts and small words."""
    plain = _OIL.sub("oil", text.lower())
    for name in names:
        plain = re.sub(rf"(?<![\w-]){re.escape(name)}(?![\w-])", _FOOD, plain)
    plain = _AMOUNT.sub(" ", plain)
    return [word for word in re.findall(r"[^\W_]+", plain) if word not in _SMALL_WORDS]

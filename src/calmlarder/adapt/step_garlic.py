"""Garlic that is pounded to a paste with other things, where an infused oil takes its place.

The oil goes in where the fat goes in, and what else was in the paste is pounded without it.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.sentences import SENTENCE_ENDS

_OIL = r"(?:\d[\d/ ]*(?:tsp|tbsp) of )?(?:the )?garlic-infused oil(?: \[[^\]]*\])?"
_POUNDED = re.compile(rf"\b(?P<verb>take|pound|crush|grind|bash|mash) {_OIL}(?:,| and)(?: and)? (?P<rest>[^.;]+)", re.I)
_A_PASTE = re.compile(r"\b(?:mortar|paste|pounded|pestle)\b", re.IGNORECASE)
_SEVERAL = re.compile(r",| and ")
_FAT = re.compile(
    r"\b(?P<verb>heat|warm) (?P<fat>(?:(?:the|a|an|some|rest|of|remaining|half|little|[\d½¼/]+|tablespoons?|tbsp|tsp"
    r"|teaspoons?|olive|vegetable|neutral|cooking|sunflower|groundnut|rapeseed) )*(?:oil|butter|ghee)\b)"
    r"(?! in a small)",
    re.IGNORECASE,
)
_GARLIC_PASTE = re.compile(r"\bgarlic (?:and \w+ )?(?=(?:paste|pur[eé]e|pulp)\b)", re.IGNORECASE)
_TURNS_GOLD = re.compile(
    r",? (?:and|or|but) (?:(?:it |the paste )?(?:is|has|starts?|begins?|turns?|goes|just|to|turn(?:ing|ed)?|beginning"
    r"|starting|only|barely|lightly|pale|light|a) )+(?:gold(?:en)?|brown|colou?r)(?: brown)?(?=[.,;]|$)",
    re.IGNORECASE,
)
_SECONDS = re.compile(r"\b\d+(?: ?[-–] ?\d+)? seconds\b")
_GREENS = re.compile(r"\bgreens\b")


def oil_with_the_fat(steps: Sequence[str], left: str) -> list[str]:
    """The changed steps with the oil out of the mortar and in the pan, where a later step heats fat for the paste.

    `left` is how much of the dish's own oil goes in beside it, where that is told.
    """
    for place, step in enumerate(steps):
        pounded = _POUNDED.search(step)
        if pounded is None or not (_A_PASTE.search(pounded["rest"]) and _SEVERAL.search(pounded["rest"])):
            continue
        pan = next((at for at in range(place + 1, len(steps)) if _fries_the_paste(steps[at])), None)
        if pan is None:
            continue
        verb = "pound" if pounded["verb"].casefold() == "take" else pounded["verb"].casefold()
        verb = verb.capitalize() if pounded["verb"][0].isupper() else verb
        rest = re.sub(r"^and ", "", pounded["rest"])
        rest = rest if rest.startswith("the ") else f"the {rest}"
        told = list(steps)
        told[place] = f"{step[: pounded.start()]}{verb} {rest}{step[pounded.end() :]}"
        told[pan] = _FAT.sub(
            lambda one: (
                f"{one['verb']} "
                + (f"{left} of the oil" if left and re.search(r"\d", one["fat"]) else one["fat"])
                + " and the garlic-infused oil"
            ),
            told[pan],
            count=1,
        )
        soft = _GREENS.search(rest) is not None
        return [one if at <= place else _without_the_clove(one, soft) for at, one in enumerate(told)]
    return list(steps)


def _fries_the_paste(step: str) -> bool:
    return _FAT.search(step) is not None and re.search(r"\bpaste\b", step) is not None


def _without_the_clove(step: str, soft: bool) -> str:
    """`the garlic paste … for 20 seconds until … just turning gold` as the paste, which is fried until it is soft."""
    kept: list[str] = []
    start = 0
    for stop in (*(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)):
        sentence, start = step[start:stop], stop
        if _GARLIC_PASTE.search(sentence):
            sentence = _TURNS_GOLD.sub(" and is soft" if soft else "", _GARLIC_PASTE.sub("", sentence))
            sentence = _SECONDS.sub("1–2 minutes", sentence) if soft else sentence
        kept.append(sentence)
    return "".join(kept)

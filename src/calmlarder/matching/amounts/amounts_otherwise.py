"""Amounts that people put another way, as they are read: `3lb 6oz`, `a hand of 5`, `net, 5 left`."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_NUMBER = r"(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|twelve)"
_SMALL_NUMBER = r"(?:half(?: an?)?|1/2|quarter|1/4|3/4|\d{1,2}|an?|one|two|three|four|five|six)"
_END = r"(?=\s*(?:$|[,;.)!]| - ))"
_OUNCES_TO_A_POUND = 16
_POUNDS_AND_OUNCES = LatePattern(
    r"(?<![\w./])(\d{1,2}) ?(?:lbs?|pounds?)(?:,| and)? ?(\d{1,2}) ?(?:ozs?|ounces?)\b",
    needs=("lb", "pound"),
)
_PLAINLY = (
    # `green bananas hand of 5` are five of them.
    (LatePattern(rf"\b(?:hand|bunch|bag|net|string|plait) of ({_NUMBER})(?= ?(?:$|[,;()]))"), r"x \1"),
    # `box 5 pcs left` are five of what was in it.
    (
        LatePattern(r"\b(?:box|tin|packet|pack|tub|bag|tray),? (\d{1,2}) ?(pcs?|pieces?|slices?)\b(?! (?:each|x))"),
        r"\1 \2",
    ),
    # `loaf heel end`, `the heel end of`: the crust, and no whole loaf.
    (LatePattern(r"\bloaf(?:,| -)? (?:the )?heel(?: end)?\b"), "heel"),
    (LatePattern(r"\bheel end\b"), "heel"),
    (LatePattern(r"\b(end|bit|drop|dregs|scraps|scrapings|remains|rest|bottom|half|quarter|third) of$"), r"\1"),
    # How it is cut tells no amount: `rhubarb frozen in bits`.
    (LatePattern(rf"(?<=[a-z]) in (?:little |small |big )?(?:bits|chunks|lumps|strips|batons|rings){_END}"), ""),
    # A fist is a small head, a football a large one.
    (LatePattern(r"\b(?:(?:the )?size of (?:a|my) fist|fist[ -]?sized?|tennis ball sized?)\b"), "small"),
    (LatePattern(r"\b(?:the )?size of (?:a|my) (?:head|football|baby'?s head)\b"), "large"),
    # `oat drink, like 2 coffees worth`: what goes into so many cups is a splash each.
    (
        LatePattern(
            rf"\b(?:like |about |enough for )?({_SMALL_NUMBER}) (?:coffees?|teas|brews?|cuppas?|cups of tea)'? ?worth\b"
        ),
        r"\1 x 2 tbsp",
    ),
    (LatePattern(r"\benough (?:milk )?for (?:a|one|1) (?:coffee|brew|cuppa|cup of tea)\b"), "2 tbsp"),
    # What stands in a jar on its last legs is nearly eaten; what grows so is wilted.
    (
        LatePattern(r"\b((?:jar|bottle|tub|tube|pot|carton|packet|tin)\b.*?),? on (?:its|their) last legs\b"),
        r"\1 nearly gone",
    ),
    # `hummus 2 tubs, 1 beetroot 1 plain`
    (
        LatePattern(
            r"^([a-z]+s?) 2 (tubs|pots|jars|packs|packets|bags)[ ,:(-]+(?:1|one) ([a-z]+)(?:,| and| &)? (?:1|one)"
            r" (?:plain|ordinary|normal|original|regular)\b\)?"
        ),
        r"1 \2 \3 \1, 1 \2 \1",
    ),
    # `sardine tin x2 tomato tin x3`: two things that no comma parts.
    (
        LatePattern(
            r"((?:tins?|cans?|jars?|bags?|bottles?|pa?c?kt?s?) ?x ?\d{1,2}) (?=[a-z]+(?: [a-z]+)?"
            r" (?:tins?|cans?|jars?|bags?|bottles?|pa?c?kt?s?) ?x ?\d)"
        ),
        r"\1, ",
    ),
    # A vessel that once held another food: `soup, 2 takeaway packs`, `stew in an ice cream tub`.
    (
        LatePattern(
            rf"(?<=[a-z)])((?:,| in| -)? (?:(?:an? |the |my |{_SMALL_NUMBER} ))?(?:old |empty |big |small |little )?)"
            r"(?:take ?away|take ?out|marg(?= cups?\b)|margarine(?= cups?\b))"
            r" (tubs?|box(?:es)?|pots?|containers?|packs?|cups?|tins?|trays?)\b"
        ),
        r"\1\2",
    ),
    (
        LatePattern(
            r"(?<=[a-z)])((?:,| -)? in (?:an? |the |my |our )?(?:old |empty |big |small |little )?)"
            r"(?:ice ?cream|marg(?:arine)?|butter|yog(?:h)?urt|sweet|quality) (tub|box|pot|container|tin)\b"
        ),
        r"\1\2",
    ),
    # What is left of a whole dish is a part of the whole, and of no portion: `lasagne half left`.
    (
        LatePattern(
            r"^((?:[a-z'-]+ ){0,4}(?:lasagn[ea]|pie|cake|quiche|crumble|tart|moussaka|pizza|trifle|cheesecake"
            r"|gateau|flan|frittata)\b"
            r"(?: [a-z]+){0,3}?),? (?:about |bout |around )?(?:a )?(half|third|quarter|1/2|1/3|1/4|2/3|3/4) left\b"
        ),
        r"\2 a \1",
    ),
    # `satsumas net, 5 left` are five, and no nets.
    (
        LatePattern(
            r"(?<=[a-z])(?:,| -)? (?:net|bag|box|pack|packet|punnet|tray|(?<=eggs )carton),? (\d{1,2}) (?=left\b)"
        ),
        r" \1 ",
    ),
    (
        LatePattern(
            r"(?<=[a-z])(?:,| -)? (?:net|bag|box|pack|packet|punnet|tray|carton|tub),? (\d{1,2}) in"
            r" (?:it|there|the (?:bag|box|pack|packet|tray))\b"
        ),
        r" \1",
    ),
    (LatePattern(r"(?<=[a-z]) x ?(\d) (?:&|and|n|\+) (?:a )?half\b"), r" \1.5"),
    (LatePattern(r"\bmin(?:i|ie)s (?=x ?\d|\d)"), "mini "),
    (LatePattern(r"\b(\d{1,2}|one|two|three) (?:lonely|lone|measly|solitary|odd) (?=[a-z]{3})"), r"\1 "),
    (LatePattern(r"\bclay (?=pots?\b)"), ""),
    (LatePattern(r"\bhorse ?shoes?\b"), "ring"),
    # `courgettes, 3 lil ones`, `sweet potato, one, massive`: the size of what is counted.
    (LatePattern(rf"\b({_NUMBER}) (?:lil|little|wee|titchy|tiddly|tiny|small)(?: ones?| uns)\b"), r"\1 small"),
    (LatePattern(rf"\b({_NUMBER}) (?:big|large|huge|massive|whopping)(?: ones?| uns)\b"), r"\1 large"),
    (LatePattern(rf"(?<=[,x ])({_NUMBER}), ?(?:massive|huge|enormous|giant|massive one|big one|large)$"), r"\1 large"),
    (LatePattern(rf"(?<=[,x ])({_NUMBER}), ?(?:tiny|titchy|small|wee|little)(?: one)?$"), r"\1 small"),
    (LatePattern(r", ?(?:just )?(?:a )?(?:little|tiny|wee)(?: bit)?(?: left)?$"), ", a little bit"),
    (LatePattern(r"(?<=\d) balance\b|\bbalance (?=\d)"), " left "),
)  # fmt: skip
# Milk by the colour of its top, in Britain: whole is blue, semi-skimmed green, skimmed red (common practice).
_MILK = LatePattern(r"\b(?:milk|dud+h|doodh)\b")
_TOPS = LatePattern(
    r"(?<![\w.])(\d(?:\.\d)? ?(?:pints?|pt|pts|litres?|l|ltr)),? (blue|green|red)(?: tops?)?(?=\s*(?:$|[,+&;]|and\b))"
)
_KINDS_OF_MILK = {"blue": "whole milk", "green": "semi skimmed milk", "red": "skimmed milk"}
# What is wrapped in leaves is counted so, and is in no wrap.
_IN_LEAVES = LatePattern(r"\b(?:moi ?moi|moin ?moin|kenkey|banku|abacha|eko|agidi|tamales?|zongzi|ofada)\b")
_WRAPS = LatePattern(r"(?<=\d )wraps?\b")


def amounts_otherwise(text: str) -> str:
    """A plain line with such amounts put plainly; all others stay as they are."""
    text = _POUNDS_AND_OUNCES.sub(_in_ounces, text)
    text = put_in_turn(text, _PLAINLY)
    if _MILK.search(text) and _TOPS.search(text):
        text = _MILK.sub("", _TOPS.sub(lambda found: f"{found[1]} {_KINDS_OF_MILK[found[2]]}", text), count=1)
    return _WRAPS.sub("pieces", text) if _IN_LEAVES.search(text) else text


def _in_ounces(found: re.Match[str]) -> str:
    return f"{int(found[1]) * _OUNCES_TO_A_POUND + int(found[2])} oz"

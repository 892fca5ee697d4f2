"""What is so by its nature or its ripeness, and has not gone off: sour kraut, smelly blue cheese, money off."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import Rewrite

# An onion that has sprouted is no food of its own.
_SPROUTED = LatePattern(
    r"\b((?:onions?|shallots?|potato(?:es)?|spuds?|tatties|batatas?|aloo|alu|patatas?|papas?|garlic|ginger)\b"
    r"[^,;&]*?[,;(]? ?)(?:has |have )?sprouted\b"
)
_UNRIPE = LatePattern(r"\b(?:not (?:yet |quite |really |very |that |so )?ripe(?: yet| enough)?|under ?ripe)\b")
# What is sour by its nature is not bad for being so.
_SOUR_ANYWAY = LatePattern(r"\b(?:kimchi|sauerkraut|kraut|pickles|gherkins?|kefir|kombucha)\b")
_HOW_SOUR = LatePattern(
    r"[,;]? ?\b(?:(?:a )?(?:bit|little)|slightly|super|very|quite|really|too|extra|pretty|getting|gone"
    r"|going|tastes?|smells?)(?: (?:very|quite|a bit|really|too))? sour\b"
)
# What smells by its nature is not bad for that.
_SMELLS_ANYWAY = LatePattern(
    r"\b(?:blue|stilton|gorgonzola|roquefort|camembert|brie|munster|limburger|epoisses|taleggio|reblochon|goat'?s|ripe)\b"
    r"|\b(?:fish sauce|shrimp paste|belacan|bagoong|kimchi|natto|durian|jackfruit|asafoetida|hing|stockfish|kippers?"
    r"|stinky tofu|bean ?curd|fermented"
    r"|parmesan|dried (?:fish|shrimp|prawns))\b"
)
_HOW_SMELLY = LatePattern(
    r"[,;(]? ?\b(?:(?:a )?(?:bit|little)|very|quite|really|so|rather|pretty|strong|properly|well)? ?"
    r"(?:smelly|stinky|stinks|stinking|smells (?:strong|a bit|a lot|loads))(?! (?:of|off|bad|tofu)\b)"
    r"(?: (?:but|as) (?:it'?s |they'?re |that'?s )?(?:meant|supposed|ok|fine|good)[a-z ]*)?(?: (?:haha|lol))?\)?"
)
# Money off and what was taken off it: nothing has gone off.
_NOT_GONE_OFF = LatePattern(
    r"(?:\b\d{1,2} ?(?:%|per ?cent)|[£$€]\d+(?:\.\d+)?|\b(?:half|third)(?: price)?) off\b"
    r"|\b(?:with )?(?:the )?(?:tops?|rinds?|skins?|crusts?|stalks?|heads?|tails?|shells?|lids?|labels?)"
    r" (?:cut |taken |trimmed |chopped |peeled )?off\b"
)
_FINISH_OFF = LatePattern(r"\b(?:finish|polish|use|eat)(?:ing)? off\b(?= [a-z])")
# `two don black finish`: they have gone black, and are there.
_DON_BLACK = LatePattern(r"\bdon (?=(?:black|ripe|yellow|brown)\b)(\w+)(?: finish)?")

# What was cut and is dry has dried at the cut; whole dried ones are sold.
_CUT_AND_DRY = LatePattern(
    r"(\b(?:limes?|lemons?|oranges?|grapefruits?|cucumbers?|courgettes?|zucchinis?|peppers?|capsicums?|aubergines?"
    r"|carrots?|celery|fennel|cabbage|swede|turnip|squash|pumpkin|melon|avocado|apple|pear|onion)\b,? ?"
    r"(?:cut(?: in half)?|half|halves|quarter|end|piece|wedge)s?,? )"
    r"(?:a bit |bit |very |all |gone )?dry(?=\s*(?:$|[,;)]))"
)

STATES = (
    Rewrite(_CUT_AND_DRY, r"\1dried out"),
    Rewrite(_SPROUTED, r"\1 sprouting"),
    Rewrite(_UNRIPE, "unripe"),
    Rewrite(_HOW_SOUR, " ", where=_SOUR_ANYWAY),
    Rewrite(_HOW_SMELLY, " ", where=_SMELLS_ANYWAY),
    Rewrite(_FINISH_OFF, "finish"),
    Rewrite(_NOT_GONE_OFF, " "),
    Rewrite(_DON_BLACK, r"gone \1"),
)

"""What a thing is packed or kept in, put so that it names no other food and no amount of its own.

A coffee can of dripping holds no coffee, a gallon bag is a size of bag and no gallon, and what is double bagged is one.
"""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

# What a box held before: common practice, no source.
_BEFORE = (
    r"(?:(?:old|empty|big|large|small|little|clean) )*(?:coffee|cookie|biscuit|butter|marg(?:arine)?|ice ?cream"
    r"|yogh?urt"
    r"|yog|sour cream|cottage cheese|cream cheese|whipped (?:cream|topping)|lard|shortening|peanut butter|jam|pickle"
    r"|pasta sauce|sweet|sweetie|chocolate|deli|mason|kilner|formula|milk|honey|hummus|feta|mayo(?:nnaise)?|ghee)"
)
_BOX = r"(?:cans?|tins?|tubs?|containers?|pails?|buckets?|boxes|box|jars?|jugs?|cartons?|pots?|bowls?)"
_PLAINLY = (
    # `coffee can of dripping`, `margarine tub full of chilli`; `yoghurt pot with granola` is yoghurt.
    (LatePattern(rf"\b{_BEFORE} {_BOX}(?: full)? of(?= [a-z])"), "tub of"),
    # `soup in an ice cream tub`, behind the food; what is told of how much stands.
    (
        LatePattern(
            rf"^([a-z][a-z ]*?)[,;]? \(?(?:kept |stored |frozen |saved )?(?:in|inside) (?:an? |the |my |our |that )*"
            rf"{_BEFORE} (?:cans?|tins?|tubs?|containers?|pails?|buckets?|boxes|box|jars?|cartons?|pots?)\b\)?"
            rf"(?! of)(?=\s*(?:$|[,;(]))"
        ),
        r"tub of \1",
    ),
    (
        LatePattern(
            rf"(?<=[a-z\d)])[,;]? \(?(?:kept |stored |frozen |saved )?(?:in|inside) (?:an? |the |my |our |that )*"
            rf"{_BEFORE} {_BOX}\b\)?(?! of)"
        ),
        " ",
    ),
    # The same behind a comma, and the bag that vegetables are steamed in: `pintos, dry, coffee can`, `12 oz steamer`.
    (
        LatePattern(
            r"(?<=[a-z\d)]),? ?[,(-] ?(?:an? |the |old |big |small )*(?:coffee|cookie|biscuit|ice ?cream|marg(?:arine)?"
            r"|lard|shortening|paint|feed) (?:cans?|tins?|buckets?|pails?)\b(?:ful)?\)?(?=\s*(?:$|[,;]))"
        ),
        ", tub",
    ),
    (
        LatePattern(
            r"(?<=[a-z\d)])((?: ?,? ?\d+(?:\.\d+)? ?(?:oz|g|lbs?))?)[ ,(-]+(?:in )?(?:an? )?(?:steamer|steamable"
            r"|steam[ -]?in[ -]?bag|microwave)(?: (?:bags?|packs?|pouch(?:es)?))?\)?(?=\s*(?:$|[,;.]))",
            needs=("steam", "microwave"),
        ),
        r"\1 bag",
    ),
    (LatePattern(r"\bbulk (?:bucket|bin|bag|tub)\b[ -]*"), " "),
    # Bags are sold by what they would hold of water: common practice, no source.
    (
        LatePattern(
            r"\b(?:1 |one |a )?(?:gallon|gal)[ -]?(?:size |sized )?(?:zip(?:lock|per)? |freezer |storage )*(?=bags?\b)"
        ),
        "large ",
    ),
    (
        LatePattern(
            r"\b(?:1 |one |a )?(?:quart|qt|pint|pt|snack|sandwich)[ -]?(?:size |sized )?"
            r"(?:zip(?:lock|per)? |freezer |storage )*(?=bags?\b)"
        ),
        "",
    ),
    # How often it is wrapped counts nothing.
    (
        LatePattern(
            r"[,;(-]* ?\b(?:double|triple)[ -]?(?:bag|wrap)(?:ged|ped)?\b"
            r"(?: (?:it|them|as|because|bec|cos|so|for)\b[^,;()]*)?\)?"
        ),
        " ",
    ),
    (
        LatePattern(
            r"[,;(-]+ ?(?:wrapped|bagged|sealed|foiled) (?:\d ?x|x ?\d|\d times|twice|thrice|three times)\b[^,;()]*\)?"
        ),
        " ",
    ),
    # What it came in, and what melted in it: `feta in its water`.
    (LatePattern(r"[,;]? \(?in (?:its|their) (?:own )?(?:water|brine|whey|liquid)\b\)?"), " "),
    (LatePattern(r"[,;]? (?:the )?ice (?:is |has |all |mostly )*melt\w*"), " "),
    (LatePattern(r"\b(?:chest|deep)[ -]freeze(?:r)?\b"), "freezer"),
)


def packed_in(text: str) -> str:
    """A plain line with such packing put plainly."""
    return put_in_turn(text, _PLAINLY)

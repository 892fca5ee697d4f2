"""Signs of a thing that works or spots: what bubbles and was not meant to has turned, and specks are looked at.

A cooked dish that bubbles in the fridge ferments (Food Standards Agency, signs of spoilage: recalled); what is made by
fermenting bubbles all its life.
"""

from calmlarder.matching.late_patterns import LatePattern

_MEANT_TO = LatePattern(
    r"\b(?:kimchi|sauerkraut|kraut|sourdough|starter|kombucha|kefir|ferment\w*|beer|ale|stout|cider|ginger beer"
    r"|pickles?"
    r"|yeast|dough|batter|levain|scoby|tepache|kvass|wine|prosecco|champagne|cava|water|soda|pop|cola|lemonade|tonic|poolish)\b"
)
_BUBBLES = LatePattern(
    r"(?<=[a-z\d)])[,;]? \(?(?:(?:a|is|are|it|it's|they're|now|all|looks?|getting|gone|going|turning|starting to be) )*"
    r"(?:little|bit|kinda|kind of|slightly|very|quite|some|gone|getting|turned) (?:bubbly|bubbling|bubbles)\b\)?"
    r"|(?<=[a-z\d)])[,;]? \(?(?:has|with|full of) (?:\w+ )?bubbles\b\)?"
    r"|(?<=[a-z]) bubbl(?:y|ing)(?=\s*$)",
    needs=("bubbl",),
)
_COLOURS = r"(?:green|blue|white|grey|gray|pink|furry|fuzzy|mouldy|moldy)"
_SPECKS = r"(?:specks?|flecks?|speckles?|freckles?|dots?)"
_MANY = r"(?:with |has |few |some |a |little |tiny |small )*"
_ON_IT = r"\b(?: on (?:it|them|top))?\)?"
_MOULD = LatePattern(rf"(?<=[a-z\d)])[,;]? \(?{_MANY}{_COLOURS} {_SPECKS}{_ON_IT}")
_CHECKED = LatePattern(
    rf"(?<=[a-z\d)])[,;]? \(?{_MANY}(?:black|brown|dark|rusty|yellow|few|some|tiny) {_SPECKS}{_ON_IT}"
)


def signs_told(text: str) -> str:
    """A plain line with such signs as the conditions that they are."""
    text = _BUBBLES.sub(" " if _MEANT_TO.search(text) else ", gone fizzy", text)
    return _CHECKED.sub(", check it over", _MOULD.sub(", mouldy", text))

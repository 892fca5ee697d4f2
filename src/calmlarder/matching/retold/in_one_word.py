"""What makes another food of a word stands in one word with it, in lines and in names alike."""

from calmlarder.matching.late_patterns import LatePattern

PERCENT = "percent"
_PERCENT = LatePattern(r"(?<![\w.])(\d{1,3})(?:\.(\d{1,2}))? ?%(?! (?:left|full|gone|used))")
_PACKED_IN = LatePattern(
    r"\bin (?:(?:olive|sunflower|vegetable|spring|salted|sugar|light|own|its own|their own|natural|fruit) )?"
    r"(oil|brine|water|juice|syrup|vinegar)\b"
)
_ON_BONE = LatePattern(r"\b(?:(?:left |still )?on (?:the )?bone|bone[ -]in|with (?:the |its )?bones?(?: in| on)?)\b")
_OFF_BONE = LatePattern(r"\b(?:off (?:the )?bone|bones? out|bone[ -]out)\b")
# Cream of wheat, of tartar or of mushroom soup is no cream.
_CREAM_OF = LatePattern(r"\b(?:cream|crm|crem) of (?!the\b|a\b|some\b)(?=[a-z])")
# American for milk and cream in one; anything else is half of this and half of that.
_HALF_AND_HALF = LatePattern(r"\bhalf[ -]?(?:and|&|n)[ -]?half\b")


def one_word(text: str) -> str:
    """A plain text, of a line or a name, with what makes another food of a word in one word with it.

    Garlic in oil is no garlic oil, 2% milk is another milk, and cream of wheat is no cream.
    """
    text = _PACKED_IN.sub(r"in\1", text)
    text = _OFF_BONE.sub("offbone", _ON_BONE.sub("onbone", text))
    text = _HALF_AND_HALF.sub("halfandhalf", _CREAM_OF.sub("creamof ", text))
    return _PERCENT.sub(lambda found: f"{found[1]}{found[2] or ''}{PERCENT}", text) if "%" in text else text

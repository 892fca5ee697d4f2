"""Halves and quarters of a kilogram or a litre in the words of other kitchens."""

from calmlarder.matching.late_patterns import LatePattern

_UNIT = r"(kilos?|kg|chilo|chili|quilos?|litros?|litri|litres?|liters?|lit|kilogramos?)"
_ONE = r"(?:(?:1|one|a|un|uno|um|ein|eine) )?"
_HALF = r"(?:medio|media|mezzo|mezza|meio|meia|halbes|halber|halb|demi|pol|aadha|half)"
_AND_HALF = LatePattern(rf"\b{_ONE}{_UNIT} (?:y|e|et|und|and)(?: an?)? {_HALF}\b(?: (?:de|di)\b)?")
_A_HALF = LatePattern(
    rf"(?<!\band )(?<!\band a )(?<!\d )\b(?:un |ein )?{_HALF}(?: the| of the)?[ -]{_UNIT}\b(?: (?:de|di|of)\b)?"
)
_QUARTER = LatePattern(rf"\b(?:un )?(?:(tres) )?(?:cuartos?|quarto|quart) (?:de |di )?{_UNIT}\b(?: (?:de|di)\b)?")
_ONE_OF = LatePattern(rf"\b(?:un|uno|um|ein) {_UNIT}\b(?: (?:de|di)\b)?")


def half_kilos(text: str) -> str:
    """A plain text with `kilo y medio` as 1500 g, `medio kilo` as 500 g, `cuarto de kilo` as 250 g; litres in ml."""
    text = _AND_HALF.sub(lambda found: f" {_in_small(found[1], 1500)} ", text)
    text = _A_HALF.sub(lambda found: f" {_in_small(found[1], 500)} ", text)
    text = _QUARTER.sub(lambda found: f" {_in_small(found[2], 750 if found[1] else 250)} ", text)
    text = _ONE_OF.sub(lambda found: f" {_in_small(found[1], 1000)} ", text)
    return " ".join(text.split())


def _in_small(unit: str, count: int) -> str:
    return f"{count}{'ml' if unit.startswith('l') else 'g'}"

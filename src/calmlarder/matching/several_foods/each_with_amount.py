"""Several foods of a line of which each tells its own amount: no name reaches from one into the other."""

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.part import Part, name_part
from calmlarder.matching.several_foods.between_signs import of_the_kind_before
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.pieces import ENDS, MOST_PARTS, SPLIT

_AMOUNT = rf"\d{{1,4}}(?: ?(?:{UNIT}|{MEASURE})\b)?"
_NUMBERED = rf"{_AMOUNT} (?:of )?[a-z][a-z ]*?"
_NUMBERED_BEHIND = rf"[a-z][a-z ]*? {_AMOUNT}"
_TWO = (
    LatePattern(rf"({_NUMBERED}) ({_NUMBERED})"),
    LatePattern(rf"({_NUMBERED_BEHIND}) ({_NUMBERED_BEHIND})"),
    LatePattern(rf"({_NUMBERED_BEHIND}) ({_NUMBERED})"),
)


def numbered_apart(text: str, lexicon: Lexicon) -> str:
    """The text with a comma between two names that each have a number before or behind them.

    As in `6 eggs 8 garden eggs`; `garlic 2 bulbs ginger 1`; `rice 1kg 400g noodles`.
    """
    if sum(piece[0].isdigit() for piece in text.split()) < 2:
        return text
    for two in _TWO:
        found = two.fullmatch(text)
        if found and all(" ".join(bare_words(piece)) in lexicon.spelt for piece in found.groups()):
            return f"{found[1]}, {found[2]}"
    return text


def each_with_its_amount(whole: Part, text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods of pieces that each tell how much there is, and no word of one tells the kind of another.

    As in `rice 1kg, 400g noodles`, which are no rice noodles; of the last one it may be asked which
    kind it is. Nothing where a piece names none by itself.
    """
    pieces = [piece for piece in SPLIT.split(text) if piece.strip(ENDS)]
    if not 2 <= len(pieces) <= MOST_PARTS or not all(map(_tells_how_much, pieces)):
        return []
    parts = [name_part(piece, hints, lexicon) for piece in pieces]
    *before, last = (part.named for part in parts)
    if last.left or not last.takes or any(named.outcome != "matched" or named.left for named in before):
        return []
    if any(of_the_kind_before(piece, parts[:n], lexicon) != piece for n, piece in enumerate(pieces)):
        return []
    reaches = sum(not whole.named.takes.isdisjoint(part.named.takes) for part in parts) > 1
    names = {" ".join(bare_words(piece)) for piece in pieces}
    by_name = all(name in lexicon.spelt for name in names)
    apart = len({part.named.foods for part in parts}) == len(parts)
    said = [set(name.split()) for name in names]
    if by_name and len(names) == len(pieces) and not any(one < other for one in said for other in said):
        return parts  # `rigatoni 200g, penne 300g` are two lots of pasta; of the thighs 8 may weigh a kilo
    return parts if (reaches or by_name) and apart else []


def _tells_how_much(piece: str) -> bool:
    return any(sign.isdigit() for sign in piece)

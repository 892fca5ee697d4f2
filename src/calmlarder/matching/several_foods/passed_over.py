"""Whether a reading of a whole line passes over a food of one of its pieces."""

from collections.abc import Iterator
from functools import partial

from calmlarder.matching.amounts.measures import MEASURE_WORDS
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import HARMLESS, NOTES
from calmlarder.matching.names.words import singular
from calmlarder.matching.part import SOFT, WORD, Part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.kinds import KIND
from calmlarder.matching.several_foods.pieces import ENDS, SPLIT, says_amount
from calmlarder.matching.several_foods.side_by_side import names_food


def passes_over(whole: Part, text: str, lexicon: Lexicon) -> bool:
    """Whether a reading of the whole line leaves a kind, or a food that is a measure as well.

    As in `half red onion, half white onion`; `cinnamon, cloves`.
    """
    takes = whole.named.takes
    alone = (singular(piece.strip(ENDS)) for piece in SPLIT.split(text))
    if whole.named.partly or any(map(partial(_is_name_beside, whole, lexicon), SPLIT.split(text))):
        return True
    kinds = {word for word in WORD.findall(text) if KIND.fullmatch(word)}
    if len(kinds & FITS.keys()) == 1:
        kinds -= FITS.keys()  # the one state that is told is that of the food
    return not kinds <= takes or any(
        word in SOFT and names_food(word, lexicon) and word not in takes
        for word in (*alone, *_counted_behind(whole, text, lexicon))
        if word
    )


def _counted_behind(whole: Part, text: str, lexicon: Lexicon) -> Iterator[str]:
    """Words counted behind a sign that measure no such food: `bread 1, rolls 4`; no cloves of garlic."""
    own = {
        row.measure
        for food in whole.named.foods
        for row in lexicon.tables.own_measures(lexicon.tables.food_by_id[food])
    }
    for piece in SPLIT.split(text)[1:]:
        words = [word for word in WORD.findall(piece) if not says_amount(word) or not any(map(str.isdigit, word))]
        if len(words) == 1 and any(map(str.isdigit, piece)) and MEASURE_WORDS.get(words[0]) not in own:
            yield singular(words[0])


def _is_name_beside(whole: Part, lexicon: Lexicon, piece: str) -> bool:
    """Whether a piece is another food's name, word for word, which the whole line takes for a note."""
    words = bare_words(piece)
    food = lexicon.spelt.get(" ".join(words))
    if food is None or food in whole.named.foods or set(words) <= NOTES | HARMLESS | SOFT | FITS.keys():
        return False
    return whole.named.takes.isdisjoint(words) and food not in lexicon.kin(whole.named.foods[0])

"""Which tongues a home speaks, by the lines of its list: what one line leaves in doubt, the others tell."""

from collections import Counter
from collections.abc import Iterable

from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import as_one
from calmlarder.matching.retold.accents import told_by_accents
from calmlarder.matching.retold.other_tongues import tongues_told

# Lines of a list, and its share of them, from which a tongue is that of the home: ours.
_LINES, _SHARE = 3, 0.2


def spoken_at_home(lines: Iterable[str], lexicon: Lexicon) -> frozenset[str]:
    """The tongues of at least three of the lines, and of no fewer than any other."""
    found = Counter(
        tongue for line in lines for tongue in tongues_told(as_one(told_by_accents(line, lexicon)), lexicon)
    )
    most = max(found.values(), default=0)
    return frozenset(tongue for tongue, count in found.items() if count == most >= _LINES)

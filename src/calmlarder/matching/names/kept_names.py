"""The names of the shipped tables taken apart once, and found again at the next start."""

from collections.abc import Sequence
from pathlib import Path

from calmlarder.matching.kept_needs import know_needs
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import index_in, index_of, written_of
from calmlarder.tables import derived
from calmlarder.tables.book import Tables
from calmlarder.tables.load import SHIPPED, digest_of_tables
from calmlarder.tables.places import shipped

_KEPT = "names.json"


def lexicon_of(tables: Tables, folders: Sequence[Path]) -> Lexicon:
    """The names of tables that were read from these folders. A cook's own names are never kept."""
    know_needs()
    folder = shipped(SHIPPED)
    if list(folders) != [folder]:
        return Lexicon(tables)
    try:
        made_from = digest_of_tables(folder, Path(__file__).parent)
    except OSError:
        return Lexicon(tables)
    known = derived.kept(_KEPT, made_from)
    if known is not None:
        return Lexicon(tables, index_in(known))
    index = index_of(tables)
    derived.keep(_KEPT, made_from, written_of(index))
    return Lexicon(tables, index)

"""What texts each expression of this room needs, found once and found again at the next start."""

from pathlib import Path

from calmlarder.matching.late_patterns import NOTHING, LatePattern, Pieces
from calmlarder.tables import derived

_KEPT, _NEEDS = "needs.json", "needs"


def know_needs() -> None:
    """From now on no expression is looked for in a text that holds nothing of what it needs.

    Where this room's code cannot be read, or Python's parser of expressions is another one, each is looked for.
    """
    try:
        made_from = derived.digest_of(sorted(Path(__file__).parent.glob("*.py")))
        kept = derived.kept(_KEPT, made_from)
        needs = kept[_NEEDS] if kept is not None else _found()
    except (OSError, ImportError):
        return
    if kept is None:
        derived.keep(_KEPT, made_from, {_NEEDS: needs})
    LatePattern.know({written: tuple(pieces) for written, pieces in needs.items()})


def _found() -> dict[str, Pieces]:
    from calmlarder.matching.needs import needs_of  # at a first start only

    plain = (one for one in LatePattern.every if one.given is None and not one.flags)
    found = {one.written: needs_of(one.written) for one in plain}
    return {written: pieces for written, pieces in found.items() if pieces != NOTHING}

"""What texts each expression that reads lines needs, found once and found again at the next start."""

from pathlib import Path

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.tables import derived

_KEPT, _NEEDS = "needs.json", "needs"


def know_needs() -> None:
    """From now on no expression is looked for in a text that holds nothing of what it needs.

    Where this room's code cannot be read, or Python's parser of expressions is another one, each is looked for.
    """
    plain = {one.written for one in LatePattern.every if one.given is None and not one.flags}
    try:
        made_from = derived.digest_of(sorted(Path(__file__).parent.glob("*.py")))
        kept = derived.kept(_KEPT, made_from)
        needs = {} if kept is None else dict(kept[_NEEDS])
        new = plain - needs.keys()  # other rooms have some, too, which not every command loads
        if new:
            from calmlarder.matching.needs import needs_of  # at a first start only

            needs |= {written: needs_of(written) for written in sorted(new)}
            derived.keep(_KEPT, made_from, {_NEEDS: needs})
    except (OSError, ImportError):
        return
    LatePattern.know({written: tuple(pieces) for written, pieces in needs.items()})

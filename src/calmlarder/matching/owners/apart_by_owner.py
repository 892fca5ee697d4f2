"""One thing of a list that is somebody's, told in a bracket beside it: `noodles, fish sauce (kev's), limes x5`."""

from calmlarder.matching.late_patterns import LatePattern

_IS_SOMEBODYS = LatePattern(r"\((?:the )?(?:[a-z]{2,}'s|[a-z]{2,}s')\)$", needs=("(",))


_FOR_SOMEBODY = LatePattern(r",? (?:for|is|are) (?:my |our |the )?[a-z']+\.?$", needs=(" for ", " is ", " are "))


def apart_by_owner(line: str) -> tuple[str, ...] | None:
    """What of a plain list is nobody's in particular, and the one thing that is somebody's; None for any other line.

    A bracket at the end of a list may be said of all of it. What each side of a semicolon is for stays with it.
    """
    sides = [side.strip(" .") for side in line.split(";")]
    if len(sides) > 1 and all(sides) and sum(bool(_FOR_SOMEBODY.search(side)) for side in sides):
        return tuple(sides)
    if "(" not in line or "," not in line:
        return None
    pieces = [piece.strip() for piece in line.split(",")]
    theirs = [piece for piece in pieces if _IS_SOMEBODYS.search(piece)]
    if len(theirs) != 1 or theirs[0] == pieces[-1] or any("(" in piece for piece in pieces if piece != theirs[0]):
        return None
    return ", ".join(piece for piece in pieces if piece != theirs[0]), theirs[0]

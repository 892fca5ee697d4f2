"""How a line has its food cut, and how what takes its place is cut."""

import re

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# How a line has its food cut, where it may stand for what takes its place too.
CUT = re.compile(
    r"[,:(]\s*(?:all |each |both )?(?:[^,()]*\band\s)?"
    r"((?:(?:very |quite )?(?:finely|roughly|thinly|coarsely|thickly) )?(?:chopped|sliced|diced|cubed|grated|shredded)"
    r"|(?:cut |sliced )?in(?:to)? "
    r"(?:(?:small|large|thin|thick|bite-sized) |[\d./¼½¾]+[ -]?(?:cm|mm|inch)(?:[- ]thick)? )?"
    r"(?:cubes|dice|chunks|pieces|strips|matchsticks|rounds|lengths|rings|slices|batons))\b",
    re.IGNORECASE,
)
# `thinly sliced red onion`, without an amount.
_CUT_FIRST = re.compile(
    r"\s*((?:(?:very |quite )?(?:finely|roughly|thinly|coarsely|thickly) )?(?:chopped|sliced|diced|shredded))"
    r" (?=[a-z])",
    re.IGNORECASE,
)
# `into 8 wedges`: so many of another amount. `into 1cm rounds` stays.
HOW_LARGE = re.compile(r"\b(in|into) (?:about |roughly )?\d+ (?=[a-z])(?!(?:cm|mm|inch)\b)", re.IGNORECASE)
_SIZE = re.compile(r"\b\d+ cm ")
_LEAFY = frozenset({"allium", "leaf", "stem", "herb"})
_TOUGHER = "leek-green"  # than an onion: in thick slices it stays so; common practice, no source
_LEAVES_BEAR = re.compile(r"\b(?:chopped|sliced|shredded)$")
_SHAPES = r"(?:dice|cubes|pieces|lengths|strips|slices|chunks|matchsticks|rounds)"
_CUT_SO = re.compile(
    rf": (cut (?:fine|small|short|in [a-z -]+)|in (?:small|fine|short|thin|large|thick) {_SHAPES})(?=,|;|$)"
)  # of a row of swaps.csv


def cut_by_its_swap(read: IngredientRead, stand_in: Food, tables: Tables) -> str | None:
    """How the swap's own row has a stand-in cut, which goes before the line's words: `cut in pea-sized bits`."""
    rows = (row.when for row in tables.swaps_of(read.food or "") if row.to == stand_in.id)
    return next((found[1] for when in rows if (found := _CUT_SO.search(when)) is not None), None)


def fit_cut(cut: str, stand_in: Food) -> str:
    """How it is cut, peeled first where it has a skin; nobody grates or cubes leaves, pods stay long."""
    if stand_in.id == _TOUGHER and cut.startswith("thickly"):
        return usual_cut(stand_in)
    if stand_in.kind in _LEAFY:
        return "very finely chopped" if cut.endswith("grated") else cut if _LEAVES_BEAR.search(cut) else ""
    if stand_in.kind == "pod":
        return ""
    if stand_in.kind == "citrus" and cut.endswith(("grated", "sliced", "shredded")):
        return usual_cut(stand_in)
    if stand_in.kind == "fruit":
        return "finely chopped" if cut.endswith("grated") else cut
    return f"peeled and {cut}" if usual_cut(stand_in).startswith("peeled") else cut


def usual_cut(stand_in: Food) -> str:
    """Its usual preparation without a size, which would read as an amount; how large the swap itself says."""
    if stand_in.prep.startswith("peeled"):
        return "peeled, in pieces"
    return _SIZE.sub("", stand_in.prep.partition(";")[0]).strip()


def cut_of(text: str) -> str:
    """How a line has its food cut, in a few words: `, thinly sliced`; nothing where it does not say."""
    found = CUT.search(HOW_LARGE.sub(r"\1 ", text)) or _CUT_FIRST.match(text)
    return f", {found[1].lower()}" if found else ""

"""Warning signs that somebody writes where a food is asked for: they are answered, and never read as a food."""

from calmlarder.larder.meaning import Reading
from calmlarder.matching.names.foods import Match
from calmlarder.problems import Problem
from calmlarder.reintroduction.red_flag_words import Flag
from calmlarder.reintroduction.red_flags_in_notes import RedFlag, red_flags
from calmlarder.render.signs_text import see_a_doctor

# What a food may be kept for tells of no sign: `bread (my son is coeliac)`, `new potatoes 50 g`.
_BESIDE_FOOD: frozenset[Flag] = frozenset({"new after 50", "family", "coeliac"})
_NOTE_IT = (
    "To note it, with your own number from 0 calm to 10 the worst: `feel 4 {words}` in the larder's line, or "
    '`calmlarder feel 4 --note "{words}"`.'
)


def signs_in(reading: Reading) -> tuple[RedFlag, ...]:
    """The signs that a line tells of, the most urgent first."""
    found = red_flags(reading.text)
    return tuple(one for one in found if one.flag not in _BESIDE_FOOD) if reading.lots else found


def heard(reading: Reading) -> Reading:
    """The line as it was read, or the answer to the sign that it tells of in the place of foods."""
    signs = signs_in(reading)
    if not signs:
        return reading
    told = f"{see_a_doctor(signs)} {_NOTE_IT.format(words=signs[0].words.replace(chr(34), ''))}"
    problem = Problem(where=reading.where, what="that is no food", remedy=told)
    none = Match("unknown", None, None, 0.0, ())
    return Reading(text=reading.text, where=reading.where, match=none, lots=(), problem=problem)

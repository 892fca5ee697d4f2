"""The limits of one serving as rows of the model."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ortools.sat.python import cp_model

from calmlarder.adapt import prices
from calmlarder.adapt.choices import Choice
from calmlarder.adapt.loads import RowKey, Under, under_each
from calmlarder.compose.budget import largest_two
from calmlarder.intake.load import at_most_of
from calmlarder.intake.profile import Profile, at_most_room, typical_room
from calmlarder.tables.cap_rows import Cap

Taken = Sequence[Sequence[tuple[cp_model.IntVar, Choice]]]  # the choices of each line


class _Term(NamedTuple):
    variable: cp_model.IntVar
    line: int
    under: Under


def post_limits(
    model: cp_model.CpModel, lines: Taken, cut: Mapping[int, cp_model.IntVar], limits: Profile
) -> list[cp_model.IntVar]:
    """Bound what is likely, what may come at most and what may be misjudged; `cut` says into how many servings.

    Gives a variable for each limit of the sitting that what is likely may fill to the brim, true where it does.
    """
    rows: dict[RowKey, tuple[Cap, list[_Term]]] = {}
    for number, line in enumerate(lines):
        for variable, choice in line:
            for brings in choice.brings:
                for key, cap, under in under_each(brings, limits):
                    rows.setdefault(key, (cap, []))[1].append(_Term(variable, number, under))
    full = []
    for (_, food), (cap, terms) in rows.items():
        _post(model, cap, terms, cut)
        if food is None:
            full += _full(model, cap, terms, cut)
    return full


def _full(
    model: cp_model.CpModel, cap: Cap, terms: Sequence[_Term], cut: Mapping[int, cp_model.IntVar]
) -> list[cp_model.IntVar]:
    """Whether what is likely fills a limit of the sitting to the brim; nothing where it never could."""
    typical = typical_room(cap)
    if prices.OF_A_BRIM * _reach(terms, "likely") <= prices.BRIM * typical * min(cut):
        return []
    full = model.new_bool_var("")
    load = sum(term.under.likely * term.variable for term in terms)
    serves = sum(count * variable for count, variable in cut.items())
    model.add(prices.OF_A_BRIM * load <= prices.BRIM * typical * serves).only_enforce_if(~full)
    return [full]


def _post(model: cp_model.CpModel, cap: Cap, terms: Sequence[_Term], cut: Mapping[int, cp_model.IntVar]) -> None:
    fewest, typical, most = min(cut), typical_room(cap), at_most_room(cap)
    load = sum(term.under.likely * term.variable for term in terms)
    reach = _reach(terms, "likely")
    serves = sum(count * variable for count, variable in cut.items())
    if reach > typical * fewest:
        model.add(load <= typical * serves)
    items: dict[str, list[_Term]] = {}
    for term in terms:
        items.setdefault(term.under.item, []).append(term)
    if most is not None:
        off = [(sum(term.under.off * term.variable for term in same), _reach(same, "off")) for same in items.values()]
        if at_most_of(reach, (one for _, one in off)) > most * fewest:
            model.add(load + largest_two(model, off) <= most * serves)
    for same in items.values():
        misjudged = _reach(same, "misjudged")
        if misjudged and reach + misjudged > typical * fewest:
            model.add(load + sum(term.under.misjudged * term.variable for term in same) <= typical * serves)


def _reach(terms: Sequence[_Term], what: str) -> int:
    """The most they come to: of each line its largest choice."""
    lines: dict[int, dict[int, int]] = {}
    for term in terms:
        choices = lines.setdefault(term.line, {})
        choices[term.variable.index] = choices.get(term.variable.index, 0) + getattr(term.under, what)
    return sum(max(choices.values()) for choices in lines.values())

"""`calmlarder match TEXT…`: what a line means."""

import json
from collections.abc import Iterator

from calmlarder.commands.given.foods import Words
from calmlarder.commands.inputs import day_of, folders_of, lines_typed, tables_of
from calmlarder.household.signs_in_lines import heard
from calmlarder.larder.files import read_lines
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading
from calmlarder.matching.names.kept_names import lexicon_of
from calmlarder.problems import CannotGoOn
from calmlarder.render.about import about_span
from calmlarder.render.match_json import match_object


def match(options: Words) -> int:
    """Each line's meaning; bare words of the command line are one line, quoted ones a line each, `-` reads many."""
    tables = tables_of(options)
    lines = read_lines("-") if options.text == ("-",) else lines_typed(options.text)
    lexicon = lexicon_of(tables, folders_of(options))
    readings = [heard(one) for one in LarderReader(tables, day_of(options), lexicon).read_all(lines, "line")]
    for reading in readings:
        if options.json:
            print(json.dumps(match_object(reading), ensure_ascii=False))
        else:
            print("\n".join(_lines(reading)))
    problems = [reading.problem for reading in readings if reading.problem is not None]
    if problems and not options.json:
        raise CannotGoOn(problems)
    return 2 if problems else 0


def _lines(reading: Reading) -> Iterator[str]:
    if reading.problem is not None:
        return
    if reading.to_answer is not None:
        names = ", ".join(reading.to_answer.choices)
        yield f"{reading.text}: {reading.to_answer.question}{' ' + names if names else ''}"
    if reading.gone:
        yield f"{reading.text}: {', '.join(reading.names)}"
    for lot, name in zip(reading.lots or reading.standing, reading.names, strict=not reading.gone):
        yield f"{reading.text}: {name}"
        yield from _lot_lines(lot)
    if reading.assumed:
        yield f"  assumed: {', '.join(reading.assumed)}"


def _lot_lines(lot: Lot) -> Iterator[str]:
    span = "" if lot.grams_low == lot.grams_high else f" ({about_span(lot.grams_low, lot.grams_high)})"
    yield f"  {lot.grams:g} g{span}, {lot.place}"
    if lot.days_left is not None:
        yield f"  {lot.days_left} day{'' if lot.days_left == 1 else 's'} left: {lot.days_from}"
    if lot.to_bin:
        yield f"  {lot.condition}: put it in the bin"
    if lot.kept_for:
        yield f"  kept for {lot.kept_for}"
    if lot.owner:
        yield f"  belongs to {lot.owner}{', who agrees' if lot.owner_agrees else ': ask first'}"

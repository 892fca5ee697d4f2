"""Answers of random larders as plain values, as the check is given them."""

from collections.abc import Iterator

from calmlarder.checks.dinner import verify
from calmlarder.compose.compose import Composed, best_dinners, compose
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.profile import profile_named
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from mutations import Answer
from random_larders import TODAY, Case, larder


def lots_read(case: Case, reader: LarderReader) -> list[Lot]:
    """Lots of the lines that were read as what they were made up to be; another reading is another test's matter."""
    lots = [lot for reading in reader.read_all(case.lines, "made up") for lot in reading.lots]
    return [lot for lot in lots if lot.id in case.lots and lot.food == case.lots[lot.id].food]


def request_of(case: Case, tables: Tables) -> DinnerRequest:
    """What is asked for a made-up larder."""
    return DinnerRequest(
        today=TODAY, profile=profile_named("elimination", tables), people=case.people, diet=case.diet,
        avoid=case.avoid, seconds=5.0,
    )  # type: ignore[arg-type]  # fmt: skip


def composed_of(
    case: Case, lots: list[Lot], tables: Tables, patterns: tuple[Pattern, ...]
) -> tuple[DinnerRequest, Composed]:
    """What was asked for, and the answer."""
    wanted = request_of(case, tables)
    return wanted, compose(lots, wanted, patterns, tables)


def dinners_of(
    case: Case, lots: list[Lot], tables: Tables, patterns: tuple[Pattern, ...]
) -> tuple[DinnerRequest, tuple[Dinner, ...]]:
    """What was asked for, and its dinners alone: where there is none nothing near it is looked for."""
    wanted = request_of(case, tables)
    return wanted, best_dinners(lots, wanted, patterns, tables)[1]


def answers(first: int) -> Iterator[tuple[int, Answer]]:
    """Dinners of larders from a seed on, for those that have one."""
    tables, patterns = load_tables([shipped("ingredient_tables")]), load_patterns(shipped("recipes"))
    reader, seed = LarderReader(tables, TODAY), first
    while True:
        lots = lots_read(larder(seed), reader)
        wanted, dinners = dinners_of(larder(seed), lots, tables, patterns)
        for dinner in dinners:
            request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
            yield seed, Answer(dinner_object(dinner), request, [lot.model_dump(mode="json") for lot in lots])
        seed += 1


def check(answer: Answer) -> tuple[str, ...]:
    """What the program's own check says."""
    return verify(*answer, [shipped("ingredient_tables")], shipped("recipes"))

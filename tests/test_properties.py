"""What must hold of any larder and any text (hypothesis)."""

from collections.abc import Callable, Sequence

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calmlarder.checks.dinner import verify
from calmlarder.compose.compose import best_dinners, compose, pattern_problems
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.intake.profile import Profile
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from how_much import WHOLE
from larders import larder_lines

LotsOf = Callable[[Sequence[str]], list[Lot]]
CALM = settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
SLOW = settings(CALM, max_examples=8 if WHOLE else 3)
LARDERS = st.tuples(st.integers(14, 26), st.integers(0, 10_000))


def wider(profile: Profile, factor: int) -> Profile:
    def grow(caps):  # type: ignore[no-untyped-def]
        return tuple(
            cap.model_copy(update={"typical_g": cap.typical_g * factor, "at_most_g": (cap.at_most_g or 0) * factor})
            for cap in caps
        )

    return profile.model_copy(update={"food_caps": grow(profile.food_caps), "sitting_caps": grow(profile.sitting_caps)})


@SLOW
@given(larder=LARDERS, factor=st.integers(2, 5))
def test_more_cap_never_gives_a_worse_dinner(
    larder: tuple[int, int], factor: int, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting
) -> None:  # type: ignore[no-untyped-def]
    lots = lots_of(larder_lines(tables, *larder))
    wanted: DinnerRequest = wanting()
    roomy = wanted.model_copy(update={"profile": wider(wanted.profile, factor)})
    tight = search(pattern_problems(lots, wanted, patterns, tables), 1, 20)
    loose = search(pattern_problems(lots, roomy, patterns, tables), 1, 20)
    if tight.plans:
        assert loose.plans
        assert loose.plans[0].score >= tight.plans[0].score


@SLOW
@given(larder=LARDERS, people=st.integers(1, 3), profile=st.sampled_from(["elimination", "wide"]))
def test_every_answer_passes_the_independent_check(
    larder: tuple[int, int],
    people: int,
    profile: str,
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: LotsOf,
    wanting,
) -> None:  # type: ignore[no-untyped-def]
    lots = lots_of(larder_lines(tables, *larder))
    wanted: DinnerRequest = wanting(profile, people=people, count=2)
    dinners = compose(lots, wanted, patterns, tables).dinners
    request = {**wanted.model_dump(mode="json"), "profile": profile}
    plain = [lot.model_dump(mode="json") for lot in lots]
    there = {lot.line: lot.grams for lot in lots}
    for dinner in dinners:
        faults = verify(dinner_object(dinner), request, plain, [shipped("ingredient_tables")], shipped("recipes"))
        assert faults == ()
        assert all(use.grams <= there[use.line] for use in dinner.uses)


def uses(dinner: Dinner) -> list[tuple[str, str, int, str]]:
    return [(use.line, use.slot, use.grams, use.how) for use in dinner.uses]


@SLOW
@given(larder=LARDERS, data=st.data())
def test_removing_an_unused_lot_changes_nothing(
    larder: tuple[int, int],
    data: st.DataObject,
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: LotsOf,
    wanting,
) -> None:  # type: ignore[no-untyped-def]
    lots = lots_of(larder_lines(tables, *larder))
    _, dinners = best_dinners(lots, wanting(), patterns, tables)
    if not dinners:
        return
    before = dinners[0]
    used = {use.line for use in before.uses}
    unused = [lot for lot in lots if lot.line not in used]
    gone = data.draw(st.sampled_from(unused))
    _, (after, *_) = best_dinners([lot for lot in lots if lot is not gone], wanting(), patterns, tables)
    assert after.title == before.title
    assert uses(after) == uses(before)


@SLOW
@given(larder=LARDERS)
def test_the_same_larder_gives_the_same_dinner(
    larder: tuple[int, int], tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting
) -> None:  # type: ignore[no-untyped-def]
    lots = lots_of(larder_lines(tables, *larder))
    first, second = (best_dinners(lots, wanting(), patterns, tables)[1] for _ in range(2))
    assert first == second


_WORDS = (
    "half", "third", "of", "a", "tin", "jar", "bag", "spinach", "tofu", "firm", "rice", "cooked", "use by", "friday",
    "opened", "yesterday", "2", "1/2", "x3", "g", "kg", "400g", "(sam's)", "mouldy", "soft", "nearly empty", "-", ",",
    "#", "½", "31 feb", "2026-02-30", "0", "99999999", "oil", "garlic", "best before", "in the freezer",
)  # fmt: skip
WORDS = st.sampled_from(_WORDS)


@settings(CALM, max_examples=300 if WHOLE else 100)
@given(text=st.one_of(st.text(max_size=60), st.lists(WORDS, max_size=12).map(" ".join)))
def test_any_line_parses_or_says_why_not(text: str, reader: LarderReader) -> None:
    reading = reader.read(text, "line 1")
    if reading is None:
        assert not text.split("#")[0].strip() or text.strip().startswith("#")
        return
    if reading.lot is not None:
        assert reading.match.outcome == "matched"
        assert 0 < reading.lot.grams_low <= reading.lot.grams <= reading.lot.grams_high
    elif reading.match.outcome == "matched" or reading.problem is not None:
        assert reading.problem is not None
        assert reading.problem.what
        assert reading.problem.remedy
    else:
        assert reading.match.outcome in {"ask", "unknown"}

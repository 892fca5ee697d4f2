"""A group that failed is tried again after three months: Tuck & Barrett 2017 (recalled)."""

from datetime import date

from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.retest import to_retest

FAILED = Course("me", "sorbitol", date(2026, 1, 1), concluded=date(2026, 1, 10))


def test_a_group_that_failed_is_tried_again_after_three_months() -> None:
    assert to_retest(date(2026, 4, 10), [FAILED], ()) == ()
    assert to_retest(date(2026, 4, 11), [FAILED], ()) == ("sorbitol",)


def test_a_group_with_a_limit_of_its_own_is_not() -> None:
    assert to_retest(date(2026, 12, 1), [FAILED], {"sorbitol"}) == ()


def test_the_last_try_counts_and_one_that_goes_on_does_not() -> None:
    again = FAILED._replace(started=date(2026, 3, 1), concluded=date(2026, 3, 10))
    assert to_retest(date(2026, 4, 20), [FAILED, again], ()) == ()
    assert to_retest(date(2026, 12, 1), [FAILED, FAILED._replace(concluded=None)], ()) == ()

"""Rough amounts in words. Expected by hand, after rounding to the nearest 10, 5 or 1 g."""

import pytest

from calmlarder.render.about import about_span


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (190.4, 571.2, "about 190 to 570 g"),
        (33.1, 99.6, "about 35 to 100 g"),
        (2.4, 7.2, "about 2 to 7 g"),
        (0.15, 0.45, "about 0.1 to 0.5 g"),
    ],
)
def test_a_span_has_no_digits_that_nobody_knows(low: float, high: float, words: str) -> None:
    assert about_span(low, high) == words

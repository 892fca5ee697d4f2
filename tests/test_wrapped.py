"""Lines of text: no longer than asked for, every word there, no number parted from its unit.

That a line does not end between a number and its unit is common practice, no source.
"""

import re

from hypothesis import given
from hypothesis import strategies as st

from calmlarder.render.wrapped import wrapped

WORDS = st.lists(st.sampled_from(("0.19 g", "120 ml", "4 minutes", "50 %", "400 °F", "tofu", "(1.6 oz)", "soy sauce,")),
                 min_size=1, max_size=40)  # fmt: skip


def test_a_unit_stands_beside_its_number() -> None:
    text = "fructans + GOS 0.13 g (0.17 g left), sorbitol 0.01 g (0.19 g left)"
    assert wrapped(text, 58, rest="  ") == ["fructans + GOS 0.13 g (0.17 g left), sorbitol 0.01 g", "  (0.19 g left)"]


@given(words=WORDS, width=st.integers(20, 100))
def test_every_word_is_there_and_no_unit_begins_a_line(words: list[str], width: int) -> None:
    text = " ".join(words)
    lines = wrapped(text, width, "- ", "  ")
    assert " ".join(" ".join(lines).split()) == f"- {text}"
    assert all(len(line) <= width for line in lines)
    assert not [line for line in lines if re.match(r"  (g|ml|minutes|%|°F|oz)\b", line)]

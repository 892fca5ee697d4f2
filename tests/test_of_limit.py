"""A load beside its limit: limits hold to half a hundredth of a gram (`intake/profile.py`), and no print says more."""

import pytest

from calmlarder.render.of_limit import of_limit, of_limits


@pytest.mark.parametrize(
    ("load", "said"), [(0.29, "0.29 of 0.50"), (0.505, "0.50 of 0.50"), (0.506, "0.51 of 0.50"), (0.62, "0.62 of 0.50")]
)
def test_what_holds_is_not_printed_as_over(load: float, said: str) -> None:
    assert of_limit(load, 0.5) == said
    assert of_limits(load, 0.9, 0.5, 1.2).split() == [*said.split(), "0.90", "of", "1.20"]

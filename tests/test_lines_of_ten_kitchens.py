"""Lines as people of ten kitchens type them: which food, how long, how much, whose. The lines are ours."""

import pytest

from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import LarderReader


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("kailan 1 bunch", ["chinese-broccoli"]), ("gai lan, washed", ["chinese-broccoli"]),
        ("choi sum 200g", ["choy-sum"]), ("yu choy", ["choy-sum"]), ("cime di rapa 1 kg", ["broccoli-rabe"]),
        ("shado beni", ["culantro"]), ("kenkey 2 balls", ["kenkey"]), ("roast breadfruit", ["breadfruit-cooked"]),
        ("chicken of the woods", ["mushroom-chicken-of-the-woods"]), ("sinigang mix 1 sachet", ["sinigang-mix"]),
    ],
)  # fmt: skip
def test_which_foods(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == foods
